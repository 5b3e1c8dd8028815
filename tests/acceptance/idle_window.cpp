/// The app in its real window (under a virtual display): the first frame is drawn, a finger opens a crossing, then
/// nobody touches anything for ten seconds. Ends with 0 when the first frame took little work, the tap arrived, no
/// frame was drawn while idle and the processor did next to nothing.

#include "app/shell/shell.hpp"
#include "platforms/common/sdl_host.hpp"
#include "tests/app_storage/scratch.hpp"
#include "tests/support/finger.hpp"

#include <atomic>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <thread>

using namespace sillwalk;
using test::push_finger;

namespace {

constexpr double idle_seconds = 10;
constexpr double most_cpu_share = 0.005;
constexpr double most_to_first_frame = SILLWALK_MOST_SECONDS_TO_FIRST_FRAME;

void rest(double seconds) {
    std::this_thread::sleep_for(std::chrono::duration<double>(seconds));
}

double cpu_seconds() {
    return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;  // of all threads of the process
}

/// Work of the thread that draws, since the program began: what else the machine does is not in it.
double thread_seconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

}  // namespace

int main() {
    const auto opened = platforms::SdlHost::open({});
    const auto data = app::load_engine_data();
    if (!opened || !data) {
        std::fprintf(stderr, "%s\n", (opened ? data.error() : opened.error()).message.c_str());
        return 1;
    }
    platforms::SdlHost& host = **opened;
    const test::Scratch scratch;
    app::ShellOptions options;
    options.database = scratch.file("visits.db");
    options.demo = true;
    options.services.utc_ms = [] { return std::int64_t{1795600000000}; };
    options.services.wake = [] { platforms::SdlHost::wake(); };
    auto shell = app::Shell::open(*data, options);
    if (!shell) {
        std::fprintf(stderr, "%s\n", shell.error().message.c_str());
        return 1;
    }
    std::atomic<float> x{0};
    std::atomic<float> y{0};
    std::atomic<bool> answered{false};
    double to_first_frame = 0;
    const ui::FrameFunction frame = [&](const ui::FrameInput& input) {
        if (to_first_frame == 0 && host.frames_drawn() > 0) to_first_frame = thread_seconds();
        const ui::FrameOutput out = (*shell)->frame(input);
        if (const ui::Target* door = out.hit_map->find("route.crossing.freezer-door")) {
            x = door->visible.center().x / input.width;
            y = door->visible.center().y / input.height;
        }
        answered = app::answer_is_current((*shell)->model());
        return out;
    };
    long idle_frames = -1;
    double busy = 1;
    std::thread person([&] {
        for (int i = 0; i < 600 && (x == 0 || !answered); ++i) rest(0.1);
        push_finger(SDL_FINGERDOWN, x, y);
        rest(0.15);
        push_finger(SDL_FINGERUP, x, y);
        // Until nothing has been drawn for two seconds: what the tap caused is done.
        long before = -1;
        for (int i = 0; i < 30 && host.frames_drawn() != before; ++i) {
            before = host.frames_drawn();
            rest(2);
        }
        before = host.frames_drawn();
        const double cpu = cpu_seconds();
        rest(idle_seconds);
        busy = (cpu_seconds() - cpu) / idle_seconds;
        idle_frames = host.frames_drawn() - before;
        SDL_Event quit{};
        quit.type = SDL_QUIT;
        SDL_PushEvent(&quit);
    });
    host.run(frame);
    person.join();
    const bool there = (*shell)->model().spot.screen == app::Screen::crossing;
    const bool quick = to_first_frame > 0 && to_first_frame <= most_to_first_frame;
    std::printf(
        "work to the first frame: %.2f s, tap arrived: %s, frames while idle: %ld, processor while idle: %.2f %%\n",
        to_first_frame, there ? "yes" : "no", idle_frames, busy * 100);
    return quick && there && idle_frames == 0 && busy <= most_cpu_share ? 0 : 1;
}
