#pragma once
/// What one frame gives back to its host: a picture to draw, the hit map, and when it wants the next frame.

#include "app/ui/frame_input.hpp"
#include "app/ui/hit_map.hpp"

#include <functional>

struct ImDrawData;

namespace sillwalk::ui {

class Textures;

struct FrameOutput {
    const HitMap* hit_map = nullptr;        ///< valid until the next frame
    const ImDrawData* draw_data = nullptr;  ///< valid until the next frame
    const Textures* textures = nullptr;     ///< pictures that draw_data names, the font among them
    Color background{};                     ///< clear colour
    bool wants_frame = false;               ///< something moves: call again at once
    double wants_frame_in = -1;             ///< seconds until something changes by itself (a toast ends); < 0: never
    bool wants_text = false;                ///< a text field is being edited: show a keyboard
    Rect text_rect{};                       ///< where that field is
    bool quit = false;
};

/// A whole application as its hosts see it: the Linux window, the web page, the script driver.
using FrameFunction = std::function<FrameOutput(const FrameInput&)>;

}  // namespace sillwalk::ui
