#include "app/ui/screens/pictures.hpp"

#include "app/ui/screens/facts.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

namespace {

constexpr float least_drawn_mm = 0.5F;
constexpr double least_drawn_slope = 0.004;

float millimetres(const engine::Reading<engine::Length>& reading) {
    return reading.value ? static_cast<float>(reading.value->in(engine::millimetre)) : 0.0F;
}

SectionKind kind_of(const CrossingSection& section, double slope) {
    if (section.slot_mm > least_drawn_mm) return SectionKind::slots_along;
    if (section.rise_mm > least_drawn_mm) return SectionKind::step;
    if (section.gap_mm || section.gap_not_read) return SectionKind::gap;
    return std::fabs(slope) > least_drawn_slope ? SectionKind::ramp : SectionKind::level;
}

}  // namespace

CrossingSection section_of(const engine::Crossing& crossing, const engine::Wheel* wheel) {
    CrossingSection section;
    const float upright = millimetres(crossing.rise);
    const float lip = millimetres(crossing.lip_height);
    section.rise_mm = upright + lip;
    const bool bevelled = lip > upright && crossing.lip_slope.value && crossing.lip_slope.value->tangent() > 0;
    if (bevelled) section.bevel_run = static_cast<float>(1 / crossing.lip_slope.value->tangent());
    const float gap = millimetres(crossing.gap);
    if (gap > least_drawn_mm) section.gap_mm = gap;
    section.gap_not_read = !crossing.gap.value && crossing.kind.value != engine::CrossingKind::ramp;
    section.slot_mm = millimetres(crossing.slot);
    const double slope = crossing.slope.value ? crossing.slope.value->tangent() : 0;
    section.slope_percent = static_cast<float>(std::fabs(slope) * 100);
    if (wheel) {
        section.wheel_mm = static_cast<float>(wheel->diameter.in(engine::millimetre));
        section.tread_mm = static_cast<float>(wheel->tread_width.in(engine::millimetre));
    }
    section.kind = kind_of(section, slope);
    return section;
}

FloorWetness floor_wetness(const engine::Choice<engine::Wetness>& wetness) {
    using engine::Wetness;
    if (!wetness.value || *wetness.value == Wetness::dry) return FloorWetness::dry;
    if (*wetness.value == Wetness::damp) return FloorWetness::damp;
    return *wetness.value == Wetness::wet || *wetness.value == Wetness::greasy ? FloorWetness::wet
                                                                               : FloorWetness::frost;
}

MarginScale margin_scale(float x0, float x1) {
    return {x0, x1, -0.5, 0.9};
}

void draw_margin_strip(Canvas& canvas, const Theme& theme, const Rect& box, const engine::RankedCandidate& candidate) {
    const MarginScale scale = margin_scale(box.x0, box.x1);
    const float u = design_unit(canvas);
    const float middle = box.center().y;
    const float half = std::min(box.height() * 0.3F, 20 * u);
    draw_margin_zones(canvas, theme, scale, middle - half, middle + half);
    canvas.line({box.x0, middle + half}, {box.x1, middle + half}, theme.text2, 1.5F * u * theme.line_scale);
    draw_margin_limit(canvas, theme, scale, middle - half - 5 * u, middle + half + 5 * u);
    if (candidate.verdict == engine::Verdict::cannot_tell) {
        draw_margin_unknown(canvas, theme, scale, middle, "");
        return;
    }
    const double margin = 1 - candidate.worst_use;
    MarginMark mark;
    mark.margin = mark.low = mark.high = margin;
    mark.outcome = margin < 0 ? Badge::fails : margin < 0.15 ? Badge::tight : Badge::holds;
    draw_margin_mark(canvas, theme, scale, middle, mark);
}

float design_unit(const ScreenContext& context) {
    return design_unit(context.ui.canvas());
}

PlanShape plan_of(const ScreenContext& context, const engine::Cart& cart) {
    PlanShape shape;
    for (const engine::CastorPosition& castor : cart.castors) {
        shape.castors.push_back({castor.forward.in(engine::millimetre), castor.across.in(engine::millimetre),
                                 castor.function != engine::CastorFunction::rigid});
    }
    if (cart.length.value) shape.length_mm = cart.length.value->in(engine::millimetre);
    if (cart.width.value) shape.width_mm = cart.width.value->in(engine::millimetre);
    if (cart.cg_forward_loaded.value) shape.cg_forward_mm = cart.cg_forward_loaded.value->in(engine::millimetre);
    if (cart.people.value) shape.people = static_cast<int>(*cart.people.value);
    shape.tugged = cart.moved_by.value == engine::MovedBy::tug;
    if (const engine::Wheel* wheel = present_wheel(context)) shape.wheel_mm = wheel->diameter.in(engine::millimetre);
    if (cart.tare.value && cart.payload.value) shape.gross_kg = (*cart.tare.value + *cart.payload.value).si();
    return shape;
}

}  // namespace sillwalk::ui
