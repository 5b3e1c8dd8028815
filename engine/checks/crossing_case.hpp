#pragma once
/// What a cart and a wheel of one diameter meet at a crossing, at the context's end of the readings' ranges: the
/// obstacle, the loads on both axles, the forces. Shared by the checks that look at crossings; the rules are those of
/// docs/reference/methods.md "bevel-as-slope", "rise-with-gap" and "axle-load".
///
/// Which readings a crossing must have follows from its kind. A rise is asked of all kinds; a gap of all but a ramp; a
/// slope of a ramp and a dock plate; a slot along the travel of a dock plate, a drain, a joint and a rail. Where
/// another kind has the reading all the same it counts. Where the kind was not read, every reading is asked.

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

/// Rise and gap of a crossing as one wheel meets them. A measured 0 is none, whatever the tolerance of the tape.
struct Obstacle {
    Length rise{};  ///< vertical part, with the lip where its bevel is steeper than 1:2
    Length gap{};
    Length equivalent_rise{};  ///< of rise and gap together; meaningless where the wheel cannot climb
    Length bevel_height{};     ///< part of the lip that counts as a slope
    Slope bevel{};
    bool swallowed = false;  ///< gap >= diameter
    bool no_climb = false;   ///< equivalent rise >= radius
    [[nodiscard]] bool has_edge() const { return rise > Length{} || gap > Length{}; }
};
[[nodiscard]] std::optional<Obstacle> obstacle_at(Judge& judge, const CheckContext& context,
                                                  const CrossingDemand& crossing, Length diameter);

/// The rise that the rating test of the wheel's class goes over: a share of the diameter, or a fixed height.
[[nodiscard]] std::optional<Length> tested_rise(Judge& judge, const CheckContext& context);

/// Slope in the direction of travel; level where the kind does not ask for one and none was read.
struct SlopeEnds {
    Slope low, high;
};
[[nodiscard]] std::optional<SlopeEnds> slope_at(Judge& judge, const CheckContext& context,
                                                const CrossingDemand& crossing);
/// Width of a slot along the travel; 0 where the kind does not ask for one and none was read.
[[nodiscard]] std::optional<Length> slot_at(Judge& judge, const CrossingDemand& crossing);

/// Mass of the cart on a leg, at the heavy end.
[[nodiscard]] std::optional<Mass> mass_on_leg(Judge& judge, const CartDemand& cart, bool loaded);

/// Distance between the foremost and the rearmost castors. Names the castors as missing where they are not two axles.
[[nodiscard]] std::optional<Length> wheelbase_of(Judge& judge, const CartDemand& cart);

/// Centre of gravity on a leg, both ends: forward of the rear axle, and the high end above the floor.
struct Centre {
    Length forward_low{}, forward_high{}, height{};
};
[[nodiscard]] std::optional<Centre> centre_on_leg(Judge& judge, const CheckContext& context, bool loaded);

/// Greatest static load of each axle on a slope (positive up in the direction of travel; front leads), over both ends
/// of the centre's range. Where an axle would lift, the other one carries the weight.
struct AxleForces {
    Force front{}, rear{};
};
[[nodiscard]] AxleForces axle_forces(Mass mass, Length wheelbase, const Centre& centre, Slope slope);

/// Calls f for every crossing of the route, or for the one that the context names.
template <class F>
void for_each_crossing(const CheckContext& context, F&& f) {
    const auto& crossings = context.cart->crossings;
    if (context.only_crossing) {
        f(crossings[*context.only_crossing]);
        return;
    }
    for (const CrossingDemand& crossing : crossings) f(crossing);
}

[[nodiscard]] inline Place place_of(const CrossingDemand& crossing) {
    return {PlaceKind::crossing, crossing.crossing};
}
[[nodiscard]] inline Amount amount(double value) {
    return {value, Kind::number};
}
[[nodiscard]] inline Amount share(double value) {
    return {value, Kind::share};
}
[[nodiscard]] inline Amount amount(Length value) {
    return {value.si(), Kind::length};
}
[[nodiscard]] inline Amount amount(Mass value) {
    return {value.si(), Kind::mass};
}
[[nodiscard]] inline Amount amount(Force value) {
    return {value.si(), Kind::force};
}
[[nodiscard]] inline Amount amount(Speed value) {
    return {value.si(), Kind::speed};
}
[[nodiscard]] inline Amount amount(Duration value) {
    return {value.si(), Kind::duration};
}
[[nodiscard]] inline Amount amount(Impulse value) {
    return {value.si(), Kind::impulse};
}
[[nodiscard]] inline Amount amount(Slope value) {
    return {value.tangent(), Kind::slope};
}

}  // namespace sillwalk::engine
