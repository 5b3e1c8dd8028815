#pragma once
/// Rolling bearing life, static safety, plain bearing PV.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"

#include <optional>

namespace sillwalk::engine {

enum class RollingElement { ball, roller };
struct BearingLifeInput {
    Force rating, load;
    RollingElement element = RollingElement::ball;
    std::optional<Frequency> turns;  ///< revolutions per time
    std::optional<Speed> speed;      ///< with wheel diameter, instead of turns
    std::optional<Length> wheel_diameter;
    double reliability = 0.90;  ///< 0.90, 0.95, 0.96, 0.97, 0.98 or 0.99
};
struct BearingLife {
    double revolutions = 0;
    std::optional<Duration> hours;
    std::optional<Length> distance;
};
/// ISO 281: L10 = a1 (C/P)^p 10^6, p = 3 ball, 10/3 roller.
[[nodiscard]] Result<BearingLife> bearing_life(const BearingLifeInput& input);

struct PlainBearing {
    PressureVelocity pv;               ///< W v/(L D)
    std::optional<Pressure> pressure;  ///< with the axle diameter
    std::optional<Speed> velocity;
};
[[nodiscard]] Result<PlainBearing> plain_bearing(Force load, Length wheel_diameter, Speed speed, Length length,
                                                 std::optional<Length> axle_diameter = std::nullopt);

}  // namespace sillwalk::engine
