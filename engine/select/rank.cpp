#include "engine/select/rank.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace sillwalk::engine {
namespace {

auto name_of(const Candidate& candidate) {
    return std::make_tuple(candidate.wheel, candidate.bearing, candidate.rig, candidate.preparation);
}

}  // namespace

std::int32_t quantised_use(double use) {
    return static_cast<std::int32_t>(std::lround(1000.0 * std::clamp(use, 0.0, 1000.0)));
}

void add(Score& score, const Finding& finding) {
    score.counts.fails += finding.outcome == Outcome::fails ? 1 : 0;
    score.counts.not_known += finding.outcome == Outcome::not_known ? 1 : 0;
    const int tight = finding.outcome == Outcome::tight ? 1 : 0;
    score.counts.tight += tight;
    score.conditions += tight + (finding.needs_rolling ? 1 : 0) + (finding.needs_team ? 1 : 0);
    if (!finding.has_use) return;
    const std::int32_t use = quantised_use(finding.use);
    score.worst_use = std::max(score.worst_use, use);
    score.sum_of_uses += use;
}

Score operator+(const Score& a, const Score& b) {
    Score sum;
    sum.counts.fails = a.counts.fails + b.counts.fails;
    sum.counts.not_known = a.counts.not_known + b.counts.not_known;
    sum.counts.tight = a.counts.tight + b.counts.tight;
    sum.worst_use = std::max(a.worst_use, b.worst_use);
    sum.sum_of_uses = a.sum_of_uses + b.sum_of_uses;
    sum.conditions = a.conditions + b.conditions;
    return sum;
}

bool ranks_before(const Score& a, const Candidate& candidate_a, const Score& b, const Candidate& candidate_b) {
    const auto key = [](const Score& score) {
        return std::make_tuple(verdict_of(score.counts), score.worst_use, score.sum_of_uses, score.conditions);
    };
    const auto key_a = key(a), key_b = key(b);
    return key_a != key_b ? key_a < key_b : name_of(candidate_a) < name_of(candidate_b);
}

bool nearer_to_holding(const Score& a, const Candidate& candidate_a, const Score& b, const Candidate& candidate_b) {
    if (a.counts.fails != b.counts.fails) return a.counts.fails < b.counts.fails;
    return ranks_before(a, candidate_a, b, candidate_b);
}

}  // namespace sillwalk::engine
