#pragma once
/// The floor as it is cut open: line, hatching below, and marks of what lies on it.

#include "app/ui/draw/canvas.hpp"
#include "app/ui/theme.hpp"

#include <cstdint>

namespace sillwalk::ui {

/// Design unit of a canvas: strokes and gaps grow with its text. 1 on a 10-inch tablet.
[[nodiscard]] inline float design_unit(const Canvas& canvas) {
    return canvas.text_size(TextRole::body) / 26;
}

enum class FloorWetness : std::uint8_t { dry, damp, wet, frost };

/// Thick line from x0 to x1 at `y`, hatched below.
void draw_ground(Canvas& canvas, const Theme& theme, float x0, float x1, float y, float depth);
/// Waves or stars under the floor line; nothing when dry. A word always stands beside them.
void draw_wetness(Canvas& canvas, const Theme& theme, float x0, float x1, float y, FloorWetness wetness);

}  // namespace sillwalk::ui
