#include "app/ui/draw/ground.hpp"

#include "app/ui/draw/strokes.hpp"

#include <cmath>
#include <numbers>
#include <vector>

namespace sillwalk::ui {

namespace {

constexpr float pi = std::numbers::pi_v<float>;

void wave(Canvas& canvas, Point left, float width, Color color, float stroke) {
    std::vector<Point> points;
    constexpr int steps = 16;
    for (int i = 0; i <= steps; ++i) {
        const float share = static_cast<float>(i) / steps;
        points.push_back({left.x + share * width, left.y - std::sin(share * 2 * pi) * width * 0.16F});
    }
    canvas.polyline(points, color, stroke);
}

void star(Canvas& canvas, Point center, float radius, Color color, float stroke) {
    for (int i = 0; i < 3; ++i) {
        const float angle = pi / 6 + static_cast<float>(i) * pi / 3;
        const Point arm{std::cos(angle) * radius, std::sin(angle) * radius};
        canvas.line(center - arm, center + arm, color, stroke);
    }
}

}  // namespace

void draw_ground(Canvas& canvas, const Theme& theme, float x0, float x1, float y, float depth) {
    const float u = design_unit(canvas);
    hatch(canvas, {x0, y, x1, y + depth}, theme.ground_hatch, 9 * u, 1.3F * u);
    canvas.line({x0, y}, {x1, y}, theme.text, 3.5F * u * theme.line_scale);
}

void draw_wetness(Canvas& canvas, const Theme& theme, float x0, float x1, float y, FloorWetness wetness) {
    const float u = design_unit(canvas);
    const float mark = 18 * u;
    const float stroke = 2.2F * u;
    if (wetness == FloorWetness::dry) return;
    const float step = wetness == FloorWetness::damp ? 78 * u : 26 * u;
    for (float x = x0; x + mark <= x1; x += step) {
        if (wetness == FloorWetness::frost) {
            star(canvas, {x + 7 * u, y}, 7 * u, theme.route, stroke);
        } else {
            wave(canvas, {x, y}, mark, theme.route, stroke);
        }
    }
}

}  // namespace sillwalk::ui
