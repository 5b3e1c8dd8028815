#pragma once
/// Heat that rolling leaves in one wheel, for the checks of heat and bond.
///
/// Q = F v of the rolling loss, taken as rolled without a stop; where length and rate of the pushes were read, only
/// their share of the time. Static load without the load factor, softest tread on the warmest air. Hard treads
/// (plastic, metal) flatten too little to warm and count as none. Source: Greenwood, Minshall, Tabor 1961
/// [greenwood-1961], from memory; tan delta by row of the material table.

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

struct RollingHeat {
    Power heat{};           ///< into one wheel
    Area surface{};         ///< running surface and both faces
    double heat_share = 1;  ///< share of the time that it rolls
};
/// Empty where a reading or figure is missing, which is noted.
[[nodiscard]] std::optional<RollingHeat> rolling_heat(Judge& judge, const CheckContext& context);

/// Mean of the wheel over still-standing air: Q/(film x surface), the low end of the room's film at the worst corner.
/// Empty where the room's air movement is missing, which is noted.
[[nodiscard]] std::optional<TemperatureChange> warming_over_air(Judge& judge, const CheckContext& context,
                                                                const RollingHeat& rolling, const StopDemand& stop);

}  // namespace sillwalk::engine
