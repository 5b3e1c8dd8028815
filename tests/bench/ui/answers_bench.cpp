/// A reading is kept on the big site until a frame shows the answer made from it; the app's own threads work it out.
/// First at rest, then while the answers of the other carts still run: a person who measures quickly.

#include "tests/bench/ui/parts.hpp"

#include <fmt/core.h>

#include <chrono>
#include <condition_variable>
#include <mutex>

namespace sillwalk::bench {

namespace {

using Clock = std::chrono::steady_clock;
constexpr int commits = 200;
constexpr double most_seconds = 45;  ///< of each part, on a slow machine

/// Sleeps as the window does, until the app wakes it.
class Doorbell {
public:
    void ring() {
        const std::lock_guard lock(mutex_);
        rung_ = true;
        bell_.notify_one();
    }
    void wait(std::chrono::milliseconds at_most) {
        std::unique_lock lock(mutex_);
        bell_.wait_for(lock, at_most, [this] { return rung_; });
        rung_ = false;
    }

private:
    std::mutex mutex_;
    std::condition_variable bell_;
    bool rung_ = false;
};

/// Sleeps only where the frame before has not shown it: nobody rings for what was seen.
void frames_until(Still& still, Doorbell& bell, const std::function<bool()>& reached) {
    while (!reached()) {
        const bool goes_on = still.frame(1.0 / 60).wants_frame;
        if (!goes_on && !reached()) bell.wait(std::chrono::milliseconds(1000));
    }
}

/// 3 mm to 25 mm in turn, each other than the one before.
void keep_rise(app::Shell& shell, std::uint16_t crossing, int number) {
    shell.act(app::OpenSheet{{engine::Field::crossing_rise, crossing, 0}});
    shell.act(app::SheetClear{});
    for (const char digit : std::to_string(3 + number % 23)) shell.act(app::SheetDigit{digit});
    shell.act(app::SheetKeep{false});
}

void report(const char* what, std::vector<double>& times, const char* goal) {
    const double median = quantile(times, 0.5);
    fmt::print("{}: median {:.0f} ms, p95 {:.0f} ms, p99 {:.0f} ms of {}{}\n", what, median, quantile(times, 0.95),
               quantile(times, 0.99), times.size(), goal);
}

}  // namespace

void bench_answers(const std::shared_ptr<const app::EngineData>& data) {
    Doorbell bell;
    const engine::Survey survey = big_site();
    const auto shell = open_shell(data, survey, true, [&bell] { bell.ring(); });
    Still still(*shell);
    const app::AppModel& model = shell->model();
    std::uint16_t door = 0;
    while (survey.crossings[door].id.text() != "freezer-door") ++door;
    shell->act(app::GoTo{{app::Screen::crossing, door}});
    const auto current = [&model] { return app::answer_is_current(model); };
    const auto whole = [&model] { return app::answer_is_current(model) && !model.answer->partial; };
    frames_until(still, bell, whole);
    std::vector<double> at_rest;
    std::vector<double> all;
    std::vector<double> in_haste;
    const auto since = [](Clock::time_point start) {
        return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
    };
    const auto begun = Clock::now();
    for (int i = 0; i < commits && since(begun) < 1000 * most_seconds; ++i) {
        const auto start = Clock::now();
        keep_rise(*shell, door, i);
        frames_until(still, bell, current);
        at_rest.push_back(since(start));
        frames_until(still, bell, whole);
        all.push_back(since(start));
    }
    const auto hurried = Clock::now();
    for (int i = 0; i < commits && since(hurried) < 1000 * most_seconds; ++i) {
        const auto start = Clock::now();
        keep_rise(*shell, door, i + 1);
        frames_until(still, bell, current);
        in_haste.push_back(since(start));
    }
    fmt::print("a reading kept, {} crossings and {} carts\n", big_crossings, big_carts);
    report("  to the answer of the cart in hand, at rest", at_rest, " (goal p99 100)");
    report("  to the answer of the cart in hand, while the others run", in_haste, "");
    report("  to the answers of all carts", all, "");
}

}  // namespace sillwalk::bench
