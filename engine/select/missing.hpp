#pragma once
/// What a reading that is not there may change.

#include "engine/model/read_again.hpp"
#include "engine/select/sampling.hpp"

namespace sillwalk::engine {

/// Divides the plausible range into stretches over which the advice stays the same. The other readings stay as they
/// are: the careful end of every tolerance decides, and what else is missing stays missing. Stretches narrower than
/// 1/128 of the range may be overlooked; each border is found to 1/32768 of the range.
/// A stretch differs where nothing holds and now something does (or the reverse), where another candidate comes first,
/// or where the verdict is another one; but "cannot tell" that turns into an answer for the same candidate does not.
[[nodiscard]] MissingReading missing_answers(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                                             const CartAdvice& advice, const PlausibleRange& range);

}  // namespace sillwalk::engine
