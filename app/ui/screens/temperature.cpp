#include "app/ui/draw/strokes.hpp"
#include "app/ui/screens/chart_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace sillwalk::ui {

using engine::Field;
using engine::Walk;
using engine::WalkPoint;

namespace {

/// A stay in one room: from when to when, and its air.
struct Stay {
    std::uint16_t room = 0, stop = 0;
    double from_s = 0, to_s = 0, air_c = 0;
};

/// Half of the width goes to the stays alike, so that a short one can be read; half by their time.
struct Plot {
    Rect box;
    double low_c, high_c;
    std::span<const Stay> stays;
    [[nodiscard]] float x(double seconds) const {
        const double whole = stays.back().to_s - stays.front().from_s;
        const double alike = 0.5 / static_cast<double>(stays.size());
        double share = 0;
        for (const Stay& stay : stays) {
            const double length = stay.to_s - stay.from_s;
            const double part = length > 0 ? std::clamp((seconds - stay.from_s) / length, 0.0, 1.0) : 1.0;
            share += part * (alike + 0.5 * length / whole);
            if (seconds <= stay.to_s) break;
        }
        return box.x0 + box.width() * static_cast<float>(share);
    }
    [[nodiscard]] float y(double celsius) const {
        return box.y1 - box.height() * static_cast<float>((celsius - low_c) / (high_c - low_c));
    }
};

std::vector<Stay> stays_of(const ScreenContext& context, const Walk& walk) {
    std::vector<Stay> stays;
    const auto& cart = context.survey().carts[context.model.cart];
    for (const WalkPoint& point : walk.trace) {
        const double at = point.since_start.si();
        if (stays.empty() || stays.back().stop != point.stop) {
            Stay stay{0, point.stop, at, at, point.air.celsius()};
            for (std::uint16_t k = 0; k < context.survey().rooms.size(); ++k) {
                if (point.stop < cart.route.size() && context.survey().rooms[k].id == cart.route[point.stop].room)
                    stay.room = k;
            }
            if (!stays.empty()) stays.back().to_s = at;
            stays.push_back(stay);
        }
        stays.back().to_s = at;
    }
    return stays;
}

void draw_grid(ScreenContext& context, const Plot& plot, const std::vector<Stay>& stays) {
    Ui& ui = context.ui;
    Canvas& canvas = ui.canvas();
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    for (const Stay& stay : stays) {
        const Color fill = stay.air_c < 0 ? theme.cold : stay.air_c < 25 ? theme.cool : theme.warm;
        canvas.fill_rect({plot.x(stay.from_s), plot.box.y0, plot.x(stay.to_s), plot.box.y1}, fill);
    }
    for (const double tick : {-60.0, -40.0, -30.0, -18.0, 0.0, 20.0, 40.0, 60.0, 82.0, 100.0}) {
        if (tick < plot.low_c || tick > plot.high_c) continue;
        const float y = plot.y(tick);
        canvas.line({plot.box.x0, y}, {plot.box.x1, y}, theme.hairline, (tick == 0 ? 2.4F : 1.4F) * theme.line_scale);
        const std::string text = app::show({tick + 273.15, engine::Kind::temperature}, context.units());
        ui.text_at({plot.box.x0 - m.dp(12), y + m.cap_height(TextRole::caption) / 2}, text,
                   {TextRole::caption, Weight::regular, theme.text2, Align::right});
    }
    for (const Stay& stay : stays) {
        const float x0 = plot.x(stay.from_s);
        const float x1 = plot.x(stay.to_s);
        canvas.line({x1, plot.box.y0}, {x1, plot.box.y1 + m.dp(10)}, theme.text2, 1.6F * theme.line_scale);
        const float y = plot.y(stay.air_c);
        canvas.line({x0, y}, {x1, y}, theme.text2, 2 * theme.line_scale);
        const float room = x1 - x0 - m.dp(8);
        if (room < 44) continue;
        const std::string& name = context.survey().rooms[stay.room].name;
        const float line = m.line_height(TextRole::caption);
        const auto cut = name.find(' ');
        const TextStyle style{TextRole::caption, Weight::medium, theme.text, Align::center};
        const auto fits = [&](const std::string& text) {
            return ui.text_width(text, style.role, style.weight) <= room;
        };
        const float middle = (x0 + x1) / 2;
        if (fits(name)) {
            ui.text_at({middle, plot.box.y1 + line}, name, style);
        } else if (cut != std::string::npos && fits(name.substr(0, cut)) && fits(name.substr(cut + 1))) {
            ui.text_at({middle, plot.box.y1 + line}, name.substr(0, cut), style);
            ui.text_at({middle, plot.box.y1 + 2 * line}, name.substr(cut + 1), style);
        }
        const std::string minutes = value_text(context, {Field::cart_stay, context.model.cart, stay.stop});
        if (ui.text_width(minutes, TextRole::caption, Weight::regular) <= room) {
            ui.text_at({(x0 + x1) / 2, plot.box.y1 + 3 * line}, minutes,
                       {TextRole::caption, Weight::regular, theme.text2, Align::center});
        }
    }
}

template <class Pick>
std::vector<Point> curve(const Plot& plot, const Walk& walk, Pick pick) {
    std::vector<Point> points;
    for (const WalkPoint& point : walk.trace) {
        points.push_back({plot.x(point.since_start.si()), plot.y(pick(point).celsius())});
    }
    return points;
}

void draw_limit(ScreenContext& context, const Plot& plot, double celsius, const std::string& text, bool below) {
    if (celsius <= plot.low_c || celsius >= plot.high_c) return;
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const float y = plot.y(celsius);
    const Rect over =
        below ? Rect{plot.box.x0, y, plot.box.x1, plot.box.y1} : Rect{plot.box.x0, plot.box.y0, plot.box.x1, y};
    hatch(ui.canvas(), over, theme.line_of(Badge::fails).with_alpha(70), 11, 1.3F * theme.line_scale);
    ui.canvas().line({plot.box.x0, y}, {plot.box.x1, y}, theme.line_of(Badge::fails), 4 * theme.line_scale);
    plate(ui.canvas(), {plot.box.x0 + m.dp(14), below ? y + m.dp(22) : y - m.dp(22)}, text,
          {TextRole::caption, Weight::medium, theme.line_of(Badge::fails), Align::left}, theme.surface);
}

const Walk* walk_of(const ScreenContext& context) {
    if (!context.model.answer || context.model.cart >= context.model.answer->walks.size()) return nullptr;
    const auto& walk = context.model.answer->walks[context.model.cart];
    return walk && walk->trace.size() > 1 ? &*walk : nullptr;
}

std::string shown(const ScreenContext& context, engine::Temperature at) {
    return app::show({at.kelvin(), engine::Kind::temperature}, context.units());
}

const engine::Crossing* crossing_after(const ScreenContext& context, std::uint16_t stop) {
    const auto& route = context.survey().carts[context.model.cart].route;
    if (stop >= route.size() || !route[stop].leaves_by) return nullptr;
    for (const engine::Crossing& crossing : context.survey().crossings) {
        if (crossing.id == *route[stop].leaves_by) return &crossing;
    }
    return nullptr;
}

std::string title_text(const ScreenContext& context, const Walk& walk) {
    const WalkPoint* coldest = nullptr;
    for (const WalkPoint& point : walk.at_crossing) {
        if (!coldest || std::min(point.rim, point.core) < std::min(coldest->rim, coldest->core)) coldest = &point;
    }
    if (!coldest) return context.say("temperature.title_plain");
    const engine::Crossing* crossing = crossing_after(context, coldest->stop);
    const std::string place = crossing ? crossing->name : std::string();
    const double kelvin = std::min(coldest->rim, coldest->core).kelvin();
    return context.say("temperature.finding", {app::show({kelvin, engine::Kind::temperature}, context.units()), place});
}

/// In travel order: each stay with its air, then the crossing that it leaves by with the wheel as it arrives there.
std::vector<ChartRow> table_rows(const ScreenContext& context, const Walk& walk) {
    std::vector<ChartRow> rows;
    for (const Stay& stay : stays_of(context, walk)) {
        const std::string number = std::to_string(rows.size());
        const std::string minutes = value_text(context, {Field::cart_stay, context.model.cart, stay.stop});
        rows.push_back({"temperature.row." + number, context.survey().rooms[stay.room].name, minutes,
                        context.say("temperature.in_room", {shown(context, engine::celsius(stay.air_c))})});
        for (const WalkPoint& point : walk.at_crossing) {
            const engine::Crossing* crossing = crossing_after(context, point.stop);
            if (point.stop != stay.stop || !crossing) continue;
            rows.push_back(
                {"temperature.crossing." + number, crossing->name,
                 context.say("temperature.at_crossing", {shown(context, point.rim), shown(context, point.core)}), ""});
        }
    }
    return rows;
}

/// The core's name above its curve, the rim's below; on a narrow plot the core's moves aside.
void label_curves(ScreenContext& context, Point core_at, Point rim_at) {
    const Metrics& m = context.ui.metrics();
    const Theme& theme = context.ui.theme();
    Canvas& canvas = context.ui.canvas();
    const std::string core = context.say("temperature.core");
    const std::string rim = context.say("temperature.rim");
    const TextStyle core_style{TextRole::caption, Weight::medium, theme.line_of(Badge::by_eye), Align::center};
    const TextStyle rim_style{TextRole::caption, Weight::medium, theme.route, Align::center};
    core_at.y -= m.dp(26);
    rim_at.y += m.dp(26);
    const float widths = canvas.text_width(core, core_style.role, core_style.weight) +
                         canvas.text_width(rim, rim_style.role, rim_style.weight);
    const float apart = widths / 2 + 1.4F * m.cap_height(TextRole::caption);
    if (std::fabs(core_at.y - rim_at.y) < m.line_height(TextRole::caption)) {
        core_at.x = std::min(core_at.x, rim_at.x - apart);
    }
    plate(canvas, core_at, core, core_style, theme.surface);
    plate(canvas, rim_at, rim, rim_style, theme.surface);
}

}  // namespace

void draw_temperature(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Walk* walk = walk_of(context);
    if (!walk) {
        const auto column = ui.column(area);
        ui.text(context.say("temperature.missing"));
        return;
    }
    const auto card = ui.card({.rect = area, .pad = 0});
    Rect rest = area.inset(m.pad + m.dp(4), 14);
    Rect foot = rest.cut_bottom(m.target_size(TargetClass::row), m.gap);
    const bool table = chart_toggle(context, foot.cut_left(std::min(foot.width(), m.dp(320))));
    {
        const std::string title = title_text(context, *walk);
        const float height = ui.text_height(title, TextRole::row, Weight::medium, rest.width());
        const auto column = ui.column(rest.cut_top(height, m.gap));
        ui.finding(title, "temperature.finding");
    }
    if (table) {
        const auto list = ui.scroll("temperature.table", rest);
        (void)chart_table(context, table_rows(context, *walk));
        return;
    }
    const auto stays = stays_of(context, *walk);
    double low = walk->coldest.celsius(), high = walk->hottest.celsius();
    for (const Stay& stay : stays) low = std::min(low, stay.air_c), high = std::max(high, stay.air_c);
    const float left = ui.text_width("\u221218\u2009\u00B0C", TextRole::caption, Weight::regular) + m.dp(20);
    const Rect box{rest.x0 + left, rest.y0 + m.dp(8), rest.x1 - m.dp(8),
                   rest.y1 - 3.6F * m.line_height(TextRole::caption)};
    const Plot plot{box, low - 6, high + 6, stays};
    draw_grid(context, plot, stays);
    if (const engine::Wheel* wheel = headline_wheel(context)) {
        if (wheel->impact_floor)
            draw_limit(context, plot, wheel->impact_floor->celsius(), context.say("temperature.impact_floor"), true);
        if (wheel->temperature_max)
            draw_limit(context, plot, wheel->temperature_max->celsius(), context.say("temperature.maximum"), false);
    }
    const Theme& theme = ui.theme();
    Canvas& canvas = ui.canvas();
    const auto rim = curve(plot, *walk, [](const WalkPoint& p) { return p.rim; });
    const auto core = curve(plot, *walk, [](const WalkPoint& p) { return p.core; });
    dashed_polyline(canvas, core, theme.line_of(Badge::by_eye), 3 * theme.line_scale, {12, 8});
    canvas.polyline(rim, theme.route, 4.5F * theme.line_scale);
    label_curves(context, core[core.size() / 3], rim[rim.size() * 2 / 3]);
}

}  // namespace sillwalk::ui
