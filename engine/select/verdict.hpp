#pragma once
/// Folding of findings. verdict_of() over a list is declared in assess.hpp.

#include "engine/model/finding.hpp"

namespace sillwalk::engine {

/// How many findings of each outcome there are, without the list.
struct OutcomeCounts {
    int fails = 0, not_known = 0, tight = 0;
};
/// Any fails -> does not fit; else any not known -> cannot tell; else any tight -> with conditions; else fits.
[[nodiscard]] Verdict verdict_of(const OutcomeCounts& counts);

}  // namespace sillwalk::engine
