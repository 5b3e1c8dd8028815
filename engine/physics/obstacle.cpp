#include "engine/physics/obstacle.hpp"

#include "engine/physics/guard.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {

namespace {

/// Tangent of the angle between the vertical and the line from the axle to the edge: sqrt(2Rh - h^2)/(R - h).
double edge_tangent(double radius, double rise) {
    return std::sqrt(rise * (2 * radius - rise)) / (radius - rise);
}

StepForces forces_at(Force load, double tangent, double rise_share) {
    const double hypotenuse = std::sqrt(1 + tangent * tangent);
    const double sine = tangent / hypotenuse;
    const double half_angle_tangent = tangent / (1 + hypotenuse);
    return {load * tangent, load * sine, load * (sine / 2), load * half_angle_tangent, tangent, rise_share};
}

Guard check_wheel(Length diameter, Length rise) {
    return Guard().over_zero(diameter.si(), "diameter").at_least_zero(rise.si(), "rise");
}

}  // namespace

Result<StepForces> step_forces(Force load, Length diameter, Length rise, std::optional<Slope> lip_slope) {
    Guard guard = check_wheel(diameter, rise);
    guard.over_zero(load.si(), "load");
    if (lip_slope) {
        guard.over_zero(lip_slope->tangent(), "lip-slope");
    }
    if (guard.failed()) {
        return guard.failure();
    }
    const double radius = diameter.si() / 2;
    const double share = rise / diameter;
    if (rise.si() < radius) {
        const double edge = edge_tangent(radius, rise.si());
        return forces_at(load, lip_slope ? std::min(edge, lip_slope->tangent()) : edge, share);
    }
    if (lip_slope) {
        return forces_at(load, lip_slope->tangent(), share);
    }
    return no_answer("The rise is the wheel's radius or more: no level push at the axle climbs it.");
}

namespace {

/// What the blow leaves, and the impulse of the edge per mass and speed.
struct Blow {
    double speed_ratio;   ///< square root of the share of kinetic energy left
    double impulse;       ///< in m v1
    double mass_in_roll;  ///< kinetic energy is half of this times m v^2
};

Blow plain_blow(double cosine, double inertia) {
    const double sine = std::sqrt(1 - cosine * cosine);
    const double along_rim = (1 - cosine) * inertia / (1 + inertia);
    return {1 - (1 - cosine) / (1 + inertia), std::hypot(sine, along_rim), 1 + inertia};
}

Blow cart_blow(double cosine, double pitch_mass_ratio) {
    const double c2 = cosine * cosine;
    const double s2 = 1 - c2;
    const double left = c2 / (c2 + s2 * pitch_mass_ratio);  // 1 - lambda
    return {std::sqrt(left), pitch_mass_ratio * left * std::sqrt(s2) / c2, 1};
}

Guard check_step_speed(const StepSpeedInput& input) {
    Guard guard = check_wheel(input.diameter, input.rise);
    guard.at_least_zero(input.inertia, "inertia")
        .require(input.lift_share > 0 && input.lift_share <= 1, "lift-share", "must be over 0 and at most 1")
        .require(input.pitch_mass_ratio > 0 && input.pitch_mass_ratio <= 1, "pitch-mass-ratio",
                 "must be over 0 and at most 1")
        .over_zero(input.g.si(), "g");
    const bool cart = input.lift_share != 1 || input.pitch_mass_ratio != 1;
    guard.require(!cart || input.inertia == 0, "inertia",
                  "must be 0 with a lift share or pitch mass ratio under 1: that form takes light wheels");
    if (input.speed) {
        guard.over_zero(input.speed->si(), "speed");
    }
    if (input.mass) {
        guard.over_zero(input.mass->si(), "mass");
    }
    return guard;
}

}  // namespace

Result<StepSpeed> step_speed(const StepSpeedInput& input) {
    const Guard guard = check_step_speed(input);
    if (guard.failed()) {
        return guard.failure();
    }
    const double radius = input.diameter.si() / 2;
    if (input.rise.si() >= radius) {
        return no_answer("The rise is the wheel's radius or more: the wheel stops dead against it.");
    }
    const bool cart = input.lift_share != 1 || input.pitch_mass_ratio != 1;
    const double cosine = 1 - input.rise.si() / radius;
    const Blow blow = cart ? cart_blow(cosine, input.pitch_mass_ratio) : plain_blow(cosine, input.inertia);
    const double climb = 2 * input.g.si() * input.rise.si() * input.lift_share / blow.mass_in_roll;

    StepSpeed out;
    out.speed_ratio = blow.speed_ratio;
    out.least = Speed::from_si(std::sqrt(climb) / blow.speed_ratio);
    if (input.speed) {
        out.after = *input.speed * blow.speed_ratio;
    }
    if (input.speed && input.mass) {
        const double kept = blow.speed_ratio * blow.speed_ratio;
        out.lost = *input.mass * *input.speed * *input.speed * (0.5 * blow.mass_in_roll * (1 - kept));
        out.impulse = *input.mass * *input.speed * blow.impulse;
    }
    return out;
}

Result<GapCrossing> gap_crossing(Length diameter, Length gap, std::optional<Force> load, std::optional<Speed> speed,
                                 std::optional<Length> depth, Acceleration g) {
    Guard guard;
    guard.over_zero(diameter.si(), "diameter").at_least_zero(gap.si(), "gap").over_zero(g.si(), "g");
    if (load) {
        guard.over_zero(load->si(), "load");
    }
    if (speed) {
        guard.over_zero(speed->si(), "speed");
    }
    if (depth) {
        guard.over_zero(depth->si(), "depth");
    }
    if (guard.failed()) {
        return guard.failure();
    }
    if (gap >= diameter) {
        return no_answer("The gap is as wide as the wheel or wider: it swallows the wheel.");
    }
    const double radius = diameter.si() / 2;
    const double half_gap = gap.si() / 2;
    const double axle_height = std::sqrt((radius - half_gap) * (radius + half_gap));

    GapCrossing out;
    out.sag = Length::from_si(half_gap * half_gap / (radius + axle_height));
    out.ratio = half_gap / axle_height;
    if (load) {
        out.force = *load * out.ratio;
    }
    if (speed) {
        const Duration over_gap = gap / *speed;
        const Length fall = 0.5 * (g * over_gap * over_gap);
        const Length room = depth ? std::min(out.sag, *depth) : out.sag;
        out.full_drop = fall > out.sag && room == out.sag;
        out.drop = std::min(fall, room);
    }
    return out;
}

Result<Length> rise_with_gap(Length diameter, Length rise, Length gap) {
    Guard guard = check_wheel(diameter, rise);
    guard.at_least_zero(gap.si(), "gap");
    if (guard.failed()) {
        return guard.failure();
    }
    const double radius = diameter.si() / 2;
    const double h = rise.si();
    const double width = gap.si();
    const char* too_high = "The gap and the rise together reach the wheel's radius: the wheel cannot climb out.";
    if (h >= radius) {
        return no_answer(too_high);
    }
    if (width <= std::sqrt(h * (2 * radius - h))) {
        return rise;
    }
    const double chord = std::hypot(width, h);
    if (chord >= diameter.si()) {
        return no_answer(too_high);
    }
    const double angle = std::asin(chord / diameter.si()) + std::atan2(h, width);
    const double half_sine = std::sin(angle / 2);
    const double equivalent = 2 * radius * half_sine * half_sine;  // R(1 - cos), without cancellation
    if (equivalent >= radius) {
        return no_answer(too_high);
    }
    return Length::from_si(equivalent);
}

}  // namespace sillwalk::engine
