#include "app/ui/ui_impl.hpp"

#include <algorithm>

namespace sillwalk::ui {

namespace {

struct ButtonInk {
    Color fill;
    Color text;
    Color detail;
    Color edge;
    bool filled = false;
    bool edged = true;
};

ButtonInk ink_of(const Theme& t, const ButtonOptions& options, bool pressed) {
    const bool primary = options.style == ButtonStyle::primary || options.selected;
    if (pressed) return {t.pressed, t.on_primary, t.on_primary, t.pressed, true, false};
    if (!options.enabled) return {t.surface, t.disabled_text, t.disabled_text, t.disabled_text, true, true};
    if (primary) return {t.primary, t.on_primary, t.on_primary, t.primary, true, false};
    switch (options.style) {
        case ButtonStyle::danger: {
            const Color red = t.line_of(Badge::fails);
            return {t.surface, red, red, red, true, true};
        }
        case ButtonStyle::quiet:
            return {t.surface, t.text, t.text2, t.outline, false, false};
        default:
            return {t.surface, t.text, t.text2, t.outline, true, true};
    }
}

struct ButtonParts {
    Rect text;
    float icon_x = 0;
};

/// Icon before the text: both together stand in the middle, or at the left end.
ButtonParts split_parts(const Metrics& m, const Rect& rect, const ButtonOptions& options, float text_width) {
    ButtonParts parts;
    const float pad = std::min(m.pad, rect.width() * 0.12F);
    parts.text = rect.inset(pad, m.dp(4));
    if (options.icon == Icon::none) return parts;
    const float taken = m.icon + m.dp(12);
    if (options.align == Align::left) {
        parts.icon_x = parts.text.x0 + m.icon / 2;
        parts.text.x0 += taken;
        return parts;
    }
    const float width = std::min(parts.text.width(), taken + text_width);
    const float left = rect.center().x - width / 2;
    parts.icon_x = left + m.icon / 2;
    parts.text = {left + taken, parts.text.y0, left + width, parts.text.y1};
    return parts;
}

}  // namespace

bool Ui::button(std::string_view id, std::string_view label, const ButtonOptions& options) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const float least = m.target_size(options.target_class);
    Rect rect = options.rect;
    if (rect.empty()) {
        const float width = ui.place_width() - 2 * m.pad - (options.icon == Icon::none ? 0 : m.icon + m.dp(12));
        float needed = text_height(label, options.role, Weight::medium, width) + m.dp(24);
        if (!options.detail.empty()) needed += text_height(options.detail, TextRole::caption, Weight::regular, width);
        rect = ui.place(std::max(least, needed));
    }
    const bool icon_only = label.empty() || (options.icon != Icon::none && rect.width() < m.icon * 3);

    ButtonParts parts = split_parts(m, rect, options, text_width(label, options.role, Weight::medium));
    if (!options.count.empty()) parts.text.x1 -= text_width(options.count, TextRole::caption, Weight::medium) + m.dp(8);
    Rect label_box = parts.text;
    Rect detail_box = parts.text;
    FittedText detail;
    if (!options.detail.empty()) {
        const float most = std::max(parts.text.height() / 2, parts.text.height() - m.line_height(options.role));
        detail = ui.fit(options.detail, TextRole::caption, Weight::regular, parts.text.width(), most);
    }
    const float lower = m.line_height(detail.role) * static_cast<float>(detail.lines.size());
    FittedText fitted;
    if (!icon_only)
        fitted = ui.fit(label, options.role, Weight::medium, parts.text.width(), parts.text.height() - lower);
    if (lower > 0) {
        const float upper = m.line_height(fitted.role) * static_cast<float>(fitted.lines.size());
        const float top = rect.center().y - (upper + lower) / 2;
        label_box = {parts.text.x0, top, parts.text.x1, top + upper};
        detail_box = {parts.text.x0, label_box.y1, parts.text.x1, label_box.y1 + lower};
    }

    Target target{std::string(id), join_label({label, options.detail, options.count}), rect};
    target.target_class = options.target_class;
    target.enabled = options.enabled;
    target.selected = options.selected;
    target.label_clipped = fitted.clipped || detail.clipped;
    const Interaction did = ui.interact(std::move(target));

    const ButtonInk ink = ink_of(ui.theme(), options, did.pressed || did.tapped);
    if (ink.filled) ui.canvas().fill_rect(rect, ink.fill, m.radius);
    if (ink.edged) ui.canvas().stroke_rect(rect, ink.edge, m.outline, m.radius);
    if (options.icon != Icon::none) {
        const float x = icon_only ? rect.center().x : parts.icon_x;
        draw_icon(ui.canvas(), options.icon, {x, rect.center().y}, m.icon, ink.text);
    }
    const Align align = options.icon != Icon::none ? Align::left : options.align;
    if (!icon_only) ui.draw_fitted(fitted, label_box, Weight::medium, ink.text, align);
    if (!icon_only && !options.detail.empty()) ui.draw_fitted(detail, detail_box, Weight::regular, ink.detail, align);
    if (!options.count.empty()) {
        const Point end{rect.x1 - m.pad, rect.center().y};
        ui.canvas().text_centered(end, options.count, {TextRole::caption, Weight::medium, ink.detail, Align::right});
    }
    ui.focus_ring(rect, did.focused);
    return did.tapped;
}

Interaction Ui::area(std::string_view id, std::string_view label, const Rect& rect, TargetClass target_class,
                     DragMode drag, bool enabled) {
    Target target{std::string(id), std::string(label), rect};
    target.target_class = target_class;
    target.drag = drag;
    target.enabled = enabled;
    const Interaction did = impl_->interact(std::move(target));
    impl_->focus_ring(rect, did.focused);
    return did;
}

void Ui::image(TextureId texture, const Rect& rect) {
    if (impl_->textures.find(texture) != nullptr) impl_->painter.image(texture, rect, {0, 0}, {1, 1});
}

bool Ui::photo(std::string_view id, std::string_view label, TextureId texture, const Rect& rect) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const float least = m.target_size(TargetClass::key);
    const Rect box = rect.empty() ? ui.place(least * 1.5F) : rect;
    const Interaction did = area(id, label, box, TargetClass::key);
    ui.canvas().fill_rect(box, ui.theme().muted_fill);
    const Texture* found = ui.textures.find(texture);
    if (found != nullptr) {
        const float fill =
            std::max(box.width() / static_cast<float>(found->width), box.height() / static_cast<float>(found->height));
        const float u = box.width() / fill / static_cast<float>(found->width) / 2;
        const float v = box.height() / fill / static_cast<float>(found->height) / 2;
        ui.painter.image(texture, box, {0.5F - u, 0.5F - v}, {0.5F + u, 0.5F + v});
    } else {
        draw_icon(ui.canvas(), Icon::camera, box.center(), m.icon, ui.theme().text2);
    }
    ui.canvas().stroke_rect(box, did.pressed ? ui.theme().pressed : ui.theme().outline, m.outline);
    ui.focus_ring(box, did.focused);
    return did.tapped;
}

}  // namespace sillwalk::ui
