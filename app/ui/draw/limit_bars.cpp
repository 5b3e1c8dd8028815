#include "app/ui/draw/limit_bars.hpp"

#include "app/ui/draw/ground.hpp"
#include "app/ui/draw/outcome_mark.hpp"
#include "app/ui/draw/strokes.hpp"

#include <algorithm>

namespace sillwalk::ui {

namespace {

struct Axis {
    float x0;
    float x1;
    double full;
    [[nodiscard]] float at(double value) const {
        return x0 + (x1 - x0) * static_cast<float>(std::clamp(value / full, 0.0, 1.0));
    }
};

void whisker(Canvas& canvas, float x0, float x1, float y, Color color, float u) {
    canvas.line({x0, y}, {x1, y}, color, 3 * u);
    for (const float x : {x0, x1}) canvas.line({x, y - 8 * u}, {x, y + 8 * u}, color, 3 * u);
}

void draw_bar(Canvas& canvas, const Theme& theme, const Axis& axis, float y, const LimitBar& entry, double limit) {
    const float u = design_unit(canvas);
    const float half = 16 * u;
    const BadgeColors& colors = theme.badge_of(entry.outcome);
    const float end = axis.at(entry.value);
    const float edge = axis.at(limit);
    const Rect below{axis.x0, y - half, std::min(end, edge), y + half};
    if (entry.outcome == Badge::tight) {
        canvas.fill_rect(below, colors.fill);
        canvas.stroke_rect(below, colors.edge, 3 * u);
    } else {
        canvas.fill_rect(below, theme.muted_fill);
        canvas.stroke_rect(below, theme.outline, 2 * u);
    }
    if (entry.value > limit) {
        const Rect over{edge, y - half, end, y + half};
        const BadgeColors& stop = theme.badge_of(Badge::fails);
        canvas.fill_rect(over, stop.fill);
        hatch(canvas, over, stop.text, 12 * u, 1.4F * u);
    }
    if (entry.high <= entry.low) return;
    const float low = axis.at(entry.low);
    const float high = axis.at(entry.high);
    if (entry.value > limit && low > edge) {  // inside the solid part the whisker is drawn in its text colour
        const BadgeColors& stop = theme.badge_of(Badge::fails);
        canvas.fill_rect({low - 5 * u, y - 9 * u, end, y + 9 * u}, stop.fill);
        canvas.line({low, y}, {end, y}, stop.text, 3 * u);
        canvas.line({low, y - 8 * u}, {low, y + 8 * u}, stop.text, 3 * u);
        canvas.line({end, y}, {high, y}, theme.text, 3 * u);
        canvas.line({high, y - 8 * u}, {high, y + 8 * u}, theme.text, 3 * u);
    } else {
        whisker(canvas, low, high, y, theme.text, u);
    }
}

}  // namespace

float limit_bars_height(const Canvas& canvas, std::size_t count) {
    const float u = design_unit(canvas);
    return 60 * u * static_cast<float>(count) + 20 * u + canvas.text_size(TextRole::caption) * 1.4F;
}

void draw_limit_bar(Canvas& canvas, const Theme& theme, const Rect& box, const LimitBar& entry, double limit,
                    double full_scale) {
    const float u = design_unit(canvas);
    const Axis axis{box.x0, box.x1, full_scale};
    const float y = box.center().y;
    draw_bar(canvas, theme, axis, y, entry, limit);
    canvas.line({axis.x0, y - 22 * u}, {axis.x0, y + 22 * u}, theme.text, 2 * u);
    canvas.line({axis.at(limit), y - 24 * u}, {axis.at(limit), y + 24 * u}, theme.text, 5 * u);
}

void draw_limit_bars(Canvas& canvas, const Theme& theme, const Rect& box, const LimitBars& chart) {
    const float u = design_unit(canvas);
    float name_width = 0;
    float label_width = 0;
    float badge_space = 0;
    double full = chart.limit;
    for (const LimitBar& entry : chart.bars) {
        name_width = std::max(name_width, canvas.text_width(entry.name, TextRole::body, Weight::regular));
        label_width = std::max(label_width, canvas.text_width(entry.value_label, TextRole::body, Weight::bold));
        if (!entry.outcome_word.empty()) {
            badge_space = std::max(badge_space, badge_width(canvas, entry.outcome_word, TextRole::caption) + 16 * u);
        }
        full = std::max({full, entry.value, entry.high});
    }
    full = chart.full_scale > 0 ? chart.full_scale : full * 1.02;
    const Axis axis{box.x0 + name_width + 24 * u, box.x1 - badge_space - label_width - 28 * u, full};
    const float step = 60 * u;
    const float first = box.y0 + 34 * u;
    const float last = first + step * static_cast<float>(chart.bars.size() - 1);
    for (std::size_t i = 0; i < chart.bars.size(); ++i) {
        const LimitBar& entry = chart.bars[i];
        const float y = first + step * static_cast<float>(i);
        draw_bar(canvas, theme, axis, y, entry, chart.limit);
        canvas.text_centered({box.x0, y}, entry.name, {TextRole::body, Weight::regular, theme.text, Align::left});
        const float reach = axis.at(std::max({entry.value, entry.high, entry.value <= chart.limit ? chart.limit : 0}));
        canvas.text_centered({reach + 14 * u, y}, entry.value_label,
                             {TextRole::body, Weight::bold, theme.text, Align::left});
        if (!entry.outcome_word.empty()) {
            const float width = badge_width(canvas, entry.outcome_word, TextRole::caption);
            draw_badge(canvas, theme, {box.x1 - width, y}, entry.outcome, entry.outcome_word, TextRole::caption);
        }
    }
    canvas.line({axis.x0, first - 26 * u}, {axis.x0, last + 26 * u}, theme.text, 2 * u);
    const float x = axis.at(chart.limit);
    canvas.line({x, first - 26 * u}, {x, last + 28 * u}, theme.text, 5 * u);
    const float half = canvas.text_width(chart.limit_label, TextRole::caption, Weight::medium) / 2;
    const float label_x = std::clamp(x, box.x0 + half, box.x1 - half);
    canvas.text_centered({label_x, last + 46 * u}, chart.limit_label,
                         {TextRole::caption, Weight::medium, theme.text, Align::center});
}

}  // namespace sillwalk::ui
