#pragma once
/// Demand and capacity of a castor's load, shared by `load` and `parked` (docs/reference/methods.md "load-factor").

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

/// The hardest loaded castor of the loaded cart, as a mass, times the factor: the one that the survey chose, else the
/// upper end of its row of the table.
struct FactoredLoad {
    Mass plain, demand;
    double factor = 1.0;
};
[[nodiscard]] std::optional<FactoredLoad> factored_load(Judge& judge, const CheckContext& context);

/// The lower of the wheel's and the rig's rating.
[[nodiscard]] std::optional<Mass> rated_load(Judge& judge, const CheckContext& context);

/// Notes "not known" where the cart runs faster than the speed that the rating was tested at.
void judge_rated_speed(Judge& judge, const CheckContext& context);

}  // namespace sillwalk::engine
