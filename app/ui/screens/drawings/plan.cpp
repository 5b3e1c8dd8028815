#include "app/ui/screens/drawings/plan.hpp"

#include "app/ui/draw/ground.hpp"
#include "app/ui/draw/strokes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sillwalk::ui {

namespace {

struct Span {
    double low = 0, high = 0;
    [[nodiscard]] double length() const { return high - low; }
};
Span forward_span(const PlanShape& shape) {
    Span span{shape.castors[0].forward_mm, shape.castors[0].forward_mm};
    for (const PlanCastor& castor : shape.castors) {
        span.low = std::min(span.low, castor.forward_mm);
        span.high = std::max(span.high, castor.forward_mm);
    }
    return span;
}
Span across_span(const PlanShape& shape) {
    Span span{shape.castors[0].across_mm, shape.castors[0].across_mm};
    for (const PlanCastor& castor : shape.castors) {
        span.low = std::min(span.low, castor.across_mm);
        span.high = std::max(span.high, castor.across_mm);
    }
    return span;
}

/// Millimetres of the cart to points of the screen; the leading end is to the right, the left side up.
struct Map {
    Point middle;
    float scale;
    double forward_middle, across_middle;
    [[nodiscard]] Point at(double forward, double across) const {
        return {middle.x + static_cast<float>(forward - forward_middle) * scale,
                middle.y - static_cast<float>(across - across_middle) * scale};
    }
};

void draw_castor(Canvas& canvas, const Theme& theme, const Map& map, const PlanShape& shape, const PlanCastor& castor) {
    const Point at = map.at(castor.forward_mm, castor.across_mm);
    const float tread = static_cast<float>(shape.wheel_mm) * map.scale;
    const float width = std::max(tread * 0.3F, 10.0F);
    const float stroke = 2 * theme.line_scale;
    Point wheel = at;
    if (castor.swivel) {
        wheel.x -= tread * 0.22F;
        canvas.fill_circle(at, tread * 0.62F, theme.surface);
        canvas.stroke_circle(at, tread * 0.62F, theme.text, stroke);
    } else {
        const Rect plate{at.x - tread * 0.62F, at.y - tread * 0.42F, at.x + tread * 0.62F, at.y + tread * 0.42F};
        canvas.fill_rect(plate, theme.surface, 4);
        canvas.stroke_rect(plate, theme.text, stroke, 4);
    }
    canvas.fill_rect({wheel.x - tread / 2, wheel.y - width / 2, wheel.x + tread / 2, wheel.y + width / 2}, theme.text,
                     4);
    canvas.line({wheel.x, wheel.y - width * 0.8F}, {wheel.x, wheel.y + width * 0.8F}, theme.text, stroke);
}

void draw_centre(Canvas& canvas, const Theme& theme, Point at, float r) {
    canvas.fill_circle(at, r + 3, theme.surface);
    for (int quarter = 0; quarter < 2; ++quarter) {
        std::vector<Point> slice = {at};
        for (int i = 0; i <= 8; ++i) {
            const float angle = (static_cast<float>(quarter) * 2 + static_cast<float>(i) / 8) * 1.5708F;
            slice.push_back({at.x + std::cos(angle) * r, at.y + std::sin(angle) * r});
        }
        canvas.fill_polygon(slice, theme.text);
    }
    canvas.stroke_circle(at, r, theme.text, 2.5F * theme.line_scale);
}

void draw_person(Canvas& canvas, const Theme& theme, Point at) {
    const float stroke = 2.5F * theme.line_scale;
    canvas.fill_circle({at.x, at.y - 10}, 6, theme.text2);
    const std::array<Point, 6> body = {{{at.x - 10, at.y + 16},
                                        {at.x - 10, at.y + 5},
                                        {at.x - 5, at.y},
                                        {at.x + 5, at.y},
                                        {at.x + 10, at.y + 5},
                                        {at.x + 10, at.y + 16}}};
    canvas.polyline(body, theme.text2, stroke);
}

void draw_loads(Canvas& canvas, const Theme& theme, const Map& map, const PlanShape& shape, const PlanWords& words,
                const Rect& frame, float side) {
    const float u = design_unit(canvas);
    const TextRole role = side < 150 * u ? TextRole::caption : TextRole::row;
    const auto loads = castor_loads(shape);
    if (loads.empty()) return;
    const double greatest = *std::max_element(loads.begin(), loads.end());
    const Span span = forward_span(shape);
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const Point at = map.at(shape.castors[i].forward_mm, shape.castors[i].across_mm);
        const bool leading = shape.castors[i].forward_mm > span.low + span.length() / 2;
        const float bar = side * 0.43F * static_cast<float>(loads[i] / greatest);
        const float x = leading ? frame.x1 + side * 0.24F : frame.x0 - side * 0.24F - bar;
        const std::string mass = words.mass(loads[i]);
        const float wide = canvas.text_width(mass, role, Weight::bold);
        const float text_x = leading ? std::min(x, frame.x1 + side - wide) : std::max(x + bar, frame.x0 - side + wide);
        canvas.text({text_x, at.y - 4 * u}, mass,
                    {role, Weight::bold, theme.text, leading ? Align::left : Align::right});
        canvas.fill_rect({x, at.y + 8 * u, x + bar, at.y + 22 * u}, theme.route);
    }
}

void draw_wheelbase(Canvas& canvas, const Theme& theme, const Map& map, const PlanShape& shape, const PlanWords& words,
                    float y) {
    const Span span = forward_span(shape);
    const float x0 = map.at(span.low, 0).x;
    const float x1 = map.at(span.high, 0).x;
    const float stroke = 2 * theme.line_scale;
    canvas.line({x0, y - 9}, {x0, y + 9}, theme.text2, stroke);
    canvas.line({x1, y - 9}, {x1, y + 9}, theme.text2, stroke);
    const float middle = (x0 + x1) / 2;
    arrow(canvas, {middle, y}, {x0, y}, theme.text2, stroke, 11);
    arrow(canvas, {middle, y}, {x1, y}, theme.text2, stroke, 11);
    plate(canvas, {middle, y}, words.length(span.length()),
          {TextRole::caption, Weight::medium, theme.text, Align::center}, theme.surface);
}

}  // namespace

std::vector<double> castor_loads(const PlanShape& shape) {
    if (!shape.gross_kg || !shape.cg_forward_mm || shape.castors.size() < 3) return {};
    const Span span = forward_span(shape);
    if (span.length() < 1) return {};
    std::size_t front = 0, rear = 0;
    for (const PlanCastor& castor : shape.castors) {
        if (castor.forward_mm > span.high - 1) ++front;
        if (castor.forward_mm < span.low + 1) ++rear;
    }
    if (front + rear != shape.castors.size()) return {};
    const double share = std::clamp((*shape.cg_forward_mm - span.low) / span.length(), 0.0, 1.0);
    std::vector<double> loads;
    for (const PlanCastor& castor : shape.castors) {
        const bool leading = castor.forward_mm > span.high - 1;
        const double pair = *shape.gross_kg * (leading ? share : 1 - share);
        loads.push_back(pair / static_cast<double>(leading ? front : rear));
    }
    return loads;
}

void draw_plan(Canvas& canvas, const Theme& theme, const Rect& box, const PlanShape& shape, const PlanWords& words) {
    const Span forward = forward_span(shape);
    const Span across = across_span(shape);
    const double length = std::max(shape.length_mm.value_or(forward.length() + 160), forward.length() + 60);
    const double width = std::max(shape.width_mm.value_or(across.length() + 120), across.length() + 60);
    const float u = design_unit(canvas);
    const float side = std::min(190 * u, box.width() * 0.29F);  // loads and people stand beside the frame
    const float scale = std::min((box.width() - 2 * side) / static_cast<float>(length),
                                 (box.height() - 74 * u) / static_cast<float>(width));
    if (scale <= 0.02F) return;
    const Point middle{box.center().x, box.center().y - 18 * u};
    const Map map{middle, scale, (forward.low + forward.high) / 2, (across.low + across.high) / 2};
    const float half_x = static_cast<float>(length) * scale / 2;
    const float half_y = static_cast<float>(width) * scale / 2;
    const Rect frame{middle.x - half_x, middle.y - half_y, middle.x + half_x, middle.y + half_y};
    canvas.fill_rect(frame, theme.cool, 6);
    for (int i = 1; i < 8; ++i) {
        const float x = frame.x0 + frame.width() * static_cast<float>(i) / 8;
        canvas.line({x, frame.y0 + 4}, {x, frame.y1 - 4}, theme.hairline, 1.5F);
    }
    canvas.stroke_rect(frame, theme.outline, 3 * theme.line_scale, 6);
    const std::array<Point, 4> track = {{map.at(forward.low, across.high), map.at(forward.high, across.high),
                                         map.at(forward.high, across.low), map.at(forward.low, across.low)}};
    for (std::size_t i = 0; i < track.size(); ++i) {
        dashed_line(canvas, track[i], track[(i + 1) % track.size()], theme.text2, 2 * theme.line_scale, {8, 7});
    }
    for (const PlanCastor& castor : shape.castors) draw_castor(canvas, theme, map, shape, castor);
    if (shape.cg_forward_mm) {
        const Point at = map.at(*shape.cg_forward_mm, map.across_middle);
        draw_centre(canvas, theme, at, 17 * u);
        const float room = canvas.text_width(words.centre, TextRole::caption, Weight::medium) + 30 * u;
        if (room < frame.width())
            plate(canvas, {at.x, at.y - 40 * u}, words.centre,
                  {TextRole::caption, Weight::medium, theme.text, Align::center}, theme.cool);
    }
    const float handle = frame.x0 - 24 * u;
    const std::array<Point, 4> bar = {{{frame.x0, middle.y - half_y * 0.42F},
                                       {handle, middle.y - half_y * 0.42F},
                                       {handle, middle.y + half_y * 0.42F},
                                       {frame.x0, middle.y + half_y * 0.42F}}};
    canvas.polyline(bar, theme.text2, 4 * theme.line_scale);
    const int people = std::clamp(shape.people, 0, 3);
    const bool room_for_people = frame.height() > (70 + 62 * static_cast<float>(people)) * u;  // else over the loads
    if (!shape.tugged && room_for_people) {
        for (int i = 0; i < people; ++i) {
            const float y = middle.y + (static_cast<float>(i) - static_cast<float>(people - 1) / 2) * 62 * u;
            draw_person(canvas, theme, {handle - 28 * u, y});
        }
    }
    arrow(canvas, {frame.x1 + 26 * u, middle.y}, {frame.x1 + 26 * u + side * 0.35F, middle.y}, theme.route,
          4 * u * theme.line_scale, 18 * u);
    draw_loads(canvas, theme, map, shape, words, frame, side);
    draw_wheelbase(canvas, theme, map, shape, words, frame.y1 + 26 * u);
}

}  // namespace sillwalk::ui
