#include "app/ui/ui_impl.hpp"

#include <algorithm>

namespace sillwalk::ui {

namespace {

/// Scrolls so that the whole rectangle is in view, with a little of its neighbours.
void bring_into_view(ScrollState& state, const Rect& rect, float margin) {
    if (rect.y0 - margin < state.view.y0) state.offset -= state.view.y0 - (rect.y0 - margin);
    if (rect.y1 + margin > state.view.y1) state.offset += rect.y1 + margin - state.view.y1;
    state.offset = std::max(0.0F, state.offset);
}

}  // namespace

Interaction Ui::Impl::interact(Target target) {
    target.visible = target.rect.intersected(clip());
    if (target.visible.empty()) target.visible = {};
    target.region = region;
    if (!scroll_stack.empty()) target.scroll_area = scroll_stack.back();

    Interaction out;
    out.at = target.rect.center();
    const std::string& id = target.id;
    out.focused = focus_visible && focus == id;
    if (out.focused && focus_moved && !target.scroll_area.empty()) {
        bring_into_view(scrolls[target.scroll_area], target.rect, metrics.gap * 2);
        extra_frame = true;
    }
    if (target.enabled) {
        if (touch.tap.has_value() && touch.tap->id == id) {
            out.tapped = true;
            out.at = touch.tap->at;
            focus = id;
        }
        out.tapped = out.tapped || key_tap == id;
        out.long_pressed = touch.long_press.has_value() && touch.long_press->id == id;
        out.pressed = touch.pressed == id;
        if (touch.drag.has_value() && touch.drag->id == id) {
            out.dragging = true;
            out.drag_ended = touch.drag->ended;
            out.drag_delta = touch.drag->delta;
            out.zoom = touch.drag->zoom;
            out.at = touch.drag->at;
        }
        if (out.focused) out.steps = key_steps;
    }
    drawing.add(std::move(target));
    return out;
}

void Ui::Impl::focus_ring(const Rect& rect, bool focused) {
    if (!focused) return;
    canvas().stroke_rect(rect.inset(-metrics.focus), theme().focus, metrics.focus, metrics.radius + metrics.focus);
}

bool Ui::Impl::take_typed(char32_t code) {
    const auto found = std::find(typed.begin(), typed.end(), code);
    if (found == typed.end()) return false;
    typed.erase(found);
    return true;
}

}  // namespace sillwalk::ui
