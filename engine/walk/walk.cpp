#include "engine/walk/walk.hpp"

#include "engine/base/contract.hpp"
#include "engine/walk/day.hpp"
#include "engine/walk/thermal_wheel.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace sillwalk::engine {
namespace {

constexpr int trace_points_per_stay = 12;

Temperature air_at(const StopDemand& stop, WalkEnd end) {
    if (end == WalkEnd::nominal) return stop.air.nominal;
    return end == WalkEnd::cold ? stop.air.low : stop.air.high;
}

/// Mean of the air that the wheel stands in, over the day.
Temperature mean_air(const CartDemand& demand, WalkEnd end) {
    double weighted = 0.0, seconds = 0.0, plain = 0.0;
    for (const StopDemand& stop : demand.stops) {
        weighted += air_at(stop, end).kelvin() * stop.stay.nominal.si();
        seconds += stop.stay.nominal.si();
        plain += air_at(stop, end).kelvin();
    }
    return Temperature::from_kelvin(seconds > 0.0 ? weighted / seconds
                                                  : plain / static_cast<double>(demand.stops.size()));
}

Stay stay_of(const StopDemand& stop, ThermalWheel& wheel, const Tables& tables, WalkEnd end, Temperature mean) {
    const Temperature air = air_at(stop, end);
    const Figure<FilmCoefficient>& film = tables.film_for(stop.air_movement.value)->film;
    const bool extreme = end == WalkEnd::cold ? air < mean : air > mean;
    Duration time = stop.stay.nominal;
    FilmCoefficient coefficient = film.value;
    if (end != WalkEnd::nominal) {
        time = extreme ? stop.stay.high : stop.stay.low;
        if (extreme) coefficient = film.high.value_or(film.value);
    }
    return {&wheel.under(coefficient), air.kelvin(), std::max(0.0, time.si())};
}

WalkPoint point_of(std::size_t stop, double seconds, double air_K, const PlaceTemperatures& kelvin) {
    const auto at = [&](WheelPlace place) { return Temperature::from_kelvin(kelvin[static_cast<std::size_t>(place)]); };
    WalkPoint point;
    point.stop = static_cast<std::uint16_t>(stop);
    point.since_start = seconds * second;
    point.air = Temperature::from_kelvin(air_K);
    point.core = at(WheelPlace::core);
    point.rim = at(WheelPlace::rim);
    point.mean = at(WheelPlace::mean);
    point.bore = at(WheelPlace::bore);
    point.bond = at(WheelPlace::bond);
    return point;
}

std::vector<WalkPoint> trace_of(const Day& repeated, const std::vector<Stay>& stays, const Day::Result& result) {
    std::vector<WalkPoint> trace;
    double since_start = 0.0;
    for (std::size_t stop = 0; stop < stays.size(); ++stop) {
        const Stay& stay = stays[stop];
        for (int k = 0; k <= trace_points_per_stay; ++k) {
            const double seconds = stay.seconds * k / trace_points_per_stay;
            trace.push_back(point_of(stop, since_start + seconds, stay.air_K,
                                     repeated.within(stay, result.at_start[stop], seconds)));
        }
        since_start += stay.seconds;
    }
    return trace;
}

}  // namespace

WalkKey walk_key(const Wheel& wheel, const Tables& tables) {
    WalkKey key;
    key.diameter = wheel.diameter.si();
    key.width = wheel.tread_width.si();
    key.tread = tables.material(wheel.tread_material);
    key.core = tables.material(wheel.core_material);
    if (wheel.core_material != wheel.tread_material) {
        key.tread_thickness = wheel.tread_thickness ? wheel.tread_thickness->si() : 0.0;
        key.bore = wheel.hub_bore.si();
    }
    return key;
}

WalkMissing walk_missing(const CartDemand& demand, const WalkKey& key, const Tables& tables) {
    WalkMissing missing;
    if (demand.stops.empty()) missing.readings.add({Field::cart_route, demand.cart, 0});
    for (const StopDemand& stop : demand.stops) {
        if (!stop.air.given) missing.readings.add(stop.air.ref);
        if (!stop.stay.given) missing.readings.add(stop.stay.ref);
        if (!stop.air_movement.given) {
            missing.readings.add(stop.air_movement.ref);
        } else if (tables.film_for(stop.air_movement.value) == nullptr) {
            missing.material_figures = true;
        }
    }
    missing.material_figures = missing.material_figures || !ThermalWheel::figures_known(key);
    return missing;
}

Walk walk_route(const CartDemand& demand, const WalkKey& key, const Tables& tables, WalkEnd end, bool with_trace) {
    ThermalWheel wheel(key);
    return walk_route(demand, wheel, tables, end, with_trace);
}

Walk walk_route(const CartDemand& demand, ThermalWheel& wheel, const Tables& tables, WalkEnd end, bool with_trace) {
    EXPECT_CONTRACT(!demand.stops.empty());
    const Temperature mean = mean_air(demand, end);
    std::vector<Stay> stays;
    stays.reserve(demand.stops.size());
    for (const StopDemand& stop : demand.stops) stays.push_back(stay_of(stop, wheel, tables, end, mean));
    const Day repeated(stays);
    const Day::Result result = repeated.repeat();

    Walk walk;
    walk.days = result.days;
    walk.repeats = result.repeats;
    walk.coldest = Temperature::from_kelvin(result.extremes.coldest_K);
    walk.hottest = Temperature::from_kelvin(result.extremes.hottest_K);
    walk.coldest_stop = static_cast<std::uint16_t>(result.extremes.coldest_stay);
    walk.hottest_stop = static_cast<std::uint16_t>(result.extremes.hottest_stay);
    walk.at_crossing.reserve(demand.crossings.size());
    for (const CrossingDemand& crossing : demand.crossings) {
        double since_start = 0.0;
        for (std::size_t stop = 0; stop <= crossing.after_stop; ++stop) since_start += stays[stop].seconds;
        walk.at_crossing.push_back(point_of(crossing.after_stop, since_start, stays[crossing.after_stop].air_K,
                                            result.at_end[crossing.after_stop]));
    }
    if (with_trace) walk.trace = trace_of(repeated, stays, result);
    return walk;
}

}  // namespace sillwalk::engine
