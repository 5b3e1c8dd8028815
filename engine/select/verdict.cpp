#include "engine/select/verdict.hpp"

#include "engine/select/assess.hpp"

namespace sillwalk::engine {

Verdict verdict_of(const OutcomeCounts& counts) {
    if (counts.fails > 0) return Verdict::does_not_fit;
    if (counts.not_known > 0) return Verdict::cannot_tell;
    return counts.tight > 0 ? Verdict::fits_with_conditions : Verdict::fits;
}

Verdict verdict_of(const std::vector<Finding>& findings) {
    OutcomeCounts counts;
    for (const Finding& finding : findings) {
        counts.fails += finding.outcome == Outcome::fails ? 1 : 0;
        counts.not_known += finding.outcome == Outcome::not_known ? 1 : 0;
        counts.tight += finding.outcome == Outcome::tight ? 1 : 0;
    }
    return verdict_of(counts);
}

}  // namespace sillwalk::engine
