/// Can the tread come off its core? Bonded treads only. The bond line warms by the room, by rolling and by the tread's
/// own thickness; it is washed hot, meets the agents, and is pulled by a tread that shrinks more than its core.
///
/// Statements and their numbers, in this order:
///   bond_shear: 1 stress of the mismatch, 2 stress the bond keeps, 3 temperature, 4 mismatch strain, 5 tread modulus
///   there,
///     6 share of the bond kept there;
///   bond_temperature: 1 temperature of the bond line, 2 rated maximum, 3 margin (negative = past it), 4 air or wash, 5
///   warming
///     over the air, 6 further rise through the tread, 7 heat of rolling;
///   bond_chemical: 1 level, 2 level allowed, 3 which side (0 tread, 1 core);
///   bond_one_piece: none; does not apply.
/// Source: 8 MPa asked of a bond [urethane-bond-text]; its shares when hot from memory; the mismatch (an elastic upper
/// bound) and the heat derived, docs/reference/methods.md "bond-mismatch" and "bond-temperature".

#include "engine/checks/agents.hpp"
#include "engine/checks/checks.hpp"
#include "engine/checks/rolling_heat.hpp"
#include "engine/checks/temperature_margin.hpp"
#include "engine/checks/tread_strain.hpp"

#include <algorithm>
#include <numbers>

namespace sillwalk::engine {
namespace {

Amount amount(Pressure value) {
    return {value.si(), Kind::pressure};
}
Amount level(ChemicalLevel value) {
    return {static_cast<double>(value), Kind::level};
}

/// Share of the room-temperature bond kept: 1 up to 23 C, the two figures at 70 and 100 C, straight between and beyond.
double bond_kept(const Practice& practice, Temperature at) {
    const double t = at.celsius();
    const double at_70 = practice.bond_retention_70.value, at_100 = practice.bond_retention_100.value;
    if (t <= 23.0) return 1.0;
    if (t <= 70.0) return 1.0 + (at_70 - 1.0) * (t - 23.0) / 47.0;
    return std::max(0.0, at_70 + (at_100 - at_70) * (t - 70.0) / 30.0);
}

void judge_shear(Judge& judge, const CheckContext& context, Temperature at, Place place) {
    const auto strain = mismatch_at(judge, context, at);
    if (!strain) return;
    const Practice& practice = context.tables->practice;
    const double kept = bond_kept(practice, at);
    const Pressure limit = kept * practice.bond_shear_limit.value;
    const double use = limit > Pressure{} ? strain->stress / limit : beyond_measure;
    judge.assume(Assumption::modulus_band);
    judge.part({.demand = amount(strain->stress),
                .capacity = amount(limit),
                .use = use,
                .statement = Statement::bond_shear,
                .place = place,
                .formula = "bond-mismatch",
                .numbers = {amount(strain->stress),
                            amount(limit),
                            amount(at),
                            {strain->strain, Kind::share},
                            amount(strain->modulus),
                            {kept, Kind::share}},
                .citations = {
                    practice.bond_shear_limit.citation, strain->citation_tread, strain->citation_core,
                    kept < 1.0 ? practice.bond_retention_70.citation : CitationId{0},
                    kept < practice.bond_retention_70.value ? practice.bond_retention_100.citation : CitationId{0}}});
}

/// What the bond line meets from outside, and what it is warmer than that.
struct BondLine {
    Temperature met;
    TemperatureChange warming{}, rise{};
    Power heat{};
};

void judge_bond_line(Judge& judge, const CheckContext& context, const BondLine& line, const RatedMaximum& limit,
                     Place place) {
    const Temperature bond = line.met + line.warming + line.rise;
    const Part scale = part_of_heat(context, bond, limit);
    const Amount margin = amount(limit.value - bond), heat{line.heat.si(), Kind::power};
    judge.part({.demand = scale.demand,
                .capacity = scale.capacity,
                .use = scale.use,
                .statement = Statement::bond_temperature,
                .place = place,
                .formula = "bond-temperature",
                .numbers = {scale.demand, scale.capacity, margin, amount(line.met), amount(line.warming),
                            amount(line.rise), heat},
                .citations = {limit.citation, context.tables->practice.temperature_tight.citation}});
}

/// q t^2/(2 k): even heating of a tread on a core that lets nothing through.
std::optional<TemperatureChange> rise_through_tread(Judge& judge, const CheckContext& context,
                                                    const RollingHeat& rolling, Length thickness) {
    if (rolling.heat == Power{}) return TemperatureChange{};
    if (!context.tread->conductivity) {
        judge.missing_figure();
        return std::nullopt;
    }
    const Length radius = context.wheel->diameter / 2.0, joint = radius - thickness;
    const auto volume = std::numbers::pi * (radius * radius - joint * joint) * context.wheel->tread_width;
    judge.cite(context.tread->conductivity->citation);
    return rolling.heat / volume * (thickness * thickness) / (2.0 * context.tread->conductivity->value);
}

void judge_heat(Judge& judge, const CheckContext& context) {
    const auto limit = rated_maximum(judge, context);
    const auto rolling = rolling_heat(judge, context);
    const auto& thickness = context.wheel->tread_thickness;
    if (!thickness) judge.missing_figure();
    const auto rise = rolling && thickness ? rise_through_tread(judge, context, *rolling, *thickness) : std::nullopt;
    for (const StopDemand& stop : context.cart->stops) {
        const auto air = judge.high(stop.air);
        const auto warming = rolling ? warming_over_air(judge, context, *rolling, stop) : std::nullopt;
        if (!air || !warming || !rise || !limit) continue;
        judge_bond_line(judge, context, {*air, *warming, *rise, rolling->heat}, *limit, {PlaceKind::room, stop.room});
    }
    for (const WashingDemand& washing : context.cart->washings) {
        const auto hot = judge.high(washing.temperature);
        if (!hot) continue;
        const Place place{PlaceKind::washing, washing.washing};
        if (limit) judge_bond_line(judge, context, {*hot}, *limit, place);
        judge_shear(judge, context, *hot, place);
    }
}

void judge_agents(Judge& judge, const CheckContext& context) {
    double side = 0;
    for (const Material* material : {context.tread, context.core}) {
        if (const auto effect = worst_agent(judge, context, material)) {
            judge.part({.demand = level(effect->answer.level),
                        .capacity = level(effect->allowed),
                        .use = effect->use,
                        .statement = Statement::bond_chemical,
                        .place = {PlaceKind::washing, effect->washing->washing},
                        .formula = "bond-chemical",
                        .numbers = {level(effect->answer.level), level(effect->allowed), {side, Kind::number}},
                        .citations = {effect->answer.rating->citation},
                        .outcome = effect->outcome,
                        .conflict = !effect->answer.rating->disagreement.empty()});
        }
        side += 1;
    }
}

void judge_cold(Judge& judge, const CheckContext& context) {
    const Walk* walk = context.cold();
    if (walk == nullptr) {
        judge.missing_walk();
        return;
    }
    const StopDemand& coldest = context.cart->stops[walk->coldest_stop];
    static_cast<void>(judge.low(coldest.air));
    static_cast<void>(judge.nominal(coldest.stay));
    judge_shear(judge, context, walk->coldest, {PlaceKind::room, coldest.room});
}

}  // namespace

Finding check_bond(const CheckContext& context) {
    Judge judge(CheckId::bond, context);
    const bool one_piece = context.wheel->core_material == context.wheel->tread_material;
    if (one_piece) {
        judge.part({.statement = Statement::bond_one_piece, .outcome = Outcome::does_not_apply});
        return judge.finish();
    }
    if (context.tread == nullptr || context.core == nullptr) {
        judge.missing_figure();
        return judge.finish();
    }
    judge_cold(judge, context);
    judge_heat(judge, context);
    judge_agents(judge, context);
    return judge.finish();
}

}  // namespace sillwalk::engine
