// Margins of all checks on one scale, and their twin as a table.

#include "app/ui/draw/strokes.hpp"
#include "app/ui/screens/answer_parts.hpp"
#include "app/ui/screens/chart_parts.hpp"
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

constexpr float head_dp = 50;

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
    const float words = std::max(box.width() * 0.36F, std::min(box.width() * 0.45F, m.mm(42)));
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
    const Rect hit{row.x0, row.y0, row.x1, row.y1 - m.gap};  // a gap to the next row
    const std::string said = room_text(finding).empty() ? name : name + " " + room_text(finding);
    const Interaction did = ui.area(std::string("check.") + engine::check_name(finding.check),
                                    labelled(context, said, finding.outcome), hit);
    if (did.tapped) context.act(app::OpenReason{finding.check});
    if (did.pressed) ui.canvas().fill_rect(row, theme.selected_tint);
    const float middle = row.center().y;
    std::string detail = compared_of(context, finding);
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
    const float free_to = columns.badge_x - ui.badge_width(*badge) - m.gap;
    const bool beside = reach + 14 * u + width <= std::max(free_to, columns.scale.x1 + 6 * u);
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

/// What the marks mean.
void reasons_head(ScreenContext& context, const Rect& head, bool chosen, bool runner_up) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const ReasonColumns columns = reason_columns(ui, head);
    const float base = head.center().y + m.cap_height(TextRole::caption) / 2;
    const std::string first = context.say(chosen ? "answer.first_short" : "answer.nearest_word");
    const std::string second = runner_up ? context.say("answer.runner_up_short") : std::string();
    const std::string over = context.say("answer.over");
    const float limit = columns.scale.at(0);
    const auto wide = [&](TextRole role) {
        return ui.text_width(first + second + over, role, Weight::medium) + m.dp(runner_up ? 120 : 60);
    };
    const bool roomy = columns.name_x + wide(TextRole::caption) < limit;
    const TextRole small = roomy ? TextRole::caption : TextRole::smallest;
    float x = columns.name_x + m.dp(9);
    ui.canvas().fill_circle({x, head.center().y}, m.dp(8), theme.text);
    x = ui.text_at({x + m.dp(18), base}, first, {small, Weight::regular, theme.text2, Align::left});
    if (runner_up) {
        x += 32;
        ui.canvas().stroke_circle({x, head.center().y}, m.dp(8), theme.text, m.dp(2.5F));
        ui.text_at({x + m.dp(18), base}, second, {small, Weight::regular, theme.text2, Align::left});
    }
    ui.text_at({limit - m.dp(12), base}, over, {small, Weight::medium, theme.line_of(Badge::fails), Align::right});
    ui.text_at({limit + m.dp(12), base}, context.say("answer.room"),
               {TextRole::caption, Weight::medium, theme.text, Align::left}, head.x1 - limit - m.dp(24));
}

/// The one sentence over the picture: the check that decides.
std::string finding_title(const ScreenContext& context, const RankedCandidate& first) {
    const auto urgent = by_urgency(first.findings);
    return urgent.empty() ? context.say("answer.none") : sentence_of(context, *urgent.front());
}

void draw_scale(ScreenContext& context, Rect rest, const CartAdvice& advice, const RankedCandidate& first) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const RankedCandidate* second = runner_up_of(advice);
    const Rect rect = rest;
    const Rect head = rest.cut_top(m.dp(head_dp));
    const float row_height = m.target_size(TargetClass::row) + m.gap;
    const auto urgent = by_urgency(first.findings);
    const auto fit = static_cast<std::size_t>(std::max(1.0F, std::floor((rest.height() + 1) / row_height)));
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
    if (fold) {
        folded_row(context, rest.cut_top(row_height),
                   {urgent.begin() + static_cast<std::ptrdiff_t>(single), urgent.end()});
    }
}

float toggle_height(const Metrics& m) {
    return m.target_size(TargetClass::row);
}

}  // namespace

/// A narrow screen has no room for the scale beside the words: the numbers and the badge say the same.
void draw_reason_rows(ScreenContext& context, const RankedCandidate& first) {
    for (const Finding* finding : by_urgency(first.findings)) {
        RowOptions options;
        options.badge = badge_of(finding->outcome);
        options.detail = compared_of(context, *finding);
        if (options.detail.empty() && !finding->missing.empty()) {
            options.detail = app::reading_name(finding->missing[0], context.text());
        }
        if (options.detail.empty()) options.detail = app::place_name(finding->place, context.survey());
        const bool roomy = !context.ui.metrics().compact();
        if (roomy && finding->has_use && finding->outcome != Outcome::not_known) {
            options.value = room_text(*finding);
            options.value_role = TextRole::body;
        }
        const std::string name = engine::check_name(finding->check);
        if (context.ui.row("check." + name, context.say("check." + name), options)) {
            context.act(app::OpenReason{finding->check});
        }
    }
}

void draw_reasons(ScreenContext& context, const Rect& rect, const CartAdvice& advice, const RankedCandidate& first) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const std::string title = finding_title(context, first);
    const float whole = (rect.empty() ? ui.remaining().width() : rect.width()) - 2 * m.dp(6);
    const float toggle_width = std::min(whole * 0.4F, m.dp(300));
    const float title_width = whole - toggle_width - m.gap - m.dp(12);
    const float title_height = ui.text_height(title, TextRole::body, Weight::medium, title_width);
    const float head_height = std::max(toggle_height(m), title_height);
    Rect box = rect;
    if (box.empty()) {
        const auto rows = static_cast<float>(by_urgency(first.findings).size());
        box = ui.place(head_height + m.dp(head_dp + 18) + m.gap + rows * (m.target_size(TargetClass::row) + m.gap));
    }
    const auto card = ui.card({.rect = box, .pad = 0});
    Rect rest = box.inset(0, m.dp(6));
    Rect head = rest.cut_top(head_height, m.gap).inset(m.dp(6), 0);
    Rect toggle = head.cut_right(toggle_width, m.gap);
    toggle.y1 = toggle.y0 + toggle_height(m);
    const bool table = chart_toggle(context, toggle);
    head.x0 += m.dp(12);
    {
        const auto column = ui.column({head.x0, head.center().y - title_height / 2, head.x1, head.y1});
        ui.text(title, TextRole::body, Weight::medium, {}, "answer.finding");
    }
    if (table) {
        const auto list = ui.scroll("answer.table", rest.inset(m.dp(6), 0));
        draw_reason_rows(context, first);
        return;
    }
    draw_scale(context, rest, advice, first);
}

}  // namespace sillwalk::ui
