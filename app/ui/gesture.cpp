#include "app/ui/gesture.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

GestureParameters GestureParameters::for_screen(float px_per_dp, bool glove) {
    GestureParameters p;
    p.slop = (glove ? 12.0F : 10.0F) * px_per_dp;
    p.fling_start = 50 * px_per_dp;
    p.fling_max = 8000 * px_per_dp;
    p.fling_stop = 15 * px_per_dp;
    return p;
}

GestureResult Gesture::advance(const FrameInput& input, const HitMap& seen, const GestureParameters& parameters) {
    parameters_ = parameters;
    result_ = {};
    for (const PointerEvent& event : input.pointers) {
        switch (event.phase) {
            case PointerPhase::down:
                down(event, seen);
                break;
            case PointerPhase::move:
                move(event, seen);
                break;
            case PointerPhase::up:
                up(event, seen);
                break;
            case PointerPhase::cancel:
                cancel();
                break;
        }
    }
    for (const WheelEvent& wheel : input.wheels) {
        const ScrollRegion* region = seen.scroll_at(wheel.at);
        if (region != nullptr) result_.scrolls.push_back({region->id, -wheel.offset.y});
    }
    check_long_press(input.now);
    run_fling(input.now);
    deliver(input.now);
    return result_;
}

void Gesture::cancel() {
    fingers_.clear();
    state_ = GestureState::idle;
    velocity_ = 0;
}

void Gesture::stop_fling() {
    if (state_ == GestureState::flinging) state_ = GestureState::idle;
}

double Gesture::wants_frame_in(double now) const {
    double next = -1;
    const auto consider = [&](double at) {
        const double wait = std::max(0.0, at - now);
        next = next < 0 ? wait : std::min(next, wait);
    };
    if (state_ == GestureState::pending && start_long_press_) consider(start_.time + parameters_.long_press);
    if (state_ == GestureState::held) consider(next_repeat_);
    if (shown_until_ > now) consider(shown_until_);
    return next;
}

Gesture::Finger* Gesture::find(std::int64_t pointer) {
    for (Finger& finger : fingers_) {
        if (finger.pointer == pointer) return &finger;
    }
    return nullptr;
}

bool Gesture::beyond_slop(Point at) const {
    const Point d = at - start_.at;
    return d.x * d.x + d.y * d.y > parameters_.slop * parameters_.slop;
}

void Gesture::down(const PointerEvent& event, const HitMap& seen) {
    result_.touched = true;
    if (find(event.pointer) != nullptr) cancel();  // its up was lost
    if (!fingers_.empty()) {
        second_finger(event);
        return;
    }
    fingers_.push_back({event.pointer, event.at});
    eaten_ = state_ == GestureState::flinging;
    state_ = GestureState::pending;
    velocity_ = 0;
    samples_.clear();
    record(event.time, event.at.y);
    const Target* target = seen.at(event.at);
    start_ = {target != nullptr ? target->id : std::string(), event.at, event.time};
    start_enabled_ = target != nullptr && target->enabled;
    start_long_press_ = start_enabled_ && target->wants_long_press;
    start_is_key_ = target != nullptr && target->target_class == TargetClass::key;
    start_drag_ = start_enabled_ ? target->drag : DragMode::none;
    if (start_enabled_ && !eaten_) {
        shown_id_ = start_.id;
        shown_until_ = event.time + parameters_.press_visible;
    }
}

void Gesture::second_finger(const PointerEvent& event) {
    fingers_.push_back({event.pointer, event.at});
    const bool on_map = start_drag_ == DragMode::pan_zoom;
    if (on_map && (state_ == GestureState::pending || state_ == GestureState::panning)) {
        state_ = GestureState::panning;
    } else if (state_ != GestureState::direct) {
        state_ = GestureState::spent;
        shown_until_ = -1;
    }
}

void Gesture::move(const PointerEvent& event, const HitMap& seen) {
    Finger* finger = find(event.pointer);
    if (finger == nullptr) return;
    const bool first = finger == &fingers_.front();
    const Point before = finger->at;
    if (state_ == GestureState::panning) {
        pan_to(*finger, event.at);
        return;
    }
    finger->at = event.at;
    if (!first) return;
    record(event.time, event.at.y);
    if (state_ == GestureState::pending && beyond_slop(event.at)) {
        leave_slop(seen);
    } else if (state_ == GestureState::scrolling) {
        scroll_by(before.y - event.at.y);
    } else if (state_ == GestureState::direct) {
        drag_to(event.at);
    }
}

void Gesture::leave_slop(const HitMap& seen) {
    Finger& finger = fingers_.front();
    shown_until_ = -1;
    if (start_drag_ == DragMode::direct) {
        state_ = GestureState::direct;
        drag_from_ = start_.at;
        drag_to(finger.at);
        return;
    }
    if (start_drag_ == DragMode::pan_zoom) {
        state_ = GestureState::panning;
        const Point to = finger.at;
        finger.at = start_.at;
        pan_to(finger, to);
        return;
    }
    const ScrollRegion* region = seen.scroll_at(start_.at);
    if (region == nullptr) {
        state_ = GestureState::spent;
        return;
    }
    state_ = GestureState::scrolling;
    scroll_id_ = region->id;
    scroll_by(start_.at.y - finger.at.y);
}

void Gesture::up(const PointerEvent& event, const HitMap& seen) {
    Finger* finger = find(event.pointer);
    if (finger == nullptr) return;
    if (state_ == GestureState::pending && beyond_slop(event.at)) move(event, seen);
    const bool first = finger == &fingers_.front();
    fingers_.erase(fingers_.begin() + (finger - fingers_.data()));
    if (state_ == GestureState::spent || state_ == GestureState::panning) {
        if (!fingers_.empty()) return;
        if (state_ == GestureState::panning) result_.drag = Drag{start_.id, event.at, {}, 1, true};
        state_ = GestureState::idle;
        return;
    }
    if (!first) return;
    switch (state_) {
        case GestureState::scrolling:
            release_scroll(event.time);
            break;
        case GestureState::pending:
            finish_tap(event.time);
            break;
        case GestureState::direct:
            drag_to(event.at);
            result_.drag->ended = true;
            state_ = GestureState::idle;
            break;
        default:
            state_ = GestureState::idle;
            break;
    }
    if (!fingers_.empty() && state_ == GestureState::idle) state_ = GestureState::spent;
}

void Gesture::finish_tap(double time) {
    state_ = GestureState::idle;
    const bool held_long = start_long_press_ && time - start_.time >= parameters_.long_press;
    if (eaten_ || !start_enabled_) return;
    if (held_long) {
        result_.long_press = start_;
        return;
    }
    const bool bounce =
        start_is_key_ && start_.id == last_tap_id_ && start_.time - last_tap_time_ < parameters_.key_bounce;
    if (bounce) return;
    taps_.push_back(start_);
    last_tap_id_ = start_.id;
    last_tap_time_ = time;
}

void Gesture::record(double time, float y) {
    samples_.push_back({time, y});
    while (samples_.size() > 2 && time - samples_.front().time > parameters_.velocity_window) samples_.pop_front();
}

void Gesture::release_scroll(double time) {
    state_ = GestureState::idle;
    const Sample& last = samples_.back();
    const Sample& first = samples_.front();
    if (time - last.time > parameters_.still || samples_.size() < 2) return;
    const double span = std::max(last.time - first.time, parameters_.shortest_step);
    velocity_ = static_cast<float>((first.y - last.y) / span);
    velocity_ = std::clamp(velocity_, -parameters_.fling_max, parameters_.fling_max);
    if (std::abs(velocity_) < parameters_.fling_start) return;
    state_ = GestureState::flinging;
    fling_time_ = time;
}

void Gesture::scroll_by(float offset) {
    result_.scrolls.push_back({scroll_id_, offset});
}

void Gesture::drag_to(Point at) {
    Drag& drag = result_.drag.has_value() ? *result_.drag : result_.drag.emplace();
    drag.id = start_.id;
    drag.delta = drag.delta + (at - drag_from_);
    drag.at = at;
    drag_from_ = at;
}

void Gesture::pan_to(Finger& finger, Point at) {
    Drag& drag = result_.drag.has_value() ? *result_.drag : result_.drag.emplace();
    drag.id = start_.id;
    if (fingers_.size() < 2) {
        drag.delta = drag.delta + (at - finger.at);
        drag.at = at;
        finger.at = at;
        return;
    }
    const auto spread = [&] {
        const Point d = fingers_[1].at - fingers_[0].at;
        return std::max(1.0F, std::hypot(d.x, d.y));
    };
    const auto middle = [&] { return (fingers_[0].at + fingers_[1].at) * 0.5F; };
    const float spread_before = spread();
    const Point middle_before = middle();
    finger.at = at;
    drag.zoom *= spread() / spread_before;
    drag.delta = drag.delta + (middle() - middle_before);
    drag.at = middle();
}

void Gesture::run_fling(double now) {
    if (state_ != GestureState::flinging) return;
    const double step = now - fling_time_;
    if (step <= 0) return;
    fling_time_ = now;
    const double left = std::exp(-step / parameters_.fling_decay);
    scroll_by(static_cast<float>(velocity_ * parameters_.fling_decay * (1 - left)));
    velocity_ *= static_cast<float>(left);
    if (std::abs(velocity_) < parameters_.fling_stop) state_ = GestureState::idle;
}

void Gesture::check_long_press(double now) {
    if (state_ == GestureState::held && now >= next_repeat_) {
        next_repeat_ = now + parameters_.repeat_interval;
        result_.held = start_.id;
    }
    if (state_ != GestureState::pending || !start_long_press_ || eaten_) return;
    if (now - start_.time < parameters_.long_press) return;
    state_ = GestureState::held;
    next_repeat_ = now + parameters_.repeat_interval;
    result_.long_press = start_;
    result_.held = start_.id;
}

void Gesture::deliver(double now) {
    if (!taps_.empty()) {
        result_.tap = taps_.front();
        taps_.pop_front();
    }
    const bool on_target =
        state_ == GestureState::pending || state_ == GestureState::direct || state_ == GestureState::held;
    if (on_target && start_enabled_ && !eaten_) {
        result_.pressed = start_.id;
    } else if (now < shown_until_) {
        result_.pressed = shown_id_;
    }
}

}  // namespace sillwalk::ui
