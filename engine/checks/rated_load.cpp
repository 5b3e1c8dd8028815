#include "engine/checks/rated_load.hpp"

#include "engine/checks/castor_share.hpp"
#include "engine/checks/crossing_case.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

/// The table's border between smooth and rough: a rise of 5 % of the diameter. Its first row is "under 5 %".
constexpr double rough_share = 0.05;

/// The greatest rise of the loaded legs over the wheel's diameter.
std::optional<double> greatest_rise_share(Judge& judge, const CheckContext& context) {
    double greatest = 0.0;
    bool complete = true;
    for (const CrossingDemand& crossing : context.cart->crossings) {
        if (!crossing.loaded) continue;
        const auto obstacle = obstacle_at(judge, context, crossing, context.wheel->diameter);
        if (!obstacle) {
            complete = false;
            continue;
        }
        const bool blocked = obstacle->swallowed || obstacle->no_climb;
        greatest = std::max(greatest, blocked ? 1.0 : obstacle->equivalent_rise / context.wheel->diameter);
    }
    if (complete || greatest >= rough_share) return greatest;
    return std::nullopt;
}

std::optional<double> factor_for(Judge& judge, const CheckContext& context) {
    const CartDemand& cart = *context.cart;
    if (cart.load_factor.given) return judge.high(cart.load_factor);
    const auto moved_by = judge.value(cart.moved_by);
    const auto rise_share = greatest_rise_share(judge, context);
    if (!moved_by || !rise_share) return std::nullopt;
    const bool rough = *rise_share >= rough_share;
    for (const LoadFactorRow& row : context.tables->load_factors) {
        if (row.moved_by != *moved_by || row.over_five_percent != rough) continue;
        judge.assume(rough ? Assumption::load_factor_hole : Assumption::load_factor_from_table);
        judge.cite(row.factor.citation);
        return row.factor.high.value_or(row.factor.value);
    }
    judge.missing_figure();
    return std::nullopt;
}

}  // namespace

std::optional<FactoredLoad> factored_load(Judge& judge, const CheckContext& context) {
    const auto load = castor_load(judge, context, CartState::loaded);
    const auto factor = factor_for(judge, context);
    if (!load || !factor) return std::nullopt;
    const Mass plain = *load / standard_gravity;
    return FactoredLoad{plain, *factor * plain, *factor};
}

std::optional<Mass> rated_load(Judge& judge, const CheckContext& context) {
    if (!context.wheel->rated_load || !context.rig->rated_load) {
        judge.missing_figure();
        return std::nullopt;
    }
    return std::min(*context.wheel->rated_load, *context.rig->rated_load);
}

void judge_rated_speed(Judge& judge, const CheckContext& context) {
    const auto speed = judge.high(context.cart->speed);
    const RatingClassRow* row =
        context.wheel->rating_class ? context.tables->rating(*context.wheel->rating_class) : nullptr;
    if (!context.wheel->rated_speed && row == nullptr) {
        judge.missing_figure();
        return;
    }
    if (!context.wheel->rated_speed) judge.cite(row->test_speed.citation);
    const Speed tested = context.wheel->rated_speed ? *context.wheel->rated_speed : row->test_speed.value;
    if (!speed || *speed <= tested) return;
    judge.part({.demand = amount(*speed),
                .capacity = amount(tested),
                .statement = Statement::load_speed_unknown,
                .numbers = {amount(*speed), amount(tested)},
                .outcome = Outcome::not_known});
}

}  // namespace sillwalk::engine
