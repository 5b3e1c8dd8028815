#include "app/core/model.hpp"

namespace sillwalk::app {

const char* screen_name(Screen screen) {
    constexpr const char* names[] = {"visits",  "overview", "route",        "room",   "crossing",    "loads",
                                     "cart",    "washing",  "washing_step", "answer", "temperature", "push",
                                     "what_if", "damage",   "hand_over",    "setup",  "about",       "places",
                                     "plan",    "evidence", "photo",        "office"};
    return names[static_cast<std::size_t>(screen)];
}

const engine::CartAdvice* cart_advice(const AppModel& model) {
    if (!model.answer) return nullptr;
    for (const engine::CartAdvice& advice : model.answer->advice.carts) {
        if (advice.cart == model.cart) return &advice;
    }
    return nullptr;
}

const engine::RankedCandidate* headline(const engine::CartAdvice* advice) {
    if (!advice) return nullptr;
    if (!advice->ranked.empty()) return &advice->ranked.front();
    return advice->nearest ? &*advice->nearest : nullptr;
}

const WhatIf* what_if_in_hand(const AppModel& model) {
    return model.what_if && model.what_if->cart == model.cart ? &*model.what_if : nullptr;
}

const engine::CartAdvice* what_if_advice(const AppModel& model) {
    if (!what_if_in_hand(model) || !model.what_if_answer) return nullptr;
    for (const engine::CartAdvice& advice : model.what_if_answer->advice.carts) {
        if (advice.cart == model.cart) return &advice;
    }
    return nullptr;
}

const Completion* completion_in_hand(const AppModel& model) {
    const Completion* found = model.completion.get();
    return found && found->version == model.version && found->cart == model.cart ? found : nullptr;
}

bool wants_completion(const AppModel& model) {
    const Screen screen = model.spot.screen;
    const bool shown = screen == Screen::answer || screen == Screen::hand_over || screen == Screen::what_if;
    if (!shown || !model.visit || !answer_is_current(model) || model.answer->partial) return false;
    if (!headline(cart_advice(model))) return false;
    const Completion* there = completion_in_hand(model);
    return !there || !there->whole();
}

std::vector<WantedPicture> wanted_pictures(const AppModel& model) {
    std::vector<WantedPicture> wanted;
    if (!model.visit) return wanted;
    const PhotoDesk& desk = model.photos;
    const bool one = model.spot.screen == Screen::photo;
    if (!one && model.spot.screen != Screen::evidence) return wanted;
    for (std::size_t i = 0; i < model.visit->photos.size(); ++i) {
        const std::string& sha256 = model.visit->photos[i].sha256;
        if ((one && model.spot.index != i) || desk.unreadable.count(sha256) != 0) continue;
        if (desk.small.count(sha256) == 0) wanted.push_back({sha256, false});
        if (one && desk.whole_of != sha256) wanted.push_back({sha256, true});
    }
    return wanted;
}

bool answer_is_current(const AppModel& model) {
    return model.answer && model.answer->version == model.version;
}

}  // namespace sillwalk::app
