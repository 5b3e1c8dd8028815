#include "app/ui/screens/crossing_picture.hpp"

#include "app/core/quantity.hpp"
#include "app/core/reading_access.hpp"
#include "app/ui/screens/pictures.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

using engine::CheckId;
using engine::CrossingOutcome;
using engine::Field;
using engine::Finding;
using engine::Outcome;

namespace {

const Finding* finding_of(const CrossingOutcome* outcome, CheckId check) {
    if (!outcome) return nullptr;
    for (const Finding& finding : outcome->findings) {
        if (finding.check == check && finding.outcome != Outcome::does_not_apply) return &finding;
    }
    return nullptr;
}

Badge worse(std::optional<Badge> a, Badge b) {
    const auto rank = [](Badge badge) {
        return badge == Badge::fails ? 3 : badge == Badge::not_known ? 2 : badge == Badge::tight ? 1 : 0;
    };
    return a && rank(*a) >= rank(b) ? *a : b;
}

SectionNotes notes_of(const ScreenContext& context, std::uint16_t index, const CrossingOutcome* outcome) {
    SectionNotes notes;
    notes.rise_label = value_text(context, {Field::crossing_rise, index, 0});
    const engine::Crossing& crossing = context.survey().crossings[index];
    if (crossing.lip_height.value && crossing.lip_height.value->si() > 0) {
        const std::string lip = value_text(context, {Field::crossing_lip_height, index, 0});
        const bool upright = crossing.rise.value && crossing.rise.value->si() > 0;
        notes.rise_label = upright ? notes.rise_label + " + " + lip : lip;
    }
    notes.gap_label = value_text(context, {Field::crossing_gap, index, 0});
    const Finding* push = finding_of(outcome, CheckId::push);
    if (push && push->has_use && push->demand.kind == engine::Kind::force && push->capacity.si > 0) {
        SectionForce force;
        force.newtons = static_cast<float>(push->demand.si);
        force.limit = static_cast<float>(push->capacity.si);
        force.label = app::show(push->demand, context.units());
        force.limit_label = app::show(push->capacity, context.units());
        force.outcome = badge_of(push->outcome).value_or(Badge::not_known);
        notes.climb = force;
    }
    return notes;
}

CrossingSection shown_section(const ScreenContext& context, std::uint16_t index, const CrossingOutcome* outcome) {
    const bool present = shows_present(context);
    const engine::Wheel* wheel = present ? present_wheel(context) : headline_wheel(context);
    CrossingSection section = section_of(context.survey().crossings[index], wheel);
    const engine::CartAdvice* advice = context.advice();
    const bool chosen = !present && advice && !advice->nothing_holds;
    section.wheel = chosen ? WheelStyle::first_choice : present ? WheelStyle::present : WheelStyle::runner_up;
    for (const CheckId check : {CheckId::step, CheckId::push}) {
        const Finding* finding = finding_of(outcome, check);
        if (finding && badge_of(finding->outcome)) section.edge = worse(section.edge, *badge_of(finding->outcome));
    }
    if (const Finding* gap = finding_of(outcome, CheckId::gap)) section.gap_edge = badge_of(gap->outcome);
    return section;
}

constexpr float grip_dp = 21;

/// A disc with two arrow heads, along the way that the finger moves it.
void draw_grip(ScreenContext& context, Point middle, bool upright, bool pressed) {
    Ui& ui = context.ui;
    Canvas& canvas = ui.canvas();
    const Theme& theme = ui.theme();
    const float r = ui.metrics().dp(grip_dp);
    const float head = r * 0.42F;
    canvas.fill_circle(middle, r, pressed ? theme.pressed : theme.primary);
    for (const float way : {-1.0F, 1.0F}) {
        const float tip = way * r * 0.72F, foot = way * r * 0.2F;
        const Point points[] = {{middle.x + (upright ? 0 : tip), middle.y + (upright ? tip : 0)},
                                {middle.x + (upright ? -head : foot), middle.y + (upright ? foot : -head)},
                                {middle.x + (upright ? head : foot), middle.y + (upright ? foot : head)}};
        canvas.fill_polygon(points, theme.on_primary);
    }
}

struct Handle {
    const char* id;
    engine::ReadingRef ref;
    Point grip;
    Rect rect;
    bool upright;
};

/// Millimetres of the crossing that the finger went; up and right are more.
double way_of(const Interaction& did, const Handle& handle, float px_per_mm) {
    return (handle.upright ? -did.drag_delta.y : did.drag_delta.x) / px_per_mm;
}

void move_handle(ScreenContext& context, const Handle& handle, const app::WhatIfRange& range, float px_per_mm) {
    Ui& ui = context.ui;
    Scratch& scratch = context.scratch;
    const auto now = app::read_number(context.survey(), handle.ref);
    const std::string name = capitalised(app::reading_name(handle.ref, context.text()));
    const std::string label = name + " " + value_text(context, handle.ref);
    const Interaction did = ui.area(handle.id, label, handle.rect, TargetClass::row, DragMode::direct);
    const std::int64_t value = now && now->value ? *now->value : 0;
    if (did.dragging) {
        if (scratch.dragged != handle.id) {
            scratch.dragged = handle.id;
            scratch.dragged_value = static_cast<double>(value);
        }
        const double per_mm = app::canonical_per_si(range.kind) / 1000;
        scratch.dragged_value += way_of(did, handle, px_per_mm) * per_mm;
        const std::int64_t there = app::snapped(range, std::llround(scratch.dragged_value));
        if (there != value) context.act(app::WhatIfSet{handle.ref, there});
    }
    if (did.drag_ended && scratch.dragged == handle.id) scratch.dragged.clear();
    if (did.steps != 0) context.act(app::WhatIfSet{handle.ref, app::snapped(range, value + did.steps * range.step)});
    draw_grip(context, handle.grip, handle.upright, did.pressed || did.dragging);
}

void draw_handles(ScreenContext& context, const Rect& box, const SectionPlaces& places, const CrossingSection& section,
                  std::uint16_t crossing, float px_per_mm) {
    if (section.kind == SectionKind::ramp || section.kind == SectionKind::slots_along) return;
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const float u = design_unit(context);
    const float side = m.target_size(TargetClass::row);
    const float y = box.y1 - side / 2;
    const float label =
        ui.text_width(value_text(context, {Field::crossing_gap, crossing, 0}), TextRole::body, Weight::bold);
    const float beside = places.gap_right.x + (gap_label_beside + 12) * u + label + m.dp(grip_dp);
    const float right = std::min(beside, box.x1 - side / 2);
    const Handle handles[] = {{"crossing.move.rise",
                               {Field::crossing_rise, crossing, 0},
                               {box.x0 + 36 * u, y},
                               {box.x0, y - side / 2, box.x0 + side, y + side / 2},
                               true},
                              {"crossing.move.gap",
                               {Field::crossing_gap, crossing, 0},
                               {right, y},
                               {right - side / 2, y - side / 2, right + side / 2, y + side / 2},
                               false}};
    // The ranges are those of what was read: they must not grow under the finger.
    const auto& ranges = context.recall(Remembered::what_if_ranges, crossing, [&] {
        return app::what_if_ranges(context.model.visit->survey, context.model.data->entry, context.model.cart, crossing,
                                   context.model.settings.unit);
    });
    for (const Handle& handle : handles) {
        for (const app::WhatIfRange& range : ranges) {
            if (range.ref == handle.ref) move_handle(context, handle, range, px_per_mm);
        }
    }
}

std::string tried_words(const ScreenContext& context, const app::WhatIf& what_if) {
    std::string words;
    for (const app::WhatIfChange& change : what_if.changes) {
        words += (words.empty() ? "" : ", ") + context.say(app::field_key(change.ref.field)) + " " +
                 value_text(context, change.ref);
    }
    return context.say("what_if.bar", {words});
}

/// What is tried over what it comes to, the verdict at the right end.
void tried_answer(ScreenContext& context, Rect box, const app::WhatIf& what_if) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const engine::CartAdvice* advice = app::what_if_advice(context.model);
    const engine::RankedCandidate* first = app::headline(advice);
    std::string answer = context.say("answer.working");
    if (first) {
        const engine::Wheel& wheel = context.model.data->catalogue.wheels[first->candidate.wheel];
        answer = advice->nothing_holds ? context.say("answer.nothing_holds") : wheel_text(context, wheel);
        const std::string verdict = m.compact() ? std::string() : verdict_text(context, first->verdict);
        const Rect badge = ui.badge_at({box.x1, box.center().y}, badge_of(first->verdict), Align::right, verdict);
        box.x1 = badge.x0 - m.gap;
    }
    const TextStyle style{TextRole::body, Weight::medium, ui.theme().text, Align::left};
    const float base = box.center().y - m.dp(5);
    ui.text_at({box.x0, base}, fitted(ui, tried_words(context, what_if), box.width(), style.role, style.weight), style,
               box.width(), "what_if.words");
    ui.text_at({box.x0, base + m.line_height(TextRole::body)},
               fitted(ui, answer, box.width(), TextRole::body, Weight::regular),
               {TextRole::body, Weight::regular, ui.theme().text, Align::left}, box.width(), "what_if.answer");
}

}  // namespace

bool shows_present(const ScreenContext& context) {
    if (!present_wheel(context)) return false;
    return context.model.show_present || !headline_wheel(context);
}

void draw_crossing_picture(ScreenContext& plain, const Rect& box, std::uint16_t crossing) {
    ScreenContext context = plain.trying();
    Ui& ui = context.ui;
    const CrossingOutcome* outcome = crossing_outcome(context, crossing, shows_present(context));
    const CrossingSection section = shown_section(context, crossing, outcome);
    const SectionNotes notes = notes_of(context, crossing, outcome);
    // The ground is high enough for the handles.
    const float side = ui.metrics().target_size(TargetClass::row);
    const float ground = std::max(std::min(box.height() * 0.26F, 84 * design_unit(context)), side + 2);
    const Rect air{box.x0, box.y0, box.x1, box.y1 - ground};
    const float scale = section_scale(air, section, ui.metrics().dp(2));
    draw_crossing_section(ui.canvas(), ui.theme(), box, air.y1, scale, section, &notes);
    draw_handles(context, box, section_places(ui.canvas(), box, air.y1, scale, section), section, crossing, scale);
}

Rect what_if_bar(ScreenContext& plain, const Rect& area) {
    const app::WhatIf* what_if = app::what_if_in_hand(plain.model);
    if (!what_if) return area;
    ScreenContext context = plain.trying();
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const bool narrow = m.width_class != WidthClass::expanded;
    const float button = m.target_size(TargetClass::row);
    const float line = m.line_height(TextRole::body);
    Rect rest = area;
    Rect bar = rest.cut_bottom(button + m.dp(8) + (narrow ? 2 * line + m.dp(10) : 0), m.gap);
    ui.canvas().fill_rect(bar, ui.theme().selected_tint, m.radius);
    ui.canvas().stroke_rect(bar, ui.theme().primary, m.outline, m.radius);
    bar = bar.inset(m.dp(8), m.dp(4));
    const float wide = ui.text_width(context.say("what_if.take_over"), TextRole::row, Weight::medium) + 4 * m.pad;
    const float width = narrow ? (bar.width() - m.gap) / 2 : wide;
    Rect buttons = narrow ? bar.cut_bottom(button, m.dp(6)) : bar.cut_right(2 * width + m.gap, m.gutter);
    const Rect forget = buttons.cut_left(width, m.gap);
    if (ui.button("what_if.forget", context.say("what_if.forget"), {.rect = forget})) {
        context.act(app::WhatIfForget{});
    }
    if (ui.button("what_if.take_over", context.say("what_if.take_over"),
                  {.style = ButtonStyle::primary, .rect = buttons})) {
        context.act(app::WhatIfTakeOver{});
    }
    tried_answer(context, bar.inset(m.dp(10), 0), *what_if);
    return rest;
}

}  // namespace sillwalk::ui
