#pragma once
/// What `solve` prints: results as JSON or as lines for people, the list of calculations, and help on one.

#include "engine/desk/desk.hpp"

#include <string>
#include <vector>

namespace sillwalk::desk {

/// One object on one line; every number reads back as the same double.
[[nodiscard]] std::string result_json(const std::vector<engine::DeskOutput>& outputs);
[[nodiscard]] std::string refusal_json(const std::string& reason);
/// One value per line with unit and meaning, the deciding one first.
[[nodiscard]] std::string result_text(const std::vector<engine::DeskOutput>& outputs);
[[nodiscard]] std::string list_text();
[[nodiscard]] std::string help_text(const engine::DeskCalculation& calculation);

}  // namespace sillwalk::desk
