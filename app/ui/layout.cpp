#include "app/ui/draw/strokes.hpp"
#include "app/ui/ui_impl.hpp"
#include "engine/base/contract.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sillwalk::ui {

namespace {

constexpr float endless = 1e9F;

void dashed_card_outline(Canvas& canvas, const Rect& box, const Theme& theme, float width) {
    dashed_rect(canvas, box, theme.line_of(Badge::not_known), width);
}

/// Shows where in the list one is; not a target.
void draw_scroll_indicator(Canvas& canvas, const ScrollState& state, const Theme& theme, const Metrics& metrics) {
    if (state.max_offset <= 0) return;
    const float whole = state.view.height() + state.max_offset;
    const float length = std::max(metrics.dp(24), state.view.height() * state.view.height() / whole);
    const float top = state.view.y0 + (state.view.height() - length) * state.offset / state.max_offset;
    const float width = metrics.dp(4);
    const float x = state.view.x1 + width;  // in the margin, so that it covers nothing
    canvas.fill_rect({x, top, x + width, top + length}, theme.outline, width / 2);
}

}  // namespace

Layout& Ui::Impl::layout() {
    EXPECT_CONTRACT(!layouts.empty());  // a widget without a rect needs a column, card or scroll around it
    return layouts.back();
}

float Ui::Impl::place_width() const {
    EXPECT_CONTRACT(!layouts.empty());
    const Layout& now = layouts.back();
    if (now.cells.empty()) return now.bounds.width();
    EXPECT_CONTRACT(now.next_cell < now.cells.size());
    return now.cells[now.next_cell].width();
}

Rect Ui::Impl::place(float height) {
    Layout& now = layout();
    if (now.cells.empty()) {
        const Rect rect{now.bounds.x0, now.cursor, now.bounds.x1, now.cursor + height};
        now.cursor += height + now.gap;
        return rect;
    }
    EXPECT_CONTRACT(now.next_cell < now.cells.size());  // more widgets than cells
    const Rect& cell = now.cells[now.next_cell++];
    now.cell_height = std::max(now.cell_height, height);
    return {cell.x0, cell.y0, cell.x1, cell.y0 + std::max(height, cell.height())};
}

void Ui::Impl::advance(float height) {
    (void)place(height);
}

void Ui::Impl::push_column(const Rect& rect, float gap) {
    layouts.push_back({rect, rect.y0, gap < 0 ? metrics.gap : gap, {}, 0, 0});
}

void Ui::Impl::pop_layout() {
    EXPECT_CONTRACT(!layouts.empty());
    layouts.pop_back();
}

void Ui::Impl::push_clip(const Rect& rect) {
    clips.push_back(rect.intersected(clips.back()));
    canvas().push_clip(rect);
}

void Ui::Impl::pop_clip() {
    clips.pop_back();
    canvas().pop_clip();
}

Rect Ui::Impl::clip() const {
    return clips.back();
}

Rect Ui::place(float height) {
    return impl_->place(height);
}

Rect Ui::remaining() const {
    const Layout& now = impl_->layout();
    if (!now.cells.empty()) return now.cells[std::min(now.next_cell, now.cells.size() - 1)];
    return {now.bounds.x0, now.cursor, now.bounds.x1, std::min(now.bounds.y1, impl_->clip().y1)};
}

void Ui::space(float height) {
    impl_->layout().cursor += height;
}

Scope Ui::column(const Rect& rect, float gap) {
    Impl* ui = impl_.get();
    ui->new_region();
    ui->push_column(rect, gap);
    return Scope([ui] { ui->pop_layout(); });
}

std::vector<Rect> Ui::columns(const Rect& rect, std::vector<float> weights, bool mirror) const {
    const float gutter = impl_->metrics.gutter;
    float sum = 0;
    for (const float w : weights) sum += w;
    const bool mirrored = mirror && impl_->metrics.left_handed;
    const float free = rect.width() - gutter * static_cast<float>(weights.size() - 1);
    std::vector<Rect> out(weights.size());
    float x = rect.x0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const std::size_t index = mirrored ? weights.size() - 1 - i : i;
        const float width = free * weights[index] / sum;
        out[index] = {std::round(x), rect.y0, std::round(x + width), rect.y1};
        x += width + gutter;
    }
    return out;
}

Scope Ui::cells(const std::vector<float>& weights, float height) {
    Impl* ui = impl_.get();
    const float least = height > 0 ? height : ui->metrics.target_size(TargetClass::row);
    Layout& outer = ui->layout();
    EXPECT_CONTRACT(outer.cells.empty());  // cells lie in a column
    const Rect row{outer.bounds.x0, outer.cursor, outer.bounds.x1, outer.cursor + least};
    float sum = 0;
    for (const float w : weights) sum += w;
    const float gap = ui->metrics.gap;
    const float free = row.width() - gap * static_cast<float>(weights.size() - 1);
    Layout inner{row, row.y0, gap, {}, 0, least};
    float x = row.x0;
    for (const float w : weights) {
        const float width = free * w / sum;
        inner.cells.push_back({std::round(x), row.y0, std::round(x + width), row.y1});
        x += width + gap;
    }
    ui->layouts.push_back(std::move(inner));
    return Scope([ui] {
        const float used = ui->layout().cell_height;
        ui->pop_layout();
        ui->advance(used);
    });
}

Scope Ui::card(const CardOptions& options) {
    Impl* ui = impl_.get();
    const float pad = options.pad < 0 ? ui->metrics.pad : options.pad;
    const bool fixed = !options.rect.empty();
    if (fixed) ui->new_region();
    Rect rect = options.rect;
    if (!fixed) {
        const Layout& outer = ui->layout();
        const Rect at = outer.cells.empty() ? outer.bounds : outer.cells.at(outer.next_cell);
        const float top = outer.cells.empty() ? outer.cursor : at.y0;
        rect = {at.x0, top, at.x1, endless};
    }
    ui->painter.push_layers();
    ui->push_column(rect.inset(pad), -1);
    return Scope([ui, rect, pad, fixed, options] {
        const Layout inner = ui->layout();
        ui->pop_layout();
        Rect box = rect;
        if (!fixed) {
            const float used = inner.cursor > inner.bounds.y0 ? inner.cursor - inner.gap - inner.bounds.y0 : 0;
            const Rect taken = ui->place(used + 2 * pad);
            box = taken;
        }
        ui->painter.lower_layer();
        if (!options.plain) {
            const Metrics& m = ui->metrics;
            ui->canvas().fill_rect(box, ui->theme().surface, m.radius);
            if (options.dashed) {
                dashed_card_outline(ui->canvas(), box, ui->theme(), m.outline);
            } else {
                ui->canvas().stroke_rect(box, ui->theme().hairline, m.hairline, m.radius);
            }
        }
        ui->painter.pop_layers();
    });
}

Scope Ui::scroll(std::string_view id, const Rect& view) {
    Impl* ui = impl_.get();
    ui->new_region();
    const std::string key(id);
    ScrollState& state = ui->scrolls[key];
    if (state.offset != state.drawn_offset) ++ui->passing_count;
    state.drawn_offset = state.offset;
    state.view = view;
    state.next_block = 0;
    if (state.known_since != ui->changes || state.known_width != view.width()) {
        state.block_heights.clear();
        state.blocks.clear();
    }
    state.known_since = ui->changes;
    state.known_width = view.width();
    ui->scroll_stack.push_back(key);
    ui->push_clip(view);
    ui->push_column({view.x0, view.y0 - std::round(state.offset), view.x1, endless}, -1);
    return Scope([ui, key] {
        const Layout inner = ui->layout();
        ScrollState& ended = ui->scrolls[key];
        const float used = std::max(0.0F, inner.cursor - inner.gap - inner.bounds.y0);
        ended.max_offset = std::max(0.0F, std::ceil(used - ended.view.height()));
        if (ended.offset > ended.max_offset) {
            ended.offset = ended.max_offset;
            ui->extra_frame = true;
            ++ui->passing_count;
        }
        ui->pop_layout();
        ui->pop_clip();
        ui->scroll_stack.pop_back();
        draw_scroll_indicator(ui->canvas(), ended, ui->theme(), ui->metrics);
        ui->drawing.add_scroll({key, ended.view, ended.offset, ended.max_offset, false});
    });
}

void Ui::scroll_to(std::string_view scroll_id, float offset) {
    ScrollState& state = impl_->scrolls[std::string(scroll_id)];
    state.offset = std::max(0.0F, offset);
    impl_->extra_frame = true;
}

}  // namespace sillwalk::ui
