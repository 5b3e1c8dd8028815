#include "engine/select/rank.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {
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

}  // namespace sillwalk::engine
