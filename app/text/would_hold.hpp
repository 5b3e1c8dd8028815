#pragma once
/// What would make it hold, and the conditions of use, as a customer reads them.

#include "app/text/explain.hpp"

#include <string>
#include <vector>

namespace sillwalk::app {

struct CheckLimitsText {
    std::string check;                ///< "Step"
    std::string place;                ///< of what fails; may be empty
    std::string compared;             ///< "20 mm of 10.2 mm", or the finding's sentence where nothing is compared
    std::vector<std::string> limits;  ///< one line per solved limit: the limit, then what follows from it
    std::vector<std::string> notes;   ///< no single change is enough; readings missing; solved for one person
};
struct FamilyLimitsText {
    std::string candidate;
    std::vector<CheckLimitsText> checks;
};

/// Sentences of at most 25 words each. The first row is the headline's construction.
[[nodiscard]] std::vector<FamilyLimitsText> would_hold_text(const std::vector<engine::FamilyLimits>& families,
                                                            const TextContext& context);
[[nodiscard]] CheckLimitsText check_limits_text(const engine::CheckLimits& check, const TextContext& context);

/// One line each, in the order given.
[[nodiscard]] std::vector<std::string> conditions_text(const std::vector<engine::Condition>& conditions,
                                                       const TextContext& context);

/// The value rounded to what is shown, towards the side on which the check holds: at most 7.636 mm is "7.63 mm".
[[nodiscard]] std::string show_limit(const engine::Amount& value, engine::Bound bound, UnitSystem units);

}  // namespace sillwalk::app
