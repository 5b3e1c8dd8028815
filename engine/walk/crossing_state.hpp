#pragma once
/// What the axles of a cart carry at each crossing of its route, for the plot and the description: static, on the level
/// and on the crossing's own slope, with that leg's mass and centre; the front leads, as for the checks.

#include "engine/checks/crossing_case.hpp"
#include "engine/checks/demand.hpp"

#include <optional>
#include <vector>

namespace sillwalk::engine {

/// Nominal readings, or the heavy end of the masses and the careful ends of the centre and the slope.
enum class LoadEnd { nominal, heavy };

struct CrossingState {
    AxleForces level;
    std::optional<AxleForces> on_slope;  ///< absent where the slope was not read
    std::optional<Speed> speed;          ///< of the cart at its crossings; absent where it was not read
};

/// Empty where mass, centre or castors of that leg were not read.
[[nodiscard]] std::optional<CrossingState> crossing_state(const CartDemand& cart, const CrossingDemand& crossing,
                                                          LoadEnd end);
/// The same for every crossing, in the order of CartDemand::crossings, nominal.
[[nodiscard]] std::vector<std::optional<CrossingState>> crossing_states(const CartDemand& cart);

}  // namespace sillwalk::engine
