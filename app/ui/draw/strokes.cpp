#include "app/ui/draw/strokes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace sillwalk::ui {

void dashed_line(Canvas& canvas, Point from, Point to, Color color, float width, Dash dash) {
    const Point d = to - from;
    const float length = std::hypot(d.x, d.y);
    if (length <= 0) return;
    const Point unit = d * (1 / length);
    for (float t = 0; t < length; t += dash.on + dash.off) {
        canvas.line(from + unit * t, from + unit * std::min(length, t + dash.on), color, width);
    }
}

void dashed_polyline(Canvas& canvas, std::span<const Point> points, Color color, float width, Dash dash) {
    std::vector<Point> stroke;
    float left = dash.on;
    bool pen = true;
    const auto lift = [&] {
        if (pen && stroke.size() > 1) canvas.polyline(stroke, color, width);
        stroke.clear();
        pen = !pen;
        left = pen ? dash.on : dash.off;
    };
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        Point from = points[i];
        const Point to = points[i + 1];
        float rest = std::hypot(to.x - from.x, to.y - from.y);
        if (pen && stroke.empty()) stroke.push_back(from);
        while (rest > left) {
            from = from + (to - from) * (left / rest);
            rest -= left;
            if (pen) stroke.push_back(from);
            lift();
            if (pen) stroke.push_back(from);
        }
        left -= rest;
        if (pen) stroke.push_back(to);
    }
    if (pen && stroke.size() > 1) canvas.polyline(stroke, color, width);
}

void dashed_rect(Canvas& canvas, const Rect& rect, Color color, float width, Dash dash) {
    const float half = width / 2;
    const Rect inner = rect.inset(half);
    const Point size{inner.width(), inner.height()};
    const ShapeKey key{ShapeKey::dashed_box, 0, {size.x, size.y, width, dash.on, dash.off}, color, {}};
    canvas.shape(key, {inner.x0, inner.y0}, std::max(size.x, size.y) + width, [&](Point at) {
        const Rect path{at.x, at.y, at.x + size.x, at.y + size.y};
        dashed_line(canvas, {path.x0 - half, path.y0}, {path.x1 + half, path.y0}, color, width, dash);
        dashed_line(canvas, {path.x1, path.y0 - half}, {path.x1, path.y1 + half}, color, width, dash);
        dashed_line(canvas, {path.x1 + half, path.y1}, {path.x0 - half, path.y1}, color, width, dash);
        dashed_line(canvas, {path.x0, path.y1 + half}, {path.x0, path.y0 - half}, color, width, dash);
    });
}

void hatch(Canvas& canvas, const Rect& rect, Color color, float pitch, float width) {
    if (rect.empty()) return;
    canvas.push_clip(rect);
    const Point size{rect.width(), rect.height()};
    const float start = rect.x0 - size.y;
    const float before = start - std::floor(start / pitch) * pitch;
    const ShapeKey key{ShapeKey::hatching, 0, {size.x, size.y, before, pitch, width}, color, {}};
    canvas.shape(key, {rect.x0, rect.y0}, size.x + size.y + width, [&](Point at) {
        const float last = at.x + at.y + size.x + size.y;
        for (float k = at.x + at.y - before; k <= last; k += pitch) {
            canvas.line({k - at.y + width, at.y - width}, {k - at.y - size.y - width, at.y + size.y + width}, color,
                        width);
        }
    });
    canvas.pop_clip();
}

void arrow(Canvas& canvas, Point from, Point to, Color color, float width, float head) {
    const Point d = to - from;
    const float length = std::hypot(d.x, d.y);
    if (length < 1) return;
    const Point unit = d * (1 / length);
    const Point across{-unit.y, unit.x};
    const float reach = std::min(head, length);
    const Point neck = to - unit * reach;
    canvas.line(from, neck + unit, color, width);
    const Point corners[] = {to, neck + across * (reach * 0.52F), neck - across * (reach * 0.52F)};
    canvas.fill_polygon(corners, color);
}

float stacked_fraction_width(const Canvas& canvas, int numerator, int denominator, TextRole role, Weight weight) {
    return std::max(canvas.text_width(fmt::format("{}", numerator), role, weight),
                    canvas.text_width(fmt::format("{}", denominator), role, weight)) +
           4;
}

void stacked_fraction(Canvas& canvas, Point middle, int numerator, int denominator, const TextStyle& style) {
    TextStyle centered = style;
    centered.align = Align::center;
    const float cap = canvas.cap_height(style.role);
    const float gap = cap * 0.30F + 1;
    const float half_bar = std::max(2.0F, cap * 0.10F) / 2;
    const float half_width = stacked_fraction_width(canvas, numerator, denominator, style.role, style.weight) / 2;
    canvas.text({middle.x, middle.y - gap}, fmt::format("{}", numerator), centered);
    canvas.text({middle.x, middle.y + gap + cap}, fmt::format("{}", denominator), centered);
    canvas.fill_rect({middle.x - half_width, middle.y - half_bar, middle.x + half_width, middle.y + half_bar},
                     style.color);
}

Rect plate(Canvas& canvas, Point at, std::string_view text, const TextStyle& style, Color ground) {
    const float width = canvas.text_width(text, style.role, style.weight);
    const float left = style.align == Align::center  ? at.x - width / 2
                       : style.align == Align::right ? at.x - width
                                                     : at.x;
    const float margin = canvas.cap_height(style.role) * 0.55F;
    const float half = canvas.cap_height(style.role) / 2 + margin;
    const Rect box{left - margin, at.y - half, left + width + margin, at.y + half};
    canvas.fill_rect(box, ground, margin / 2);
    canvas.text_centered(at, text, style);
    return box;
}

}  // namespace sillwalk::ui
