#include "app/ui/draw/crossing_section.hpp"

#include "app/ui/draw/ground.hpp"
#include "app/ui/draw/strokes.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sillwalk::ui {

namespace {

struct Scene {
    Canvas& canvas;
    const Theme& theme;
    Rect box;
    float floor;
    float scale;
    const CrossingSection& s;
    const SectionNotes* notes;
    float u;

    [[nodiscard]] float line() const { return 3.6F * u * theme.line_scale; }
    [[nodiscard]] float radius() const { return s.wheel_mm * scale / 2; }
    void profile(std::span<const Point> points) const { canvas.polyline(points, theme.text, line()); }
    void soil(float x0, float x1, float top) const {
        hatch(canvas, {x0, top, x1, box.y1}, theme.ground_hatch, 10 * u, 1.4F * u);
    }
    /// Where the wheel's middle stands when it rolls on `floor` and touches an edge `height` above it at `edge_x`.
    [[nodiscard]] float touching_x(float edge_x, float height) const {
        const float r = radius();
        const float h = std::clamp(height, 0.0F, r);
        return edge_x - std::sqrt(std::max(0.0F, r * r - (r - h) * (r - h)));
    }
    void wheel_at(Point center) const { draw_wheel(canvas, theme, center, radius() - u, s.wheel); }
};

/// How far a wheel sinks between two edges that are `gap` apart.
float sag(float radius, float gap) {
    const float half = std::min(gap / 2, radius);
    return radius - std::sqrt(radius * radius - half * half);
}

float arrow_scale(const Scene& scene) {
    if (scene.notes->px_per_newton > 0) return scene.notes->px_per_newton;
    float most = 1;
    for (const auto* force : {&scene.notes->climb, &scene.notes->cross}) {
        if (force->has_value()) most = std::max({most, (*force)->newtons, (*force)->limit});
    }
    return scene.radius() * 1.1F / most;
}

void push_arrow(const Scene& scene, Point axle, Point contact, const SectionForce& force) {
    const float u = scene.u;
    const float k = arrow_scale(scene);
    const Color color = scene.theme.line_of(force.outcome);
    dashed_line(scene.canvas, axle, contact, scene.theme.text2, 2 * u, {7 * u, 5 * u});
    const Point tip{axle.x + force.newtons * k, axle.y};
    arrow(scene.canvas, axle, tip, color, 6 * u, std::min(20 * u, force.newtons * k * 0.6F));
    if (force.limit > 0) {
        const float x = axle.x + force.limit * k;
        scene.canvas.line({x, axle.y - 14 * u}, {x, axle.y + 14 * u}, scene.theme.text, 4 * u);
        const TextStyle small{TextRole::caption, Weight::medium, scene.theme.text, Align::center};
        scene.canvas.text_centered({x, axle.y - 30 * u}, force.limit_label, small);
    }
    const float reach = std::max(tip.x, axle.x + scene.radius()) + 14 * u;
    plate(scene.canvas, {reach, axle.y}, force.label, {TextRole::body, Weight::bold, color, Align::left},
          scene.theme.surface);
}

void weight_arrow(const Scene& scene, Point axle) {
    const float u = scene.u;
    arrow(scene.canvas, axle, {axle.x, axle.y + scene.radius() * 0.75F}, scene.theme.text, 3.5F * u, 14 * u);
    const TextStyle small{TextRole::caption, Weight::medium, scene.theme.text, Align::right};
    scene.canvas.text_centered({axle.x - 9 * u, axle.y + scene.radius() * 0.28F}, scene.notes->load_label, small);
}

/// Two small arrows that close on the height between the floors.
void rise_dimension(const Scene& scene, float edge_x, float top, float wheel_left) {
    if (scene.notes == nullptr || scene.notes->rise_label.empty()) return;
    const float u = scene.u;
    const float x = scene.box.x0 + 36 * u;
    const Color ink = scene.theme.text;
    dashed_line(scene.canvas, {x - 16 * u, top}, {edge_x - 8 * u, top}, scene.theme.text2, 1.5F * u, {5 * u, 5 * u});
    arrow(scene.canvas, {x, top - 34 * u}, {x, top}, ink, 2 * u, 9 * u);
    arrow(scene.canvas, {x, scene.floor + 36 * u}, {x, scene.floor + 3 * u}, ink, 2 * u, 9 * u);
    // Between the lines where it fits, else above them; where the wheel is in the way, on the ground below.
    const TextStyle style{TextRole::body, Weight::bold, ink, Align::left};
    const float cap = scene.canvas.cap_height(TextRole::body);
    const float reach = x + 16 * u + scene.canvas.text_width(scene.notes->rise_label, style.role, style.weight);
    if (reach > wheel_left - 4 * u) {
        plate(scene.canvas, {x + 22 * u, scene.floor + 26 * u}, scene.notes->rise_label, style, scene.theme.surface);
        return;
    }
    const bool between = scene.floor - top > cap * 1.5F;
    const float y = between ? (top + scene.floor) / 2 : top - cap;
    scene.canvas.text_centered({x + 16 * u, y}, scene.notes->rise_label, style);
}

struct GapEdges {
    float left = 0;
    float right = 0;
};

/// A gap that was not read is drawn as wide as a thumb.
float gap_width(const CrossingSection& s, float scale, float u) {
    return s.gap_mm.value_or(20 / scale * u) * scale;
}

/// Slot between two edges at height `top`; returns its edges.
GapEdges gap_slot(const Scene& scene, float left, float top) {
    const float u = scene.u;
    const float width = gap_width(scene.s, scene.scale, u);
    const float right = left + width;
    const float bottom = std::min(scene.box.y1, top + std::max(width * 1.1F, 26 * u));
    scene.canvas.fill_rect({left, top - 1, right, bottom}, scene.theme.surface);
    if (scene.s.gap_mm.has_value()) {
        const Point cut[] = {{left, top}, {left, bottom}, {right, bottom}, {right, top}};
        scene.profile(cut);
        if (scene.notes != nullptr && !scene.notes->gap_label.empty()) {
            const TextStyle style{TextRole::body, Weight::bold, scene.theme.text, Align::left};
            plate(scene.canvas, {right + gap_label_beside * u, std::min(scene.box.y1 - 20 * u, top + 34 * u)},
                  scene.notes->gap_label, style, scene.theme.surface);
        }
    } else {
        scene.canvas.line({left, top}, {left, bottom}, scene.theme.text, scene.line());
        scene.canvas.line({right, top}, {right, bottom}, scene.theme.text, scene.line());
        dashed_line(scene.canvas, {left + 3 * u, top}, {right - 3 * u, top}, scene.theme.line_of(Badge::not_known),
                    2.5F * u, {4 * u, 3 * u});
    }
    return {left, right};
}

void gap_dots(const Scene& scene, const GapEdges& gap, float top) {
    if (!scene.s.gap_edge.has_value()) return;
    const Color color = scene.theme.line_of(*scene.s.gap_edge);
    scene.canvas.fill_circle({gap.left, top}, 7 * scene.u, color);
    scene.canvas.fill_circle({gap.right, top}, 7 * scene.u, color);
}

/// Wheel resting in the gap, as deep as it really sinks.
void wheel_in_gap(const Scene& scene, const GapEdges& gap, float top) {
    const float width = gap.right - gap.left;
    const Point center{(gap.left + gap.right) / 2, top - scene.radius() + sag(scene.radius(), width)};
    scene.wheel_at(center);
    gap_dots(scene, gap, top);
    if (scene.notes != nullptr && scene.notes->cross.has_value()) {
        push_arrow(scene, center, {gap.right, top}, *scene.notes->cross);
    }
}

bool has_gap(const CrossingSection& s) {
    return s.gap_mm.has_value() || s.gap_not_read;
}

void draw_step(const Scene& scene) {
    const float rise = scene.s.rise_mm * scene.scale;
    const bool two = has_gap(scene.s) && scene.notes != nullptr && scene.notes->cross.has_value();
    const SectionPlaces places = section_places(scene.canvas, scene.box, scene.floor, scene.scale, scene.s, two);
    const float top = places.top_y;
    const float edge = places.edge_x;
    const float run = rise * scene.s.bevel_run;
    const float gap_left = places.gap_right.x - gap_width(scene.s, scene.scale, scene.u);
    scene.soil(scene.box.x0, edge, scene.floor);
    scene.soil(edge + run, scene.box.x1, top);
    if (run > 0) {
        const Point bevel[] = {{edge, scene.floor}, {edge + run, top}, {edge + run, scene.floor}};
        scene.canvas.fill_polygon(bevel, scene.theme.ground_hatch);
        scene.soil(edge, edge + run, scene.floor);
    }
    const Point lower[] = {{scene.box.x0, scene.floor}, {edge, scene.floor}, {edge + run, top}};
    scene.profile(lower);
    if (has_gap(scene.s)) {
        const float plate_rise = scene.s.slope_percent / 100;
        const GapEdges gap = gap_slot(scene, gap_left, top);
        const Point before[] = {{edge + run, top}, {gap.left, top}};
        const Point behind[] = {{gap.right, top}, {scene.box.x1, top - (scene.box.x1 - gap.right) * plate_rise}};
        scene.profile(before);
        scene.profile(behind);
        if (two) {
            wheel_in_gap(scene, gap, top);
        } else {
            gap_dots(scene, gap, top);
        }
    } else {
        const Point behind[] = {{edge + run, top}, {scene.box.x1, top}};
        scene.profile(behind);
    }
    // A bevel is met at its foot: the wheel touches the slope, not the top edge.
    const float foot = run > 0 ? scene.radius() * (std::hypot(rise, run) - run) / std::max(rise, 1e-3F) : 0;
    const float x = run > 0 ? edge - foot : scene.touching_x(edge, rise);
    const Point axle{x, scene.floor - scene.radius() - 1.5F * scene.u};
    rise_dimension(scene, edge, top, x - scene.radius());
    scene.wheel_at(axle);
    if (scene.s.edge.has_value()) {
        const Color color = scene.theme.line_of(*scene.s.edge);
        scene.canvas.line({edge, scene.floor + 1.5F * scene.u}, {edge + run, top - 1.5F * scene.u}, color, 7 * scene.u);
    }
    if (scene.notes != nullptr) {
        weight_arrow(scene, axle);
        if (scene.notes->climb.has_value()) push_arrow(scene, axle, {edge, top}, *scene.notes->climb);
    }
}

void draw_hump(const Scene& scene) {
    const float rise = scene.s.rise_mm * scene.scale;
    const float run = std::max(rise * std::max(scene.s.bevel_run, 1.0F), 2 * scene.u);
    const float edge = scene.box.center().x - run / 2;
    const float flat = 6 * scene.u;
    scene.soil(scene.box.x0, scene.box.x1, scene.floor);
    const Point body[] = {{edge, scene.floor},
                          {edge + run, scene.floor - rise},
                          {edge + run + flat, scene.floor - rise},
                          {edge + 2 * run + flat, scene.floor}};
    scene.canvas.fill_polygon(body, scene.theme.ground_hatch);
    std::vector<Point> top{{scene.box.x0, scene.floor}};
    top.insert(top.end(), std::begin(body), std::end(body));
    top.push_back({scene.box.x1, scene.floor});
    scene.profile(top);
    if (scene.s.edge.has_value()) {
        scene.canvas.line(body[0], body[1], scene.theme.line_of(*scene.s.edge), 7 * scene.u);
    }
    scene.wheel_at({edge - scene.radius() * 0.3F, scene.floor - scene.radius() - 1.5F * scene.u});
}

/// A long ramp is broken by two strokes, so that its slope stays true.
void draw_ramp(const Scene& scene) {
    const float foot = scene.box.x0 + scene.box.width() * 0.30F;
    const float cut = scene.box.x1 - scene.box.width() * 0.18F;
    const float slope = scene.s.slope_percent / 100;
    const float high = scene.floor - (cut - foot) * slope;
    const float u = scene.u;
    scene.soil(scene.box.x0, scene.box.x1, scene.floor);
    const Point wedge[] = {{foot, scene.floor}, {cut, high}, {cut, scene.floor}};
    scene.canvas.fill_polygon(wedge, scene.theme.ground_hatch);
    scene.canvas.fill_rect({cut + 12 * u, high - 2 * u, scene.box.x1, scene.floor}, scene.theme.ground_hatch);
    const Point lower[] = {{scene.box.x0, scene.floor}, {foot, scene.floor}, {cut, high}};
    const Point upper[] = {{cut + 12 * u, high - 2 * u}, {scene.box.x1, high - 4 * u}};
    scene.profile(lower);
    scene.profile(upper);
    for (const float shift : {2.0F, 10.0F}) {
        scene.canvas.line({cut + shift * u, scene.floor + 6 * u}, {cut + (shift + 6) * u, high - 12 * u},
                          scene.theme.text2, 2 * u);
    }
    const float x = foot + scene.box.width() * 0.2F;
    const float angle = std::atan(slope);
    const Point touch{x, scene.floor - (x - foot) * slope - 1.5F * u};
    scene.wheel_at({touch.x - std::sin(angle) * scene.radius(), touch.y - std::cos(angle) * scene.radius()});
    if (scene.s.edge.has_value()) {
        scene.canvas.line({foot, scene.floor}, {cut, high}, scene.theme.line_of(*scene.s.edge), 6 * u);
    }
}

void draw_gap(const Scene& scene) {
    const float left = scene.box.center().x - gap_width(scene.s, scene.scale, scene.u) / 2;
    scene.soil(scene.box.x0, scene.box.x1, scene.floor);
    const GapEdges gap = gap_slot(scene, left, scene.floor);
    const float slope = scene.s.slope_percent / 100;
    const float end = scene.floor - (scene.box.x1 - gap.right) * slope;
    const Point before[] = {{scene.box.x0, scene.floor}, {gap.left, scene.floor}};
    const Point behind[] = {{gap.right, scene.floor}, {scene.box.x1, end}};
    if (slope > 0) {
        const Point wedge[] = {{gap.right, scene.floor}, {scene.box.x1, end}, {scene.box.x1, scene.floor}};
        scene.canvas.fill_polygon(wedge, scene.theme.ground_hatch);
    }
    scene.profile(before);
    scene.profile(behind);
    if (scene.s.gap_mm.has_value()) {
        wheel_in_gap(scene, gap, scene.floor);
    } else {
        scene.wheel_at({gap.left - scene.radius() * 0.4F, scene.floor - scene.radius() - 1.5F * scene.u});
    }
}

void draw_slots(const Scene& scene) {
    const float u = scene.u;
    const float slot = scene.s.slot_mm * scene.scale;
    const float bar = std::max(8 * u, slot * 0.35F);
    const float middle = scene.box.center().x;
    const float depth = std::min(scene.box.y1 - scene.floor - 2 * u, 26 * u);
    scene.soil(scene.box.x0, scene.box.x1, scene.floor);
    scene.canvas.line({scene.box.x0, scene.floor}, {scene.box.x1, scene.floor}, scene.theme.text, scene.line());
    for (int k = -1; k <= 1; ++k) {
        const float left = middle + static_cast<float>(k) * (slot + bar) - slot / 2;
        scene.canvas.fill_rect({left, scene.floor - 2 * u, left + slot, scene.floor + depth}, scene.theme.surface);
        const Point cut[] = {{left, scene.floor},
                             {left, scene.floor + depth},
                             {left + slot, scene.floor + depth},
                             {left + slot, scene.floor}};
        scene.canvas.polyline(cut, scene.theme.text, 2.5F * u);
    }
    // A tread narrower than the slot drops in.
    const float drop = scene.s.tread_mm < scene.s.slot_mm ? depth * 0.6F : 0;
    draw_wheel_front(scene.canvas, scene.theme, {middle, scene.floor - 1.5F * u + drop}, scene.s.tread_mm * scene.scale,
                     scene.s.wheel_mm * scene.scale, scene.s.wheel);
}

}  // namespace

float section_scale(const Rect& box, const CrossingSection& section, float most) {
    const float tall = section.wheel_mm + section.rise_mm;
    return std::min(most, box.height() * 0.78F / std::max(tall, 1.0F));
}

SectionPlaces section_places(const Canvas& canvas, const Rect& box, float floor_y, float px_per_mm,
                             const CrossingSection& section, bool two_wheels) {
    const float u = design_unit(canvas);
    const float width = gap_width(section, px_per_mm, u);
    SectionPlaces places;
    if (section.kind != SectionKind::step) {
        places.edge_x = box.center().x;
        places.top_y = floor_y;
        places.gap_right = {box.center().x + width / 2, floor_y};
        return places;
    }
    const bool gap = has_gap(section);
    const float rise = section.rise_mm * px_per_mm;
    places.edge_x = box.x0 + box.width() * (two_wheels ? 0.36F : gap ? 0.46F : 0.60F);
    places.top_y = floor_y - rise;
    const float before = two_wheels ? section.wheel_mm * px_per_mm * 1.2F : std::max(14 * u, 12 * px_per_mm);
    places.gap_right = {places.edge_x + rise * section.bevel_run + before + (gap ? width : 0), places.top_y};
    return places;
}

void draw_crossing_section(Canvas& canvas, const Theme& theme, const Rect& box, float floor_y, float px_per_mm,
                           const CrossingSection& section, const SectionNotes* notes) {
    const Scene scene{canvas, theme, box, floor_y, px_per_mm, section, notes, design_unit(canvas)};
    canvas.push_clip(box);
    switch (section.kind) {
        case SectionKind::level:
            draw_ground(canvas, theme, box.x0, box.x1, floor_y, box.y1 - floor_y);
            scene.wheel_at({box.center().x, floor_y - scene.radius() - 1.5F * scene.u});
            break;
        case SectionKind::step:
            draw_step(scene);
            break;
        case SectionKind::hump:
            draw_hump(scene);
            break;
        case SectionKind::ramp:
            draw_ramp(scene);
            break;
        case SectionKind::gap:
            draw_gap(scene);
            break;
        case SectionKind::slots_along:
            draw_slots(scene);
            break;
    }
    canvas.pop_clip();
}

}  // namespace sillwalk::ui
