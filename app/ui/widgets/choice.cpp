#include "app/ui/ui_impl.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

namespace {

std::string part_id(std::string_view id, const std::string& part, std::size_t index) {
    return std::string(id) + "." + (part.empty() ? std::to_string(index) : part);
}

}  // namespace

std::optional<std::size_t> Ui::choice(std::string_view id, std::span<const ChoiceItem> items, int selected,
                                      const ChoiceOptions& options) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const auto count = static_cast<float>(items.size());
    Rect rect = options.rect;
    if (rect.empty()) {
        const float inner = ui.place_width() / count - m.dp(12);
        float needed = m.target_size(TargetClass::row);
        for (const ChoiceItem& item : items) {
            float height = text_height(item.label, options.role, Weight::medium, inner) + m.dp(16);
            if (!item.detail.empty()) height += text_height(item.detail, TextRole::caption, Weight::regular, inner);
            needed = std::max(needed, height);
        }
        rect = ui.place(needed);
    }
    ui.canvas().fill_rect(rect, t.surface, m.radius);
    std::optional<std::size_t> chosen;
    Rect focused_cell;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const ChoiceItem& item = items[i];
        const auto at = [&](std::size_t k) {
            return std::round(rect.x0 + rect.width() * static_cast<float>(k) / count);
        };
        const Rect cell{at(i), rect.y0, at(i + 1), rect.y1};
        const Rect box = cell.inset(m.dp(6), m.dp(4));
        FittedText detail;
        float detail_height = 0;
        if (!item.detail.empty()) {
            detail = ui.fit(item.detail, TextRole::caption, Weight::regular, box.width(), box.height() / 2);
            detail_height = m.line_height(detail.role) * static_cast<float>(detail.lines.size());
        }
        const FittedText head =
            ui.fit(item.label, options.role, Weight::medium, box.width(), box.height() - detail_height);
        const bool on = static_cast<int>(i) == selected;

        // Drawn as one strip; what a finger hits keeps its distance to the next segment.
        Rect hit = cell;
        if (i > 0) hit.x0 += std::ceil(m.gap / 2);
        if (i + 1 < items.size()) hit.x1 -= std::ceil(m.gap / 2);
        Target target{part_id(id, item.id, i), join_label({item.label, item.detail}), hit};
        target.enabled = item.enabled;
        target.selected = on;
        target.label_clipped = head.clipped || detail.clipped;
        const Interaction did = ui.interact(std::move(target));
        if (did.tapped) chosen = i;
        if (did.focused) focused_cell = cell;

        const bool strong = on || did.pressed || did.tapped;
        if (strong) ui.canvas().fill_rect(cell, did.pressed && !on ? t.pressed : t.primary, m.radius);
        const Color ink = strong ? t.on_primary : item.enabled ? t.text : t.disabled_text;
        const float head_height = m.line_height(head.role) * static_cast<float>(head.lines.size());
        const float top = cell.center().y - (head_height + detail_height) / 2;
        ui.draw_fitted(head, {box.x0, top, box.x1, top + head_height}, Weight::medium, ink, Align::center);
        if (!item.detail.empty()) {
            const Rect lower{box.x0, top + head_height, box.x1, top + head_height + detail_height};
            ui.draw_fitted(detail, lower, Weight::regular, strong ? t.on_primary : t.text2, Align::center);
        }
        const bool divider = i > 0 && !on && static_cast<int>(i) != selected + 1;
        if (divider)
            ui.canvas().fill_rect({cell.x0, cell.y0 + m.pad, cell.x0 + m.hairline, cell.y1 - m.pad}, t.hairline);
    }
    ui.canvas().stroke_rect(rect, t.outline, m.outline, m.radius);
    ui.focus_ring(focused_cell, !focused_cell.empty());
    return chosen;
}

std::optional<std::size_t> Ui::chips(std::string_view id, std::span<const ChipItem> items) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const float height = m.target_size(TargetClass::row);
    const float whole = ui.place_width();
    const float pad = m.pad;

    std::vector<Rect> rects;  // from (0, 0)
    float x = 0;
    float y = 0;
    for (const ChipItem& item : items) {
        const float wanted = text_width(item.label, TextRole::body, Weight::medium) + 2 * pad;
        const float width = std::min(whole, std::max(height, std::ceil(wanted)));
        if (x > 0 && x + width > whole) {
            x = 0;
            y += height + m.gap;
        }
        rects.push_back({x, y, x + width, y + height});
        x += width + m.gap;
    }
    const Rect area = ui.place(items.empty() ? 0 : y + height);
    std::optional<std::size_t> tapped;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const ChipItem& item = items[i];
        const Rect rect = rects[i].moved(area.x0, area.y0);
        const Rect box = rect.inset(pad / 2, m.dp(4));
        const FittedText fitted = ui.fit(item.label, TextRole::body, Weight::medium, box.width(), box.height());
        Target target{part_id(id, item.id, i), item.label, rect};
        target.enabled = item.enabled;
        target.selected = item.selected;
        target.label_clipped = fitted.clipped;
        const Interaction did = ui.interact(std::move(target));
        if (did.tapped) tapped = i;
        const bool pressed = did.pressed || did.tapped;
        const bool strong = pressed || item.selected;
        ui.canvas().fill_rect(rect, pressed ? t.pressed : item.selected ? t.primary : t.surface, m.radius);
        if (!strong) ui.canvas().stroke_rect(rect, t.outline, m.outline, m.radius);
        const Color ink = strong ? t.on_primary : item.enabled ? t.text : t.disabled_text;
        ui.draw_fitted(fitted, box, Weight::medium, ink, Align::center);
        ui.focus_ring(rect, did.focused);
    }
    return tapped;
}

}  // namespace sillwalk::ui
