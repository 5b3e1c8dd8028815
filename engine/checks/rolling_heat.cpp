#include "engine/checks/rolling_heat.hpp"

#include "engine/checks/castor_share.hpp"
#include "engine/checks/tread_modulus.hpp"
#include "engine/physics/elastic.hpp"
#include "engine/physics/rolling.hpp"

#include <algorithm>
#include <numbers>

namespace sillwalk::engine {
namespace {

bool is_elastomer(MaterialFamily family) {
    return family == MaterialFamily::urethane || family == MaterialFamily::rubber ||
           family == MaterialFamily::thermoplastic_rubber;
}

Area outside_of(const Wheel& wheel) {
    const Length radius = wheel.diameter / 2.0;
    return 2.0 * std::numbers::pi * (radius * radius + radius * wheel.tread_width);
}

std::optional<Length> contact_half_width(Judge& judge, const CheckContext& context, Force load) {
    const auto modulus = softest_tread(judge, context);
    if (!modulus) return std::nullopt;
    if (!context.tread->poisson) {
        judge.missing_figure();
        return std::nullopt;
    }
    ContactInput input;
    input.load = load;
    input.diameter = context.wheel->diameter;
    input.width = context.wheel->tread_width;
    input.modulus = modulus->value;
    input.poisson = context.tread->poisson->value;
    input.with_approach = false;
    if (!context.wheel->crown_radius) input.tread_thickness = context.wheel->tread_thickness;
    const auto patch = contact(input, context.tables->layer);
    if (!patch) judge.missing_figure();
    return patch ? std::optional<Length>(std::min(patch->half_width, input.diameter / 2.0)) : std::nullopt;
}

/// Share of the time that the wheel rolls: 1 unless length and rate of the pushes are known.
double rolling_share(Judge& judge, const CartDemand& cart, Speed speed) {
    if (!cart.push_distance.given || !cart.push_rate.given || !(speed > Speed{})) return 1.0;
    // Asked one after the other: compilers differ in which side of a product they evaluate first, and the finding keeps
    // the order in which its readings were asked.
    const Length distance = *judge.high(cart.push_distance);
    const Frequency rate = *judge.high(cart.push_rate);
    return std::clamp(distance * rate / speed, 0.0, 1.0);
}

}  // namespace

std::optional<RollingHeat> rolling_heat(Judge& judge, const CheckContext& context) {
    RollingHeat result;
    result.surface = outside_of(*context.wheel);
    if (context.tread == nullptr) {
        judge.missing_figure();
        return std::nullopt;
    }
    if (!is_elastomer(context.tread->family)) return result;
    const auto& stops = context.cart->stops;
    const bool loaded = std::any_of(stops.begin(), stops.end(), [](const StopDemand& stop) { return stop.loaded; });
    const auto load = castor_load(judge, context, loaded ? CartState::loaded : CartState::empty);
    const auto speed = judge.high(context.cart->speed);
    if (!context.tread->tan_delta) judge.missing_figure();
    const auto half_width = load ? contact_half_width(judge, context, *load) : std::nullopt;
    if (!half_width || !speed || !context.tread->tan_delta) return std::nullopt;
    const Figure<double>& figure = *context.tread->tan_delta;
    judge.cite(figure.citation);
    const double tan_delta = context.corner == Corner::worst ? figure.high.value_or(figure.value) : figure.value;
    const auto loss = rolling_loss(*load, *half_width, context.wheel->diameter, tan_delta, *speed);
    if (!loss) {
        judge.missing_figure();
        return std::nullopt;
    }
    result.heat_share = rolling_share(judge, *context.cart, *speed);
    result.heat = result.heat_share * loss->heat;
    return result;
}

std::optional<TemperatureChange> warming_over_air(Judge& judge, const CheckContext& context, const RollingHeat& rolling,
                                                  const StopDemand& stop) {
    if (rolling.heat == Power{}) return TemperatureChange{};
    const auto movement = judge.value(stop.air_movement);
    if (!movement) return std::nullopt;
    const FilmRow* row = context.tables->film_for(*movement);
    if (row == nullptr) {
        judge.missing_figure();
        return std::nullopt;
    }
    judge.assume(Assumption::film_coefficient);
    judge.cite(row->film.citation);
    const bool worst = context.corner == Corner::worst;
    const FilmCoefficient film = worst ? row->film.low.value_or(row->film.value) : row->film.value;
    return rolling.heat / (film * rolling.surface);
}

}  // namespace sillwalk::engine
