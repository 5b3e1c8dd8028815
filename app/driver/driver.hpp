#pragma once
/// Runs scripts against any application that takes frames: without a window in tests, in a window to be watched.

#include "app/driver/script.hpp"
#include "app/ui/frame_output.hpp"

#include <functional>
#include <string>
#include <string_view>

namespace sillwalk::driver {

/// What the driver needs of its surroundings. Functions that are missing make their steps fail.
struct DriverHost {
    ui::FrameFunction frame;
    std::function<engine::Result<void>(const ui::FrameOutput&, const std::string& path)> save_shot;
    std::function<engine::Result<void>(std::string_view name, std::string_view value)> set;
    std::function<engine::Result<void>()> restart;
    std::function<void(std::string_view text)> print;
};

struct DriverOptions {
    float width = 1280;
    float height = 800;
    float px_per_mm = 5.9F;
    double frame_seconds = 1.0 / 60;
};

class Driver {
public:
    Driver(DriverHost host, const DriverOptions& options);

    /// Stops at the first step that fails; the error's `where` is "line N: the step".
    engine::Result<void> run(const Script& script);
    engine::Result<void> step(const Step& step);
    /// Frames until nothing moves any more.
    void settle();
    [[nodiscard]] const ui::FrameOutput& last() const { return last_; }
    [[nodiscard]] const ui::HitMap& screen() const { return *last_.hit_map; }

private:
    void frame();
    void finger(ui::PointerPhase phase, ui::Point at);
    void wheel(const ui::ScrollRegion& region, float down);
    engine::Result<ui::Target> find(const std::string& id);
    /// Scrolls every list until the target or the text is on the screen.
    bool search(const std::string& id);
    [[nodiscard]] bool has(const std::string& id) const;
    void bring_into_view(const std::string& id);
    engine::Result<ui::Target> reach(const std::string& id);

    engine::Result<void> tap(const std::string& id);
    engine::Result<void> hold(const std::string& id);
    engine::Result<void> drag(const Step& step);
    engine::Result<void> type(const std::string& id, const std::string& text);
    engine::Result<void> clear(const std::string& id);
    engine::Result<void> key(const std::string& name);
    engine::Result<void> wait(const std::string& seconds);
    engine::Result<void> expect(const Step& step, bool wanted);
    engine::Result<void> expect_screen(const std::string& how, const std::string& text, bool wanted);
    engine::Result<void> shot(const std::string& path);
    engine::Result<void> size(const Step& step);
    engine::Result<void> set(const std::string& name, const std::string& value);

    DriverHost host_;
    DriverOptions options_;
    ui::FrameInput next_;
    ui::FrameOutput last_;
    double now_ = 1;
};

}  // namespace sillwalk::driver
