#include "engine/checks/tread_modulus.hpp"

#include "engine/physics/elastic.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

/// Treads below this hardness follow the rubber relation; at and above it [urethane-hardness-fit] applies.
constexpr double softest_fitted_shore_a = 80.0;

enum class End { stiff, soft };

/// The coldest air of the route for the stiff end, the warmest for the soft one.
std::optional<Temperature> extreme_air(Judge& judge, const CartDemand& cart, End end) {
    std::optional<Temperature> extreme;
    bool complete = !cart.stops.empty();
    for (const StopDemand& stop : cart.stops) {
        const auto air = end == End::stiff ? judge.low(stop.air) : judge.high(stop.air);
        complete &= air.has_value();
        const bool further = air && (!extreme || (end == End::stiff ? *air < *extreme : *air > *extreme));
        if (further) extreme = air;
    }
    return complete ? extreme : std::nullopt;
}

/// The careful end of a relation's answer; a refusal is a figure that is not there.
std::optional<TreadModulus> careful(Judge& judge, const CheckContext& context, End end, const Result<Modulus>& modulus,
                                    std::optional<Temperature> temperature = std::nullopt) {
    if (!modulus) {
        judge.missing_figure();
        return std::nullopt;
    }
    judge.assume(Assumption::modulus_band);
    if (context.corner == Corner::nominal) return TreadModulus{modulus->value, temperature};
    return TreadModulus{end == End::stiff ? modulus->high : modulus->low, temperature};
}

std::optional<TreadModulus> of_urethane(Judge& judge, const CheckContext& context, End end, const Hardness& hardness) {
    if (hardness.scale == HardnessScale::shore_a && hardness.value < softest_fitted_shore_a) {
        return careful(judge, context, end, modulus_gent(hardness.value));
    }
    const Result<double> shore_d =
        hardness.scale == HardnessScale::shore_d ? Result<double>(hardness.value) : shore_d_from_a(hardness.value);
    if (!shore_d) {
        judge.missing_figure();
        return std::nullopt;
    }
    const auto air = extreme_air(judge, *context.cart, end);
    if (!air) return std::nullopt;
    return careful(judge, context, end, modulus_urethane(*shore_d, *air, context.tread->soft_segment), air);
}

std::optional<TreadModulus> of_rubber(Judge& judge, const CheckContext& context, End end, const Hardness& hardness) {
    const bool shore_a = hardness.scale == HardnessScale::shore_a;
    return careful(judge, context, end,
                   shore_a ? modulus_gent(hardness.value) : modulus_log10(hardness.scale, hardness.value));
}

std::optional<TreadModulus> by_figure(Judge& judge, const CheckContext& context, End end) {
    const auto& figure = context.tread->modulus;
    if (!figure) {
        judge.missing_figure();
        return std::nullopt;
    }
    judge.cite(figure->citation);
    if (context.corner == Corner::nominal) return TreadModulus{figure->value, std::nullopt};
    return TreadModulus{(end == End::stiff ? figure->high : figure->low).value_or(figure->value), std::nullopt};
}

std::optional<TreadModulus> tread_modulus(Judge& judge, const CheckContext& context, End end) {
    if (context.tread == nullptr) {
        judge.missing_figure();
        return std::nullopt;
    }
    const MaterialFamily family = context.tread->family;
    const bool urethane = family == MaterialFamily::urethane;
    const bool rubber = family == MaterialFamily::rubber || family == MaterialFamily::thermoplastic_rubber;
    if (!urethane && !rubber) return by_figure(judge, context, end);
    if (!context.wheel->hardness) {
        judge.missing_figure();
        return std::nullopt;
    }
    return urethane ? of_urethane(judge, context, end, *context.wheel->hardness)
                    : of_rubber(judge, context, end, *context.wheel->hardness);
}

}  // namespace

std::optional<TreadModulus> stiffest_tread(Judge& judge, const CheckContext& context) {
    return tread_modulus(judge, context, End::stiff);
}

std::optional<TreadModulus> softest_tread(Judge& judge, const CheckContext& context) {
    return tread_modulus(judge, context, End::soft);
}

}  // namespace sillwalk::engine
