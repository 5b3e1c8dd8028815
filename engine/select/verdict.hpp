#pragma once
/// Folding of findings. verdict_of() over a list is declared in assess.hpp.

#include "engine/model/finding.hpp"

namespace sillwalk::engine {

/// How many findings of each outcome there are, without the list.
struct OutcomeCounts {
    int fails = 0, not_known = 0, tight = 0;
};
/// Any fails -> does not fit; else any not known -> cannot tell; else any tight -> with conditions; else fits.
[[nodiscard]] inline Verdict verdict_of(const OutcomeCounts& counts) {
    if (counts.fails > 0) return Verdict::does_not_fit;
    if (counts.not_known > 0) return Verdict::cannot_tell;
    return counts.tight > 0 ? Verdict::fits_with_conditions : Verdict::fits;
}

}  // namespace sillwalk::engine
