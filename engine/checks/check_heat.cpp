/// Can it soften? The hottest air with the heat of rolling on top, and the hottest wash or steam, against the rated
/// maximum, in kelvin of margin on the common scale; and standing loaded while hot (practice; never worse than tight).
///
/// Statements and their numbers, in this order:
///   heat_rated_maximum: 1 temperature of the air or the wash, 2 rated maximum, 3 margin (negative = past it);
///   heat_rolling: 1 temperature of the wheel, 2 rated maximum, 3 margin, 4 air, 5 warming by rolling, 6 heat of
///   rolling,
///     7 share of the time that it rolls;
///   heat_standing: 1 temperature it stands in, 2 temperature above which loaded parts creep, 3 share of a flat that
///   stays.
/// The place is the room or the washing. Source: heat balance derived (docs/reference/methods.md "heat-rolling");
/// creep above 66 C [urethane-data-sheets]; the rest common practice, no published source.

#include "engine/checks/checks.hpp"
#include "engine/checks/rolling_heat.hpp"
#include "engine/checks/temperature_margin.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

void judge_contact(Judge& judge, const CheckContext& context, Temperature hot, const RatedMaximum& limit, Place place) {
    const Part scale = part_of_heat(context, hot, limit);
    judge.cite(context.tables->practice.temperature_tight.citation);
    judge.part({.demand = scale.demand,
                .capacity = scale.capacity,
                .use = scale.use,
                .statement = Statement::heat_rated_maximum,
                .place = place,
                .formula = "heat-limit",
                .numbers = {scale.demand, scale.capacity, amount(limit.value - hot)},
                .citations = {limit.citation}});
}

void judge_rolling(Judge& judge, const CheckContext& context, Temperature air, TemperatureChange warming,
                   const RollingHeat& rolling, const RatedMaximum& limit, Place place) {
    const Part scale = part_of_heat(context, air + warming, limit);
    const Amount margin = amount(limit.value - (air + warming));
    const Amount heat{rolling.heat.si(), Kind::power}, rolls{rolling.heat_share, Kind::share};
    judge.part({.demand = scale.demand,
                .capacity = scale.capacity,
                .use = scale.use,
                .statement = Statement::heat_rolling,
                .place = place,
                .formula = "heat-rolling",
                .numbers = {scale.demand, scale.capacity, margin, amount(air), amount(warming), heat, rolls},
                .citations = {limit.citation}});
}

/// A loaded tread that stands hot keeps a flat: a condition of use, not a reason to turn the wheel down.
void judge_standing(Judge& judge, const CheckContext& context, Temperature hot, Place place) {
    const Practice& practice = context.tables->practice;
    if (hot < practice.creep_critical.value) return;
    judge.assume(Assumption::practice_figure);
    judge.part(
        {.demand = amount(hot),
         .capacity = amount(practice.creep_critical.value),
         .use = 1.0,
         .statement = Statement::heat_standing,
         .place = place,
         .formula = "heat-standing",
         .numbers = {amount(hot), amount(practice.creep_critical.value), {practice.creep_flat_hot.value, Kind::share}},
         .citations = {practice.creep_critical.citation, practice.creep_flat_hot.citation},
         .outcome = Outcome::tight});
}

}  // namespace

Finding check_heat(const CheckContext& context) {
    Judge judge(CheckId::heat, context);
    const auto& stops = context.cart->stops;
    const auto limit = rated_maximum(judge, context);
    const auto rolling = rolling_heat(judge, context);
    if (stops.empty()) judge.missing({Field::cart_route, context.cart->cart, 0});
    for (const StopDemand& stop : stops) {
        const auto air = judge.high(stop.air);
        if (!air) continue;
        const Place place{PlaceKind::room, stop.room};
        if (limit) judge_contact(judge, context, *air, *limit, place);
        if (stop.loaded) judge_standing(judge, context, *air, place);
        const auto warming = rolling ? warming_over_air(judge, context, *rolling, stop) : std::nullopt;
        if (limit && warming && *warming > TemperatureChange{}) {
            judge_rolling(judge, context, *air, *warming, *rolling, *limit, place);
        }
    }
    const bool stands_loaded =
        std::any_of(stops.begin(), stops.end(), [](const StopDemand& stop) { return stop.loaded; });
    for (const WashingDemand& washing : context.cart->washings) {
        const auto hot = judge.high(washing.temperature);
        if (!hot) continue;
        const Place place{PlaceKind::washing, washing.washing};
        if (limit) judge_contact(judge, context, *hot, *limit, place);
        if (stands_loaded) judge_standing(judge, context, *hot, place);
    }
    return judge.finish();
}

}  // namespace sillwalk::engine
