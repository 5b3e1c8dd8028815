#include "app/ui/draw/strokes.hpp"
#include "app/ui/ui_impl.hpp"

#include <algorithm>
#include <numeric>

namespace sillwalk::ui {

namespace {

/// Registers the key, draws its ground, and says what it did; `ink` is the colour for what stands on it.
bool key_ground(Ui::Impl& ui, std::string_view id, std::string label, const Rect& rect, const KeyOptions& o,
                bool clipped, Color& ink) {
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    Target target{std::string(id), std::move(label), rect};
    target.target_class = TargetClass::key;
    target.enabled = o.enabled;
    target.selected = o.selected;
    target.label_clipped = clipped;
    target.wants_long_press = o.on_hold != nullptr || o.repeat;
    const Interaction did = ui.interact(std::move(target));
    if (did.long_pressed && o.on_hold != nullptr) o.on_hold();
    const bool repeated = o.enabled && o.repeat && ui.touch.held == id;
    const bool typed = o.enabled && o.shortcut != 0 && ui.take_typed(o.shortcut);

    const bool pressed = did.pressed || did.tapped || typed;
    const bool strong = pressed || o.primary || o.selected;
    ink = strong && o.enabled ? t.on_primary : o.enabled ? t.text : t.disabled_text;
    const Color fill = !o.enabled ? t.surface : pressed ? t.pressed : strong ? t.primary : t.surface;
    ui.canvas().fill_rect(rect, fill, m.radius);
    if (!strong || !o.enabled) {
        ui.canvas().stroke_rect(rect, o.enabled ? t.outline : t.disabled_text, m.outline, m.radius);
    }
    ui.focus_ring(rect, did.focused);
    return did.tapped || repeated || typed;
}

/// Seventeen marks of an inch, the longest at the ends; filled up to `sixteenths`.
void inch_tape(Canvas& canvas, const Metrics& m, const Rect& box, int sixteenths, Color tick, Color fill) {
    const float thin = m.dp(1.3F);
    const auto x_of = [&](int k) { return box.x0 + box.width() * static_cast<float>(k) / 16; };
    for (int k = 0; k <= 16; ++k) {
        const float share = k % 16 == 0 ? 0.9F : k % 8 == 0 ? 0.85F : k % 4 == 0 ? 0.62F : k % 2 == 0 ? 0.45F : 0.28F;
        if (k != sixteenths) canvas.line({x_of(k), box.y1}, {x_of(k), box.y1 - box.height() * share}, tick, thin);
    }
    canvas.line({box.x0, box.y1}, {box.x1, box.y1}, tick, thin);
    if (sixteenths <= 0) return;
    const float x = x_of(sixteenths);
    const float half = m.dp(2);
    canvas.fill_rect({box.x0, box.y1 - half, x, box.y1 + half}, fill);
    canvas.fill_rect({x - half, box.y0 - half, x + half, box.y1 + half}, fill);
}

void draw_inch_tape(Canvas& canvas, const Metrics& m, const Rect& box, int sixteenths, Color tick, Color fill) {
    const Point size{box.width(), box.height()};
    const ShapeKey key{ShapeKey::tape, static_cast<std::uint32_t>(sixteenths), {size.x, size.y, m.dp(1)}, tick, fill};
    canvas.shape(key, {box.x0, box.y0}, size.x + m.dp(4), [&](Point at) {
        inch_tape(canvas, m, {at.x, at.y, at.x + size.x, at.y + size.y}, sixteenths, tick, fill);
    });
}

}  // namespace

bool Ui::key(std::string_view id, std::string_view label, const KeyOptions& o) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Rect rect = o.rect.empty() ? ui.place(m.target_size(TargetClass::key)) : o.rect;
    const Rect box = rect.inset(m.dp(5), m.dp(4));
    FittedText detail;
    float detail_height = 0;
    if (!o.detail.empty()) {
        detail = ui.fit(o.detail, TextRole::caption, Weight::regular, box.width(), box.height() / 2);
        detail_height = m.line_height(detail.role) * static_cast<float>(detail.lines.size());
    }
    FittedText head;
    const bool icon_only = o.icon != Icon::none;
    if (!icon_only) head = ui.fit(label, o.role, Weight::medium, box.width(), box.height() - detail_height);
    Color ink;
    const bool hit = key_ground(ui, id, join_label({label, o.detail}), rect, o, head.clipped || detail.clipped, ink);
    if (icon_only) {
        draw_icon(ui.canvas(), o.icon, rect.center(), m.icon * 1.15F, ink);
        return hit;
    }
    const float head_height = m.line_height(head.role) * static_cast<float>(head.lines.size());
    const float top = rect.center().y - (head_height + detail_height) / 2;
    ui.draw_fitted(head, {box.x0, top, box.x1, top + head_height}, Weight::medium, ink, Align::center);
    if (!o.detail.empty()) {
        const Rect lower{box.x0, top + head_height, box.x1, top + head_height + detail_height};
        ui.draw_fitted(detail, lower, Weight::regular, ink, Align::center);
    }
    return hit;
}

bool Ui::fraction_key(std::string_view id, int sixteenths, std::string_view no_fraction, const KeyOptions& o) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const Rect rect = o.rect.empty() ? ui.place(m.target_size(TargetClass::key)) : o.rect;
    const float margin = rect.width() * 0.14F;
    const float tape_height = rect.height() * 0.17F;
    const Rect tape{rect.x0 + margin, rect.y1 - m.dp(9) - tape_height, rect.x1 - margin, rect.y1 - m.dp(9)};
    const Rect upper{rect.x0 + m.dp(4), rect.y0 + m.dp(4), rect.x1 - m.dp(4), tape.y0 - m.dp(2)};

    FittedText none;
    std::string label(no_fraction);
    const int divisor = std::gcd(sixteenths, 16);
    if (sixteenths == 0) {
        none = ui.fit(no_fraction, TextRole::caption, Weight::regular, upper.width(), upper.height());
        if (none.clipped) label += " 0/16";  // a sign that is read in any language
    } else {
        label = std::to_string(sixteenths / divisor) + "/" + std::to_string(16 / divisor);
    }
    Color ink;
    const bool hit = key_ground(ui, id, label, rect, o, false, ink);
    const bool strong = !(ink == t.text || ink == t.disabled_text);
    if (sixteenths == 0 && none.clipped) {
        stacked_fraction(ui.canvas(), upper.center(), 0, 16, {TextRole::row, Weight::medium, ink, Align::center});
    } else if (sixteenths == 0) {
        ui.draw_fitted(none, upper, Weight::regular, ink, Align::center);
    } else {
        const int denominator = 16 / divisor;
        // The quarters stand out: they are what a tape is read by.
        const TextRole role = denominator == 16 ? TextRole::body : TextRole::row;
        const Weight weight = denominator <= 4 ? Weight::bold : Weight::medium;
        stacked_fraction(ui.canvas(), upper.center(), sixteenths / divisor, denominator,
                         {role, weight, ink, Align::center});
    }
    draw_inch_tape(ui.canvas(), m, tape, sixteenths, strong ? ink : t.ground_hatch, strong ? ink : t.route);
    return hit;
}

}  // namespace sillwalk::ui
