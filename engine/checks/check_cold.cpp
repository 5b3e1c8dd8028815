/// Can it shatter? The colder of core and rim as the wheel arrives at each crossing with a rise or gap, against the
/// maker's impact floor and the materials' limits when struck; and anywhere on the route (at the one crossing where
/// only that is asked) against the rated minimum and the limits unstruck. use = max(0, 1 - 0.03 per kelvin of margin).
///
/// Statements cold_rated_minimum, cold_impact_floor, cold_brittle_struck, cold_brittle_unstruck, and cold_warm where
/// the margin is 33 K and more. Their numbers, in this order:
///   1 wheel temperature, 2 limit, 3 margin (negative = past it), 4 air of that stay,
///   5 the other limit that speaks to the same blow: the material's for the maker's impact floor, the maker's impact
///   floor for
///     the material's; the limit itself where there is no other,
///   and for a blow, as far as the readings go: 6 load of the leading axle, 7 speed, 8 energy that the blow takes.
/// Where the maker's impact floor and the material's limit disagree about the outcome, both stand there and the careful
/// one decides. Source: our judgement [cold-gate], [urethane-cold-rule]; brittle points and service floors by row of
/// the material table; the use of a margin by docs/reference/methods.md "cold-use".

#include "engine/checks/checks.hpp"
#include "engine/checks/cold_limits.hpp"
#include "engine/checks/crossing_case.hpp"
#include "engine/checks/temperature_margin.hpp"
#include "engine/physics/obstacle.hpp"
#include "engine/walk/crossing_state.hpp"

#include <algorithm>
#include <array>

namespace sillwalk::engine {
namespace {

struct Limits {
    std::optional<ColdLimit> rated, impact_floor;
    std::array<ColdAnswer, 2> materials;  // tread and core
    std::size_t material_count = 1;
};

std::optional<ColdLimit> maker_limit(Judge& judge, const CheckContext& context, const std::optional<Temperature>& own,
                                     const Figure<Temperature>& practice) {
    if (own) return ColdLimit{*own, 0, "cold-use"};
    if (context.wheel->construction != Construction::one_piece_urethane) return std::nullopt;
    judge.assume(Assumption::practice_figure);
    return ColdLimit{practice.value, practice.citation, "cold-use"};
}

Limits limits_of(Judge& judge, const CheckContext& context) {
    const Practice& practice = context.tables->practice;
    Limits limits;
    limits.rated = maker_limit(judge, context, context.wheel->temperature_min, practice.urethane_rated_min);
    limits.impact_floor = maker_limit(judge, context, context.wheel->impact_floor, practice.urethane_impact_floor);
    if (!limits.rated) judge.missing_figure();
    const Hardness* hardness = context.wheel->hardness ? &*context.wheel->hardness : nullptr;
    limits.materials[0] = cold_limits(judge, context.tread, hardness);
    if (context.core != context.tread) {
        limits.materials[1] = cold_limits(judge, context.core, nullptr);
        limits.material_count = 2;
    }
    return limits;
}

/// The strictest limit of tread and core.
std::optional<ColdLimit> strictest(const Limits& limits, std::optional<ColdLimit> ColdLimits::*which) {
    std::optional<ColdLimit> result;
    for (std::size_t k = 0; k < limits.material_count; ++k) {
        const auto& limit = limits.materials[k].limits.*which;
        if (limit && (!result || limit->value > result->value)) result = limit;
    }
    return result;
}

bool lacks_material(const Limits& limits) {
    return std::any_of(limits.materials.begin(),
                       limits.materials.begin() + static_cast<std::ptrdiff_t>(limits.material_count),
                       [](const ColdAnswer& answer) { return answer.known == ColdKnowledge::missing; });
}

/// Where the wheel is, and what it is there.
struct Moment {
    Temperature wheel, air;
    Place place;
};

struct Blow {
    std::optional<Force> load;
    std::optional<Speed> speed;
    std::optional<Energy> energy;
};

Blow blow_at(const CheckContext& context, const CrossingDemand& crossing, const Obstacle& obstacle) {
    Blow blow;
    const LoadEnd end = context.corner == Corner::worst ? LoadEnd::heavy : LoadEnd::nominal;
    const auto state = crossing_state(*context.cart, crossing, end);
    if (!state) return blow;
    blow.load = state->on_slope ? state->on_slope->front : state->level.front;
    blow.speed = state->speed;
    if (!blow.speed || !(*blow.speed > Speed{}) || !(*blow.load > Force{}) || obstacle.no_climb) return blow;
    StepSpeedInput input;
    input.diameter = context.wheel->diameter;
    input.rise = obstacle.equivalent_rise;
    input.speed = blow.speed;
    input.mass = *blow.load / standard_gravity;
    const auto step = step_speed(input);
    if (step) blow.energy = step->lost;
    return blow;
}

void add_part(Judge& judge, const CheckContext& context, const Moment& moment, const ColdLimit& limit,
              Statement statement, const std::optional<ColdLimit>& other = std::nullopt, const Blow& blow = {}) {
    const Practice& practice = context.tables->practice;
    const TemperatureChange margin = moment.wheel - limit.value;
    const double use = use_of_margin(margin, practice);
    const Temperature beside = other ? other->value : limit.value;
    // The maker may well be stricter than the material; it is the other way round that figures disagree.
    const bool disagrees =
        statement == Statement::cold_brittle_struck &&
        outcome_of(use, practice) > outcome_of(use_of_margin(moment.wheel - beside, practice), practice);
    const std::array<Amount, 8> all{amount(moment.wheel),
                                    amount(limit.value),
                                    amount(margin),
                                    amount(moment.air),
                                    amount(beside),
                                    {blow.load.value_or(Force{}).si(), Kind::force},
                                    {blow.speed.value_or(Speed{}).si(), Kind::speed},
                                    {blow.energy.value_or(Energy{}).si(), Kind::energy}};
    Part part{.demand = all[0],
              .capacity = all[1],
              .use = use,
              .statement = use > 0.0 ? statement : Statement::cold_warm,
              .place = moment.place,
              .formula = limit.formula,
              .conflict = disagrees};
    const std::initializer_list<CitationId> citations{limit.citation, practice.cold_use_per_kelvin.citation};
    const std::initializer_list<Amount> plain{all[0], all[1], all[2], all[3], all[4]};
    const std::initializer_list<Amount> loaded{all[0], all[1], all[2], all[3], all[4], all[5]};
    const std::initializer_list<Amount> moving{all[0], all[1], all[2], all[3], all[4], all[5], all[6]};
    const std::initializer_list<Amount> whole{all[0], all[1], all[2], all[3], all[4], all[5], all[6], all[7]};
    part.citations = citations;
    part.numbers = blow.energy ? whole : blow.speed ? moving : blow.load ? loaded : plain;
    judge.part(part);
}

void judge_blow(Judge& judge, const CheckContext& context, const Limits& limits, const Moment& moment,
                const CrossingDemand& crossing) {
    const auto obstacle = obstacle_at(judge, context, crossing, context.wheel->diameter);
    if (!obstacle || !obstacle->has_edge()) return;
    const Blow blow = blow_at(context, crossing, *obstacle);
    const auto struck = strictest(limits, &ColdLimits::struck);
    if (lacks_material(limits)) judge.missing_figure();
    if (limits.impact_floor) {
        add_part(judge, context, moment, *limits.impact_floor, Statement::cold_impact_floor, struck, blow);
    }
    if (struck) {
        add_part(judge, context, moment, *struck, Statement::cold_brittle_struck, limits.impact_floor, blow);
    }
}

void judge_anywhere(Judge& judge, const CheckContext& context, const Limits& limits, const Moment& moment) {
    if (limits.rated) add_part(judge, context, moment, *limits.rated, Statement::cold_rated_minimum);
    if (const auto unstruck = strictest(limits, &ColdLimits::unstruck)) {
        add_part(judge, context, moment, *unstruck, Statement::cold_brittle_unstruck);
    }
}

/// The readings that the walk rests on, those of the coldest stay first: it is they that turn the answer.
void note_walk(Judge& judge, const CheckContext& context, const Walk& walk) {
    const auto note = [&](const StopDemand& stop) {
        static_cast<void>(judge.low(stop.air));
        static_cast<void>(judge.nominal(stop.stay));
    };
    note(context.cart->stops[walk.coldest_stop]);
    for (const StopDemand& stop : context.cart->stops) note(stop);
    judge.assume(Assumption::film_coefficient);
    judge.assume(context.core == context.tread ? Assumption::solid_disc : Assumption::lumped_core);
}

Moment moment_at(const CrossingDemand& crossing, const WalkPoint& point) {
    return {std::min(point.core, point.rim), point.air, place_of(crossing)};
}

}  // namespace

Finding check_cold(const CheckContext& context) {
    Judge judge(CheckId::cold, context);
    const Limits limits = limits_of(judge, context);
    const Walk* walk = context.cold();
    if (walk == nullptr) {
        judge.missing_walk();
        return judge.finish();
    }
    const auto& crossings = context.cart->crossings;
    if (context.only_crossing) {
        const std::size_t index = *context.only_crossing;
        const Moment moment = moment_at(crossings[index], walk->at_crossing[index]);
        judge_blow(judge, context, limits, moment, crossings[index]);
        judge_anywhere(judge, context, limits, moment);
    } else {
        const StopDemand& coldest = context.cart->stops[walk->coldest_stop];
        const Temperature air = context.corner == Corner::worst ? coldest.air.low : coldest.air.nominal;
        for (std::size_t k = 0; k < crossings.size(); ++k) {
            judge_blow(judge, context, limits, moment_at(crossings[k], walk->at_crossing[k]), crossings[k]);
        }
        judge_anywhere(judge, context, limits, {walk->coldest, air, {PlaceKind::room, coldest.room}});
    }
    note_walk(judge, context, *walk);
    return judge.finish();
}

}  // namespace sillwalk::engine
