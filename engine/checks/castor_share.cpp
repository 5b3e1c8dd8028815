#include "engine/checks/castor_share.hpp"

#include "engine/checks/crossing_case.hpp"
#include "engine/physics/load_share.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

struct Axles {
    Length rear, front;
    int on_rear = 0, on_front = 0;
};

Axles axles_of(const std::vector<CastorPosition>& castors) {
    constexpr Length same_axle = 1.0 * millimetre;
    Axles axles{castors.front().forward, castors.front().forward};
    for (const CastorPosition& castor : castors) {
        axles.rear = std::min(axles.rear, castor.forward);
        axles.front = std::max(axles.front, castor.forward);
    }
    for (const CastorPosition& castor : castors) {
        axles.on_rear += castor.forward - axles.rear <= same_axle ? 1 : 0;
        axles.on_front += axles.front - castor.forward <= same_axle ? 1 : 0;
    }
    return axles;
}

/// A castor carries half its axle, or all of it where it stands there alone.
double castor_part(int on_axle) {
    return on_axle >= 2 ? 0.5 : 1.0;
}

/// The heavier castor on one slope, for one place of the centre of gravity ahead of the rear axle.
Force heavier_castor(const Axles& axles, Mass mass, Length cg_from_rear, Length cg_height, Slope front_down) {
    const auto loads = axle_loads(mass, axles.front - axles.rear, cg_from_rear, cg_height, front_down);
    if (!loads) return weight_of(mass);
    return std::max(castor_part(axles.on_front) * loads->front, castor_part(axles.on_rear) * loads->rear);
}

struct SlopeRange {
    Slope least, greatest;  ///< front downhill counts positive
};

/// The steepest slopes of the route that this state meets; the level is always among them.
std::optional<SlopeRange> slopes_of(Judge& judge, const CheckContext& context, CartState state) {
    SlopeRange range;
    bool complete = true;
    for (const CrossingDemand& crossing : context.cart->crossings) {
        if (crossing.loaded != (state == CartState::loaded)) continue;
        const auto slope = slope_at(judge, context, crossing);
        if (!slope) {
            complete = false;
            continue;
        }
        range.least = std::min(range.least, -slope->high);
        range.greatest = std::max(range.greatest, -slope->low);
    }
    if (!complete) return std::nullopt;
    return range;
}

std::optional<Force> by_axles(Judge& judge, const CheckContext& context, CartState state, Mass mass) {
    const CartDemand& cart = *context.cart;
    const bool loaded = state == CartState::loaded;
    const auto& forward = loaded ? cart.cg_forward_loaded : cart.cg_forward_empty;
    const auto least = judge.low(forward);
    const auto greatest = judge.high(forward);
    const auto slopes = slopes_of(judge, context, state);
    const bool sloped = slopes && slopes->least != slopes->greatest;
    const auto height =
        sloped ? judge.high(loaded ? cart.cg_height_loaded : cart.cg_height_empty) : std::optional<Length>(Length{});
    if (!least || !greatest || !slopes || !height) return std::nullopt;
    const Axles axles = axles_of(cart.castors);
    Force heaviest{};
    for (const Length from_rear : {*least - axles.rear, *greatest - axles.rear}) {
        for (const Slope slope : {Slope{}, slopes->least, slopes->greatest}) {
            heaviest = std::max(heaviest, heavier_castor(axles, mass, from_rear, *height, slope));
        }
    }
    judge.assume(Assumption::cg_central);
    return heaviest;
}

}  // namespace

std::optional<Force> castor_load(Judge& judge, const CheckContext& context, CartState state) {
    const CartDemand& cart = *context.cart;
    const auto tare = judge.high(cart.tare);
    const auto payload = state == CartState::loaded ? judge.high(cart.payload) : std::optional<Mass>(Mass{});
    const auto sharing = judge.value(cart.sharing);
    if (cart.castors.empty()) judge.missing(cart.castors_ref);
    if (!tare || !payload || !sharing || cart.castors.empty()) return std::nullopt;
    const auto axles = by_axles(judge, context, state, *tare + *payload);
    const auto shared = wheel_load(*tare, *payload, static_cast<int>(cart.castors.size()), *sharing);
    if (!shared) judge.missing(cart.sharing.ref);  // a sharing that this number of castors cannot have
    if (!axles || !shared) return std::nullopt;
    return std::max(*axles, weight_of(*shared));
}

}  // namespace sillwalk::engine
