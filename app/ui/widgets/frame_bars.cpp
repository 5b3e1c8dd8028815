#include "app/ui/draw/outcome_mark.hpp"
#include "app/ui/ui_impl.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

namespace {

/// Icon over label in a box that is filled when selected. What a finger hits may be narrower than what is drawn.
bool rail_item(Ui::Impl& ui, const std::string& id, const RailItem& item, const Rect& rect, const Rect& hit,
               bool selected, Color icon_ink) {
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const Rect box = rect.inset(m.dp(3), m.dp(2));
    const float icon_space = m.icon + m.dp(6);
    const float room = box.height() - icon_space - m.dp(4);
    const FittedText label = ui.fit(item.label, TextRole::caption, Weight::medium, box.width(), room);
    Target target{id, item.label, hit};
    target.selected = selected;
    target.label_clipped = label.clipped;
    const Interaction did = ui.interact(std::move(target));
    const bool pressed = did.pressed || did.tapped;
    if (pressed || selected) ui.canvas().fill_rect(box, pressed ? t.pressed : t.primary, m.radius);
    const Color ink = pressed || selected ? t.on_primary : t.text2;
    const float lines = m.line_height(TextRole::caption) * static_cast<float>(label.lines.size());
    const float top = rect.center().y - (icon_space + lines) / 2;
    const Color sign = pressed || selected ? ink : icon_ink;
    draw_icon(ui.canvas(), item.icon, {rect.center().x, top + m.icon / 2}, m.icon, sign);
    if (item.attention) {
        const Point at{rect.center().x + m.icon * 0.75F, top + m.icon * 0.2F};
        ui.canvas().stroke_circle(at, m.dp(6), ink, m.dp(2.5F));
    }
    const Rect text{box.x0, top + icon_space, box.x1, top + icon_space + lines};
    ui.draw_fitted(label, text, selected ? Weight::medium : Weight::regular, ink, Align::center);
    ui.focus_ring(box.inset(m.focus), did.focused);
    return did.tapped;
}

}  // namespace

void Ui::set_rail_words(std::span<const RailItem> items) {
    Metrics& m = impl_->metrics;
    if (m.compact()) return;
    float widest = 0;
    for (const RailItem& item : items) {
        widest = std::max(widest, text_width(item.label, TextRole::smallest, Weight::medium));
    }
    m.rail_width = std::max(m.rail_width, std::ceil(std::min(widest + m.dp(10), m.mm(26))));
}

Regions Ui::regions(bool with_answer_bar) const {
    const Metrics& m = impl_->metrics;
    Regions out;
    Rect rest = m.screen;
    if (m.compact()) {
        out.bottom_bar = rest.cut_bottom(m.bottom_height);
    } else {
        out.rail = m.left_handed ? rest.cut_right(m.rail_width) : rest.cut_left(m.rail_width);
    }
    if (with_answer_bar) out.answer_bar = rest.cut_bottom(m.answer_height);
    out.top_bar = rest.cut_top(m.top_height);
    const float side = m.compact() ? m.edge : m.gutter;
    const float bottom = std::min(rest.y1 - m.gap, m.screen.y1 - m.edge);
    out.content = {rest.x0 + side, rest.y0 + m.gap, rest.x1 - std::max(side, m.edge), bottom};
    impl_->regions = out;
    return out;
}

std::optional<std::size_t> Ui::rail(std::string_view id, std::span<const RailItem> items, int selected,
                                    std::string_view home_label) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const Rect whole = ui.regions.rail;
    std::optional<std::size_t> tapped;
    if (whole.empty()) return tapped;
    const Rect ground{whole.x0, 0, whole.x1, ui.input.height};
    ui.canvas().fill_rect(ground, t.surface);
    const float edge_x = m.left_handed ? whole.x0 : whole.x1 - m.hairline;
    ui.canvas().fill_rect({edge_x, ground.y0, edge_x + m.hairline, ground.y1}, t.hairline);

    Rect rest = whole;
    const std::string base(id);
    if (!home_label.empty()) {
        Rect box = rest.cut_top(m.top_height, m.gap);
        box.y0 += m.edge;
        ui.new_region();
        if (rail_item(ui, base + ".home", {"home", std::string(home_label), Icon::home}, box, box, false, t.route))
            tapped = items.size();
    }
    rest.y1 -= m.edge;
    const float least = m.target_size(TargetClass::row);
    const auto count = static_cast<float>(items.size());
    const float gap = m.gap;
    const float fair = (rest.height() + gap) / count - gap;
    const float height = std::max(least, std::min(fair, m.bottom_height - m.edge));
    auto scope = scroll(base + ".list", rest);
    ui.layout().gap = gap;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const Rect box = ui.place(height);
        if (rail_item(ui, base + "." + items[i].id, items[i], box, box, static_cast<int>(i) == selected, t.text2))
            tapped = i;
    }
    return tapped;
}

std::optional<std::size_t> Ui::bottom_bar(std::string_view id, std::span<const RailItem> items, int selected) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const Rect ground = ui.regions.bottom_bar;
    std::optional<std::size_t> tapped;
    if (ground.empty()) return tapped;
    ui.new_region();
    ui.canvas().fill_rect({0, ground.y0, ui.input.width, ui.input.height}, t.surface);
    ui.canvas().fill_rect({0, ground.y0, ui.input.width, ground.y0 + m.hairline}, t.hairline);
    const Rect whole{ground.x0 + m.edge, ground.y0, ground.x1 - m.edge, ground.y1 - m.edge};
    const auto count = static_cast<float>(items.size());
    const float gap = m.gap;
    const float width = (whole.width() - gap * (count - 1)) / count;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const float x = whole.x0 + (width + gap) * static_cast<float>(i);
        const Rect box{std::round(x), whole.y0, std::round(x + width), whole.y1};
        const std::string item_id = std::string(id) + "." + items[i].id;
        const Rect drawn = box.inset(1 - gap / 2, 0);
        if (rail_item(ui, item_id, items[i], drawn, box, static_cast<int>(i) == selected, t.text2)) tapped = i;
    }
    return tapped;
}

std::optional<int> Ui::top_bar(std::string_view title, const TopBarOptions& o) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    Rect bar = ui.regions.top_bar;
    bar.y0 += m.edge;
    ui.new_region();
    std::optional<int> tapped;
    const float side = m.target_size(TargetClass::row);
    const float gap = m.gap;
    Rect rest = bar;
    rest.x0 = ui.regions.content.x0;
    rest.x1 = ui.regions.content.x1;
    if (o.back) {
        const Rect box = rest.cut_left(side, m.gap);
        if (button("top.back", ui.words.back, {.style = ButtonStyle::quiet, .icon = Icon::arrow_left, .rect = box}))
            tapped = -1;
    }
    for (std::size_t i = o.actions.size(); i-- > 0;) {
        const BarAction& action = o.actions[i];
        const float width = action.icon != Icon::none
                                ? side
                                : std::max(side, text_width(action.label, TextRole::body, Weight::medium) + 2 * m.pad);
        const Rect box = rest.cut_right(width, gap);
        Target target{"top." + action.id, action.label, box};
        target.enabled = action.enabled;
        const Interaction did = ui.interact(std::move(target));
        if (did.tapped) tapped = static_cast<int>(i);
        const bool pressed = did.pressed || did.tapped;
        const Rect face = box.inset(m.dp(8));
        const Color ink = pressed ? t.on_primary : action.enabled ? t.text : t.disabled_text;
        ui.canvas().fill_rect(face, pressed ? t.pressed : t.surface, m.radius);
        ui.canvas().stroke_rect(face, t.hairline, m.hairline, m.radius);
        if (action.icon != Icon::none) {
            draw_icon(ui.canvas(), action.icon, box.center(), m.icon * 0.9F, ink);
        } else {
            ui.canvas().text_centered(box.center(), action.label, {TextRole::body, Weight::medium, ink, Align::center});
        }
        ui.focus_ring(face, did.focused);
    }
    const float status_width = text_width(o.status, TextRole::caption, Weight::regular);
    const float title_width = word_width(title, TextRole::section, Weight::medium);
    if (!o.status.empty() && !m.compact() && rest.width() - status_width - m.gap >= title_width) {
        const Rect box = rest.cut_right(status_width, m.gap);
        text_at({box.x0, box.center().y + m.cap_height(TextRole::caption) / 2}, o.status,
                {TextRole::caption, Weight::regular, t.text2, Align::left}, 0, "top.status");
    }
    const float lower = o.subtitle.empty() ? 0 : m.line_height(TextRole::caption);
    // A long title takes two smaller lines rather than losing its end.
    const FittedText head = ui.fit(title, TextRole::section, Weight::medium, rest.width(), bar.height() - lower);
    const float lines = m.line_height(head.role) * static_cast<float>(head.lines.size());
    const float top = bar.center().y - (lines + lower) / 2;
    const Rect head_box{rest.x0, top, rest.x1, top + lines};
    ui.draw_fitted(head, head_box, Weight::medium, t.text, Align::left);
    ui.record_text("top.title", title, head_box, head.clipped);
    if (!o.subtitle.empty()) {
        const float baseline = head_box.y1 + (m.line_height(TextRole::caption) + m.cap_height(TextRole::caption)) / 2;
        text_at({rest.x0, baseline}, o.subtitle, {TextRole::caption, Weight::regular, t.text2, Align::left},
                rest.width(), "top.subtitle");
    }
    return tapped;
}

bool Ui::answer_bar(std::string_view id, const AnswerBarOptions& o) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const Rect bar = ui.regions.answer_bar;
    if (bar.empty()) return false;
    ui.new_region();
    const TextRole role = m.compact() ? TextRole::row : TextRole::value;
    TextRole badge_role = m.compact() ? TextRole::caption : TextRole::body;
    const std::string word = o.badge.has_value() ? std::string(ui.badge_word(*o.badge, o.badge_word)) : std::string();

    Rect inner = bar.inset(m.compact() ? m.edge : m.gutter, m.dp(8));
    inner.cut_right(m.icon * 0.8F, m.dp(6));
    const bool roomy = !m.compact() && inner.width() > m.mm(110);
    Rect left;
    Rect right;
    if (o.left && !m.compact()) left = inner.cut_left(inner.height(), m.gutter);
    if (o.right && roomy) right = inner.cut_right(m.mm(34), m.gutter);
    const float share = m.answer_head() / (m.answer_head() + m.answer_reason());
    const Rect head_box{inner.x0, inner.y0, inner.x1, inner.y0 + inner.height() * share};
    const Rect reason_box{inner.x0, head_box.y1, inner.x1, inner.y1};
    float badge_w = 0;
    const auto head_beside_badge = [&] {
        badge_w = o.badge.has_value() ? badge_width(*o.badge, word, badge_role) : 0;
        const float head_room = inner.width() - (badge_w > 0 ? badge_w + m.gap * 1.5F : 0);
        return ui.fit(o.headline, role, Weight::medium, head_room, head_box.height());
    };
    FittedText head = head_beside_badge();
    while (head.clipped && badge_w > 0 && badge_role != TextRole::smallest) {
        badge_role = static_cast<TextRole>(static_cast<int>(badge_role) - 1);
        head = head_beside_badge();
    }
    const TextRole reason_role = m.compact() ? TextRole::caption : TextRole::body;
    const FittedText reason = ui.fit(o.reason, reason_role, Weight::regular, reason_box.width(), reason_box.height());

    // The bar is drawn to the edges; what a finger hits keeps its distance to the navigation.
    Rect hit = bar;
    if (m.compact()) {
        hit.y1 -= m.gap;
    } else {
        (m.left_handed ? hit.x1 : hit.x0) += m.left_handed ? -m.gap : m.gap;
    }
    Target target{std::string(id), join_label({o.headline, word, o.reason}), hit};
    target.target_class = TargetClass::row;
    target.label_clipped = head.clipped || reason.clipped;
    const Interaction did = ui.interact(std::move(target));

    Canvas& canvas = ui.canvas();
    canvas.fill_rect({bar.x0, bar.y0, bar.x1, m.compact() ? bar.y1 : ui.input.height},
                     did.pressed ? t.selected_tint : t.surface);
    canvas.fill_rect({bar.x0, bar.y0, bar.x1, bar.y0 + m.outline * 0.75F}, t.outline);
    draw_icon(canvas, Icon::right, {bar.x1 - m.edge - m.icon * 0.2F, bar.center().y}, m.icon * 0.8F, t.text2);
    float widest = 0;
    for (const TextLine& line : head.lines) widest = std::max(widest, ui.line_width(line, head.role, Weight::medium));
    float text_x = inner.x0;
    if (o.badge.has_value()) {
        const float x = m.compact() ? inner.x0 : inner.x0 + widest + m.gap * 1.5F;
        draw_badge(canvas, t, {std::round(x), head_box.center().y}, *o.badge, word, badge_role);
        if (m.compact()) text_x += badge_w + m.gap;
    }
    ui.draw_fitted(head, {text_x, head_box.y0, inner.x1, head_box.y1}, Weight::medium, t.text, Align::left);
    ui.draw_fitted(reason, reason_box, Weight::regular, t.text2, Align::left);
    if (!left.empty()) o.left(canvas, left);
    if (!right.empty()) o.right(canvas, right);
    if (o.flash) canvas.stroke_rect(bar, t.focus, m.focus);
    ui.focus_ring(bar.inset(m.focus), did.focused);
    return did.tapped;
}

}  // namespace sillwalk::ui
