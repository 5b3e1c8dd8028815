/// The real window (under a virtual display): a finger's tap arrives, and nothing is drawn while nothing changes.
/// Ends with 0 when both hold. Run by CTest through xvfb-run where that is installed.

#include "platforms/common/sdl_host.hpp"
#include "tests/support/finger.hpp"
#include "tests/ui_kit/sample_app.hpp"

#include <chrono>
#include <cstdio>
#include <thread>

using namespace sillwalk;
using test::push_finger;

namespace {

void rest(int milliseconds) {
    std::this_thread::sleep_for(std::chrono::milliseconds(milliseconds));
}

}  // namespace

int main() {
    const auto opened = platforms::SdlHost::open({});
    if (!opened.has_value()) {
        std::fprintf(stderr, "%s\n", opened.error().message.c_str());
        return 1;
    }
    platforms::SdlHost& host = **opened;
    test::SampleApp app;
    ui::Point at;
    const ui::FrameFunction frame = [&](const ui::FrameInput& input) {
        const ui::FrameOutput out = app.frame(input);
        const ui::Point middle = out.hit_map->find("crossing.rise")->visible.center();
        at = {middle.x / input.width, middle.y / input.height};
        return out;
    };
    long idle_frames = -1;
    std::thread person([&] {
        rest(2000);
        push_finger(SDL_FINGERDOWN, at.x, at.y);
        rest(120);
        push_finger(SDL_FINGERUP, at.x, at.y);
        rest(1500);
        const long before = host.frames_drawn();
        rest(3000);
        idle_frames = host.frames_drawn() - before;
        SDL_Event quit{};
        quit.type = SDL_QUIT;
        SDL_PushEvent(&quit);
    });
    host.run(frame);
    person.join();
    std::printf("taps %d, frames while idle %ld, frames in all %ld\n", app.taps["crossing.rise"], idle_frames,
                host.frames_drawn());
    return app.taps["crossing.rise"] == 1 && idle_frames == 0 ? 0 : 1;
}
