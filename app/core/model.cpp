#include "app/core/model.hpp"

namespace sillwalk::app {

const char* screen_name(Screen screen) {
    constexpr const char* names[] = {"visits",      "overview", "route",   "room",         "crossing",
                                     "loads",       "cart",     "washing", "washing_step", "answer",
                                     "temperature", "setup",    "about",   "places",       "plan"};
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

bool answer_is_current(const AppModel& model) {
    return model.answer && model.answer->version == model.version;
}

}  // namespace sillwalk::app
