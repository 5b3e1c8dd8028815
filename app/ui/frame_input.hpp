#pragma once
/// Everything that one frame may know of the outside: fingers, keys, typed text, window size, time.
/// The window host, the web host and the script driver all make this struct; nothing else reaches the screens.

#include "app/ui/geometry.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace sillwalk::ui {

enum class PointerPhase : std::uint8_t {
    down,
    move,
    up,
    cancel,  ///< the system took the touch away (a call, a system gesture): never a tap
};

/// One finger event (the mouse's left button counts as a finger). Several may lie in one frame.
struct PointerEvent {
    PointerPhase phase = PointerPhase::down;
    std::int64_t pointer = 0;  ///< which finger
    Point at{};                ///< framebuffer pixels
    double time = 0;  ///< seconds, same clock as FrameInput::now; when the event happened, not when it was read
};

struct WheelEvent {
    Point at{};      ///< framebuffer pixels
    Point offset{};  ///< pixels by which the content moves; positive y moves it down
};

enum class Key : std::uint8_t {
    tab,
    enter,
    space,
    escape,
    backspace,
    erase,
    left,
    right,
    up,
    down,
    home,
    end,
    page_up,
    page_down,
    undo,
    redo
};
struct KeyEvent {
    Key key = Key::tab;
    bool shift = false;
};

/// Border of the screen that the system covers (notch, rounded corners), pixels.
struct Insets {
    float left = 0;
    float top = 0;
    float right = 0;
    float bottom = 0;
    friend bool operator==(const Insets&, const Insets&) = default;
};

struct FrameInput {
    double now = 0;           ///< seconds on a steady clock
    float delta = 1.0F / 60;  ///< seconds since the last frame
    float width = 1280;       ///< framebuffer pixels
    float height = 800;
    float px_per_mm = 5.9F;  ///< framebuffer pixels per millimetre of glass, as the host believes
    Insets safe_area{};
    std::vector<PointerEvent> pointers{};  ///< in order of time
    std::vector<WheelEvent> wheels{};
    std::vector<KeyEvent> keys{};
    std::string text{};  ///< UTF-8 typed since the last frame
};

}  // namespace sillwalk::ui
