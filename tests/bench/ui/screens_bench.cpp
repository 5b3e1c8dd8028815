/// Every screen of the big site: processor time of a whole frame without the graphics card (input, screen, hit map),
/// against the library's demo window drawn in turn in the same run. At rest, with its lists moving, and right after an
/// action, when nothing of the frame before is good any longer.

#include "tests/bench/ui/parts.hpp"

#include <fmt/core.h>
#include <imgui.h>

#include <cstdlib>
#include <ctime>

namespace sillwalk::bench {

namespace {

constexpr int frames_each = 400;

double microseconds(const std::function<void()>& f) {
    timespec before{};
    timespec after{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &before);
    f();
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &after);
    return static_cast<double>(after.tv_sec - before.tv_sec) * 1e6 +
           static_cast<double>(after.tv_nsec - before.tv_nsec) / 1e3;
}

/// The library's own demo window, or nothing at all, in a context of its own.
class Yardstick {
public:
    Yardstick() : context_(ImGui::CreateContext()) {
        ImGui::SetCurrentContext(context_);
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = {1280, 800};
        unsigned char* pixels = nullptr;
        int width = 0;
        int height = 0;
        io.Fonts->GetTexDataAsRGBA32(&pixels, &width, &height);
    }
    ~Yardstick() { ImGui::DestroyContext(context_); }
    Yardstick(const Yardstick&) = delete;
    Yardstick& operator=(const Yardstick&) = delete;

    void frame(bool demo) {
        ImGui::SetCurrentContext(context_);
        ImGui::GetIO().DeltaTime = 1.0F / 60;
        ImGui::NewFrame();
        if (demo) ImGui::ShowDemoWindow();
        ImGui::Render();
        vertices = ImGui::GetDrawData()->TotalVtxCount;
    }

    int vertices = 0;

private:
    ImGuiContext* context_;
};

struct Stop {
    const char* name;
    app::Spot spot;
    bool sheet = false;  ///< with the measuring sheet over it
};

// The list of visits comes last: it closes the visit.
constexpr Stop stops[] = {{"overview", {app::Screen::overview, 0}}, {"about", {app::Screen::about, 0}},
                          {"places", {app::Screen::places, 0}},     {"room", {app::Screen::room, 0}},
                          {"crossing", {app::Screen::crossing, 1}}, {"route", {app::Screen::route, 0}},
                          {"plan", {app::Screen::plan, 0}},         {"loads", {app::Screen::loads, 0}},
                          {"cart", {app::Screen::cart, 0}},         {"washing", {app::Screen::washing, 0}},
                          {"answer", {app::Screen::answer, 0}},     {"temperature", {app::Screen::temperature, 0}},
                          {"push", {app::Screen::push, 0}},         {"what-if", {app::Screen::what_if, 0}},
                          {"damage", {app::Screen::damage, 0}},     {"hand-over", {app::Screen::hand_over, 0}},
                          {"evidence", {app::Screen::evidence, 0}}, {"photo", {app::Screen::photo, 0}},
                          {"setup", {app::Screen::setup, 0}},       {"sheet", {app::Screen::crossing, 1}, true},
                          {"visits", {app::Screen::visits, 0}}};

/// Times of one kind of frame, microseconds.
struct Kind {
    const char* name;
    double heaviest_p95 = 0;
    const char* heaviest = "";
    std::vector<double> yardstick{};

    /// Times `frames_each` frames, and the demo window after each, so that both meet the same machine.
    void measure(
        const char* screen, Yardstick& demo, const std::function<void()>& frame,
        const std::function<void()>& before = [] {}) {
        std::vector<double> times;
        for (int i = 0; i < frames_each; ++i) {
            before();
            times.push_back(microseconds(frame));
            yardstick.push_back(microseconds([&] { demo.frame(true); }));
        }
        const double p95 = quantile(times, 0.95);
        fmt::print("  {:<8} {:>4.0f} {:>4.0f}", name, quantile(times, 0.5), p95);
        if (p95 <= heaviest_p95) return;
        heaviest_p95 = p95;
        heaviest = screen;
    }
    void report(const char* goal) {
        const double demo = quantile(yardstick, 0.95);
        fmt::print("{}: heaviest screen ({}) p95 {:.0f} us, the demo window {:.0f} us: {:.1f} times{}\n", name,
                   heaviest, heaviest_p95, demo, heaviest_p95 / demo, goal);
    }
};

}  // namespace

void bench_screens(const std::shared_ptr<const app::EngineData>& data) {
    Yardstick yardstick;
    for (int i = 0; i < 30; ++i) yardstick.frame(true);
    const auto shell = open_shell(data, big_site(), false, [] {});
    add_photos(*shell);
    Still still(*shell);
    still.settle();
    Kind at_rest{"at rest"};
    Kind scrolled{"scrolled"};
    Kind anew{"anew"};
    long idle = 0;
    fmt::print("a frame of the site with {} crossings and {} carts, processor time in us: median and p95\n",
               big_crossings, big_carts);
    for (const Stop& stop : stops) {
        const auto open = [&] {
            shell->act(app::GoTo{stop.spot});
            if (stop.sheet) shell->act(app::OpenSheet{{engine::Field::crossing_rise, stop.spot.index, 0}});
        };
        open();
        if (!(shell->model().spot == stop.spot)) {
            fmt::print("{} did not open\n", stop.name);
            std::exit(1);
        }
        still.settle();
        (void)still.frames_within(30);  // what ends by itself has ended
        idle += still.frames_within(10);
        fmt::print("  {:<12}", stop.name);
        int vertices = 0;
        at_rest.measure(stop.name, yardstick, [&] { vertices = still.frame(1.0 / 60).draw_data->TotalVtxCount; });
        scrolled.measure(stop.name, yardstick, [&] { (void)still.scrolled_frame(7); });
        // Every action makes all that is remembered old.
        const auto after_an_action = [&] { (void)still.frame(1.0 / 60); };
        anew.measure(stop.name, yardstick, after_an_action, [&] { shell->act(app::ShowTable{false}); });
        fmt::print("  {:6} vertices\n", vertices);
    }
    at_rest.report(" (goal 4)");
    scrolled.report(" (goal 4000 us)");
    anew.report(" (once after each action)");
    fmt::print("the demo window has {} vertices\n", yardstick.vertices);
    fmt::print("frames asked for in 10 s without input, all {} screens together: {} (goal 0)\n", std::size(stops),
               idle);
}

}  // namespace sillwalk::bench
