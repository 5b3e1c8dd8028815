#include "app/ui/draw/wheel.hpp"

#include <algorithm>

namespace sillwalk::ui {

Color wheel_color(const Theme& theme, WheelStyle style) {
    switch (style) {
        case WheelStyle::present:
            return theme.text;
        case WheelStyle::first_choice:
            return theme.primary;
        case WheelStyle::runner_up:
            return theme.text2;
    }
    return theme.text;
}

void draw_wheel(Canvas& canvas, const Theme& theme, Point center, float radius, WheelStyle style) {
    const Color color = wheel_color(theme, style);
    const float stroke = std::max(2.0F, radius * 0.035F) * theme.line_scale;
    const bool band = style == WheelStyle::first_choice;
    const float inner = radius * (band ? 0.86F : 0.80F);
    canvas.fill_circle(center, radius, band ? color : theme.muted_fill);
    canvas.fill_circle(center, inner, theme.surface);
    canvas.stroke_circle(center, radius, color, stroke);
    if (!band) canvas.stroke_circle(center, inner, color, std::max(1.2F, stroke * 0.5F));
    canvas.stroke_circle(center, radius * 0.26F, color, std::max(1.5F, stroke * 0.7F));
    canvas.fill_circle(center, std::max(2.0F, radius * 0.075F), color);
}

void draw_wheel_front(Canvas& canvas, const Theme& theme, Point floor, float width, float diameter, WheelStyle style) {
    const Color color = wheel_color(theme, style);
    const float stroke = std::max(2.0F, diameter * 0.018F) * theme.line_scale;
    const Rect tread{floor.x - width / 2, floor.y - diameter, floor.x + width / 2, floor.y};
    const float axle = tread.center().y;
    const float reach = width * 0.4F;
    canvas.fill_rect({tread.x0 - reach, axle - stroke, tread.x1 + reach, axle + stroke}, color);
    canvas.fill_rect(tread, style == WheelStyle::first_choice ? color : theme.muted_fill, width * 0.15F);
    canvas.stroke_rect(tread, color, stroke, width * 0.15F);
    if (style != WheelStyle::first_choice) {
        canvas.line({floor.x, tread.y0 + width * 0.2F}, {floor.x, tread.y1 - width * 0.2F}, theme.ground_hatch,
                    stroke * 0.6F);
    }
}

}  // namespace sillwalk::ui
