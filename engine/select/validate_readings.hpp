#pragma once
/// Part of validate(): is each reading possible by itself?

#include "engine/base/result.hpp"
#include "engine/model/survey.hpp"

#include <vector>

namespace sillwalk::engine {

/// Adds one error per impossible or self-contradicting reading, with its JSON path. The limits are wide: outside them
/// is a slip of the hand or of the unit, not a strange site.
void validate_readings(const Survey& survey, std::vector<Error>& errors);

}  // namespace sillwalk::engine
