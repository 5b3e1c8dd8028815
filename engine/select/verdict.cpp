#include "engine/select/verdict.hpp"

#include "engine/select/assess.hpp"

namespace sillwalk::engine {

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
