/// The tablet app under Linux: a window, or the same app without one for scripts and pictures.

#include "app/shell/shell.hpp"
#include "platforms/common/app_settings.hpp"
#include "platforms/common/curl_transport.hpp"
#include "platforms/common/run_script.hpp"
#include "platforms/common/sdl_host.hpp"
#include "platforms/linux/v4l2_camera.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <atomic>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <future>

using namespace sillwalk;

namespace {

struct Options {
    std::string data;
    std::string size = "1280x800";
    std::string script;
    std::string shot;
    std::string theme;
    std::string photos;
    std::string hand_off;     ///< folder of hand-off files; empty: that of the visits
    std::string certificate;  ///< file of certificates to trust in place of the system's
    float px_per_mm = 0;
    std::size_t draws = app::ShellOptions{}.draws;
    bool demo = false;
    bool headless = false;
};

/// The app of this run; `restart` ends it and opens it again on the same data.
struct Running {
    Options options;
    std::shared_ptr<const app::EngineData> data;
    std::unique_ptr<app::Shell> shell;
    std::atomic<bool> awake = false;  ///< there is a window to be woken

    /// Data and visit, then the letters of the first frame.
    engine::Result<void> begin(const driver::DriverOptions& size) {
        const auto loaded = app::load_engine_data();
        if (!loaded.has_value()) return tl::make_unexpected(loaded.error());
        data = *loaded;
        if (auto opened = open(); !opened.has_value()) return opened;
        ui::FrameInput first;
        first.width = size.width;
        first.height = size.height;
        if (options.px_per_mm > 0) first.px_per_mm = options.px_per_mm;
        shell->prepare(first);
        return {};
    }
    engine::Result<void> open() {
        shell.reset();
        app::ShellOptions wanted;
        wanted.database = options.data + "/visits.sqlite3";
        wanted.photo_folder = options.photos;
        wanted.hand_off_folder = options.hand_off.empty() ? options.data : options.hand_off;
        wanted.demo = options.demo;
        wanted.draws = options.draws;
        // A script expects what its step caused: disk and engine then run within the frame.
        wanted.threads = !options.headless && options.script.empty();
        wanted.keep = true;
        wanted.services.utc_ms = [] {
            const auto now = std::chrono::system_clock::now().time_since_epoch();
            return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
        };
        const std::time_t now = std::time(nullptr);
        std::tm local{};
        localtime_r(&now, &local);
        wanted.services.utc_offset_minutes = static_cast<int>(local.tm_gmtoff / 60);
        wanted.services.wake = [this] {
            if (awake) platforms::SdlHost::wake();
        };
        const platforms::CameraCalls calls = platforms::system_camera_calls();
        if (const auto camera = platforms::find_camera(calls)) {
            wanted.services.camera = [calls, path = *camera] { return platforms::open_camera(calls, path); };
        }
        wanted.services.transport = [certificate = options.certificate](const std::string& url,
                                                                        const std::string& pin) {
            return std::make_unique<platforms::CurlTransport>(platforms::CurlOptions{url, pin, certificate});
        };
        if (!options.headless) wanted.services.clipboard = platforms::SdlHost::clipboard;
        auto opened = app::Shell::open(data, std::move(wanted));
        if (!opened.has_value()) return tl::make_unexpected(opened.error());
        shell = std::move(*opened);
        return options.theme.empty() ? engine::Result<void>{} : set("theme", options.theme);
    }
    engine::Result<void> set(std::string_view name, std::string_view value) {
        const auto action = platforms::setting_action(name, value);
        if (!action.has_value()) return tl::make_unexpected(action.error());
        shell->act(*action);
        return {};
    }
};

std::string default_data_folder() {
    if (const char* xdg = std::getenv("XDG_DATA_HOME"); xdg != nullptr && *xdg != '\0')
        return std::string(xdg) + "/sillwalk";
    const char* home = std::getenv("HOME");
    return std::string(home != nullptr ? home : ".") + "/.local/share/sillwalk";
}

std::string default_photo_folder() {
    if (const char* xdg = std::getenv("XDG_PICTURES_DIR"); xdg != nullptr && *xdg != '\0') return xdg;
    const char* home = std::getenv("HOME");
    return std::string(home != nullptr ? home : ".") + "/Pictures";
}

/// On the terminal, and on the screen of who has none.
int report(const engine::Error& error, platforms::SdlHost* window = nullptr) {
    const std::string words = fmt::format("{}{}{}", error.where, error.where.empty() ? "" : ": ", error.message);
    fmt::print(stderr, "sillwalk: {}\n", words);
    if (window != nullptr) window->tell(words);
    return 1;
}

/// The steps of the script, then the picture, with or without a window.
engine::Result<void> follow_script(Running& app, platforms::SdlHost* window, const driver::DriverOptions& size) {
    const ui::FrameFunction frame = [&app](const ui::FrameInput& input) { return app.shell->frame(input); };
    driver::DriverHost host;
    host.frame = frame;
    if (window != nullptr) {
        host.frame = [&frame, window](const ui::FrameInput& input) { return window->show(frame, input); };
    }
    host.set = [&app](std::string_view name, std::string_view value) { return app.set(name, value); };
    host.restart = [&app] { return app.open(); };
    return platforms::run_script(std::move(host), size, app.options.script, app.options.shot);
}

}  // namespace

int main(int argc, char** argv) {
    Running app;
    Options& options = app.options;
    options.data = default_data_folder();
    options.photos = default_photo_folder();
    CLI::App cli("Sillwalk: wheels for cold stores, food plants, laboratories and cleanrooms.");
    cli.add_option("--data", options.data, "Folder of the visits");
    cli.add_option("--photos", options.photos, "Folder of JPEG files from which photos are taken");
    cli.add_option("--hand-off", options.hand_off, "Folder of hand-off files; that of the visits without it");
    cli.add_option("--certificate", options.certificate, "File of certificates to trust in place of the system's");
    cli.add_flag("--demo", options.demo, "Puts the invented demo visit in and opens it");
    cli.add_option("--size", options.size, "Size of the window: WIDTHxHEIGHT in pixels");
    cli.add_option("--px-per-mm", options.px_per_mm, "Pixels per millimetre of glass; 0: as the display says");
    cli.add_option("--script", options.script, "Runs the steps of this file and ends");
    cli.add_flag("--headless", options.headless, "Without a window");
    cli.add_option("--shot", options.shot, "Writes a picture and ends");
    cli.add_option("--theme", options.theme, "light, sun or dark");
    cli.add_option("--draws", options.draws, "How often the readings are drawn inside their tolerances");
    CLI11_PARSE(cli, argc, argv);

    driver::DriverOptions size;
    if (std::sscanf(options.size.c_str(), "%fx%f", &size.width, &size.height) != 2) {
        return report({engine::ErrorCode::bad_input, "Give the size as 1280x800.", "--size"});
    }
    if (options.px_per_mm > 0) size.px_per_mm = options.px_per_mm;
    std::error_code failed;
    std::filesystem::create_directories(options.data, failed);
    // Made ready while the window opens.
    auto begun = std::async(std::launch::async, [&] { return app.begin(size); });
    std::unique_ptr<platforms::SdlHost> window;
    if (!options.headless) {
        platforms::WindowOptions wanted;
        wanted.width = static_cast<int>(size.width);
        wanted.height = static_cast<int>(size.height);
        wanted.px_per_mm = options.px_per_mm;
        auto opened = platforms::SdlHost::open(wanted);
        if (!opened.has_value()) return report(opened.error());
        window = std::move(*opened);
        app.awake = true;
    }
    const bool scripted = options.headless || !options.script.empty() || !options.shot.empty();
    if (auto done = begun.get(); !done.has_value()) return report(done.error(), scripted ? nullptr : window.get());
    engine::Result<void> done;
    if (scripted) {
        done = follow_script(app, window.get(), size);
    } else {
        window->run([&app](const ui::FrameInput& input) { return app.shell->frame(input); });
    }
    if (!app.shell->flush(5000))
        return report({engine::ErrorCode::storage, "Not everything could be stored.", options.data});
    return done.has_value() ? 0 : report(done.error());
}
