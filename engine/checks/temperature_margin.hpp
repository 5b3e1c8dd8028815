#pragma once
/// Temperatures against their limits, as the checks of cold, heat and bond share them: margins in kelvin on the common
/// scale.

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

[[nodiscard]] inline Amount amount(Temperature value) {
    return {value.kelvin(), Kind::temperature};
}
[[nodiscard]] inline Amount amount(TemperatureChange value) {
    return {value.si(), Kind::temperature_change};
}

/// The maker's greatest temperature; for one-piece urethane without one, common practice (180 F). Noted where missing.
struct RatedMaximum {
    Temperature value;
    CitationId citation = 0;
};
[[nodiscard]] std::optional<RatedMaximum> rated_maximum(Judge& judge, const CheckContext& context);

/// use = max(0, 1 - 0.03 per kelvin of margin): holds from 5 K, tight below, over 1 once passed: our scale.
[[nodiscard]] double use_of_margin(TemperatureChange margin, const Practice& practice);

/// A temperature met, against the rated maximum; the check adds its own statement, place, formula and further numbers.
[[nodiscard]] Part part_of_heat(const CheckContext& context, Temperature hot, const RatedMaximum& limit);

}  // namespace sillwalk::engine
