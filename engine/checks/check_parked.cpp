/// Will it flat-spot? Fully loaded and parked for more than 14 days: 0.8 of the rating (common practice). The flat spot
/// is an estimate by the tread's creep, without the load factor; more than 3 % of the diameter fails. Statements:
/// parked_rating: load with factor, 0.8 of the rating, time parked, rating. parked_flat_spot: flat spot that stays, 3 %
/// of the diameter, time parked, chord of the flat. parked_short: time parked, the limit of 14 days.

#include "engine/checks/castor_share.hpp"
#include "engine/checks/checks.hpp"
#include "engine/checks/crossing_case.hpp"
#include "engine/checks/rated_load.hpp"
#include "engine/checks/tread_modulus.hpp"
#include "engine/physics/elastic.hpp"
#include "engine/physics/stability.hpp"

namespace sillwalk::engine {
namespace {

void judge_rating(Judge& judge, const CheckContext& context, Duration parked) {
    const Practice& practice = context.tables->practice;
    const auto load = factored_load(judge, context);
    const auto rated = rated_load(judge, context);
    if (!load || !rated) return;
    const Mass capacity = practice.parked_capacity_share.value * *rated;
    judge.assume(Assumption::practice_figure);
    judge.part({.demand = amount(load->demand),
                .capacity = amount(capacity),
                .use = load->demand / capacity,
                .statement = Statement::parked_rating,
                .formula = "parked-rating",
                .numbers = {amount(load->demand), amount(capacity), amount(parked), amount(*rated)},
                .citations = {practice.parked_limit.citation, practice.parked_capacity_share.citation}});
}

/// Short stays use their share of the time that practice allows; at the limit that is as much as still holds.
void judge_short(Judge& judge, const Practice& practice, Duration parked) {
    judge.part({.demand = amount(parked),
                .capacity = amount(practice.parked_limit.value),
                .use = practice.holds_below.value * (parked / practice.parked_limit.value),
                .statement = Statement::parked_short,
                .formula = "parked-time",
                .numbers = {amount(parked), amount(practice.parked_limit.value)},
                .citations = {practice.parked_limit.citation},
                .outcome = Outcome::holds});
}

std::optional<Length> standing_half_width(Judge& judge, const CheckContext& context) {
    const auto load = castor_load(judge, context, CartState::loaded);
    const auto modulus = softest_tread(judge, context);
    if (context.tread == nullptr || !context.tread->poisson) judge.missing_figure();
    if (!load || !modulus || context.tread == nullptr || !context.tread->poisson) return std::nullopt;
    ContactInput input;
    input.load = *load;
    input.diameter = context.wheel->diameter;
    input.width = context.wheel->tread_width;
    input.modulus = modulus->value;
    input.poisson = context.tread->poisson->value;
    input.with_approach = false;
    const auto press = contact(input, context.tables->layer);
    if (!press) {
        judge.missing_figure();
        return std::nullopt;
    }
    return press->half_width;
}

void judge_flat_spot(Judge& judge, const CheckContext& context, Duration parked) {
    const auto half_width = standing_half_width(judge, context);
    if (!half_width) return;
    const Material& tread = *context.tread;
    if (!tread.creep_per_decade || !tread.set_share) {
        judge.missing_figure();
        return;
    }
    const bool worst = context.corner == Corner::worst;
    const auto careful = [&](const Figure<double>& figure) {
        return worst ? figure.high.value_or(figure.value) : figure.value;
    };
    const auto flat = flat_spot(*half_width, context.wheel->diameter, parked, careful(*tread.creep_per_decade),
                                careful(*tread.set_share));
    if (!flat) {
        judge.missing_figure();
        return;
    }
    const Figure<double>& limit_share = context.tables->practice.flat_spot_share;
    const Length limit = limit_share.value * context.wheel->diameter;
    judge.assume(Assumption::creep_estimate);
    judge.part({.demand = amount(flat->left),
                .capacity = amount(limit),
                .use = flat->left / limit,
                .statement = Statement::parked_flat_spot,
                .formula = "flat-spot",
                .numbers = {amount(flat->left), amount(limit), amount(parked), amount(flat->chord)},
                .citations = {tread.creep_per_decade->citation, tread.set_share->citation, limit_share.citation}});
}

}  // namespace

Finding check_parked(const CheckContext& context) {
    Judge judge(CheckId::parked, context);
    const auto parked = judge.high(context.cart->parked_loaded);
    if (!parked) return judge.finish();
    const Practice& practice = context.tables->practice;
    if (*parked > practice.parked_limit.value) {
        judge_rating(judge, context, *parked);
        judge_flat_spot(judge, context, *parked);
    } else {
        judge_short(judge, practice, *parked);
    }
    return judge.finish();
}

}  // namespace sillwalk::engine
