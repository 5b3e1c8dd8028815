#pragma once
/// Numbers as a person reads them, in SI or US customary units. Display only: nothing is computed from these texts.

#include "engine/model/finding.hpp"

#include <string>

namespace sillwalk::app {

enum class UnitSystem { si, us };

/// "1 572 N", "19 mm", "3/4 in", "−25.4 °C". A true minus and no-break spaces, as the screen and the paper need them.
[[nodiscard]] std::string show(const engine::Amount& amount, UnitSystem units);

/// The member name for JSON: "force_N", "length_m"; the number beside it is in that unit (SI; temperatures in °C).
[[nodiscard]] const char* amount_key(engine::Kind kind);
[[nodiscard]] double amount_in_key_unit(const engine::Amount& amount);

}  // namespace sillwalk::app
