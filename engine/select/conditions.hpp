#pragma once
/// Conditions of use: what must stand on the specification with a candidate, as keys and amounts.

#include "engine/model/advice.hpp"

#include <cstddef>
#include <vector>

namespace sillwalk::engine {

/// In the order of ConditionKind, then along the route. Each comes from a reading the candidate was judged for, from a
/// rating of its parts, or from a finding. Precondition: validate() is empty.
[[nodiscard]] std::vector<Condition> conditions_of(const Survey& survey, const Catalogue& catalogue,
                                                   const Tables& tables, std::size_t cart,
                                                   const RankedCandidate& candidate);

}  // namespace sillwalk::engine
