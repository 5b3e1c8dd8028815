#pragma once
/// A finger on a real window, as the display would tell of it.

#include <SDL.h>

namespace sillwalk::test {

/// `x` and `y` from 0 to 1 of the window.
inline void push_finger(Uint32 type, float x, float y) {
    SDL_Event event{};
    event.type = type;
    event.tfinger.timestamp = SDL_GetTicks();
    event.tfinger.touchId = 1;
    event.tfinger.fingerId = 1;
    event.tfinger.x = x;
    event.tfinger.y = y;
    SDL_PushEvent(&event);
}

}  // namespace sillwalk::test
