#pragma once
/// The next size of wheel that the catalogue has.

#include "engine/model/advice.hpp"
#include "engine/select/score_catalogue.hpp"

#include <functional>
#include <optional>

namespace sillwalk::engine {

/// The first diameter of the candidate's construction at or above `least`, in a wheel that a bearing and a rig are
/// offered for. Of that size: the candidate that holds, else the first; among equals the one most like `candidate`
/// (rig of its function, bearing, preparation), then the lowest id. Empty where no wheel is that large.
[[nodiscard]] std::optional<NextSize> next_size(const CandidateSpace& space, const Candidate& candidate, Length least,
                                                const std::function<bool(const Candidate&)>& holds);

}  // namespace sillwalk::engine
