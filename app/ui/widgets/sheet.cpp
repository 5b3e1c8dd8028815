#include "app/ui/ui_impl.hpp"

#include <algorithm>

namespace sillwalk::ui {

namespace {

Rect sheet_rect(const Ui::Impl& ui, const SheetOptions& o) {
    const Metrics& m = ui.metrics;
    Rect rect = m.screen;
    if (!ui.regions.rail.empty()) {
        if (m.left_handed) {
            rect.x1 = ui.regions.rail.x0;
        } else {
            rect.x0 = ui.regions.rail.x1;
        }
    }
    if (!ui.regions.answer_bar.empty() && !m.compact()) rect.y1 = ui.regions.answer_bar.y0;
    if (o.place == SheetPlace::bottom) {
        const float height = o.height > 0 ? o.height : m.screen.height() / 2;
        Rect low = m.screen;
        return low.cut_bottom(std::min(height, m.screen.height()));
    }
    if (o.place == SheetPlace::side && m.width_class == WidthClass::expanded) {
        const float half = rect.width() / 2;
        return m.left_handed ? rect.cut_left(half) : rect.cut_right(half);
    }
    return rect;
}

}  // namespace

Scope Ui::sheet(std::string_view id, std::string_view title, bool& closed, const SheetOptions& o) {
    Impl* ui = impl_.get();
    const Metrics& m = ui->metrics;
    const Theme& t = ui->theme();
    const Rect rect = sheet_rect(*ui, o);
    const Rect screen{0, 0, ui->input.width, ui->input.height};
    if (o.modal) {
        ui->canvas().fill_rect(screen, Color{0, 0, 0, 110});
        ui->drawing.cover(screen);
    } else {
        ui->drawing.cover(rect);
    }
    ui->new_region();
    ui->canvas().fill_rect(rect, t.background);
    if (o.place != SheetPlace::content) ui->canvas().stroke_rect(rect, t.outline, m.outline);

    Rect inner = rect.inset(m.compact() ? m.edge : m.gutter, 0);
    inner.y0 = std::max(inner.y0, m.screen.y0 + m.edge);
    inner.y1 = std::min(inner.y1 - m.gap, m.screen.y1 - m.edge);
    const float close_width = o.close_button ? m.target_size(TargetClass::row) + m.gap : 0;
    // A long title takes two smaller lines rather than losing its end; what stands below it wraps.
    const float width = inner.width() - close_width;
    const FittedText fitted =
        ui->fit(title, TextRole::section, Weight::medium, width, 2 * m.line_height(TextRole::body));
    const float lines = m.line_height(fitted.role) * static_cast<float>(fitted.lines.size());
    const float below = o.subtitle.empty() ? 0 : text_height(o.subtitle, TextRole::caption, Weight::regular, width);
    Rect head = inner.cut_top(std::max(m.top_height - m.edge, lines + below), m.gap);
    if (o.close_button) {
        const Rect box = head.cut_right(m.target_size(TargetClass::row), m.gap)
                             .intersected({head.x0, head.y0, rect.x1, head.y0 + m.target_size(TargetClass::row)});
        const std::string close_id = std::string(id) + ".close";
        closed = button(close_id, ui->words.close, {.style = ButtonStyle::quiet, .icon = Icon::close, .rect = box});
        closed = closed || key_pressed(Key::escape);
    }
    const float top = head.center().y - (lines + below) / 2;
    const Rect title_box{head.x0, top, head.x1, top + lines};
    ui->draw_fitted(fitted, title_box, Weight::medium, t.text, Align::left);
    ui->record_text(std::string(id) + ".title", title, title_box, fitted.clipped);
    if (!o.subtitle.empty()) {
        const auto under = column({head.x0, title_box.y1, head.x1, head.y1}, 0);
        caption(o.subtitle);
    }
    ui->push_clip(rect);
    ui->push_column(inner, -1);
    return Scope([ui] {
        ui->pop_layout();
        ui->pop_clip();
    });
}

bool Ui::toast(std::string_view id, std::string_view text, double since, const ToastOptions& o) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const double left = since + o.seconds - ui.input.now;
    if (left <= 0) return false;
    ui.wake_in(left);

    const Regions& r = ui.regions;
    Rect area = r.content.empty() ? m.screen : r.content;
    const float action_width = o.action.empty()
                                   ? 0
                                   : std::max(m.target_size(TargetClass::row) * 1.4F,
                                              text_width(o.action, TextRole::row, Weight::medium) + 2 * m.pad);
    const float inner = std::min(area.width(), m.mm(120)) - 2 * m.pad - (action_width > 0 ? action_width + m.gap : 0);
    const FittedText fitted = ui.fit(text, TextRole::body, Weight::medium, inner, m.line_height(TextRole::body) * 3);
    const float lines = m.line_height(fitted.role) * static_cast<float>(fitted.lines.size());
    const float height = std::max(m.target_size(TargetClass::row), lines) + 2 * m.gap;
    float widest = 0;
    for (const TextLine& line : fitted.lines)
        widest = std::max(widest, ui.line_width(line, fitted.role, Weight::medium));
    const float width = widest + 2 * m.pad + (action_width > 0 ? action_width + m.gap : 0);
    const float x0 = area.center().x - width / 2;
    const Rect box{x0, area.y1 - height - m.gap, x0 + width, area.y1 - m.gap};

    ui.drawing.cover(box);
    ui.new_region();
    ui.canvas().fill_rect(box, t.text, m.radius);
    const Rect text_box{box.x0 + m.pad, box.y0, box.x0 + m.pad + widest, box.y1};
    ui.draw_fitted(fitted, text_box, Weight::medium, t.surface, Align::left);
    ui.record_text(id, text, text_box, fitted.clipped);
    if (o.action.empty()) return false;
    Rect key = box.inset(m.gap);
    key = key.cut_right(action_width);
    return button(std::string(id) + ".action", o.action, {.rect = key});
}

}  // namespace sillwalk::ui
