#include "app/ui/draw/outcome_mark.hpp"

#include "app/ui/draw/strokes.hpp"

#include <algorithm>
#include <vector>

namespace sillwalk::ui {

namespace {

struct Mark {
    Canvas& canvas;
    Point c;
    float r;
    float w;
    Color ink;
    Color ground;

    [[nodiscard]] Point at(float x, float y) const { return {c.x + x * r, c.y + y * r}; }
};

void holds(const Mark& m) {
    m.canvas.stroke_circle(m.c, m.r, m.ink, m.w);
    const Point tick[] = {m.at(-0.42F, 0.02F), m.at(-0.10F, 0.34F), m.at(0.46F, -0.30F)};
    m.canvas.polyline(tick, m.ink, m.w);
}

void tight(const Mark& m) {
    const Point corners[] = {m.at(0, -1), m.at(1.08F, 0.82F), m.at(-1.08F, 0.82F)};
    m.canvas.fill_polygon(corners, m.ink);
    const float half = m.w / 2;
    m.canvas.fill_rect({m.c.x - half, m.c.y - m.r * 0.42F, m.c.x + half, m.c.y + m.r * 0.26F}, m.ground);
    m.canvas.fill_rect({m.c.x - half, m.c.y + m.r * 0.40F, m.c.x + half, m.c.y + m.r * 0.62F}, m.ground);
}

void fails(const Mark& m) {
    const float q = m.r * 0.92F;
    m.canvas.fill_rect({m.c.x - q, m.c.y - q, m.c.x + q, m.c.y + q}, m.ink, 2);
    m.canvas.fill_rect({m.c.x - m.r * 0.56F, m.c.y - m.w * 0.62F, m.c.x + m.r * 0.56F, m.c.y + m.w * 0.62F}, m.ground);
}

/// The question mark is drawn, so that its size follows the shape.
void question(const Mark& m) {
    const Point hook[] = {m.at(-0.30F, -0.22F), m.at(-0.26F, -0.42F), m.at(-0.08F, -0.54F),
                          m.at(0.14F, -0.52F),  m.at(0.29F, -0.37F),  m.at(0.28F, -0.17F),
                          m.at(0.10F, 0.00F),   m.at(0.0F, 0.12F),    m.at(0.0F, 0.26F)};
    m.canvas.polyline(hook, m.ink, m.w * 0.95F);
    const float half = m.w * 0.55F;
    const Point dot = m.at(0, 0.52F);
    m.canvas.fill_rect({dot.x - half, dot.y - half, dot.x + half, dot.y + half}, m.ink);
}

void not_known(const Mark& m) {
    const float q = m.r * 0.94F;
    const Rect box{m.c.x - q, m.c.y - q, m.c.x + q, m.c.y + q};
    const float on = 2 * q * 0.24F;
    const float off = (2 * q - 3 * on) / 2;
    dashed_rect(m.canvas, box, m.ink, m.w * 0.9F, {on, off});
    question(m);
}

void by_eye(const Mark& m) {
    const Point diamond[] = {m.at(0, -1), m.at(1, 0), m.at(0, 1), m.at(-1, 0)};
    m.canvas.polyline(diamond, m.ink, m.w, true);
    const Point tilde[] = {m.at(-0.40F, 0.10F), m.at(-0.26F, -0.08F), m.at(-0.10F, -0.10F),
                           m.at(0.10F, 0.10F),  m.at(0.26F, 0.08F),   m.at(0.40F, -0.10F)};
    m.canvas.polyline(tilde, m.ink, m.w * 0.9F);
}

void draw(const Mark& mark, Badge state) {
    switch (state) {
        case Badge::holds:
            holds(mark);
            break;
        case Badge::tight:
            tight(mark);
            break;
        case Badge::fails:
            fails(mark);
            break;
        case Badge::not_known:
            not_known(mark);
            break;
        case Badge::by_eye:
            by_eye(mark);
            break;
    }
}

}  // namespace

void draw_outcome_mark(Canvas& canvas, Point center, float radius, Badge state, Color ink, Color ground) {
    const ShapeKey key{ShapeKey::mark, static_cast<std::uint32_t>(state), {radius}, ink, ground};
    canvas.shape(key, center, 2 * radius, [&](Point at) {
        draw({canvas, at, radius, std::max(1.8F, radius * 0.21F), ink, ground}, state);
    });
}

float badge_height(const Canvas& canvas, TextRole role) {
    return canvas.text_size(role) * 1.75F;
}

float badge_width(const Canvas& canvas, std::string_view word, TextRole role) {
    const float h = badge_height(canvas, role);
    return h * 1.56F + canvas.text_width(word, role, Weight::medium);
}

Rect draw_badge(Canvas& canvas, const Theme& theme, Point at, Badge state, std::string_view word, TextRole role) {
    const float h = badge_height(canvas, role);
    const Rect box{at.x, at.y - h / 2, at.x + badge_width(canvas, word, role), at.y + h / 2};
    const BadgeColors& colors = theme.badge_of(state);
    const float radius = h * 0.15F;
    const float edge = (state == Badge::tight ? 3.0F : 2.0F) * h / 40;
    if (state == Badge::not_known) {
        canvas.fill_rect(box, colors.fill);
        dashed_rect(canvas, box, colors.edge, edge, {h * 0.18F, h * 0.12F});
    } else {
        canvas.fill_rect(box, colors.fill, radius);
        if (state != Badge::fails) canvas.stroke_rect(box, colors.edge, edge, radius);
    }
    const Color ink = state == Badge::not_known ? colors.edge : colors.text;
    draw_outcome_mark(canvas, {at.x + h * 0.68F, at.y}, h * 0.27F, state, ink, colors.fill);
    canvas.text_centered({at.x + h * 1.16F, at.y}, word, {role, Weight::medium, colors.text, Align::left});
    return box;
}

}  // namespace sillwalk::ui
