#include "app/ui/ui_impl.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

namespace {

double snapped(double value, const SliderOptions& o) {
    const double kept = std::clamp(value, o.min, o.max);
    if (o.step <= 0) return kept;
    return std::clamp(o.min + std::round((kept - o.min) / o.step) * o.step, o.min, o.max);
}

}  // namespace

std::optional<double> Ui::slider(std::string_view id, double value, const SliderOptions& o) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const float grab = m.target_size(TargetClass::key);
    const float text_room = text_width(o.label, TextRole::body, Weight::regular) +
                            text_width(o.value_text, TextRole::row, Weight::medium) + m.gap;
    const bool two_lines = text_room > (o.rect.empty() ? ui.place_width() : o.rect.width());
    const float caption = m.line_height(TextRole::body) * (two_lines ? 2 : 1);
    const Rect rect = o.rect.empty() ? ui.place(grab + caption) : o.rect;
    const Rect head{rect.x0, rect.y0, rect.x1, rect.y0 + caption};
    const Rect body{rect.x0, rect.y1 - grab, rect.x1, rect.y1};

    Target target{std::string(id), join_label({o.label, o.value_text}), body};
    target.target_class = TargetClass::key;
    target.drag = DragMode::direct;
    target.enabled = o.enabled;
    target.label_clipped = text_width(o.label, TextRole::body, Weight::regular) > rect.width();
    const Interaction did = ui.interact(std::move(target));

    const float knob = grab * 0.28F;
    const float x0 = body.x0 + knob;
    const float x1 = body.x1 - knob;
    const auto x_of = [&](double v) {
        const double share = o.max > o.min ? (std::clamp(v, o.min, o.max) - o.min) / (o.max - o.min) : 0;
        return x0 + (x1 - x0) * static_cast<float>(share);
    };
    std::optional<double> out;
    if (did.tapped || did.dragging) {
        const bool by_key = did.tapped && !did.dragging && did.at == body.center();
        const double share = std::clamp(static_cast<double>((did.at.x - x0) / (x1 - x0)), 0.0, 1.0);
        if (!by_key) out = snapped(o.min + share * (o.max - o.min), o);
    }
    if (did.steps != 0) {
        const double step = o.step > 0 ? o.step : (o.max - o.min) / 20;
        out = snapped(value + did.steps * step, o);
    }
    if (out.has_value() && *out == value) out.reset();

    Canvas& canvas = ui.canvas();
    const float y = body.center().y;
    const float half = m.dp(4);
    const Color ink = o.enabled ? t.primary : t.disabled_text;
    const float x = x_of(out.value_or(value));
    const float line = m.line_height(TextRole::body) / 2;
    canvas.text_centered({head.x0, head.y0 + line}, o.label, {TextRole::body, Weight::regular, t.text, Align::left});
    canvas.text_centered({head.x1, head.y1 - line}, o.value_text,
                         {TextRole::row, Weight::medium, t.text, Align::right});
    canvas.fill_rect({x0, y - half, x1, y + half}, t.outline, half);
    canvas.fill_rect({x0, y - half, x, y + half}, ink, half);
    if (o.limit.has_value()) {
        const float lx = x_of(*o.limit);
        canvas.fill_rect({lx - m.dp(2.5F), y - knob * 1.3F, lx + m.dp(2.5F), y + knob * 1.3F}, t.text);
    }
    canvas.fill_circle({x, y}, knob, t.surface);
    canvas.fill_circle({x, y}, knob, did.pressed || did.dragging ? t.pressed : ink);
    canvas.fill_circle({x, y}, knob * 0.45F, t.on_primary);
    ui.focus_ring(body, did.focused);
    return out;
}

}  // namespace sillwalk::ui
