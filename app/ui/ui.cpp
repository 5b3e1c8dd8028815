#include "app/ui/ui.hpp"

#include "app/ui/ui_impl.hpp"
#include "engine/base/contract.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

Ui::Ui(std::string_view texts) : impl_(std::make_unique<Impl>(texts)) {}
Ui::~Ui() = default;

void Ui::begin(const FrameInput& input, const UiSettings& settings) {
    Impl& ui = *impl_;
    const bool resized = ui.input.width != input.width || ui.input.height != input.height ||
                         ui.input.px_per_mm != input.px_per_mm || !(ui.input.safe_area == input.safe_area) ||
                         !(ui.settings == settings);
    if (resized) ui.remember_anchors();
    ui.input = input;
    ui.settings = settings;
    ui.colors = &sillwalk::ui::theme(settings.theme);
    ui.metrics = Metrics(input, settings);
    ui.wake = -1;
    ui.extra_frame = resized;
    ui.region = 0;
    ui.regions = {};
    ui.layouts.clear();
    ui.clips.assign(1, Rect{0, 0, input.width, input.height});
    ui.drawing.clear();
    ui.editing_shown = false;

    ui.touch = ui.gesture.advance(input, ui.seen, GestureParameters::for_screen(ui.metrics.dp(1), settings.glove));
    if (ui.touch.touched) ui.focus_visible = false;
    ui.apply_scrolls();
    ui.read_keys();
    const bool acted = ui.touch.tap.has_value() || ui.touch.long_press.has_value() || !ui.touch.held.empty() ||
                       ui.touch.drag.has_value() || !input.keys.empty() || !input.text.empty();
    if (resized || acted) ++ui.changes;
    ui.quiet = !resized && !acted && ui.editing.empty() && ui.key_tap.empty();
    ui.painter.begin(input, ui.metrics, ui.textures);
}

FrameOutput Ui::end() {
    Impl& ui = *impl_;
    EXPECT_CONTRACT(ui.layouts.empty() && ui.clips.size() == 1 && ui.scroll_stack.empty());
    ui.restore_anchors();
    if (!ui.editing_shown) ui.editing.clear();
    if (!ui.focus.empty() && ui.drawing.find(ui.focus) == nullptr) ui.focus.clear();
    ui.focus_moved = false;
    std::swap(ui.seen, ui.drawing);

    FrameOutput out;
    out.hit_map = &ui.seen;
    out.draw_data = ui.painter.end();
    out.textures = &ui.textures;
    out.background = ui.theme().background;
    const bool acted = ui.touch.tap.has_value() || !ui.key_tap.empty() || ui.touch.drag.has_value();
    out.wants_frame = ui.extra_frame || ui.gesture.wants_frame() || acted;
    const double by_touch = ui.gesture.wants_frame_in(ui.input.now);
    if (by_touch >= 0) ui.wake_in(by_touch);
    out.wants_frame_in = ui.wake;
    out.wants_text = !ui.editing.empty();
    out.text_rect = ui.editing_rect;
    return out;
}

const Metrics& Ui::metrics() const {
    return impl_->metrics;
}
const Theme& Ui::theme() const {
    return impl_->theme();
}
Canvas& Ui::canvas() {
    return impl_->canvas();
}
Textures& Ui::textures() {
    return impl_->textures;
}
double Ui::now() const {
    return impl_->input.now;
}
void Ui::set_badge_words(const BadgeWords& words) {
    impl_->words = words;
}
void Ui::wake_in(double seconds) {
    impl_->wake_in(seconds);
}

bool Ui::key_pressed(Key key) const {
    if (impl_->keys_are_text) return false;
    return std::find(impl_->unused_keys.begin(), impl_->unused_keys.end(), key) != impl_->unused_keys.end();
}

void Ui::Impl::wake_in(double seconds) {
    ++passing_count;
    wake = wake < 0 ? seconds : std::min(wake, seconds);
}

void Ui::Impl::apply_scrolls() {
    for (const ScrollStep& step : touch.scrolls) {
        const auto found = scrolls.find(step.id);
        if (found == scrolls.end()) continue;
        ScrollState& state = found->second;
        const float wanted = state.offset + step.offset;
        state.offset = std::clamp(wanted, 0.0F, state.max_offset);
        if (state.offset != wanted) gesture.stop_fling();
    }
}

void Ui::Impl::move_focus(int step) {
    const std::vector<std::string> order = seen.keyboard_order();
    if (order.empty()) return;
    const auto found = std::find(order.begin(), order.end(), focus);
    const auto count = static_cast<std::ptrdiff_t>(order.size());
    std::ptrdiff_t next = step > 0 ? 0 : count - 1;
    if (found != order.end()) next = (found - order.begin() + step + count) % count;
    focus = order[static_cast<std::size_t>(next)];
    focus_visible = true;
    focus_moved = true;
    editing.clear();
}

void Ui::Impl::read_keys() {
    key_tap.clear();
    key_steps = 0;
    unused_keys.clear();
    typed = {};
    const bool in_field = keys_are_text = !editing.empty();
    if (!in_field) {
        for (const char c : input.text) {
            const auto code = static_cast<unsigned char>(c);
            if (code < 0x80) typed.push_back(code);
        }
    }
    for (const KeyEvent& event : input.keys) {
        if (event.key == Key::tab) {
            move_focus(event.shift ? -1 : 1);
        } else if (in_field || !use_key(event.key)) {
            unused_keys.push_back(event.key);  // a field reads them (text_field.cpp), or they are short cuts
        }
    }
}

bool Ui::Impl::use_key(Key key) {
    const Target* target = focus.empty() ? nullptr : seen.find(focus);
    const bool slides = target != nullptr && target->drag == DragMode::direct;
    if ((key == Key::enter || key == Key::space) && focus_visible && target != nullptr) {
        key_tap = focus;
    } else if (slides && (key == Key::left || key == Key::right)) {
        key_steps += key == Key::right ? 1 : -1;
    } else if (key == Key::up || key == Key::left) {
        move_focus(-1);
    } else if (key == Key::down || key == Key::right) {
        move_focus(1);
    } else {
        return false;
    }
    return true;
}

void Ui::Impl::remember_anchors() {
    for (auto& [id, state] : scrolls) {
        state.anchor.clear();
        for (const Target& target : seen.targets()) {
            const bool first = target.scroll_area == id && !target.overscan && target.rect.center().y >= state.view.y0;
            if (!first) continue;
            state.anchor = target.id;
            state.anchor_below = target.rect.y0 - state.view.y0;
            break;
        }
    }
}

void Ui::Impl::restore_anchors() {
    for (auto& [id, state] : scrolls) {
        if (state.anchor.empty()) continue;
        const Target* target = drawing.find(state.anchor);
        state.anchor.clear();
        if (target == nullptr) continue;
        const float now_below = target->rect.y0 - state.view.y0;
        state.offset = std::clamp(state.offset + now_below - state.anchor_below, 0.0F, state.max_offset);
        extra_frame = true;
    }
}

}  // namespace sillwalk::ui
