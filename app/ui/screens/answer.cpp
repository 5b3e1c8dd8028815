#include "app/core/quantity.hpp"
#include "app/ui/draw/strokes.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/pictures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

using engine::CartAdvice;
using engine::Finding;
using engine::Outcome;
using engine::RankedCandidate;

namespace {

std::string size_text(const ScreenContext& context, const engine::Wheel& wheel) {
    const auto length = [&](engine::Length l) { return app::show({l.si(), engine::Kind::length}, context.units()); };
    return length(wheel.diameter) + " \u00D7 " + length(wheel.tread_width);
}

std::string short_candidate(const ScreenContext& context, const engine::Candidate& candidate) {
    const engine::Catalogue& catalogue = context.model.data->catalogue;
    std::string text =
        catalogue.bearings[candidate.bearing].description + ", " + catalogue.rigs[candidate.rig].description;
    constexpr const char* preparations[] = {"preparation.as_supplied", "preparation.degreased",
                                            "preparation.h1_lubricated"};
    return text + ", " + context.say(preparations[static_cast<std::size_t>(candidate.preparation)]);
}

/// First choice; where nothing holds there is none, and the card says so.
void headline_card(ScreenContext& context, const Rect& rect, const CartAdvice& advice, const RankedCandidate& first) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const engine::Wheel& wheel = context.model.data->catalogue.wheels[first.candidate.wheel];
    const auto card = ui.card({.rect = rect, .pad = 0});
    Rect rest = rect.inset(m.pad, m.dp(10));
    const bool chosen = !advice.nothing_holds;
    if (!m.compact()) {
        const Rect picture = rest.cut_left(rest.height(), m.gutter);
        draw_wheel(ui.canvas(), theme, picture.center(), picture.height() / 2 - m.dp(2),
                   chosen ? WheelStyle::first_choice : WheelStyle::runner_up);
    }
    const std::string word = verdict_text(context, first.verdict);
    // On a narrow screen the verdict gets the line on which there is room for the parts elsewhere.
    const bool narrow = m.compact();
    const Rect badge = narrow ? ui.badge_at({rest.x0, rest.y1 - m.dp(20)}, badge_of(first.verdict), Align::left, word)
                              : ui.badge_at({rest.x1, rest.y0 + m.dp(24)}, badge_of(first.verdict), Align::right, word,
                                            TextRole::body);
    const float width = narrow ? rest.width() : badge.x0 - rest.x0 - m.dp(16);
    const float caption = m.cap_height(TextRole::caption);
    ui.text_at({rest.x0, rest.y0 + caption + m.dp(4)},
               context.say(chosen ? "answer.first_choice" : "answer.nearest_short"),
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, width);
    const std::string head = chosen ? wheel_text(context, wheel) : context.say("answer.nothing_holds");
    const bool fits = ui.text_width(head, TextRole::value, Weight::medium) <= width;
    const TextRole role = fits && !narrow ? TextRole::value : narrow ? TextRole::row : TextRole::section;
    const float lift = narrow ? m.dp(6) : 0;
    ui.text_at({rest.x0, rest.center().y + m.cap_height(role) / 2 - lift}, head,
               {role, Weight::medium, theme.text, Align::left}, width, "answer.headline");
    if (narrow) return;
    const std::string what = chosen ? size_text(context, wheel) : wheel_text(context, wheel);
    const std::string detail = fitted(ui, what + ". " + short_candidate(context, first.candidate), rest.width(),
                                      TextRole::caption, Weight::regular);
    ui.text_at({rest.x0, rest.y1 - m.dp(6)}, detail, {TextRole::caption, Weight::regular, theme.text2, Align::left},
               rest.width());
}

const Finding* finding_in(const std::vector<Finding>* findings, engine::CheckId check) {
    if (!findings) return nullptr;
    for (const Finding& finding : *findings) {
        if (finding.check == check) return &finding;
    }
    return nullptr;
}

/// Room to the limit in per cent; far beyond it, how many times the limit. Empty where the two are no plain ratio.
std::string room_text(const Finding& finding) {
    if (finding.use > 2) {
        const bool ratio = finding.demand.kind == finding.capacity.kind && finding.capacity.si > 0;
        return ratio ? fmt::format("{:.1f}\u2009\u00D7", finding.demand.si / finding.capacity.si) : std::string();
    }
    const double room = (1 - finding.use) * 100;
    const std::string sign = room >= 0.5 ? "+" : room <= -0.5 ? "\u2212" : "";
    return fmt::format("{}{:.0f}\u2009%", sign, std::fabs(room));
}

/// Columns of the reasons: words, scale, badge.
struct ReasonColumns {
    float name_x, name_width, badge_x;
    MarginScale scale;
};
ReasonColumns reason_columns(const Ui& ui, const Rect& box) {
    const Metrics& m = ui.metrics();
    const float pad = m.pad;
    const float badge = ui.badge_width(Badge::not_known) + m.gap;
    const float words = box.width() * 0.36F;
    return {box.x0 + pad, words - pad, box.x1 - pad,
            margin_scale(box.x0 + pad + words, box.x1 - pad - badge - m.dp(6))};
}

MarginMark mark_of(const Finding& finding, Badge badge) {
    MarginMark mark;
    mark.margin = mark.low = mark.high = 1 - finding.use;
    mark.outcome = badge;
    return mark;
}

void reason_row(ScreenContext& context, const Rect& row, const Finding& finding, const Finding* runner_up) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const ReasonColumns columns = reason_columns(ui, row);
    const std::string name = context.say(std::string("check.") + engine::check_name(finding.check));
    const Interaction did = ui.area(std::string("check.") + engine::check_name(finding.check),
                                    labelled(context, name, finding.outcome), row);
    if (did.tapped) context.act(app::OpenReason{finding.check});
    if (did.pressed) ui.canvas().fill_rect(row, theme.selected_tint);
    const float middle = row.center().y;
    std::string detail = app::compared(finding, context.text());
    if (finding.outcome == Outcome::not_known) {
        detail = finding.missing.empty() ? context.say("reading.maker_figure")
                                         : app::reading_name(finding.missing[0], context.text());
    } else if (detail.empty()) {
        detail = app::place_name(finding.place, context.survey());
    }
    detail = fitted(ui, detail, columns.name_width, TextRole::caption, Weight::regular);
    ui.text_at({columns.name_x, middle - m.dp(6)}, name, {TextRole::body, Weight::medium, theme.text, Align::left},
               columns.name_width);
    ui.text_at({columns.name_x, middle + m.cap_height(TextRole::caption) + m.dp(12)}, detail,
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, columns.name_width + m.dp(2));
    const auto badge = badge_of(finding.outcome);
    if (badge) ui.badge_at({columns.badge_x, middle}, *badge, Align::right);
    Canvas& canvas = ui.canvas();
    if (finding.outcome == Outcome::not_known) {
        draw_margin_unknown(canvas, theme, columns.scale, middle, context.say("answer.needs_readings"));
        return;
    }
    if (!finding.has_use || !badge) return;
    MarginMark mark = mark_of(finding, *badge);
    if (runner_up && runner_up->has_use && runner_up->outcome != Outcome::not_known)
        mark.runner_up = 1 - runner_up->use;
    const float reach = draw_margin_mark(canvas, theme, columns.scale, middle, mark);
    const std::string room = room_text(finding);
    if (room.empty()) return;
    const float width = canvas.text_width(room, TextRole::caption, Weight::bold);
    const float u = design_unit(context);
    const bool beside = reach + 14 * u + width <= columns.scale.x1 + 6 * u;
    const float at = beside ? reach + 14 * u : columns.scale.at(mark.margin) - 22 * u - width;
    plate(canvas, {at, middle}, room, {TextRole::caption, Weight::bold, theme.line_of(*badge), Align::left},
          theme.surface);
}

/// The last line gathers what holds comfortably.
void folded_row(ScreenContext& context, const Rect& row, const std::vector<const Finding*>& rest) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const ReasonColumns columns = reason_columns(ui, row);
    bool all_hold = true;
    for (const Finding* finding : rest) all_hold = all_hold && finding->outcome == Outcome::holds;
    const std::string count = std::to_string(rest.size());
    ui.text_at({columns.name_x, row.center().y - m.dp(6)},
               context.say(all_hold ? "answer.more_hold" : "answer.more_checks", {count}),
               {TextRole::body, Weight::medium, theme.text, Align::left}, columns.name_width);
    const std::string nearest = context.say(std::string("check.") + engine::check_name(rest.front()->check));
    ui.text_at({columns.name_x, row.center().y + m.cap_height(TextRole::caption) + m.dp(12)},
               context.say("answer.nearest_check", {nearest}),
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, columns.name_width);
    const auto badge = badge_of(rest.front()->outcome);
    if (badge) ui.badge_at({columns.badge_x, row.center().y}, *badge, Align::right);
    if (rest.front()->has_use && badge) {
        draw_margin_mark(ui.canvas(), theme, columns.scale, row.center().y, mark_of(*rest.front(), *badge));
    }
}

void reasons_head(ScreenContext& context, const Rect& head, bool chosen, bool runner_up) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const ReasonColumns columns = reason_columns(ui, head);
    const float base = head.center().y + m.cap_height(TextRole::caption) / 2;
    float x = columns.name_x + m.dp(9);
    ui.canvas().fill_circle({x, head.center().y}, m.dp(8), theme.text);
    x = ui.text_at({x + m.dp(18), base}, context.say(chosen ? "answer.first_short" : "answer.nearest_word"),
                   {TextRole::caption, Weight::regular, theme.text2, Align::left});
    if (runner_up) {
        x += 32;
        ui.canvas().stroke_circle({x, head.center().y}, m.dp(8), theme.text, m.dp(2.5F));
        ui.text_at({x + m.dp(18), base}, context.say("answer.runner_up_short"),
                   {TextRole::caption, Weight::regular, theme.text2, Align::left});
    }
    const float limit = columns.scale.at(0);
    ui.text_at({limit - m.dp(12), base}, context.say("answer.over"),
               {TextRole::caption, Weight::medium, theme.line_of(Badge::fails), Align::right});
    ui.text_at({limit + m.dp(12), base}, context.say("answer.room"),
               {TextRole::caption, Weight::medium, theme.text, Align::left});
}

void reasons_card(ScreenContext& context, const Rect& rect, const CartAdvice& advice, const RankedCandidate& first) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const RankedCandidate* second = advice.runner_up ? &*advice.runner_up : nullptr;
    const auto card = ui.card({.rect = rect, .pad = 0});
    Rect rest = rect.inset(0, m.dp(4));
    const Rect head = rest.cut_top(m.dp(50));
    const float row_height = m.target_size(TargetClass::row);
    const auto urgent = by_urgency(first.findings);
    const auto fit = static_cast<std::size_t>(std::max(1.0F, std::floor(rest.height() / row_height)));
    const bool fold = urgent.size() > fit;
    const std::size_t single = fold ? fit - 1 : urgent.size();
    const std::size_t rows = fold ? fit : urgent.size();
    const float bottom = rest.y0 + row_height * static_cast<float>(rows);
    const ReasonColumns columns = reason_columns(ui, rect);
    draw_margin_zones(ui.canvas(), theme, columns.scale, rest.y0, bottom);
    for (std::size_t i = 0; i < rows; ++i) {
        const float y = rest.y0 + row_height * static_cast<float>(i);
        ui.canvas().line({rect.x0, y}, {rect.x1, y}, theme.hairline, m.hairline);
    }
    draw_margin_limit(ui.canvas(), theme, columns.scale, head.y1 - m.dp(10), bottom);
    reasons_head(context, head, !advice.nothing_holds, second != nullptr);
    for (std::size_t i = 0; i < single; ++i) {
        const Rect row = rest.cut_top(row_height);
        const Finding* other = finding_in(second ? &second->findings : nullptr, urgent[i]->check);
        reason_row(context, row, *urgent[i], other);
    }
    if (fold)
        folded_row(context, rest.cut_top(row_height),
                   {urgent.begin() + static_cast<std::ptrdiff_t>(single), urgent.end()});
}

/// A narrow screen has no room for the scale beside the words: the numbers and the badge say the same.
void reason_rows(ScreenContext& context, const RankedCandidate& first) {
    for (const Finding* finding : by_urgency(first.findings)) {
        RowOptions options;
        options.badge = badge_of(finding->outcome);
        options.detail = app::compared(*finding, context.text());
        if (options.detail.empty() && !finding->missing.empty()) {
            options.detail = app::reading_name(finding->missing[0], context.text());
        }
        const std::string name = engine::check_name(finding->check);
        if (context.ui.row("check." + name, context.say("check." + name), options)) {
            context.act(app::OpenReason{finding->check});
        }
    }
}

void runner_up_card(ScreenContext& context, const Rect& rect, const RankedCandidate& second) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const engine::Wheel& wheel = context.model.data->catalogue.wheels[second.candidate.wheel];
    const auto card = ui.card({.rect = rect, .pad = 0});
    Rect rest = rect.inset(m.pad, m.dp(12));
    const Rect picture = rest.cut_left(rest.height() * 0.74F, m.pad);
    draw_wheel(ui.canvas(), theme, {picture.center().x, rest.center().y}, picture.width() / 2, WheelStyle::runner_up);
    ui.text_at({rest.x0, rest.y0 + m.cap_height(TextRole::caption) + m.dp(2)}, context.say("answer.runner_up"),
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, rest.width());
    ui.text_at({rest.x0, rest.center().y + m.cap_height(TextRole::row) / 2 - m.dp(2)}, wheel_text(context, wheel),
               {TextRole::row, Weight::medium, theme.text, Align::left}, rest.width());
    ui.badge_at({rest.x0, rest.y1 - m.dp(16)}, badge_of(second.verdict), Align::left,
                verdict_text(context, second.verdict));
}

/// What to read before leaving; where all is read, why others were turned down.
void side_list(ScreenContext& context, const Rect& rect, const CartAdvice& advice) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const auto card = ui.card({.rect = rect, .pad = 0});
    Rect rest = rect.inset(0, m.dp(4));
    const bool open = !advice.not_read.empty();
    const Rect head = rest.cut_top(m.dp(58));
    const std::string title = open ? context.say("answer.read_before")
                                   : context.say("answer.turned_down", {std::to_string(advice.turned_down_total)});
    ui.text_at({head.x0 + m.pad, head.center().y + m.cap_height(TextRole::row) / 2}, title,
               {TextRole::row, Weight::medium, theme.text, Align::left}, head.width() - 2 * m.pad);
    ui.canvas().line({rect.x0, head.y1}, {rect.x1, head.y1}, theme.hairline, m.hairline);
    rest.y0 += 2;
    const auto list = ui.scroll("answer.side", rest);
    if (open) {
        for (const engine::ReadingRef& ref : advice.not_read) {
            RowOptions options;
            options.mark = Badge::not_known;
            options.detail = context.say("known.not_yet_read");
            options.chevron = true;
            options.framed = false;
            if (ui.row("open." + reading_id(ref, true), capitalised(app::reading_name(ref, context.text())), options)) {
                const bool number = app::quantity_of(ref.field).has_value();
                context.act(number ? app::Action(app::OpenSheet{ref}) : app::Action(app::OpenChoice{ref}));
            }
            ui.space(-m.gap);
        }
        return;
    }
    std::size_t shown = 0;
    for (const engine::TurnedDown& down : advice.turned_down) {
        const engine::Wheel& wheel = context.model.data->catalogue.wheels[down.candidate.wheel];
        RowOptions options;
        options.framed = false;
        options.touchable = false;
        options.detail = app::sentence(down.first_failing, context.text());
        ui.row("turned_down." + std::to_string(++shown), wheel_text(context, wheel), options);
        ui.space(-m.gap);
    }
}

void draw_empty(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const auto list = ui.scroll("answer", area);
    if (context.model.answer && !context.model.answer->refused.empty()) {
        ui.title(context.say("answer.contradiction"));
        for (const engine::Error& error : context.model.answer->refused) ui.text(error.where + ": " + error.message);
        return;
    }
    ui.title(context.say(context.model.answer ? "answer.none" : "answer.working"));
}

}  // namespace

void draw_answer(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const CartAdvice* advice = app::cart_advice(context.model);
    const RankedCandidate* first = app::headline(advice);
    if (!first) return draw_empty(context, area);
    const float head_height = m.dp(122);
    if (m.width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {744, 360}, true);
        Rect left = columns[0];
        headline_card(context, left.cut_top(head_height, m.gap * 1.4F), *advice, *first);
        reasons_card(context, left, *advice, *first);
        Rect right = columns[1];
        if (advice->runner_up) {
            runner_up_card(context, right.cut_top(head_height, m.gap * 1.4F), *advice->runner_up);
        }
        side_list(context, right, *advice);
        return;
    }
    const auto list = ui.scroll("answer", area);
    headline_card(context, ui.place(head_height), *advice, *first);
    if (m.compact()) {
        reason_rows(context, *first);
    } else {
        const auto rows = static_cast<float>(by_urgency(first->findings).size());
        reasons_card(context, ui.place(m.dp(60) + rows * m.target_size(TargetClass::row)), *advice, *first);
    }
    if (advice->runner_up) runner_up_card(context, ui.place(head_height), *advice->runner_up);
    const std::size_t open = advice->not_read.empty() ? advice->turned_down.size() : advice->not_read.size();
    if (open == 0) return;
    ui.title(advice->not_read.empty() ? context.say("answer.turned_down", {std::to_string(advice->turned_down_total)})
                                      : context.say("answer.read_before"));
    for (const engine::ReadingRef& ref : advice->not_read) {
        RowOptions options;
        options.mark = Badge::not_known;
        options.detail = context.say("known.not_yet_read");
        options.chevron = true;
        if (ui.row("open." + reading_id(ref, true), capitalised(app::reading_name(ref, context.text())), options)) {
            const bool number = app::quantity_of(ref.field).has_value();
            context.act(number ? app::Action(app::OpenSheet{ref}) : app::Action(app::OpenChoice{ref}));
        }
    }
}

}  // namespace sillwalk::ui
