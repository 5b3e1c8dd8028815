#pragma once
/// The whole app without a window: the shell on a database of its own, driven by scripts, pictures by the software
/// renderer.

#include "app/driver/driver.hpp"
#include "app/shell/shell.hpp"
#include "platforms/common/software_renderer.hpp"
#include "tests/app_storage/scratch.hpp"
#include "tests/app_sync/fake_office.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace sillwalk::test {

/// Loaded once for all tests of the program: it is never changed.
inline std::shared_ptr<const app::EngineData> shared_data() {
    static const std::shared_ptr<const app::EngineData> data = [] {
        auto loaded = app::load_engine_data();
        if (!loaded) FAIL(loaded.error().message);
        return *loaded;
    }();
    return data;
}

class AppHost {
public:
    /// With the demo visit open, or on an empty list of visits.
    explicit AppHost(float width = 1280, float height = 800, bool demo = true) : demo_(demo) {
        start();
        driver::DriverOptions options;
        options.width = width;
        options.height = height;
        driver_ = std::make_unique<driver::Driver>(host(), options);
    }

    void start() {
        shell_.reset();
        app::ShellOptions options;
        options.database = scratch_.file("visits.db");
        options.demo = demo_;
        options.photo_folder = scratch_.file("photos");
        options.threads = false;
        options.draws = 60;
        options.services.utc_ms = [this] { return utc_ms_ += 10; };
        options.services.camera = camera_;
        options.services.steady_ms = [this] { return steady_ms_; };
        options.services.clipboard = [this] { return clipboard; };
        options.services.transport = [this](const std::string& url, const std::string&) {
            return std::make_unique<Line>(office, url);
        };
        options.hand_off_folder = scratch_.file("handed");
        auto opened = app::Shell::open(shared_data(), options);
        if (!opened) FAIL(opened.error().message);
        shell_ = std::move(*opened);
    }
    /// From now on the device has this camera.
    void plug_camera(app::OpenCameraSource camera) {
        camera_ = std::move(camera);
        run("restart\n");
    }
    /// A file in the folder from which photos are taken.
    void put_photo(const std::string& name, const std::string& bytes) {
        const std::filesystem::path folder = scratch_.file("photos");
        std::filesystem::create_directories(folder);
        std::ofstream file(folder / name, std::ios::binary);
        file << bytes;
        REQUIRE(file.good());
    }
    void run(const std::string& text) {
        const auto script = driver::parse_script(text);
        if (!script) FAIL(script.error().where << ": " << script.error().message);
        const auto done = driver_->run(*script);
        if (!done) FAIL(done.error().where << ": " << done.error().message << "\n" << shell_->describe());
        SUCCEED();
    }
    void run_file(const std::string& name) {
        std::string path = SILLWALK_SCRIPTS;
        path.append("/").append(name);
        std::ifstream file(path);
        REQUIRE(file.good());
        std::ostringstream text;
        text << file.rdbuf();
        run(text.str());
    }
    FakeOffice office;  ///< the network
    std::string clipboard;
    [[nodiscard]] std::string hand_off_folder() const { return scratch_.file("handed"); }
    [[nodiscard]] app::Shell& shell() { return *shell_; }
    [[nodiscard]] const driver::Driver& driver() const { return *driver_; }

private:
    /// One of the connections that the app makes to the one office there is.
    class Line : public app::Transport {
    public:
        Line(FakeOffice& office, std::string url) : office_(office), url_(std::move(url)) {}
        app::WireResult send(const app::WireRequest& request) override {
            if (url_ != "https://office.example") return tl::make_unexpected(app::WireFault::unreachable);
            return office_.send(request);
        }

    private:
        FakeOffice& office_;
        std::string url_;
    };

    /// Pictures are drawn only where SILLWALK_SHOTS names a folder for them: under the sanitizers they take most of the
    /// time.
    static engine::Result<void> save(const ui::FrameOutput& frame, const std::string& name, const std::string& size) {
        const char* folder = std::getenv("SILLWALK_SHOTS");
        if (!folder) return {};
        const platforms::Image image = platforms::render(frame);
        if (image.rgba.empty()) return engine::fail(engine::ErrorCode::no_answer, "an empty picture");
        return platforms::write_png(image, (std::filesystem::path(folder) / (size + "-" + name)).string());
    }
    driver::DriverHost host() {
        driver::DriverHost host;
        host.frame = [this](const ui::FrameInput& input) {
            size_ =
                std::to_string(static_cast<int>(input.width)) + "x" + std::to_string(static_cast<int>(input.height));
            steady_ms_ = static_cast<std::int64_t>(input.now * 1000);
            return shell_->frame(input);
        };
        host.save_shot = [this](const ui::FrameOutput& frame, const std::string& name) {
            return save(frame, name, size_);
        };
        host.set = [this](std::string_view name, std::string_view value) { return set(name, value); };
        host.restart = [this]() -> engine::Result<void> {
            start();
            return {};
        };
        host.print = [](std::string_view text) { WARN(std::string(text)); };
        return host;
    }
    engine::Result<void> set(std::string_view name, std::string_view value) {
        if (name == "theme") shell_->act(app::SetTheme{std::string(value)});
        if (name == "language") shell_->act(app::SetLanguage{std::string(value)});
        if (name == "glove") shell_->act(app::SetGlove{value == "on"});
        if (name == "text") shell_->act(app::SetTextPercent{std::atoi(std::string(value).c_str())});
        if (name == "hand") shell_->act(app::SetLeftHanded{value == "left"});
        return {};
    }

    Scratch scratch_;
    bool demo_ = true;
    app::OpenCameraSource camera_;
    std::int64_t utc_ms_ = 1795600000000, steady_ms_ = 0;
    std::string size_;
    std::unique_ptr<app::Shell> shell_;
    std::unique_ptr<driver::Driver> driver_;  ///< draws at once, so the app must be there first
};

}  // namespace sillwalk::test
