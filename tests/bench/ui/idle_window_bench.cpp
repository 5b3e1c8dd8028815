/// The app in a real window, left alone: frames drawn and processor time used.

#include "platforms/common/sdl_host.hpp"
#include "tests/bench/ui/parts.hpp"

#include <SDL.h>
#include <fmt/core.h>

#include <chrono>
#include <ctime>
#include <thread>

namespace sillwalk::bench {

void bench_idle_window(const std::shared_ptr<const app::EngineData>& data) {
    constexpr int idle_seconds = 30;
    auto opened = platforms::SdlHost::open({});
    if (!opened.has_value()) {
        fmt::print("no window: {}\n", opened.error().message);
        return;
    }
    platforms::SdlHost& host = **opened;
    const auto shell = open_shell(data, big_site(), true, [] { platforms::SdlHost::wake(); });
    long frames = 0;
    double processor_seconds = 0;
    std::thread person([&] {
        // Until nothing has been drawn for ten seconds: answers and messages are done.
        long drawn = -1;
        for (int i = 0; i < 12 && host.frames_drawn() != drawn; ++i) {
            drawn = host.frames_drawn();
            std::this_thread::sleep_for(std::chrono::seconds(10));
        }
        drawn = host.frames_drawn();
        const std::clock_t used = std::clock();
        std::this_thread::sleep_for(std::chrono::seconds(idle_seconds));
        processor_seconds = static_cast<double>(std::clock() - used) / CLOCKS_PER_SEC;
        frames = host.frames_drawn() - drawn;
        SDL_Event quit{};
        quit.type = SDL_QUIT;
        SDL_PushEvent(&quit);
    });
    host.run([&shell](const ui::FrameInput& input) { return shell->frame(input); });
    person.join();
    fmt::print("window left alone for {} s: {} frames drawn (goal 0), {:.2f} % of one processor (goal 0.5)\n",
               idle_seconds, frames, 100 * processor_seconds / idle_seconds);
}

}  // namespace sillwalk::bench
