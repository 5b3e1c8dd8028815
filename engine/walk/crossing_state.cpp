#include "engine/walk/crossing_state.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

template <class T>
T high_end(const Input<T>& input, LoadEnd end) {
    return end == LoadEnd::heavy ? input.high : input.nominal;
}

std::optional<Length> wheelbase(const CartDemand& cart) {
    if (cart.castors.empty()) return std::nullopt;
    const auto [rear, front] =
        std::minmax_element(cart.castors.begin(), cart.castors.end(),
                            [](const CastorPosition& a, const CastorPosition& b) { return a.forward < b.forward; });
    if (!(front->forward > rear->forward)) return std::nullopt;
    return front->forward - rear->forward;
}

/// Greatest load of each axle over both ends of a range of slopes.
AxleForces greatest(const AxleForces& a, const AxleForces& b) {
    return {std::max(a.front, b.front), std::max(a.rear, b.rear)};
}

}  // namespace

std::optional<CrossingState> crossing_state(const CartDemand& cart, const CrossingDemand& crossing, LoadEnd end) {
    const bool loaded = crossing.loaded;
    const Input<Length>& forward = loaded ? cart.cg_forward_loaded : cart.cg_forward_empty;
    const Input<Length>& height = loaded ? cart.cg_height_loaded : cart.cg_height_empty;
    const auto base = wheelbase(cart);
    if (!base || !cart.tare.given || (loaded && !cart.payload.given) || !forward.given || !height.given) {
        return std::nullopt;
    }
    const Mass mass = high_end(cart.tare, end) + (loaded ? high_end(cart.payload, end) : Mass{});
    const bool heavy = end == LoadEnd::heavy;
    const Centre centre{heavy ? forward.low : forward.nominal, high_end(forward, end), high_end(height, end)};
    CrossingState state;
    state.level = axle_forces(mass, *base, centre, Slope{});
    if (crossing.slope.given) {
        const Slope low = heavy ? crossing.slope.low : crossing.slope.nominal;
        state.on_slope = greatest(axle_forces(mass, *base, centre, low),
                                  axle_forces(mass, *base, centre, high_end(crossing.slope, end)));
    }
    if (cart.speed.given) state.speed = high_end(cart.speed, end);
    return state;
}

std::vector<std::optional<CrossingState>> crossing_states(const CartDemand& cart) {
    std::vector<std::optional<CrossingState>> states;
    states.reserve(cart.crossings.size());
    for (const CrossingDemand& crossing : cart.crossings) {
        states.push_back(crossing_state(cart, crossing, LoadEnd::nominal));
    }
    return states;
}

}  // namespace sillwalk::engine
