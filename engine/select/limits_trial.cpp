#include "engine/select/limits_trial.hpp"

#include "engine/checks/demand.hpp"
#include "engine/select/assess.hpp"
#include "engine/walk/thermal_wheel.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

struct Walks {
    WalkMissing missing;
    std::optional<Walk> cold;

    void walk(const CartDemand& demand, ThermalWheel& wheel, const Tables& tables) {
        cold = walk_route(demand, wheel, tables, WalkEnd::cold);
    }
    void add_to(CheckContext& context) const {
        context.walk_gap = &missing;
        context.walk_cold = cold ? &*cold : nullptr;
    }
};

Outcome at_crossing(const CheckEntry& check, const CheckContext& context, std::uint16_t crossing) {
    CheckContext alone = context;
    Outcome worst = Outcome::does_not_apply;
    const auto& passes = context.cart->crossings;
    for (std::uint16_t pass = 0; pass < passes.size(); ++pass) {
        if (passes[pass].crossing != crossing) continue;
        alone.only_crossing = pass;
        worst = std::max(worst, check.run(alone).outcome);
    }
    return worst;
}

}  // namespace

Trial::Trial(CandidateSpace& space, const Survey& survey, std::size_t cart, const Candidate& candidate,
             const CheckEntry& check, bool one_person)
    : space_(&space), check_(&check), candidate_(candidate), survey_(survey) {
    survey_.carts = {survey.carts[cart]};
    if (one_person) survey_.carts.front().people = measured(1.0);
}

template <class F>
auto Trial::in_context(const Changed& changed, const Candidate& candidate, bool walk, F&& f) const {
    const CartDemand demand = resolve(changed.survey, 0, space_->tables());
    CheckContext context = space_->context_of(candidate);
    context.cart = &demand;
    context.corner = Corner::worst;
    std::optional<Wheel> wheel;
    std::optional<Rig> rig;
    std::optional<ThermalWheel> body;
    const WalkKey* key = &space_->walk_keys()[space_->wheels()[candidate.wheel].walk];
    WalkKey larger;
    if (changed.diameter) {
        wheel = *context.wheel;
        rig = *context.rig;
        wheel->diameter = rig->wheel_diameter = *changed.diameter;
        context.wheel = &*wheel;
        context.rig = &*rig;
        larger = walk_key(*wheel, space_->tables());
        key = &larger;
    }
    Walks walks;
    if (walk) {
        walks.missing = walk_missing(demand, *key, space_->tables());
        const bool walks_on = walks.missing.empty();
        if (walks_on && changed.diameter) body.emplace(*key);
        if (walks_on) walks.walk(demand, body ? *body : thermal_wheel_of(candidate), space_->tables());
        walks.add_to(context);
    }
    return f(context);
}

ThermalWheel& Trial::thermal_wheel_of(const Candidate& candidate) const {
    return space_->thermal_wheel(space_->wheels()[candidate.wheel].walk);
}

Outcome Trial::outcome(std::optional<std::uint16_t> crossing) const {
    return run({survey_, std::nullopt}, candidate_, crossing);
}

Outcome Trial::outcome_of(const Candidate& candidate, std::optional<std::uint16_t> crossing) const {
    return run({survey_, std::nullopt}, candidate, crossing);
}

Outcome Trial::outcome_with(const DriverRange& driver, double value, std::optional<std::uint16_t> crossing) const {
    return run(changed(driver, value), candidate_, crossing);
}

Verdict Trial::verdict_with(const DriverRange& driver, double value) const {
    return in_context(changed(driver, value), candidate_, true, [](const CheckContext& context) {
        std::vector<Finding> findings;
        for (const CheckEntry& check : all_checks()) findings.push_back(check.run(context));
        return verdict_of(findings);
    });
}

Trial::Changed Trial::changed(const DriverRange& driver, double value) const {
    Changed result{survey_, std::nullopt};
    if (driver.driver == Driver::diameter) {
        result.diameter = Length::from_si(value);
    } else {
        put(result.survey, 0, driver, value);
    }
    return result;
}

Outcome Trial::run(const Changed& changed, const Candidate& candidate, std::optional<std::uint16_t> crossing) const {
    return in_context(changed, candidate, check_->uses_walk, [&](const CheckContext& context) {
        return crossing ? at_crossing(*check_, context, *crossing) : check_->run(context).outcome;
    });
}

}  // namespace sillwalk::engine
