// Push forces against their limits: one bar for each crossing of the route, on one scale.

#include "app/ui/draw/limit_bars.hpp"
#include "app/ui/screens/chart_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

using engine::CheckId;
using engine::Finding;
using engine::Outcome;

namespace {

constexpr double least_scale = 1.25, most_scale = 3;

struct PushRow {
    std::string name;
    const Finding* finding;
    std::optional<std::uint16_t> crossing;
};

const Finding* push_of(const std::vector<Finding>& findings) {
    for (const Finding& finding : findings) {
        if (finding.check == CheckId::push && finding.outcome != Outcome::does_not_apply) return &finding;
    }
    return nullptr;
}

/// Along the route; where starting on the level is the hardest, that comes first.
std::vector<PushRow> push_rows(const ScreenContext& context, const engine::CartAdvice& advice,
                               const engine::RankedCandidate& first) {
    std::vector<PushRow> rows;
    const Finding* whole = push_of(first.findings);
    if (whole && whole->place.kind != engine::PlaceKind::crossing) {
        rows.push_back({context.say("push.on_the_level"), whole, std::nullopt});
    }
    for (const engine::CrossingOutcome& outcome : advice.crossings) {
        const Finding* finding = push_of(outcome.findings);
        if (!finding || outcome.crossing >= context.survey().crossings.size()) continue;
        rows.push_back({context.survey().crossings[outcome.crossing].name, finding, outcome.crossing});
    }
    return rows;
}

bool has_bar(const Finding& finding) {
    return finding.has_use && finding.outcome != Outcome::not_known;
}

double scale_of(const std::vector<PushRow>& rows) {
    double scale = least_scale;
    for (const PushRow& row : rows) {
        if (has_bar(*row.finding)) scale = std::max(scale, row.finding->use * 1.05);
    }
    return std::min(scale, most_scale);
}

std::string value_of(const ScreenContext& context, const Finding& finding) {
    const std::string& compared = compared_of(context, finding);
    return compared.empty() ? sentence_of(context, finding) : compared;
}

void open_row(ScreenContext& context, const PushRow& row) {
    if (row.crossing) {
        context.act(app::GoTo{{app::Screen::crossing, *row.crossing}});
    } else {
        context.act(app::OpenReason{CheckId::push});
    }
}

/// Name and numbers above, the bar below, the outcome at the right end. `below`: the name has the whole first line,
/// and the numbers stand under it.
void bar_row(ScreenContext& context, const Rect& box, const PushRow& row, double scale, std::size_t number,
             bool below) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const Finding& finding = *row.finding;
    const std::string value = value_of(context, finding);
    const Rect hit{box.x0, box.y0, box.x1, box.y1 - m.gap};  // a gap to the next row
    const Interaction did =
        ui.area(fmt::format("push.row.{}", number), labelled(context, row.name + ", " + value, finding.outcome), hit);
    if (did.tapped) open_row(context, row);
    if (did.pressed) ui.canvas().fill_rect(box, theme.selected_tint, m.radius);
    ui.canvas().line({box.x0, box.y1}, {box.x1, box.y1}, theme.hairline, m.hairline);
    Rect rest = box.inset(m.pad, m.dp(8));
    const auto badge = badge_of(finding.outcome);
    const float line = m.line_height(TextRole::body);
    const float base = rest.y0 + m.cap_height(TextRole::body) + m.dp(2);
    const float badge_room = ui.badge_width(below && badge ? *badge : Badge::not_known) + m.gap;
    const float middle = below ? (rest.y0 + 2 * line + rest.y1) / 2 : box.center().y;
    if (badge) ui.badge_at({rest.x1, middle}, *badge, Align::right);
    const float whole = rest.width();
    rest.x1 -= badge_room;
    const Color ink = finding.outcome == Outcome::fails ? theme.line_of(Badge::fails) : theme.text;
    float name_width = whole;
    if (below) {
        const bool numbers = has_bar(finding);  // never shortened
        const std::string shown = numbers ? value : fitted(ui, value, whole, TextRole::body, Weight::medium);
        ui.text_at({rest.x0, base + line}, shown, {TextRole::body, Weight::medium, ink, Align::left}, whole);
    } else {
        const float most = rest.width() * 0.55F;
        const std::string shown = fitted(ui, value, most, TextRole::body, Weight::medium);
        const float value_width = std::min(most, ui.text_width(shown, TextRole::body, Weight::medium));
        ui.text_at({rest.x1, base}, shown, {TextRole::body, Weight::medium, ink, Align::right}, value_width);
        name_width = rest.width() - value_width - m.gap;
    }
    ui.text_at({rest.x0, base}, fitted(ui, row.name, name_width, TextRole::body, Weight::regular),
               {TextRole::body, Weight::regular, theme.text, Align::left}, name_width);
    if (!has_bar(finding)) return;
    if (below) rest.y0 += line;
    LimitBar bar;
    bar.value = bar.low = bar.high = finding.use;
    bar.outcome = badge.value_or(Badge::holds);
    draw_limit_bar(ui.canvas(), theme, {rest.x0, rest.y0 + line, rest.x1, rest.y1}, bar, 1, scale);
}

bool fits_beside(const ScreenContext& context, const PushRow& row, float width) {
    const Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const float name = ui.text_width(row.name, TextRole::body, Weight::regular);
    const float value = ui.text_width(value_of(context, *row.finding), TextRole::body, Weight::medium);
    const float badge = ui.badge_width(Badge::not_known) + m.gap;
    return name + m.gap + value + badge <= width - 2 * m.pad - m.dp(24) || !has_bar(*row.finding);
}

std::string title_of(const ScreenContext& context, const std::vector<PushRow>& rows) {
    const PushRow* worst = nullptr;
    for (const PushRow& row : rows) {
        if (!worst || row.finding->outcome > worst->finding->outcome ||
            (row.finding->outcome == worst->finding->outcome && row.finding->use > worst->finding->use)) {
            worst = &row;
        }
    }
    return worst ? sentence_of(context, *worst->finding) : context.say("push.none");
}

std::vector<ChartRow> table_rows(const ScreenContext& context, const std::vector<PushRow>& rows) {
    std::vector<ChartRow> table;
    for (const PushRow& row : rows) {
        ChartRow line{fmt::format("push.row.{}", table.size()), row.name, "", "", badge_of(row.finding->outcome)};
        line.detail = sentence_of(context, *row.finding);
        const std::string& compared = compared_of(context, *row.finding);
        if (!compared.empty()) line.detail = compared + ". " + line.detail;
        table.push_back(std::move(line));
    }
    return table;
}

}  // namespace

void draw_push(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const engine::CartAdvice* advice = context.advice();
    const engine::RankedCandidate* first = app::headline(advice);
    const auto list = ui.scroll("push", area);
    if (!first) return ui.title(context.say("push.none"));
    const auto rows = push_rows(context, *advice, *first);
    ui.finding(title_of(context, rows), "push.finding");
    const engine::Wheel& wheel = context.model.data->catalogue.wheels[first->candidate.wheel];
    ui.caption(context.say(advice->nothing_holds ? "push.of_nearest" : "push.of_first", {wheel_text(context, wheel)}));
    const bool table = chart_toggle(context);
    if (table) {
        const auto card = ui.card({.pad = m.dp(4)});
        if (const auto hit = chart_table(context, table_rows(context, rows), true)) open_row(context, rows[*hit]);
        return;
    }
    const double scale = scale_of(rows);
    bool below = m.compact();
    for (const PushRow& row : rows) below = below || !fits_beside(context, row, area.width());
    const float height =
        m.target_size(TargetClass::row) + std::max(m.gap, m.dp(24)) + (below ? m.line_height(TextRole::body) : 0);
    {
        const auto card = ui.card({.pad = m.dp(4)});
        for (std::size_t i = 0; i < rows.size(); ++i) {
            bar_row(context, ui.place(height), rows[i], scale, i, below);
            ui.space(-m.gap);
        }
        ui.space(m.gap);
    }
    ui.caption(context.say("push.legend"));
}

}  // namespace sillwalk::ui
