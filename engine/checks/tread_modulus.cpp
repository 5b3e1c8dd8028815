#include "engine/checks/tread_modulus.hpp"

#include "engine/physics/elastic.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

/// Treads below this hardness follow the rubber relation; at and above it the urethane fit applies (urethane.md §2).
constexpr double softest_fitted_shore_a = 80.0;

std::optional<Temperature> coldest_air(Judge& judge, const CartDemand& cart) {
    std::optional<Temperature> coldest;
    bool complete = !cart.stops.empty();
    for (const StopDemand& stop : cart.stops) {
        const auto air = judge.low(stop.air);
        complete &= air.has_value();
        if (air && (!coldest || *air < *coldest)) coldest = air;
    }
    return complete ? coldest : std::nullopt;
}

/// The careful end of a relation's answer; a refusal is a figure that is not there.
std::optional<TreadModulus> careful(Judge& judge, const CheckContext& context, const Result<Modulus>& modulus,
                                    std::optional<Temperature> temperature = std::nullopt) {
    if (!modulus) {
        judge.missing_figure();
        return std::nullopt;
    }
    judge.assume(Assumption::modulus_band);
    return TreadModulus{context.corner == Corner::worst ? modulus->high : modulus->value, temperature};
}

std::optional<TreadModulus> of_urethane(Judge& judge, const CheckContext& context, const Hardness& hardness) {
    if (hardness.scale == HardnessScale::shore_a && hardness.value < softest_fitted_shore_a) {
        return careful(judge, context, modulus_gent(hardness.value));
    }
    const Result<double> shore_d =
        hardness.scale == HardnessScale::shore_d ? Result<double>(hardness.value) : shore_d_from_a(hardness.value);
    if (!shore_d) {
        judge.missing_figure();
        return std::nullopt;
    }
    const auto coldest = coldest_air(judge, *context.cart);
    if (!coldest) return std::nullopt;
    return careful(judge, context, modulus_urethane(*shore_d, *coldest, context.tread->soft_segment), coldest);
}

std::optional<TreadModulus> of_rubber(Judge& judge, const CheckContext& context, const Hardness& hardness) {
    const bool shore_a = hardness.scale == HardnessScale::shore_a;
    return careful(judge, context,
                   shore_a ? modulus_gent(hardness.value) : modulus_log10(hardness.scale, hardness.value));
}

std::optional<TreadModulus> by_figure(Judge& judge, const CheckContext& context) {
    const auto& figure = context.tread->modulus;
    if (!figure) {
        judge.missing_figure();
        return std::nullopt;
    }
    judge.cite(figure->citation);
    const bool worst = context.corner == Corner::worst;
    return TreadModulus{worst ? figure->high.value_or(figure->value) : figure->value, std::nullopt};
}

}  // namespace

std::optional<TreadModulus> stiffest_tread(Judge& judge, const CheckContext& context) {
    if (context.tread == nullptr) {
        judge.missing_figure();
        return std::nullopt;
    }
    const MaterialFamily family = context.tread->family;
    const bool urethane = family == MaterialFamily::urethane;
    const bool rubber = family == MaterialFamily::rubber || family == MaterialFamily::thermoplastic_rubber;
    if (!urethane && !rubber) return by_figure(judge, context);
    if (!context.wheel->hardness) {
        judge.missing_figure();
        return std::nullopt;
    }
    return urethane ? of_urethane(judge, context, *context.wheel->hardness)
                    : of_rubber(judge, context, *context.wheel->hardness);
}

}  // namespace sillwalk::engine
