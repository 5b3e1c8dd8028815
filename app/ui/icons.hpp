#pragma once
/// Drawn signs; every screen's icon has one solid disc, the wheel. Never glyphs.

#include "app/ui/draw/canvas.hpp"

#include <cstdint>

namespace sillwalk::ui {

enum class Icon : std::uint8_t {
    none,
    home,
    overview,
    route,
    loads,
    washing,
    answer,
    evidence,
    hand_over,
    setup,
    undo,
    redo,
    theme,
    camera,
    backspace,
    plus,
    minus,
    close,
    more,
    check,
    share,
    erase,
    person,
    note,
    up,
    down,
    left,
    right,
    arrow_left,
    arrow_right
};

/// In a square of side `size` around `center`.
void draw_icon(Canvas& canvas, Icon icon, Point center, float size, Color color);

}  // namespace sillwalk::ui
