#pragma once
/// Small strokes that all drawings share: dashes, hatching, arrows, stacked fractions, labels on plates.

#include "app/ui/draw/canvas.hpp"

#include <span>
#include <string_view>

namespace sillwalk::ui {

struct Dash {
    float on = 8;
    float off = 6;
};

void dashed_line(Canvas& canvas, Point from, Point to, Color color, float width, Dash dash = {});
void dashed_polyline(Canvas& canvas, std::span<const Point> points, Color color, float width, Dash dash = {12, 8});
/// The stroke lies inside the rectangle.
void dashed_rect(Canvas& canvas, const Rect& rect, Color color, float width, Dash dash = {});
/// Parallel lines at 45 degrees, rising to the right. Neighbours that end at the same height join; a list that is moved
/// takes the pattern with it.
void hatch(Canvas& canvas, const Rect& rect, Color color, float pitch = 9, float width = 1.4F);
/// Shaft and solid head; the tip is at `to`.
void arrow(Canvas& canvas, Point from, Point to, Color color, float width, float head);
/// Numerator over denominator with a bar, optical middle at `middle`.
void stacked_fraction(Canvas& canvas, Point middle, int numerator, int denominator, const TextStyle& style);
[[nodiscard]] float stacked_fraction_width(const Canvas& canvas, int numerator, int denominator, TextRole role,
                                           Weight weight);
/// Text on a plate of the ground's colour, so that lines behind do not cut it. `at` is middle of left, middle or right.
Rect plate(Canvas& canvas, Point at, std::string_view text, const TextStyle& style, Color ground);

}  // namespace sillwalk::ui
