#include "engine/physics/bearings.hpp"

#include "engine/physics/guard.hpp"

#include <array>
#include <cmath>
#include <numbers>

namespace sillwalk::engine {

namespace {

/// ISO 281:2007 table of a1.
struct ReliabilityFactor {
    double reliability, a1;
};
constexpr std::array<ReliabilityFactor, 6> reliability_factors{
    {{0.90, 1.0}, {0.95, 0.64}, {0.96, 0.55}, {0.97, 0.47}, {0.98, 0.37}, {0.99, 0.25}}};

std::optional<double> a1_for(double reliability) {
    for (const ReliabilityFactor& row : reliability_factors) {
        if (std::abs(row.reliability - reliability) < 1e-9) {
            return row.a1;
        }
    }
    return std::nullopt;
}

Guard check_life(const BearingLifeInput& input) {
    Guard guard;
    guard.over_zero(input.rating.si(), "rating").over_zero(input.load.si(), "load");
    guard.require(!(input.turns && input.speed), "rpm", "give either rpm, or speed and diameter");
    guard.require(!input.speed || input.wheel_diameter, "diameter", "is needed with speed");
    if (input.turns) {
        guard.over_zero(input.turns->si(), "rpm");
    }
    if (input.speed) {
        guard.over_zero(input.speed->si(), "speed");
    }
    if (input.wheel_diameter) {
        guard.over_zero(input.wheel_diameter->si(), "diameter");
    }
    return guard;
}

}  // namespace

Result<BearingLife> bearing_life(const BearingLifeInput& input) {
    const Guard guard = check_life(input);
    if (guard.failed()) {
        return guard.failure();
    }
    const std::optional<double> a1 = a1_for(input.reliability);
    if (!a1) {
        return no_answer("A reliability factor is published for 90, 95, 96, 97, 98 and 99 % only.");
    }
    const double exponent = input.element == RollingElement::ball ? 3.0 : 10.0 / 3.0;
    BearingLife out;
    out.revolutions = *a1 * std::pow(input.rating / input.load, exponent) * 1e6;
    std::optional<Frequency> turns = input.turns;
    if (input.wheel_diameter) {
        const Length circumference = std::numbers::pi * *input.wheel_diameter;
        out.distance = out.revolutions * circumference;
        if (input.speed) {
            turns = *input.speed / circumference;
        }
    }
    if (turns) {
        out.hours = out.revolutions / *turns;
    }
    return out;
}

Result<PlainBearing> plain_bearing(Force load, Length wheel_diameter, Speed speed, Length length,
                                   std::optional<Length> axle_diameter) {
    Guard guard;
    guard.over_zero(load.si(), "load")
        .over_zero(wheel_diameter.si(), "wheel-diameter")
        .at_least_zero(speed.si(), "speed")
        .over_zero(length.si(), "length");
    if (axle_diameter) {
        guard.over_zero(axle_diameter->si(), "axle-diameter")
            .require(*axle_diameter < wheel_diameter, "axle-diameter", "must be less than the wheel diameter");
    }
    if (guard.failed()) {
        return guard.failure();
    }
    PlainBearing out;
    out.pv = load * speed / (length * wheel_diameter);
    if (axle_diameter) {
        out.pressure = load / (length * *axle_diameter);
        out.velocity = speed * (*axle_diameter / wheel_diameter);
    }
    return out;
}

}  // namespace sillwalk::engine
