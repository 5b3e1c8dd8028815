#include "app/ui/draw/margin_scale.hpp"

#include "app/ui/draw/ground.hpp"
#include "app/ui/draw/strokes.hpp"

#include <algorithm>

namespace sillwalk::ui {

namespace {

constexpr double tight_below = 0.15;  ///< our rule: closer to the limit (a use over 0.85) is tight

}  // namespace

float MarginScale::at(double margin) const {
    const double kept = std::clamp(margin, least, most);
    return x0 + (x1 - x0) * static_cast<float>((kept - least) / (most - least));
}

void draw_margin_zones(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y0, float y1) {
    const float u = design_unit(canvas);
    const Rect over{scale.x0, y0, scale.at(0), y1};
    const Color stop = theme.line_of(Badge::fails);
    canvas.fill_rect(over, stop.with_alpha(18));
    hatch(canvas, over, stop.with_alpha(70), 11 * u, 1.3F * u);
    const std::uint8_t strength = theme.name == ThemeName::dark ? 200 : 135;
    canvas.fill_rect({scale.at(0), y0, scale.at(tight_below), y1},
                     theme.badge_of(Badge::tight).fill.with_alpha(strength));
}

void draw_margin_limit(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y0, float y1) {
    canvas.line({scale.at(0), y0}, {scale.at(0), y1}, theme.text, 4.5F * design_unit(canvas));
}

float draw_margin_mark(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y, const MarginMark& mark) {
    const float u = design_unit(canvas);
    const Color color = theme.line_of(mark.outcome);
    const float x = scale.at(mark.margin);
    float reach = x + 9 * u;
    if (mark.with_change.has_value()) {
        const float change_x = scale.at(*mark.with_change);
        const Color ok = theme.line_of(Badge::holds);
        canvas.fill_circle({change_x, y}, 10 * u, theme.surface);
        canvas.stroke_circle({change_x, y}, 9 * u, ok, 2.6F * u);
        canvas.fill_circle({change_x, y}, 3.2F * u, ok);
        reach = std::max(reach, change_x + 10 * u);
    }
    if (!scale.shows(mark.margin)) {
        const float way = mark.margin < scale.least ? -1 : 1;
        arrow(canvas, {x - way * 30 * u, y}, {x, y}, color, 5 * u, 18 * u);
        return way > 0 ? x : std::max(reach, x + 30 * u);
    }
    if (mark.runner_up.has_value() && scale.shows(*mark.runner_up)) {
        const float other = scale.at(*mark.runner_up);
        canvas.line({other, y}, {x, y}, color, 2.5F * u);
        canvas.fill_circle({other, y}, 7 * u, theme.surface);
        canvas.stroke_circle({other, y}, 6.5F * u, color, 2.4F * u);
        reach = std::max(reach, other + 7 * u);
    }
    if (mark.high > mark.low) {
        const float low = scale.at(mark.low);
        const float high = scale.at(mark.high);
        canvas.line({low, y}, {high, y}, color, 3 * u);
        for (const float end : {low, high}) canvas.line({end, y - 13 * u}, {end, y + 13 * u}, color, 3 * u);
        reach = std::max(reach, high + 2 * u);
    }
    canvas.fill_circle({x, y}, 8 * u, color);
    return reach;
}

void draw_margin_unknown(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y,
                         std::string_view words) {
    const float u = design_unit(canvas);
    const Rect box{scale.x0 + 6 * u, y - 18 * u, scale.x1 - 10 * u, y + 18 * u};
    const Color missing = theme.line_of(Badge::not_known);
    canvas.fill_rect(box, theme.surface);
    dashed_rect(canvas, box, missing, 2 * u, {8 * u, 6 * u});
    canvas.text_centered({(box.x0 + scale.at(0)) / 2, y}, "?", {TextRole::row, Weight::bold, missing, Align::center});
    canvas.text_centered({scale.at(0) + 14 * u, y}, words,
                         {TextRole::caption, Weight::regular, theme.text2, Align::left});
}

void draw_range_strip(Canvas& canvas, const Theme& theme, float x0, float x1, float y, const RangeStrip& strip) {
    const float u = design_unit(canvas);
    const auto at = [&](double value) {
        const double share = std::clamp((value - strip.least) / (strip.most - strip.least), 0.0, 1.0);
        return x0 + (x1 - x0) * static_cast<float>(share);
    };
    const float half = 8 * u;
    canvas.fill_rect({x0, y - half, x1, y + half}, theme.muted_fill, 2 * u);
    canvas.fill_rect({at(strip.typical_low), y - half, at(strip.typical_high), y + half}, theme.route, 2 * u);
    if (strip.impossible_from.has_value()) {
        const float from = at(*strip.impossible_from);
        const Color stop = theme.line_of(Badge::fails);
        hatch(canvas, {from, y - half, x1, y + half}, stop, 8 * u, 2 * u);
        canvas.line({from, y - 12 * u}, {from, y + 12 * u}, stop, 3 * u);
    }
    if (!strip.value.has_value()) return;
    const float x = at(*strip.value);
    const float low = at(*strip.value - strip.tolerance) - u;
    const float high = at(*strip.value + strip.tolerance) + u;
    canvas.fill_rect({low, y - 20 * u, high, y - 14 * u}, theme.text);
    const Point pointer[] = {{x, y - 4 * u}, {x - 10 * u, y - 22 * u}, {x + 10 * u, y - 22 * u}};
    canvas.fill_polygon(pointer, theme.text);
    canvas.line({x, y - 6 * u}, {x, y + 14 * u}, theme.text, 4 * u);
}

}  // namespace sillwalk::ui
