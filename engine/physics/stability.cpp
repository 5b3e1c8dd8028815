#include "engine/physics/stability.hpp"

#include "engine/physics/guard.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {

Result<Tipping> tipping(Length cg_height, Length base_ahead, Area gyration_squared, Acceleration g) {
    Guard guard;
    guard.over_zero(cg_height.si(), "cg-height")
        .over_zero(base_ahead.si(), "base-ahead")
        .at_least_zero(gyration_squared.si(), "gyration-squared")
        .over_zero(g.si(), "g");
    if (guard.failed()) {
        return guard.failure();
    }
    const Area reach_squared = cg_height * cg_height + base_ahead * base_ahead;
    const Length lift = base_ahead * base_ahead / (sqrt(reach_squared) + cg_height);  // reach - height
    const Speed energy_only = sqrt(2 * (g * lift));
    const double blow = std::sqrt((gyration_squared + reach_squared) / (cg_height * cg_height));
    return Tipping{energy_only * blow, energy_only, Slope::from_tangent(base_ahead / cg_height).degrees()};
}

Result<FlatSpot> flat_spot(Length half_width, Length diameter, Duration time, double creep_per_decade,
                           double set_share) {
    Guard guard;
    guard.over_zero(half_width.si(), "half-width")
        .over_zero(diameter.si(), "diameter")
        .require(half_width <= 0.5 * diameter, "half-width", "must be no more than the wheel's radius")
        .at_least_zero(time.si(), "time")
        .at_least_zero(creep_per_decade, "creep-per-decade")
        .require(set_share >= 0 && set_share <= 1, "set-share", "must be from 0 to 1");
    if (guard.failed()) {
        return guard.failure();
    }
    const double decades = std::max(0.0, std::log10(std::max(time.in(minute), 1.0)));
    const Length later = half_width * std::sqrt(1 + creep_per_decade * decades);
    const Length sagitta = later * later / diameter;
    return FlatSpot{later, sagitta, sagitta * set_share, 2 * later};
}

}  // namespace sillwalk::engine
