#pragma once
/// The best candidate of every construction of the catalogue.

#include "engine/select/score_cart.hpp"

#include <vector>

namespace sillwalk::engine {

/// Those that hold first, in the order of ranks_before(); then those that fail, in that of nearer_to_holding(). The
/// first is the headline of assess(). Scores are complete.
[[nodiscard]] std::vector<ScoredCandidate> best_of_families(CartScore& score, const Catalogue& catalogue);

}  // namespace sillwalk::engine
