#pragma once
/// The first choice among many candidates, without the findings.

#include "engine/model/advice.hpp"
#include "engine/select/score_cart.hpp"

#include <span>
#include <vector>

namespace sillwalk::engine {

/// The candidates that suit the cart, none of them scored yet, in the order of their names.
[[nodiscard]] std::vector<ScoredCandidate> unscored_candidates(CandidateSpace& space, const CartDemand& demand);

/// The best `count` that hold, best first. Scores only grow, so a candidate is left as soon as it is behind all that
/// are kept. Exact.
[[nodiscard]] std::vector<ScoredCandidate> best_holding(CartScore& score, std::span<const ScoredCandidate> unscored,
                                                        std::size_t count);
/// The `count` nearest to holding, those that hold first.
[[nodiscard]] std::vector<ScoredCandidate> nearest_to_holding(CartScore& score,
                                                              std::span<const ScoredCandidate> unscored,
                                                              std::size_t count);

/// Puts a candidate of the list first. The likely one first: then the others are left the sooner, and the best are the
/// same in any order.
void bring_forward(std::vector<ScoredCandidate>& list, const Candidate& candidate);

/// What best_holding(…, 1) comes down to.
[[nodiscard]] Headline headline_of(const std::vector<ScoredCandidate>& best);
/// The headline of an advice as it stands.
[[nodiscard]] Headline headline_of(const CartAdvice& advice);

}  // namespace sillwalk::engine
