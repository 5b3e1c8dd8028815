#include "app/core/quantity.hpp"
#include "app/core/reading_access.hpp"
#include "app/ui/screens/crossing_picture.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"

#include <array>
#include <cmath>

namespace sillwalk::ui {

using engine::CheckId;
using engine::Crossing;
using engine::CrossingOutcome;
using engine::Field;
using engine::Finding;
using engine::Outcome;

namespace {

constexpr std::array<Field, 9> crossing_fields = {
    Field::crossing_rise,         Field::crossing_gap,  Field::crossing_lip_slope,
    Field::crossing_lip_height,   Field::crossing_slot, Field::crossing_slope,
    Field::crossing_slope_length, Field::crossing_kind, Field::crossing_wetness};

std::string finding_title(const ScreenContext& context, const CrossingOutcome* outcome) {
    if (!outcome) return context.say("crossing.no_outcome");
    const auto urgent = by_urgency(outcome->findings);
    if (urgent.empty()) return context.say("crossing.nothing_asked");
    return sentence_of(context, *urgent.front());
}

/// One check of this crossing: name, what is asked of what it can, a bar against the limit, and the outcome.
void finding_row(ScreenContext& context, const Finding& finding, const Rect& box) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const std::string name = context.say(std::string("check.") + engine::check_name(finding.check));
    const std::string& compared = compared_of(context, finding);
    const std::string id = std::string("check.") + engine::check_name(finding.check);
    const auto badge = badge_of(finding.outcome);
    const Interaction did = ui.area(id, labelled(context, name, finding.outcome), box);
    if (did.tapped) context.act(app::OpenReason{finding.check});
    if (did.pressed) ui.canvas().fill_rect(box, theme.selected_tint, m.radius);
    const float badge_room = badge ? ui.badge_width(*badge) + m.gap : 0;
    const float name_width = std::min(box.width() * 0.27F, 190.0F);
    const float middle = box.center().y;
    ui.text_at({box.x0, middle + m.cap_height(TextRole::body) / 2}, name,
               {TextRole::body, Weight::regular, theme.text, Align::left}, name_width);
    const Rect rest{box.x0 + name_width + m.dp(8), box.y0, box.x1 - badge_room, box.y1};
    if (badge) ui.badge_at({box.x1, middle}, *badge, Align::right);
    if (!finding.has_use || finding.outcome == Outcome::not_known) {
        ui.text_at({rest.x0, middle + m.cap_height(TextRole::caption) / 2},
                   fitted(ui, sentence_of(context, finding), rest.width(), TextRole::caption, Weight::regular),
                   {TextRole::caption, Weight::regular, theme.text2, Align::left}, rest.width());
        return;
    }
    const float text_width = ui.text_width(compared, TextRole::body, Weight::medium);
    const float bar_room = rest.width() - text_width - m.dp(24);
    const bool bar = bar_room > m.dp(90) && finding.use > 0;
    float text_x = rest.x0;
    if (bar) {
        const float limit = rest.x0 + bar_room * (finding.use > 1 ? 0.34F : 0.86F);
        const float end = std::min(rest.x0 + (limit - rest.x0) * static_cast<float>(finding.use), rest.x0 + bar_room);
        const float half = m.dp(15);
        Canvas& canvas = ui.canvas();
        const Rect within{rest.x0, middle - half, std::min(end, limit), middle + half};
        const Badge state = *badge;
        canvas.fill_rect(within, state == Badge::tight ? theme.badge_of(Badge::tight).fill : theme.muted_fill);
        canvas.stroke_rect(within, state == Badge::tight ? theme.line_of(Badge::tight) : theme.outline,
                           2 * theme.line_scale);
        if (end > limit) {
            const Rect over{limit, middle - half, end, middle + half};
            canvas.fill_rect(over, theme.line_of(Badge::fails));
            canvas.push_clip(over);
            for (float x = over.x0 - m.dp(30); x < over.x1; x += 11) {
                canvas.line({x, over.y1}, {x + m.dp(30), over.y0}, theme.surface.with_alpha(120), 2);
            }
            canvas.pop_clip();
        }
        canvas.line({rest.x0, middle - half - m.dp(8)}, {rest.x0, middle + half + m.dp(8)}, theme.text,
                    2 * theme.line_scale);
        canvas.fill_rect({limit - m.dp(2.2F), middle - half - m.dp(10), limit + m.dp(2.2F), middle + half + m.dp(10)},
                         theme.text);
        text_x = std::max(end, limit) + m.dp(14);
    }
    ui.text_at({text_x, middle + m.cap_height(TextRole::body) / 2}, compared,
               {TextRole::body, Weight::medium,
                finding.outcome == Outcome::fails ? theme.line_of(Badge::fails) : theme.text, Align::left},
               rest.x1 - text_x);
}

void findings_list(ScreenContext& context, const Rect& rest, const CrossingOutcome* outcome) {
    if (!outcome) return;
    Ui& ui = context.ui;
    const auto list = ui.scroll("crossing.checks", rest);
    for (const Finding* finding : by_urgency(outcome->findings)) {
        ui.block([&] {
            Rect row = ui.place(ui.metrics().target_size(TargetClass::row));
            row.x1 -= ui.metrics().dp(10);
            finding_row(context, *finding, row);
        });
    }
}

void wheel_toggle(ScreenContext& context, const Rect& rect = {}) {
    const engine::Wheel* present = present_wheel(context);
    const engine::Wheel* first = headline_wheel(context);
    const engine::CartAdvice* advice = context.advice();
    const bool nearest = advice && advice->nothing_holds;
    const auto size = [&](const engine::Wheel* wheel) {
        return wheel ? app::show({wheel->diameter.si(), engine::Kind::length}, context.units()) : std::string("\u2013");
    };
    const std::array<ChoiceItem, 2> items = {
        {{"present", context.say("crossing.present"), size(present), present != nullptr},
         {"first", context.say(nearest ? "answer.nearest_short" : "answer.first_choice"), size(first),
          first != nullptr}}};
    ChoiceOptions options;
    options.rect = rect;
    const auto hit = context.ui.choice("crossing.wheel", items, shows_present(context) ? 0 : 1, options);
    if (hit) context.act(app::ShowPresent{*hit == 0});
}

void try_button(ScreenContext& context, std::uint16_t index) {
    if (context.ui.button("crossing.what_if", context.say("what_if.open"))) {
        context.act(app::GoTo{{app::Screen::what_if, index}});
    }
}

/// The room at one end; another one can be picked.
void room_row(ScreenContext& context, std::uint16_t index, bool to) {
    const engine::Crossing& crossing = context.survey().crossings[index];
    RowOptions options;
    options.value_role = TextRole::row;
    options.chevron = true;
    for (const engine::Room& room : context.survey().rooms) {
        if (room.id == (to ? crossing.to : crossing.from)) options.detail = room.name;
    }
    if (context.ui.row(to ? "crossing.to" : "crossing.from", context.say(to ? "crossing.to" : "crossing.from"),
                       options)) {
        do_build(context, app::OpenPick{{to ? app::PickKind::end_to : app::PickKind::end_from, index, 0}});
    }
}

/// What is unread and needed first would hide what is read: the order stays that of the walk.
void readings(ScreenContext& context, std::uint16_t index) {
    for (const Field field : crossing_fields) {
        const engine::ReadingRef ref{field, index, 0};
        context.ui.block([&] { reading_row(context, ref, is_needed(context, ref)); });
    }
    for (const bool to : {false, true}) context.ui.block([&] { room_row(context, index, to); });
    Ui& ui = context.ui;
    ui.block([&] {
        const auto cells = ui.cells({1, 1});
        if (ui.button("crossing.turn", context.say("crossing.turn"), {.role = TextRole::body})) {
            do_build(context, app::TurnCrossing{index});
        }
        const bool heated = context.survey().crossings[index].heated;
        if (ui.button("crossing.heated", context.say(heated ? "crossing.is_heated" : "crossing.not_heated"),
                      {.selected = heated, .role = TextRole::body})) {
            do_build(context, app::SetHeated{index, !heated});
        }
    });
    ui.block([&] { part_end(context, app::Part::crossing, index); });
}

void draw_wide(ScreenContext& context, ScreenContext& shown, const Rect& area, std::uint16_t index,
               const CrossingOutcome* outcome) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const auto columns = ui.columns(area, {744, 360}, true);
    {
        const auto card = ui.card({.rect = columns[0], .pad = 0});
        Rect rest = columns[0].inset(2);
        const Rect picture = rest.cut_top(rest.height() * 0.46F);
        ui.kept("crossing.picture", [&] { draw_crossing_picture(context, picture, index); });
        Rect text = rest.inset(m.pad + m.dp(4), m.dp(14));
        const Rect head = text.cut_top(m.line_height(TextRole::row) * 1.5F, m.dp(4));
        {
            const auto column = ui.column(head);
            ui.finding(finding_title(shown, outcome), "crossing.finding");
        }
        findings_list(shown, text, outcome);
    }
    Rect right = columns[1];
    const Rect toggle = right.cut_top(m.target_size(TargetClass::row), m.gap);
    ui.kept("crossing.wheel", [&] { wheel_toggle(shown, toggle); });
    const auto list = ui.scroll("crossing.readings", right);
    readings(context, index);
    ui.block([&] { try_button(context, index); });
}

void draw_narrow(ScreenContext& context, ScreenContext& shown, const Rect& area, std::uint16_t index,
                 const CrossingOutcome* outcome) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const auto list = ui.scroll("crossing.readings", area);
    ui.block([&] {
        const Rect picture = ui.place(area.width() * (m.compact() ? 0.60F : 0.46F));
        ui.canvas().fill_rect(picture, ui.theme().surface, m.radius);
        draw_crossing_picture(context, picture.inset(2), index);
    });
    ui.block([&] { wheel_toggle(shown); });
    ui.finding(finding_title(shown, outcome), "crossing.finding");
    if (outcome) {
        for (const Finding* finding : by_urgency(outcome->findings)) {
            if (m.compact()) {
                const auto badge = badge_of(finding->outcome);
                RowOptions options;
                options.badge = badge;
                options.detail = compared_of(shown, *finding);
                if (ui.row(std::string("check.") + engine::check_name(finding->check),
                           context.say(std::string("check.") + engine::check_name(finding->check)), options)) {
                    context.act(app::OpenReason{finding->check});
                }
            } else {
                finding_row(shown, *finding, ui.place(m.target_size(TargetClass::row)).inset(m.pad, 0));
            }
        }
    }
    ui.block([&] { try_button(context, index); });
    readings(context, index);
}

}  // namespace

void draw_crossing(ScreenContext& context, const Rect& area) {
    const std::uint16_t index = context.model.spot.index;
    // What is tried moves the picture and the findings; the list keeps what was read.
    ScreenContext shown = context.trying();
    const CrossingOutcome* outcome = crossing_outcome(shown, index, shows_present(shown));
    const Rect rest = what_if_bar(context, area);
    if (context.ui.metrics().width_class == WidthClass::expanded) {
        draw_wide(context, shown, rest, index, outcome);
    } else {
        draw_narrow(context, shown, rest, index, outcome);
    }
}

}  // namespace sillwalk::ui
