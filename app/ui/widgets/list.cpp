#include "app/ui/ui_impl.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

void Ui::list(std::string_view id, const Rect& whole, std::size_t count, const std::function<void(std::size_t)>& row,
              const ListOptions& options) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const float height = options.row_height > 0 ? options.row_height : m.target_size(TargetClass::row);
    const float step = height + m.gap;
    ScrollState& state = ui.scrolls[std::string(id)];
    // The screen turned or its text grew: keep the same first row.
    if (state.row_step > 0 && state.row_step != step) state.offset *= step / state.row_step;
    state.row_step = step;

    const float length = static_cast<float>(count) * step;
    Rect view = whole;
    const bool chips_shown = options.jump_chips && !options.top_label.empty() && length > 3 * whole.height();
    if (chips_shown) {
        const Rect bar = view.cut_bottom(m.target_size(TargetClass::row), m.gap);
        const std::vector<Rect> halves = columns(bar, {1, 1});
        const std::string base(id);
        if (button(base + ".top", options.top_label, {.icon = Icon::up, .rect = halves[0]})) scroll_to(id, 0);
        if (button(base + ".end", options.end_label, {.icon = Icon::down, .rect = halves[1]})) scroll_to(id, length);
    }
    state.offset = std::clamp(state.offset, 0.0F, std::max(0.0F, length - m.gap - view.height()));

    auto scope = scroll(id, view);
    const auto first_in_view = static_cast<std::size_t>(state.offset / step);
    const auto rows_in_view = static_cast<std::size_t>(std::ceil(view.height() / step)) + 1;
    // One row more on each side, so that the keyboard can walk on.
    const std::size_t begin = first_in_view > 0 ? std::min(first_in_view - 1, count) : 0;
    const std::size_t end = std::min(count, first_in_view + rows_in_view + 1);
    ui.advance(static_cast<float>(begin) * step - m.gap);
    for (std::size_t i = begin; i < end; ++i) {
        ui.push_column(ui.place(height), 0);
        row(i);
        ui.pop_layout();
    }
    ui.advance(static_cast<float>(count - end) * step - m.gap);
}

void Ui::scroll_to_row(std::string_view list_id, std::size_t row) {
    const ScrollState& state = impl_->scrolls[std::string(list_id)];
    scroll_to(list_id, static_cast<float>(row) * state.row_step);
}

std::size_t Ui::first_row(std::string_view list_id) const {
    const auto found = impl_->scrolls.find(list_id);
    if (found == impl_->scrolls.end() || found->second.row_step <= 0) return 0;
    return static_cast<std::size_t>(std::lround(found->second.offset / found->second.row_step));
}

}  // namespace sillwalk::ui
