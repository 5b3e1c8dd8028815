#pragma once
/// The order of candidates: a total order on whole numbers, so that a last-bit difference between machines cannot swap
/// two wheels.

#include "engine/model/catalogue.hpp"
#include "engine/select/verdict.hpp"

#include <cstdint>
#include <tuple>

namespace sillwalk::engine {

/// Sum of a candidate's findings. Every member grows, or stays, as findings are added.
struct Score {
    OutcomeCounts counts;
    std::int32_t worst_use = 0;    ///< thousandths, the greatest
    std::int32_t sum_of_uses = 0;  ///< thousandths
    std::int32_t conditions = 0;   ///< tight findings, and what they ask for: cross it rolling, assess the team lift
};
void add(Score& score, const Finding& finding);
[[nodiscard]] Score operator+(const Score& a, const Score& b);

/// Thousandths of a use, at most 1000 times the capacity.
[[nodiscard]] std::int32_t quantised_use(double use);

/// Verdict, then worst use, then sum of uses, then fewer conditions, then the candidate: the catalogue is sorted by id,
/// so the order of its indices is that of candidate_key().
[[nodiscard]] inline bool ranks_before(const Score& a, const Candidate& candidate_a, const Score& b,
                                       const Candidate& candidate_b) {
    const Verdict verdict_a = verdict_of(a.counts), verdict_b = verdict_of(b.counts);
    if (verdict_a != verdict_b) return verdict_a < verdict_b;
    if (a.worst_use != b.worst_use) return a.worst_use < b.worst_use;
    if (a.sum_of_uses != b.sum_of_uses) return a.sum_of_uses < b.sum_of_uses;
    if (a.conditions != b.conditions) return a.conditions < b.conditions;
    const auto name_of = [](const Candidate& candidate) {
        return std::tie(candidate.wheel, candidate.bearing, candidate.rig, candidate.preparation);
    };
    return name_of(candidate_a) < name_of(candidate_b);
}

/// Among those that fail: fewest failing checks, then worst use, then as ranks_before().
[[nodiscard]] inline bool nearer_to_holding(const Score& a, const Candidate& candidate_a, const Score& b,
                                            const Candidate& candidate_b) {
    if (a.counts.fails != b.counts.fails) return a.counts.fails < b.counts.fails;
    return ranks_before(a, candidate_a, b, candidate_b);
}

}  // namespace sillwalk::engine
