/// Will the bearing last? Rolling: L10 over the route against the service asked, and static safety. Plain: PV and
/// pressure. All: its own temperature limits. Loads without the load factor. bearing_life: life in distance, life in
/// time, time asked, load per bearing, rating, lubrication factor, distance a day. bearing_static: safety, safety
/// asked, load per bearing, static rating. bearing_pv: PV, its limit, pressure, its limit, load. bearing_temperature:
/// temperature, limit, margin (negative = past it). Source: life [iso-281]; safety [bearing-textbook]; PV derived;
/// what water leaves of the life from memory.

#include "engine/checks/castor_share.hpp"
#include "engine/checks/checks.hpp"
#include "engine/checks/moisture.hpp"
#include "engine/physics/bearings.hpp"

#include <algorithm>
#include <numbers>

namespace sillwalk::engine {
namespace {

RollingElement element_of(BearingKind kind) {
    const bool roller = kind == BearingKind::roller || kind == BearingKind::stainless_roller;
    return roller ? RollingElement::roller : RollingElement::ball;
}

/// Distance rolled in a day: every leg of the route is one push.
std::optional<Length> daily_distance(Judge& judge, const CartDemand& cart) {
    const auto trips = judge.high(cart.trips_per_day);
    const auto push = judge.high(cart.push_distance);
    if (!trips || !push) return std::nullopt;
    return *trips * static_cast<double>(std::max<std::size_t>(1, cart.crossings.size())) * *push;
}

/// What the grease is worth on this route: washed out, splashed, or dry and sealed.
double lubrication_factor(Judge& judge, const CheckContext& context) {
    const Practice& practice = context.tables->practice;
    const auto take = [&](const Figure<double>& figure) {
        judge.cite(figure.citation);
        judge.assume(Assumption::practice_figure);
        return figure.value;
    };
    const bool sealed = context.bearing->sealed;
    if (!sealed && context.preparation == Preparation::degreased) return take(practice.life_wet_factor);
    const RouteMoisture route = route_moisture(judge, *context.cart);
    if (route.moisture == Moisture::wet) return take(sealed ? practice.life_splash_factor : practice.life_wet_factor);
    if (route.moisture == Moisture::damp && !sealed) return take(practice.life_splash_factor);
    return 1.0;
}

void add_life(Judge& judge, const CheckContext& context, Force load) {
    const Bearing& bearing = *context.bearing;
    const auto daily = daily_distance(judge, *context.cart);
    const double factor = lubrication_factor(judge, context);
    const Figure<Duration>& asked = context.tables->practice.bearing_service;
    if (!bearing.dynamic_rating || asked.value <= Duration{} || factor <= 0.0) judge.missing_figure();
    if (!bearing.dynamic_rating || asked.value <= Duration{} || factor <= 0.0 || !daily) return;
    BearingLifeInput input;
    input.rating = *bearing.dynamic_rating;
    input.load = load;
    input.element = element_of(bearing.kind);
    const auto life = bearing_life(input);
    if (!life) {
        judge.missing_figure();
        return;
    }
    const Length distance = factor * life->revolutions * std::numbers::pi * context.wheel->diameter;
    const Length needed = asked.value.in(day) * *daily;
    const double use = needed / distance;
    // A cart that never rolls has no end of life; the answer is cut where no one would wait for it.
    const Duration longest = 1000.0 * 365.0 * day;
    const Duration time = *daily > Length{} ? std::min(longest, distance / *daily * day) : longest;
    judge.part({.demand = {needed.si(), Kind::distance_km},
                .capacity = {distance.si(), Kind::distance_km},
                .use = use,
                .statement = Statement::bearing_life,
                .formula = "bearing-life",
                .numbers = {{distance.si(), Kind::distance_km},
                            {time.si(), Kind::duration},
                            {asked.value.si(), Kind::duration},
                            {load.si(), Kind::force},
                            {bearing.dynamic_rating->si(), Kind::force},
                            {factor, Kind::number},
                            {daily->si(), Kind::distance_km}},
                .citations = {asked.citation}});
}

/// Any crossing counts as a blow, for which the higher published safety applies.
void add_static(Judge& judge, const CheckContext& context, const BearingRow& row, Force load) {
    const Bearing& bearing = *context.bearing;
    if (!bearing.static_rating || !row.static_safety) {
        judge.missing_figure();
        return;
    }
    const bool blows = !context.cart->crossings.empty();
    const Figure<double>& figure = *row.static_safety;
    const double asked = blows ? figure.high.value_or(figure.value) : figure.low.value_or(figure.value);
    const double safety = *bearing.static_rating / load;
    judge.part({.demand = {asked, Kind::number},
                .capacity = {safety, Kind::number},
                .use = asked / safety,
                .statement = Statement::bearing_static,
                .formula = "bearing-static",
                .numbers = {{safety, Kind::number},
                            {asked, Kind::number},
                            {load.si(), Kind::force},
                            {bearing.static_rating->si(), Kind::force}},
                .citations = {row.static_safety->citation}});
}

void add_plain(Judge& judge, const CheckContext& context, const BearingRow& row, Force load) {
    const Bearing& bearing = *context.bearing;
    const auto speed = judge.high(context.cart->speed);
    if (!row.pv_limit || !row.pressure_limit) judge.missing_figure();
    if (!row.pv_limit || !row.pressure_limit || !speed) return;
    const Length length = static_cast<double>(bearing.count) * bearing.length;
    const auto plain = plain_bearing(load, context.wheel->diameter, *speed, length, bearing.bore);
    if (!plain || !plain->pressure) {
        judge.missing_figure();
        return;
    }
    const Amount pv{plain->pv.si(), Kind::pressure_velocity}, pv_limit{row.pv_limit->value.si(), pv.kind};
    const Amount pressure{plain->pressure->si(), Kind::pressure};
    const Amount pressure_limit{row.pressure_limit->value.si(), Kind::pressure};
    const double pv_use = pv.si / pv_limit.si, pressure_use = pressure.si / pressure_limit.si;
    const bool by_pv = pv_use >= pressure_use;
    judge.part({.demand = by_pv ? pv : pressure,
                .capacity = by_pv ? pv_limit : pressure_limit,
                .use = std::max(pv_use, pressure_use),
                .statement = Statement::bearing_pv,
                .formula = by_pv ? "bearing-pv" : "bearing-pressure",
                .numbers = {pv, pv_limit, pressure, pressure_limit, {load.si(), Kind::force}},
                .citations = {row.pv_limit->citation, row.pressure_limit->citation},
                .conflict = by_pv ? !row.pv_limit->conflicting.empty() : !row.pressure_limit->conflicting.empty()});
}

void add_margin(Judge& judge, const CheckContext& context, Temperature meets, Temperature limit,
                TemperatureChange margin, CitationId citation) {
    const double use = std::max(0.0, 1.0 - context.tables->practice.cold_use_per_kelvin.value * margin.si());
    judge.part({.demand = {meets.kelvin(), Kind::temperature},
                .capacity = {limit.kelvin(), Kind::temperature},
                .use = use,
                .statement = Statement::bearing_temperature,
                .formula = "cold-use",
                .numbers = {{meets.kelvin(), Kind::temperature},
                            {limit.kelvin(), Kind::temperature},
                            {margin.si(), Kind::temperature_change}},
                .citations = {citation}});
}

void add_hot(Judge& judge, const CheckContext& context, const BearingRow& row) {
    const auto& own = context.bearing->temperature_max;
    if (!own && !row.temperature_max) {
        judge.missing_figure();
        return;
    }
    const Temperature limit = own ? *own : row.temperature_max->value;
    const CitationId citation = own ? CitationId{0} : row.temperature_max->citation;
    std::optional<Temperature> hottest;
    const auto meet = [&](const Input<Temperature>& input) {
        const auto temperature = judge.high(input);
        if (temperature && (!hottest || *temperature > *hottest)) hottest = temperature;
    };
    for (const StopDemand& stop : context.cart->stops) meet(stop.air);
    for (const WashingDemand& washing : context.cart->washings) meet(washing.temperature);
    if (hottest) add_margin(judge, context, *hottest, limit, limit - *hottest, citation);
}

/// Ratings at room temperature do not cover a freezer: below freezing the maker's least temperature is needed.
void add_cold(Judge& judge, const CheckContext& context) {
    std::optional<Temperature> coldest;
    for (const StopDemand& stop : context.cart->stops) {
        const auto air = judge.low(stop.air);
        if (air && (!coldest || *air < *coldest)) coldest = air;
    }
    if (!coldest) return;
    const auto& limit = context.bearing->temperature_min;
    if (!limit) {
        if (*coldest < celsius(0.0)) judge.missing_figure();
        return;
    }
    add_margin(judge, context, *coldest, *limit, *coldest - *limit, CitationId{0});
}

}  // namespace

Finding check_bearing(const CheckContext& context) {
    Judge judge(CheckId::bearing, context);
    const BearingRow* row = context.tables->bearing(context.bearing->kind);
    if (row == nullptr) {
        judge.missing_figure();
        return judge.finish();
    }
    if (const auto load = castor_load(judge, context, CartState::loaded)) {
        if (context.bearing->kind == BearingKind::plain_acetal) {
            add_plain(judge, context, *row, *load);
        } else {
            const Force each = *load / static_cast<double>(std::max(1, context.bearing->count));
            add_life(judge, context, each);
            add_static(judge, context, *row, each);
        }
    }
    add_hot(judge, context, *row);
    add_cold(judge, context);
    return judge.finish();
}

}  // namespace sillwalk::engine
