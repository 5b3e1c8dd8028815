#pragma once
/// From window-system events to a FrameInput. Fingers keep their own times; the mouse's left button is a finger.

#include "app/ui/frame_input.hpp"

#include <SDL.h>

namespace sillwalk::platforms {

class SdlInput {
public:
    /// True when the event is something that the application must see.
    bool take(const SDL_Event& event, SDL_Window* window);
    /// The input of the next frame; the events taken so far are handed over.
    [[nodiscard]] ui::FrameInput frame(SDL_Window* window, float px_per_mm);
    [[nodiscard]] bool quit() const { return quit_; }
    [[nodiscard]] bool hidden() const { return hidden_; }

private:
    void pointer(ui::PointerPhase phase, std::int64_t id, float x, float y, std::uint32_t ticks);
    bool key(const SDL_KeyboardEvent& event);
    bool window_event(const SDL_WindowEvent& event);

    ui::FrameInput next_;
    bool mouse_down_ = false;
    bool quit_ = false;
    bool hidden_ = false;
    double last_ = 0;
};

/// Seconds on the clock of SDL's event times.
[[nodiscard]] double sdl_now();

}  // namespace sillwalk::platforms
