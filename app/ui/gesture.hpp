#pragma once
/// From fingers to meanings: tap, drag to scroll, fling, long press, direct drag, pan and zoom.
/// A finger means the target that was on the screen when it came down; events carry their own times, so nothing is lost
/// or mistaken at low frame rates. Pure: knows only the events and the hit map that the person was looking at.

#include "app/ui/frame_input.hpp"
#include "app/ui/hit_map.hpp"

#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::ui {

/// Lengths in pixels, speeds in pixels per second, times in seconds.
struct GestureParameters {
    float slop = 12;
    float fling_start = 47;
    float fling_max = 7500;
    float fling_stop = 14;
    double fling_decay = 0.325;  ///< speed falls to 1/e in this time
    double long_press = 0.5;
    double velocity_window = 0.1;      ///< only samples this young count
    double still = 0.08;               ///< a finger that rested this long does not fling
    double shortest_step = 0.008;      ///< a busy web page may stamp all samples alike
    double press_visible = 0.08;       ///< how long a press shows at least
    double key_bounce = 0.07;          ///< the same key again within this time is a bounce
    double repeat_interval = 1.0 / 6;  ///< of a held stepper

    /// The table of the interface design for this screen.
    [[nodiscard]] static GestureParameters for_screen(float px_per_dp, bool glove);
};

enum class GestureState : std::uint8_t {
    idle,
    pending,  ///< finger down, not yet moved past the slop
    direct,   ///< the target follows the finger
    panning,  ///< map or photo, one or two fingers
    scrolling,
    flinging,  ///< no finger; the list runs on
    held,      ///< long press done
    spent,     ///< nothing more happens until all fingers are up
};

struct Tap {
    std::string id;
    Point at;
    double time = 0;
};
struct Drag {
    std::string id;
    Point at;
    Point delta;
    float zoom = 1;
    bool ended = false;
};
struct ScrollStep {
    std::string id;
    float offset = 0;  ///< to be added to the scroll offset
};

struct GestureResult {
    std::optional<Tap> tap;  ///< at most one in a frame; more wait for the next frames
    std::optional<Tap> long_press;
    std::optional<Drag> drag;
    std::vector<ScrollStep> scrolls;
    std::string pressed;   ///< target to be shown as pressed; may be empty
    std::string held;      ///< target whose long press is going on
    bool touched = false;  ///< any finger came down
};

class Gesture {
public:
    /// Takes the frame's events. `seen` is what the last frame showed.
    GestureResult advance(const FrameInput& input, const HitMap& seen, const GestureParameters& parameters);
    /// Every finger is forgotten; nothing is tapped.
    void cancel();
    /// The list met its end.
    void stop_fling();

    [[nodiscard]] GestureState state() const { return state_; }
    [[nodiscard]] bool wants_frame() const { return state_ == GestureState::flinging || !taps_.empty(); }
    /// Seconds until the gesture changes by itself; < 0: never.
    [[nodiscard]] double wants_frame_in(double now) const;

private:
    struct Finger {
        std::int64_t pointer = 0;
        Point at;
    };
    struct Sample {
        double time = 0;
        float y = 0;
    };

    void down(const PointerEvent& event, const HitMap& seen);
    void second_finger(const PointerEvent& event);
    void move(const PointerEvent& event, const HitMap& seen);
    void up(const PointerEvent& event, const HitMap& seen);
    void leave_slop(const HitMap& seen);
    void release_scroll(double time);
    void finish_tap(double time);
    void record(double time, float y);
    void scroll_by(float offset);
    void drag_to(Point at);
    void pan_to(Finger& finger, Point at);
    void run_fling(double now);
    void check_long_press(double now);
    void deliver(double now);
    [[nodiscard]] bool beyond_slop(Point at) const;
    [[nodiscard]] Finger* find(std::int64_t pointer);

    GestureParameters parameters_;
    GestureState state_ = GestureState::idle;
    std::vector<Finger> fingers_;
    std::deque<Sample> samples_;
    std::deque<Tap> taps_;
    GestureResult result_;

    Tap start_;  ///< where and on what the finger came down; id empty for no target
    bool start_enabled_ = false;
    bool start_long_press_ = false;
    bool start_is_key_ = false;
    bool eaten_ = false;  ///< the touch stopped a fling: it taps nothing
    DragMode start_drag_ = DragMode::none;
    Point drag_from_;
    std::string scroll_id_;
    float velocity_ = 0;
    double fling_time_ = 0;
    std::string last_tap_id_;
    double last_tap_time_ = -1;
    std::string shown_id_;  ///< keeps a short press visible
    double shown_until_ = -1;
    double next_repeat_ = 0;
};

}  // namespace sillwalk::ui
