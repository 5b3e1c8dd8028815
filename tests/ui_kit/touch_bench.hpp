#pragma once
/// Drives the sample application with fingers on a made-up clock, at any frame rate.

#include "tests/ui_kit/sample_app.hpp"

#include <string>
#include <vector>

namespace sillwalk::test {

class TouchBench {
public:
    explicit TouchBench(double frames_per_second = 60) : frame_seconds(1 / frames_per_second) {
        app.screen = 1;
        frames(3);
    }

    SampleApp app;
    double frame_seconds;
    double now = 10;
    ui::FrameInput next;
    ui::FrameOutput out;

    void frame() {
        now += frame_seconds;
        next.now = now;
        next.delta = static_cast<float>(frame_seconds);
        for (ui::PointerEvent& event : next.pointers) {
            if (event.time == 0) event.time = now;
        }
        const float width = next.width;
        const float height = next.height;
        out = app.frame(next);
        next = {};
        next.width = width;
        next.height = height;
    }
    void frames(int count) {
        for (int i = 0; i < count; ++i) frame();
    }
    void settle() {
        frame();
        for (int i = 0; i < 400 && out.wants_frame; ++i) frame();
    }
    void event(ui::PointerPhase phase, ui::Point at, std::int64_t finger = 1, double time = 0) {
        next.pointers.push_back({phase, finger, at, time});
    }
    void down(ui::Point at, std::int64_t finger = 1) { event(ui::PointerPhase::down, at, finger); }
    void move(ui::Point at, std::int64_t finger = 1) { event(ui::PointerPhase::move, at, finger); }
    void up(ui::Point at, std::int64_t finger = 1) { event(ui::PointerPhase::up, at, finger); }
    void key(ui::Key pressed, bool shift = false) {
        next.keys.push_back({pressed, shift});
        frame();
        frame();
    }
    [[nodiscard]] const ui::HitMap& screen() const { return *out.hit_map; }
    [[nodiscard]] ui::Point middle(const std::string& id) const { return screen().find(id)->visible.center(); }
    [[nodiscard]] float offset(const std::string& list) const { return screen().find_scroll(list)->offset; }
    [[nodiscard]] int total() const {
        int sum = 0;
        for (const auto& [id, count] : app.taps) sum += count;
        return sum;
    }
    [[nodiscard]] int count(const std::string& id) const {
        const auto found = app.taps.find(id);
        return found == app.taps.end() ? 0 : found->second;
    }
};

}  // namespace sillwalk::test
