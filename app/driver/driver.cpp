#include "app/driver/driver.hpp"

#include "engine/base/numeric_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace sillwalk::driver {

namespace {

constexpr int most_frames = 600;  ///< a fling ends within three seconds; anything longer never settles

const std::map<std::string, ui::Key, std::less<>>& key_names() {
    static const std::map<std::string, ui::Key, std::less<>> names = {
        {"tab", ui::Key::tab},         {"enter", ui::Key::enter},         {"space", ui::Key::space},
        {"escape", ui::Key::escape},   {"backspace", ui::Key::backspace}, {"delete", ui::Key::erase},
        {"left", ui::Key::left},       {"right", ui::Key::right},         {"up", ui::Key::up},
        {"down", ui::Key::down},       {"home", ui::Key::home},           {"end", ui::Key::end},
        {"page_up", ui::Key::page_up}, {"page_down", ui::Key::page_down}, {"undo", ui::Key::undo},
        {"redo", ui::Key::redo}};
    return names;
}

std::string joined(const std::vector<std::string>& words) {
    std::string out;
    for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
    return out;
}

engine::Result<double> number(const std::string& text) {
    const auto value = engine::parse_number(text);
    if (!value.has_value()) return engine::bad_input(fmt::format("\"{}\" is no number.", text));
    return *value;
}

}  // namespace

Driver::Driver(DriverHost host, const DriverOptions& options) : host_(std::move(host)), options_(options) {
    settle();
}

void Driver::frame() {
    now_ += options_.frame_seconds;
    next_.now = now_;
    next_.delta = static_cast<float>(options_.frame_seconds);
    next_.width = options_.width;
    next_.height = options_.height;
    next_.px_per_mm = options_.px_per_mm;
    for (ui::PointerEvent& event : next_.pointers) event.time = now_;
    last_ = host_.frame(next_);
    next_ = {};
}

void Driver::settle() {
    for (int i = 0; i < 3; ++i) frame();
    for (int i = 0; i < most_frames && last_.wants_frame; ++i) frame();
}

void Driver::finger(ui::PointerPhase phase, ui::Point at) {
    next_.pointers.push_back({phase, 1, at, 0});
    frame();
}

void Driver::wheel(const ui::ScrollRegion& region, float down) {
    next_.wheels.push_back({region.view.center(), {0, -down}});
    settle();
}

engine::Result<void> Driver::run(const Script& script) {
    for (const Step& each : script) {
        auto done = step(each);
        if (done.has_value()) continue;
        engine::Error error = done.error();
        error.where = fmt::format("line {}: {}", each.line, joined(each.words));
        return tl::make_unexpected(std::move(error));
    }
    return {};
}

engine::Result<void> Driver::step(const Step& step) {
    const std::vector<std::string>& w = step.words;
    const std::string& what = w.front();
    if (what == "tap") return tap(w[1]);
    if (what == "hold") return hold(w[1]);
    if (what == "drag") return drag(step);
    if (what == "type") return type(w[1], w[2]);
    if (what == "clear") return clear(w[1]);
    if (what == "key") return key(w[1]);
    if (what == "wait") return wait(w[1]);
    if (what == "expect") return expect(step, true);
    if (what == "expect-not") return expect(step, false);
    if (what == "screen") return expect_screen(w[1], w[2], true);
    if (what == "screen-not") return expect_screen(w[1], w[2], false);
    if (what == "shot") return shot(w[1]);
    if (what == "size") return size(step);
    if (what == "theme") return set("theme", w[1]);
    if (what == "set") return set(w[1], w[2]);
    if (what == "print") {
        if (host_.print) host_.print(screen().describe());
        return {};
    }
    if (!host_.restart) return engine::bad_input("This host cannot restart the application.");
    auto done = host_.restart();
    settle();
    return done;
}

bool Driver::search(const std::string& id) {
    std::vector<std::string> lists;
    for (const ui::ScrollRegion& region : screen().scrolls()) {
        if (!region.covered && region.max_offset > 0) lists.push_back(region.id);
    }
    for (const std::string& list : lists) {
        const ui::ScrollRegion* region = screen().find_scroll(list);
        if (region == nullptr) continue;
        wheel(*region, -region->offset - 1);
        while (!has(id)) {
            region = screen().find_scroll(list);
            if (region == nullptr || region->offset >= region->max_offset) break;
            wheel(*region, region->view.height() * 0.8F);
        }
        if (has(id)) return true;
    }
    return false;
}

bool Driver::has(const std::string& id) const {
    return screen().find(id) != nullptr || screen().find_text(id) != nullptr;
}

void Driver::bring_into_view(const std::string& id) {
    for (int i = 0; i < 4; ++i) {
        const ui::Target* target = screen().find(id);
        if (target == nullptr || target->scroll_area.empty()) return;
        const ui::ScrollRegion* region = screen().find_scroll(target->scroll_area);
        if (region == nullptr || region->covered) return;
        // Out of a message's way as well.
        const bool whole = !target->covered && target->rect.y0 >= region->view.y0 && target->rect.y1 <= region->view.y1;
        const float middle = target->rect.center().y - region->view.center().y;
        const float wanted = std::clamp(region->offset + middle, 0.0F, region->max_offset);
        if (whole || std::abs(wanted - region->offset) < 1) return;
        wheel(*region, wanted - region->offset);
    }
}

engine::Result<ui::Target> Driver::find(const std::string& id) {
    const ui::Target* target = screen().find(id);
    if (target == nullptr && search(id)) target = screen().find(id);
    if (target != nullptr) return *target;
    std::string near;
    for (const std::string& other : screen().near_ids(id)) near += (near.empty() ? "" : ", ") + other;
    return engine::fail(engine::ErrorCode::not_found,
                        fmt::format("There is no \"{}\" on the screen; near: {}.", id, near));
}

engine::Result<ui::Target> Driver::reach(const std::string& id) {
    auto found = find(id);
    if (!found.has_value()) return found;
    bring_into_view(id);
    const ui::Target target = *screen().find(id);
    if (!target.enabled) return engine::bad_input(fmt::format("\"{}\" is not available: {}.", id, target.label));
    if (target.covered) return engine::bad_input(fmt::format("\"{}\" is covered by a sheet.", id));
    if (target.visible.empty()) return engine::bad_input(fmt::format("\"{}\" cannot be scrolled into view.", id));
    const ui::Target* top = screen().at(target.visible.center());
    if (top == nullptr) return engine::bad_input(fmt::format("\"{}\" is covered.", id));
    if (top->id != id) return engine::bad_input(fmt::format("\"{}\" is covered by \"{}\".", id, top->id));
    return target;
}

engine::Result<void> Driver::tap(const std::string& id) {
    const auto target = reach(id);
    if (!target.has_value()) return tl::make_unexpected(target.error());
    finger(ui::PointerPhase::down, target->visible.center());
    frame();
    finger(ui::PointerPhase::up, target->visible.center());
    settle();
    return {};
}

engine::Result<void> Driver::hold(const std::string& id) {
    const auto target = reach(id);
    if (!target.has_value()) return tl::make_unexpected(target.error());
    finger(ui::PointerPhase::down, target->visible.center());
    const double until = now_ + 0.6;
    while (now_ < until) frame();
    finger(ui::PointerPhase::up, target->visible.center());
    settle();
    return {};
}

engine::Result<void> Driver::drag(const Step& step) {
    const auto dx = number(step.words[2]);
    const auto dy = number(step.words[3]);
    if (!dx.has_value()) return tl::make_unexpected(dx.error());
    if (!dy.has_value()) return tl::make_unexpected(dy.error());
    const auto target = reach(step.words[1]);
    if (!target.has_value()) return tl::make_unexpected(target.error());
    const ui::Point start = target->visible.center();
    const ui::Point way{static_cast<float>(*dx) * options_.px_per_mm, static_cast<float>(*dy) * options_.px_per_mm};
    finger(ui::PointerPhase::down, start);
    constexpr int moves = 20;
    for (int i = 1; i <= moves; ++i) finger(ui::PointerPhase::move, start + way * (static_cast<float>(i) / moves));
    for (int i = 0; i < 8; ++i) frame();  // rests before it lifts: no fling
    finger(ui::PointerPhase::up, start + way);
    settle();
    return {};
}

engine::Result<void> Driver::type(const std::string& id, const std::string& text) {
    auto done = tap(id);
    if (!done.has_value()) return done;
    next_.text = text;
    frame();
    settle();
    return {};
}

engine::Result<void> Driver::clear(const std::string& id) {
    auto done = tap(id);
    if (!done.has_value()) return done;
    const std::size_t most = screen().find(id)->label.size();
    next_.keys.push_back({ui::Key::end, false});
    for (std::size_t i = 0; i < most; ++i) next_.keys.push_back({ui::Key::backspace, false});
    frame();
    settle();
    return {};
}

engine::Result<void> Driver::key(const std::string& name) {
    const bool shift = name.rfind("shift+", 0) == 0;
    const std::string bare = shift ? name.substr(6) : name;
    const auto found = key_names().find(bare);
    if (found != key_names().end()) {
        next_.keys.push_back({found->second, shift});
    } else if (bare.size() == 1) {
        next_.text = bare;
    } else {
        return engine::bad_input(fmt::format("\"{}\" is no key.", name));
    }
    frame();
    settle();
    return {};
}

engine::Result<void> Driver::wait(const std::string& seconds) {
    const auto time = number(seconds);
    if (!time.has_value()) return tl::make_unexpected(time.error());
    const double until = now_ + *time;
    while (now_ < until) frame();
    settle();
    return {};
}

engine::Result<void> Driver::expect(const Step& step, bool wanted) {
    const std::string& id = step.words[1];
    const std::string& how = step.words[2];
    const std::string text = step.words.size() > 3 ? step.words[3] : std::string();
    const ui::TextItem* item = screen().find_text(id);
    const ui::Target* target = item == nullptr ? screen().find(id) : nullptr;
    if (item == nullptr && target == nullptr && search(id)) {
        item = screen().find_text(id);
        target = item == nullptr ? screen().find(id) : nullptr;
    }
    if (target != nullptr && target->covered) {
        bring_into_view(id);
        target = screen().find(id);
    }
    const bool shown = item != nullptr ? !item->covered : target != nullptr && !target->covered;
    if (how == "shown") {
        if (shown == wanted) return {};
        return engine::bad_input(fmt::format("\"{}\" is {} on the screen.", id, shown ? "" : "not"));
    }
    if (!shown) {
        const auto missing = find(id);
        if (missing.has_value()) return engine::bad_input(fmt::format("\"{}\" is covered.", id));
        return tl::make_unexpected(missing.error());
    }
    const std::string& has = item != nullptr ? item->text : target->label;
    bool is = false;
    if (how == "contains") {
        is = has.find(text) != std::string::npos;
    } else if (how == "is") {
        is = has == text;
    } else if (how == "enabled" || how == "disabled") {
        is = target != nullptr && target->enabled == (how == "enabled");
    } else if (how == "chosen") {
        is = target != nullptr && target->selected;
    } else {
        return engine::bad_input(fmt::format("\"{}\" is nothing that can be expected.", how));
    }
    if (is == wanted) return {};
    return engine::bad_input(fmt::format("\"{}\" says \"{}\".", id, has));
}

engine::Result<void> Driver::expect_screen(const std::string& how, const std::string& text, bool wanted) {
    if (how != "contains") return engine::bad_input("Say: screen contains \"text\".");
    const std::string all = screen().describe();
    if ((all.find(text) != std::string::npos) == wanted) return {};
    return engine::bad_input(fmt::format("The screen {} \"{}\". It says:\n{}", wanted ? "lacks" : "has", text, all));
}

engine::Result<void> Driver::shot(const std::string& path) {
    if (!host_.save_shot) return engine::bad_input("This host takes no pictures.");
    settle();
    return host_.save_shot(last_, path);
}

engine::Result<void> Driver::size(const Step& step) {
    const auto width = number(step.words[1]);
    const auto height = number(step.words[2]);
    if (!width.has_value()) return tl::make_unexpected(width.error());
    if (!height.has_value()) return tl::make_unexpected(height.error());
    options_.width = static_cast<float>(*width);
    options_.height = static_cast<float>(*height);
    settle();
    return {};
}

engine::Result<void> Driver::set(const std::string& name, const std::string& value) {
    if (!host_.set) return engine::bad_input("This host has no settings.");
    auto done = host_.set(name, value);
    settle();
    return done;
}

}  // namespace sillwalk::driver
