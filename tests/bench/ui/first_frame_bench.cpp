/// From nothing to the first frame, each time in a process of its own: the app with its tables, a database and the demo
/// visit, against an empty frame of the library. With a display both open the same window and draw into it.

#include "app/ui/textures.hpp"
#include "platforms/common/sdl_host.hpp"
#include "tests/bench/ui/parts.hpp"

#include <fmt/core.h>
#include <imgui.h>

#include <chrono>
#include <future>
#include <memory>
#include <sys/wait.h>
#include <unistd.h>

namespace sillwalk::bench {

namespace {

constexpr int runs = 21;

/// Opens the window, then draws into it what `ready` gives, which may go on beside the opening.
void show(std::future<ui::FrameFunction> ready) {
    const ui::FrameInput input;
    std::unique_ptr<platforms::SdlHost> host;
    if (has_display()) {
        auto window = platforms::SdlHost::open({});
        if (!window.has_value()) _exit(1);
        host = std::move(*window);
    }
    const ui::FrameFunction frame = ready.get();
    (void)(host ? host->show(frame, input) : frame(input));
}

/// As the program does it: all is made ready while the window opens.
ui::FrameFunction app_made_ready() {
    const auto data = app::load_engine_data();
    if (!data.has_value()) _exit(1);
    app::ShellOptions options;
    options.database = ":memory:";
    options.demo = true;
    options.services.utc_ms = [] { return std::int64_t{1'764'064'800'000}; };
    options.services.wake = [] {};
    auto opened = app::Shell::open(*data, std::move(options));
    if (!opened.has_value()) _exit(1);
    const std::shared_ptr<app::Shell> shell = std::move(*opened);
    shell->prepare({});
    return [shell](const ui::FrameInput& input) { return shell->frame(input); };
}

void first_frame_of_app() {
    show(std::async(std::launch::async, app_made_ready));
    _exit(0);  // closing down is not part of the first frame
}

void first_frame_of_library() {
    ui::Textures textures;
    ImGui::CreateContext();
    const ui::FrameFunction frame = [&textures](const ui::FrameInput& input) {
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = {input.width, input.height};
        unsigned char* pixels = nullptr;
        int width = 0;
        int height = 0;
        io.Fonts->GetTexDataAsRGBA32(&pixels, &width, &height);
        const auto bytes = static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 4;
        textures.set(ui::font_texture, width, height, {pixels, pixels + bytes});
        ImGui::NewFrame();
        ImGui::Render();
        ui::FrameOutput out;
        out.draw_data = ImGui::GetDrawData();
        out.textures = &textures;
        return out;
    };
    show(std::async(std::launch::deferred, [&frame] { return frame; }));
    _exit(0);
}

/// Milliseconds until a process of its own has done it; below 0 where it failed.
double milliseconds_apart(void (*work)()) {
    const auto start = std::chrono::steady_clock::now();
    const pid_t child = fork();
    if (child == 0) work();
    int status = 1;
    if (child < 0 || waitpid(child, &status, 0) < 0 || status != 0) return -1;
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

void bench_first_frame() {
    std::vector<double> app;
    std::vector<double> library;
    for (int i = 0; i < runs; ++i) {
        app.push_back(milliseconds_apart(first_frame_of_app));
        library.push_back(milliseconds_apart(first_frame_of_library));
    }
    const double ours = quantile(app, 0.5);
    const double theirs = quantile(library, 0.5);
    if (app.front() < 0 || library.front() < 0) {
        fmt::print("first frame: a process failed\n");
        return;
    }
    fmt::print(
        "first frame {}: app {:.0f} ms, empty frame of the library {:.0f} ms, {:.2f} times (goal 1.5 in a window)\n",
        has_display() ? "in a window" : "without a window", ours, theirs, ours / theirs);
}

}  // namespace sillwalk::bench
