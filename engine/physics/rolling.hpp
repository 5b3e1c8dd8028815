#pragma once
/// Rolling resistance, turning a swivel on the spot, heat of rolling.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"

namespace sillwalk::engine {

struct RollingInput {
    Force load;
    Length diameter;
    Length lever_arm;             ///< f, >= 0
    double bearing_friction = 0;  ///< mu, on the bore diameter
    Length bearing_diameter{};
    double seal_coefficient = 0;  ///< c0
    Slope slope{};                ///< positive up
};
struct RollingForce {
    double coefficient = 0;  ///< c = (2/D)(mu d/2 + f) + c0
    Force force;             ///< W (c cos t + sin t)
};
/// Source: variables [castor-maker-pages], second-hand; their arrangement from memory.
[[nodiscard]] Result<RollingForce> rolling_force(const RollingInput& input);

struct SwivelTurn {
    Torque torque;  ///< mu N w/4
    Force force;    ///< torque / lead
};
/// Uniform line contact turned on the spot (derived).
[[nodiscard]] Result<SwivelTurn> swivel_turn(Force load, double friction, Length width, Length lead);

struct RollingLoss {
    double coefficient = 0;  ///< (2/3) tan d * b/R
    Force force;
    Power heat;
};
/// Greenwood, Minshall, Tabor 1961; Johnson §9.4 (memory). b is the contact half-width along travel.
[[nodiscard]] Result<RollingLoss> rolling_loss(Force load, Length half_width, Length diameter, double tan_delta,
                                               Speed speed);

}  // namespace sillwalk::engine
