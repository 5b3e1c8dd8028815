#pragma once
/// The five states: a shape each, a fill of rising strength, and always a word.

#include "app/ui/draw/canvas.hpp"
#include "app/ui/theme.hpp"

#include <string_view>

namespace sillwalk::ui {

/// Only the shape: ring with tick, triangle, square with bar, dashed square with "?", diamond with tilde.
/// `ground` is the colour behind it.
void draw_outcome_mark(Canvas& canvas, Point center, float radius, Badge state, Color ink, Color ground);

[[nodiscard]] float badge_height(const Canvas& canvas, TextRole role);
[[nodiscard]] float badge_width(const Canvas& canvas, std::string_view word, TextRole role);
/// Fill, edge, shape and word; `at` is the middle of the left end.
Rect draw_badge(Canvas& canvas, const Theme& theme, Point at, Badge state, std::string_view word, TextRole role);

}  // namespace sillwalk::ui
