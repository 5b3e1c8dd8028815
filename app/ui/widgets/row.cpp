#include "app/ui/draw/outcome_mark.hpp"
#include "app/ui/draw/strokes.hpp"
#include "app/ui/ui_impl.hpp"

#include <algorithm>

namespace sillwalk::ui {

namespace {

/// How a row is set: usually name left, value and badge right; with little room these stand below the name.
struct RowShape {
    const RowOptions& o;
    std::string_view word;    ///< of the badge
    bool mark_first = false;  ///< before the name; the mark of a detail stands before that
    bool badge_below = false;
    bool value_below = false;
    std::string below{};  ///< value and detail, where they stand together

    [[nodiscard]] std::string_view value() const { return value_below ? std::string_view() : o.value; }
    [[nodiscard]] std::string_view unit() const { return value_below ? std::string_view() : o.unit; }
    [[nodiscard]] std::string_view detail() const { return value_below ? below : o.detail; }
};

/// Where the parts of a row lie, from its outer rectangle.
struct RowParts {
    Rect text;  ///< name and detail
    float value_end = 0;
    float icon_x = 0;
    float mark_x = 0;
};

float right_width(const Ui& ui, const RowShape& shape) {
    const Metrics& m = ui.metrics();
    const RowOptions& o = shape.o;
    float width = 0;
    if (o.badge.has_value() && !shape.badge_below) width = ui.badge_width(*o.badge, shape.word);
    if (!shape.value().empty()) {
        width = std::max(width, 0.0F) + ui.text_width(o.value, o.value_role, Weight::medium) + (width > 0 ? m.gap : 0);
        if (!o.unit.empty()) width += ui.text_width(o.unit, TextRole::body, Weight::regular) + m.dp(8);
    }
    if (o.chevron) width += m.icon * 0.6F + (width > 0 ? m.dp(8) : 0);
    return width;
}

RowParts split_row(const Ui& ui, const Rect& rect, const RowShape& shape) {
    const Metrics& m = ui.metrics();
    RowParts parts;
    parts.text = rect.inset(m.pad, m.dp(6));
    if (shape.o.icon != Icon::none) {
        parts.icon_x = parts.text.x0 + m.icon / 2;
        parts.text.x0 += m.icon + m.dp(14);
    }
    if (shape.mark_first) {
        parts.mark_x = parts.text.x0 + m.icon * 0.42F;
        parts.text.x0 += m.icon * 0.84F + m.dp(14);
    }
    parts.value_end = rect.x1 - m.pad;
    const float right = right_width(ui, shape);
    if (right > 0) parts.text.x1 -= right + m.gap;
    return parts;
}

RowShape shape_of(const Ui& ui, std::string_view name, float width, const RowOptions& options, std::string_view word) {
    RowShape shape{options, word, options.mark.has_value() && options.value.empty()};
    const auto text_width = [&] { return split_row(ui, {0, 0, width, 0}, shape).text.width(); };
    float least = std::max(ui.word_width(name, TextRole::body, Weight::medium),
                           ui.word_width(options.detail, TextRole::caption, Weight::regular));
    least = std::max(least, width * 0.3F);
    if (!options.value.empty() && text_width() < least) {
        shape.below = options.unit.empty() ? options.value : options.value + "\u2009" + options.unit;
        if (!options.detail.empty()) shape.below += ", " + options.detail;
        shape.value_below = true;
        least = std::max(least, ui.word_width(shape.below, TextRole::caption, Weight::regular));
    }
    shape.badge_below = options.badge.has_value() && text_width() < least;
    return shape;
}

}  // namespace

bool Ui::row(std::string_view id, std::string_view name, const RowOptions& options) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const float least = m.target_size(TargetClass::row);
    const float width = options.rect.empty() ? ui.place_width() : options.rect.width();
    const RowShape shape =
        shape_of(*this, name, width, options,
                 options.badge.has_value() ? ui.badge_word(*options.badge, options.badge_word) : std::string_view());
    const RowOptions& o = options;
    const std::string_view detail_text = shape.detail();
    const float detail_indent = o.mark.has_value() && !shape.mark_first ? m.cap_height(TextRole::caption) * 1.9F : 0;
    const float badge_room = shape.badge_below ? badge_height(ui.canvas(), TextRole::caption) + m.dp(8) : 0;

    Rect rect = o.rect;
    if (rect.empty()) {
        const RowParts probe = split_row(*this, {0, 0, width, least}, shape);
        float needed = text_height(name, TextRole::body, Weight::medium, probe.text.width()) + m.dp(16) + badge_room;
        if (!detail_text.empty()) {
            needed += text_height(detail_text, TextRole::caption, Weight::regular, probe.text.width() - detail_indent);
        }
        rect = ui.place(std::max(least, needed));
    }
    RowParts parts = split_row(*this, rect, shape);
    const Rect badge_box = parts.text.cut_bottom(badge_room);
    const float detail_width = parts.text.width() - detail_indent;
    FittedText detail;
    float detail_height = 0;
    if (!detail_text.empty()) {
        const float room = parts.text.height() - m.text_size(TextRole::caption);
        detail = ui.fit(detail_text, TextRole::caption, Weight::regular, detail_width, room);
        detail_height = m.line_height(detail.role) * static_cast<float>(detail.lines.size());
    }
    const FittedText head =
        ui.fit(name, TextRole::body, Weight::medium, parts.text.width(), parts.text.height() - detail_height);
    const bool value_cut = parts.text.width() < m.dp(24);

    Interaction did;
    const std::string label = join_label({name, options.value, options.unit, options.detail, shape.word});
    if (o.touchable) {
        Target target{std::string(id), label, rect};
        target.enabled = o.enabled;
        target.selected = o.selected;
        target.label_clipped = head.clipped || detail.clipped || value_cut;
        did = ui.interact(std::move(target));
    } else {
        ui.record_text(id, label, rect, head.clipped || detail.clipped || value_cut);
    }
    if (rect.intersected(ui.clip()).empty()) return did.tapped;

    const bool strong = did.pressed || did.tapped || o.selected;
    const Color ground = did.pressed || did.tapped ? t.pressed : o.selected ? t.primary : t.surface;
    const Color ink = strong ? t.on_primary : o.enabled ? t.text : t.disabled_text;
    const Color ink2 = strong ? t.on_primary : o.enabled ? t.text2 : t.disabled_text;
    Canvas& canvas = ui.canvas();
    if (o.framed) {
        canvas.fill_rect(rect, ground, m.radius);
        if (o.dashed) {
            dashed_rect(canvas, rect, t.line_of(Badge::not_known), m.outline);
        } else {
            canvas.stroke_rect(rect, t.hairline, m.hairline, m.radius);
        }
    } else {
        if (strong) canvas.fill_rect(rect, ground);
        canvas.fill_rect({rect.x0, rect.y1 - m.hairline, rect.x1, rect.y1}, t.hairline);
    }
    if (o.icon != Icon::none) draw_icon(canvas, o.icon, {parts.icon_x, rect.center().y}, m.icon, ink);

    const float head_height = m.line_height(head.role) * static_cast<float>(head.lines.size());
    const float between = detail_text.empty() ? 0 : m.dp(4);
    const float top = parts.text.center().y - (head_height + between + detail_height) / 2;
    ui.draw_fitted(head, {parts.text.x0, top, parts.text.x1, top + head_height}, Weight::medium, ink, Align::left);
    if (!detail_text.empty()) {
        const Rect box{parts.text.x0 + detail_indent, top + head_height + between, parts.text.x1,
                       top + head_height + between + detail_height};
        const Color color = o.mark.has_value() && !strong ? t.line_of(*o.mark) : ink2;
        ui.draw_fitted(detail, box, Weight::regular, color, Align::left);
    }
    if (o.mark.has_value()) {
        const Color color = strong ? t.on_primary : t.line_of(*o.mark);
        const float small = m.cap_height(TextRole::caption) * 0.72F;
        const Point at = shape.mark_first
                             ? Point{parts.mark_x, rect.center().y}
                             : Point{parts.text.x0 + small, top + head_height + between + detail_height / 2};
        draw_outcome_mark(canvas, at, shape.mark_first ? m.icon * 0.42F : small, *o.mark, color, ground);
    }
    float end = parts.value_end;
    if (o.chevron) {
        draw_icon(canvas, Icon::right, {end - m.icon * 0.25F, rect.center().y}, m.icon * 0.7F, ink2);
        end -= m.icon * 0.6F + m.dp(8);
    }
    if (shape.badge_below) {
        draw_badge(canvas, t, {badge_box.x0, badge_box.center().y - m.dp(4)}, *o.badge, shape.word, TextRole::caption);
    } else if (o.badge.has_value()) {
        const float badge = badge_width(*o.badge, shape.word);
        draw_badge(canvas, t, {end - badge, rect.center().y}, *o.badge, shape.word, TextRole::caption);
        end -= badge + m.gap;
    }
    if (!shape.value().empty()) {
        const float baseline = rect.center().y + m.cap_height(o.value_role) / 2;
        if (!o.unit.empty()) {
            canvas.text({end, baseline}, o.unit, {TextRole::body, Weight::regular, ink2, Align::right});
            end -= text_width(o.unit, TextRole::body, Weight::regular) + m.dp(8);
        }
        canvas.text({end, baseline}, o.value, {o.value_role, Weight::medium, ink, Align::right});
    }
    ui.focus_ring(rect, did.focused);
    return did.tapped;
}

}  // namespace sillwalk::ui
