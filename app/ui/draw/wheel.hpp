#pragma once
/// A wheel seen along its axle, or from the front.

#include "app/ui/draw/canvas.hpp"
#include "app/ui/theme.hpp"

#include <cstdint>

namespace sillwalk::ui {

enum class WheelStyle : std::uint8_t {
    present,       ///< black outline, pale tread
    first_choice,  ///< blue tread band
    runner_up,     ///< grey outline
};

[[nodiscard]] Color wheel_color(const Theme& theme, WheelStyle style);
void draw_wheel(Canvas& canvas, const Theme& theme, Point center, float radius, WheelStyle style);
/// From the front: tread as a bar with the axle's ends; stands on `floor.y`, middle at `floor.x`.
void draw_wheel_front(Canvas& canvas, const Theme& theme, Point floor, float width, float diameter, WheelStyle style);

}  // namespace sillwalk::ui
