#include "engine/checks/castor_share.hpp"

#include "engine/base/contract.hpp"
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

/// The steepest slopes that the cart meets in this state; the level is always among them.
std::optional<SlopeEnds> slopes_of(Judge& judge, const CheckContext& context, CartState state) {
    SlopeEnds steepest;
    bool complete = true;
    for (const CrossingDemand& crossing : context.cart->crossings) {
        if (crossing.loaded != (state == CartState::loaded)) continue;
        const auto slope = slope_at(judge, context, crossing);
        complete &= slope.has_value();
        if (!slope) continue;
        steepest.low = std::min(steepest.low, slope->low);
        steepest.high = std::max(steepest.high, slope->high);
    }
    if (!complete) return std::nullopt;
    return steepest;
}

std::optional<Force> by_axles(Judge& judge, const CheckContext& context, CartState state) {
    const bool loaded = state == CartState::loaded;
    const auto mass = mass_on_leg(judge, *context.cart, loaded);
    const auto centre = centre_on_leg(judge, context, loaded);
    const auto slopes = slopes_of(judge, context, state);
    const auto wheelbase = wheelbase_of(judge, *context.cart);
    if (!mass || !centre || !slopes || !wheelbase) return std::nullopt;
    const Axles axles = axles_of(context.cart->castors);
    Force heaviest{};
    for (const Slope slope : {Slope{}, slopes->low, slopes->high}) {
        const AxleForces forces = axle_forces(*mass, *wheelbase, *centre, slope);
        heaviest = std::max(heaviest, castor_part(axles.on_front) * forces.front);
        heaviest = std::max(heaviest, castor_part(axles.on_rear) * forces.rear);
    }
    judge.assume(Assumption::cg_central);
    return heaviest;
}

}  // namespace

std::optional<Force> castor_load(Judge& judge, const CheckContext& context, CartState state) {
    if (context.castor_loads != nullptr) {
        const CastorLoad& known =
            state == CartState::loaded ? context.castor_loads->loaded : context.castor_loads->empty;
        if (known.missing) judge.missing(*known.missing);
        return known.load;
    }
    const CartDemand& cart = *context.cart;
    const auto tare = judge.high(cart.tare);
    const auto payload = state == CartState::loaded ? judge.high(cart.payload) : std::optional<Mass>(Mass{});
    const auto sharing = judge.value(cart.sharing);
    const auto axles = by_axles(judge, context, state);
    if (!tare || !payload || !sharing || !axles) return std::nullopt;
    const auto shared = wheel_load(*tare, *payload, static_cast<int>(cart.castors.size()), *sharing);
    if (!shared) {  // a sharing that this number of castors cannot have
        judge.missing(cart.sharing.ref);
        return std::nullopt;
    }
    return std::max(*axles, weight_of(*shared));
}

CastorLoads castor_loads(const CartDemand& cart, const Tables& tables) {
    CheckContext context;
    context.cart = &cart;
    context.tables = &tables;
    const auto of = [&](CartState state) {
        Judge judge(CheckId::load, context);
        CastorLoad result;
        result.load = castor_load(judge, context, state);
        if (!result.load) {
            const Finding finding = judge.finish();
            EXPECT_CONTRACT(!finding.missing.empty());
            result.missing = finding.missing[0];
        }
        return result;
    };
    return {of(CartState::empty), of(CartState::loaded)};
}

}  // namespace sillwalk::engine
