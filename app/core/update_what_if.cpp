#include "app/core/update.hpp"

#include <algorithm>
#include <utility>

namespace sillwalk::app::detail {

void set_what_if(Context& context, const WhatIfSet& action) {
    AppModel& model = context.model;
    if (!model.visit) return;
    const bool goes_on = model.what_if && model.what_if->cart == model.cart;
    auto changes = goes_on ? model.what_if->changes : std::vector<WhatIfChange>();
    const auto before = changes;
    changes = with_change(std::move(changes), model.visit->survey, {action.ref, action.value});
    if (goes_on && changes == before) return;
    if (changes.empty()) return forget_what_if(model);
    ++model.what_if_version;
    const std::uint64_t since = goes_on ? model.what_if->since : model.what_if_version;
    if (!goes_on) model.what_if_answer.reset();
    model.what_if = WhatIf{model.cart, changes, tried(model.visit->survey, changes), model.what_if_version, since};
    context.effects.emplace_back(AssessWhatIf{model.what_if_version});
}

void forget_what_if(AppModel& model) {
    model.what_if.reset();
    model.what_if_answer.reset();
}

void take_over_what_if(Context& context) {
    AppModel& model = context.model;
    if (!model.visit || !model.what_if) return;
    const std::vector<WhatIfChange> changes = std::move(model.what_if->changes);
    forget_what_if(model);
    for (const WhatIfChange& change : changes) {
        commit(context, taken_over(model.visit->survey, change), "done.what_if");
    }
    // One button takes back one step; where there were several, undo in the bar does.
    const bool one = changes.size() == 1;
    model.toast = Toast{
        one ? "toast.taken_over_one" : "toast.taken_over", {std::to_string(changes.size())}, one, context.moment.now};
}

void take_what_if_answer(AppModel& model, const WhatIfAnswered& news) {
    if (!news.answer || !model.what_if || news.answer->version < model.what_if->since) return;
    if (model.what_if_answer && news.answer->version < model.what_if_answer->version) return;
    model.what_if_answer = news.answer;
}

void set_present(Context& context, const SetPresent& action) {
    AppModel& model = context.model;
    if (!model.visit || action.cart >= model.visit->survey.carts.size()) return;
    engine::Survey survey = model.visit->survey;
    engine::Cart& cart = survey.carts[action.cart];
    auto& part = action.part == 0 ? cart.present_wheel : action.part == 1 ? cart.present_bearing : cart.present_rig;
    part = {action.id, engine::Known::by_eye, ""};
    commit(context, std::move(survey), "done.present");
}

void toggle_damage(Context& context, const ToggleDamage& action) {
    AppModel& model = context.model;
    if (!model.visit || action.cart >= model.visit->survey.carts.size()) return;
    engine::Survey survey = model.visit->survey;
    auto& damage = survey.carts[action.cart].damage;
    const auto at =
        std::find_if(damage.begin(), damage.end(), [&](const engine::Damage& d) { return d.kind == action.kind; });
    if (at == damage.end()) {
        damage.push_back({action.kind, {}, ""});
        commit(context, std::move(survey), "done.damage_seen");
    } else {
        damage.erase(at);
        commit(context, std::move(survey), "done.damage_taken_back");
    }
}

}  // namespace sillwalk::app::detail
