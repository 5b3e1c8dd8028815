#pragma once
/// The static load on the hardest loaded castor of a cart, as the checks share it; the rule is our own.

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

enum class CartState { empty, loaded };

/// The greater of the sharing formula and the castor's part of the heavier axle, on the level and on the steepest
/// slopes of the route (front leads), without any factor. The careful ends of the readings; each is noted, and empty
/// means that one is missing. On a slope that would lift an axle the other one carries everything: `tip` judges that
/// slope.
[[nodiscard]] std::optional<Force> castor_load(Judge& judge, const CheckContext& context, CartState state);

/// castor_load() of both states at the careful corner, for CheckContext::castor_loads.
[[nodiscard]] CastorLoads castor_loads(const CartDemand& cart, const Tables& tables);

}  // namespace sillwalk::engine
