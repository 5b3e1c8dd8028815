#pragma once
/// The parts of the advice that complete_advice() fills, as JSON: members "would_hold" and "conditions" of a cart.

#include "app/bundle/advice_json.hpp"

namespace sillwalk::app {

[[nodiscard]] Json would_hold_to_json(const std::vector<engine::FamilyLimits>& families, const engine::Survey& survey,
                                      const engine::Catalogue& catalogue, const engine::Tables& tables,
                                      NumberForm form);
[[nodiscard]] Json conditions_to_json(const std::vector<engine::Condition>& conditions, const engine::Survey& survey,
                                      NumberForm form);

}  // namespace sillwalk::app
