#include "engine/physics/rolling.hpp"

#include "engine/physics/guard.hpp"

namespace sillwalk::engine {

Result<RollingForce> rolling_force(const RollingInput& input) {
    Guard guard;
    guard.over_zero(input.load.si(), "load")
        .over_zero(input.diameter.si(), "diameter")
        .at_least_zero(input.lever_arm.si(), "f")
        .at_least_zero(input.bearing_friction, "bearing-friction")
        .at_least_zero(input.bearing_diameter.si(), "bearing-diameter")
        .at_least_zero(input.seal_coefficient, "c0")
        .finite(input.slope.tangent(), "slope");
    if (guard.failed()) {
        return guard.failure();
    }
    const Length lever = 0.5 * (input.bearing_friction * input.bearing_diameter) + input.lever_arm;
    const double coefficient = 2 * (lever / input.diameter) + input.seal_coefficient;
    return RollingForce{coefficient, input.load * (coefficient * input.slope.cosine() + input.slope.sine())};
}

Result<SwivelTurn> swivel_turn(Force load, double friction, Length width, Length lead) {
    Guard guard;
    guard.over_zero(load.si(), "load")
        .at_least_zero(friction, "friction")
        .over_zero(width.si(), "width")
        .over_zero(lead.si(), "lead");
    if (guard.failed()) {
        return guard.failure();
    }
    const Torque torque = load * width * (friction / 4);
    return SwivelTurn{torque, torque / lead};
}

Result<RollingLoss> rolling_loss(Force load, Length half_width, Length diameter, double tan_delta, Speed speed) {
    Guard guard;
    guard.over_zero(load.si(), "load")
        .at_least_zero(half_width.si(), "half-width")
        .over_zero(diameter.si(), "diameter")
        .require(half_width <= 0.5 * diameter, "half-width", "must be no more than the wheel's radius")
        .at_least_zero(tan_delta, "tan-delta")
        .at_least_zero(speed.si(), "speed");
    if (guard.failed()) {
        return guard.failure();
    }
    const double coefficient = (2.0 / 3.0) * tan_delta * (half_width / (0.5 * diameter));
    const Force force = load * coefficient;
    return RollingLoss{coefficient, force, force * speed};
}

}  // namespace sillwalk::engine
