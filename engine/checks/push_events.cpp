#include "engine/checks/push_events.hpp"

#include "engine/physics/obstacle.hpp"
#include "engine/physics/rolling.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {
namespace {

const RollingRow* rolling_row(const Tables& tables, MaterialFamily tread, const std::string& surface) {
    for (const RollingRow& row : tables.rolling) {
        if (row.tread == tread && row.surface == surface) return &row;
    }
    return nullptr;
}

double coefficient_with(const CheckContext& context, const BearingRow& bearing, Length lever_arm) {
    RollingInput input;
    input.load = 1.0 * newton;
    input.diameter = context.wheel->diameter;
    input.lever_arm = lever_arm;
    input.bearing_friction = bearing.friction.value;
    input.bearing_diameter = context.bearing->bore;
    input.seal_coefficient = bearing.seal_coefficient;
    const auto rolling = rolling_force(input);
    return rolling ? rolling->coefficient : 0.0;
}

const StopDemand& stop_before(const CheckContext& context, const CrossingDemand& crossing) {
    return context.cart->stops[crossing.after_stop];
}

const StopDemand& stop_after(const CheckContext& context, const CrossingDemand& crossing) {
    return context.cart->stops[(crossing.after_stop + 1u) % context.cart->stops.size()];
}

/// A run-up counts only where the feet hold: not on a wet, greasy or frozen floor (our rule,
/// docs/explanation/advice.md "From rest and rolling").
bool allows_run_up(Wetness wetness) {
    return wetness == Wetness::dry || wetness == Wetness::damp;
}

PushEvent event_at(PushEventKind kind, const CheckContext& context, const CrossingDemand& crossing) {
    PushEvent event;
    event.kind = kind;
    event.place = place_of(crossing);
    event.crossing = &crossing;
    event.wetness = &crossing.run_up;
    event.floor = &crossing.floor;
    event.air = &stop_before(context, crossing).air;
    event.air_beyond = &stop_after(context, crossing).air;
    return event;
}

/// Tangent of the angle at which a wheel must be lifted: of the edge, or of the bevel where that is the steeper.
std::optional<double> climb_ratio(Length diameter, const Obstacle& obstacle) {
    double ratio = 0.0;
    if (obstacle.has_edge()) {
        if (obstacle.swallowed || obstacle.no_climb) return std::nullopt;
        const auto edge = step_forces(1.0 * newton, diameter, obstacle.equivalent_rise);
        if (!edge) return std::nullopt;
        ratio = edge->ratio;
    }
    if (obstacle.bevel_height > Length{}) {
        const auto bevel = step_forces(1.0 * newton, diameter, obstacle.bevel_height, obstacle.bevel);
        if (!bevel) return std::nullopt;
        ratio = std::max(ratio, bevel->ratio);
    }
    return ratio;
}

/// What pushes a cart over an edge, from rest. Each axle in turn meets the edge; the push acts at a height over the
/// axles, so it loads the leading pair and lifts the trailing one. With V the load of the climbing pair, k the climb
/// ratio, c the rolling resistance of the other pair and a the height of the push over the axle as a share of the
/// wheelbase:
///   leading pair  V = V0 + F a,  trailing pair  V = V0 - F a,  F = k V + c (N - V) + W sin(t).
struct Climb {
    double ratio = 0, rolling = 0;
    Force normal{}, along{};  ///< W cos t and W sin t
    AxleForces loads;
};

/// Empty where the denominator is not positive (each newton presses the leading pair down as much as it pushes) or the
/// trailing pair would lift: the cart tilts or jams.
std::optional<Force> leading_pair(const Climb& climb, double arm) {
    const double extra = climb.ratio - climb.rolling;
    const double denominator = 1.0 - extra * arm;
    if (denominator <= 0.0) return std::nullopt;
    const Force force = (climb.rolling * climb.normal + climb.along + extra * climb.loads.front) / denominator;
    if (climb.loads.front + arm * force > climb.normal) return std::nullopt;
    return force;
}

std::optional<Force> trailing_pair(const Climb& climb, double arm) {
    const double extra = climb.ratio - climb.rolling;
    const double denominator = 1.0 + extra * arm;
    if (denominator <= 0.0) return std::nullopt;
    const Force force = (climb.rolling * climb.normal + climb.along + extra * climb.loads.rear) / denominator;
    if (climb.loads.rear - arm * force > climb.normal) return std::nullopt;
    return force;
}

std::optional<Force> greater_pair(const Climb& climb, double arm_low, double arm_high) {
    const auto leading = leading_pair(climb, arm_high);
    const auto trailing = trailing_pair(climb, arm_low);
    if (!leading || !trailing) return std::nullopt;
    return std::max(*leading, *trailing);
}

/// Height through which an edge throws the wheel when it is rolled over: a gap alone only so far as the wheel falls
/// meanwhile.
std::optional<Length> rolled_rise(Judge& judge, Length diameter, const Obstacle& obstacle, Speed speed) {
    if (obstacle.swallowed || obstacle.no_climb) return std::nullopt;
    if (obstacle.rise > Length{} || !(obstacle.gap > Length{})) return obstacle.equivalent_rise;
    judge.assume(Assumption::free_fall_careful);
    const auto crossing = gap_crossing(diameter, obstacle.gap, std::nullopt, speed);
    if (!crossing || !crossing->drop) return std::nullopt;
    return *crossing->drop;
}

struct Leg {
    Mass mass;
    push_detail::Coefficient rolling;
};
std::optional<Leg> leg_of(Judge& judge, const CheckContext& context, const CrossingDemand& crossing) {
    const auto mass = mass_on_leg(judge, *context.cart, crossing.loaded);
    const auto rolling = push_detail::rolling_on(judge, context, crossing.floor);
    if (!mass || !rolling) return std::nullopt;
    return Leg{*mass, *rolling};
}

}  // namespace

namespace push_detail {

std::optional<Coefficient> rolling_on(Judge& judge, const CheckContext& context,
                                      const ChoiceInput<const Floor*>& floor) {
    const Floor* const* known = judge.choice(floor);
    if (known == nullptr) return std::nullopt;
    const BearingRow* bearing = context.tables->bearing(context.bearing->kind);
    const RollingRow* row = context.tread == nullptr
                                ? nullptr
                                : rolling_row(*context.tables, context.tread->family, (*known)->rolling_surface);
    if (bearing == nullptr || row == nullptr) {
        judge.missing_figure();
        return std::nullopt;
    }
    judge.assume(Assumption::rolling_arm_from_table);
    judge.assume(Assumption::bearing_friction_from_table);
    judge.cite(row->lever_arm.citation);
    judge.cite(bearing->friction.citation);
    const Length low = row->lever_arm.low.value_or(row->lever_arm.value);
    Coefficient coefficient{coefficient_with(context, *bearing, row->lever_arm.value),
                            coefficient_with(context, *bearing, low), 0.0};
    for (const auto& figure : row->lever_arm.conflicting) {
        coefficient.other = std::max(coefficient.other, coefficient_with(context, *bearing, figure.value));
        judge.cite(figure.citation);
    }
    return coefficient;
}

std::optional<PushEvent> start_event(Judge& judge, const CheckContext& context, const StopDemand& stop) {
    const auto mass = mass_on_leg(judge, *context.cart, stop.loaded);
    const auto rolling = rolling_on(judge, context, stop.floor);
    if (!mass || !rolling) return std::nullopt;
    PushEvent event;
    event.kind = PushEventKind::start;
    event.place = {PlaceKind::room, stop.room};
    event.force = rolling->high * weight_of(*mass);
    event.other_force = rolling->other * weight_of(*mass);
    event.wetness = &stop.wetness;
    event.floor = &stop.floor;
    event.air = &stop.air;
    return event;
}

std::optional<PushEvent> ramp_event(Judge& judge, const CheckContext& context, const CrossingDemand& crossing) {
    const auto slope = slope_at(judge, context, crossing);
    if (!slope || !(slope->high > Slope{})) return std::nullopt;
    const auto leg = leg_of(judge, context, crossing);
    const auto length = judge.high(crossing.slope_length);
    if (!leg || !length) return std::nullopt;
    PushEvent event = event_at(PushEventKind::ramp, context, crossing);
    event.slope = slope->high;
    event.length = *length;
    const auto force_with = [&](double rolling) {
        return (slope->high.sine() + rolling * slope->high.cosine()) * weight_of(leg->mass);
    };
    event.force = force_with(leg->rolling.high);
    if (leg->rolling.other > 0.0) event.other_force = force_with(leg->rolling.other);
    return event;
}

std::optional<PushEvent> hold_back_event(Judge& judge, const CheckContext& context, const CrossingDemand& crossing) {
    const auto slope = slope_at(judge, context, crossing);
    if (!slope || !(slope->low < Slope{})) return std::nullopt;
    const auto leg = leg_of(judge, context, crossing);
    const auto length = judge.high(crossing.slope_length);
    if (!leg || !length) return std::nullopt;
    const Slope down = -slope->low;
    const double kept = down.sine() - leg->rolling.low * down.cosine();
    if (kept <= 0.0) return std::nullopt;
    PushEvent event = event_at(PushEventKind::hold_back, context, crossing);
    event.slope = down;
    event.length = *length;
    event.force = kept * weight_of(leg->mass);
    return event;
}

std::optional<PushEvent> crossing_event(Judge& judge, const CheckContext& context, const CrossingDemand& crossing) {
    const Length diameter = context.wheel->diameter;
    const auto obstacle = obstacle_at(judge, context, crossing, diameter);
    if (!obstacle || (!obstacle->has_edge() && !(obstacle->bevel_height > Length{}))) return std::nullopt;
    const auto slope = slope_at(judge, context, crossing);
    const auto leg = leg_of(judge, context, crossing);
    const auto wheelbase = wheelbase_of(judge, *context.cart);
    const auto centre = centre_on_leg(judge, context, crossing.loaded);
    const auto hand_high = judge.high(context.cart->handle_height), hand_low = judge.low(context.cart->handle_height);
    if (!slope || !leg || !wheelbase || !centre || !hand_high || !hand_low) return std::nullopt;

    Climb climb;
    climb.rolling = leg->rolling.high;
    climb.normal = slope->high.cosine() * weight_of(leg->mass);
    climb.along = slope->high.sine() * weight_of(leg->mass);
    climb.loads = axle_forces(leg->mass, *wheelbase, *centre, slope->high);
    judge.assume(Assumption::rigid_pair_share);

    PushEvent event = event_at(PushEventKind::crossing, context, crossing);
    event.slope = slope->high;
    const auto ratio = climb_ratio(diameter, *obstacle);
    climb.ratio = ratio.value_or(0.0);
    const auto arm = [&](Length height) { return (height - diameter / 2.0) / *wheelbase; };
    const auto at_axle = ratio ? greater_pair(climb, 0.0, 0.0) : std::nullopt;
    const auto at_hand = ratio ? greater_pair(climb, arm(*hand_low), arm(*hand_high)) : std::nullopt;
    event.jams = !at_axle || !at_hand;
    event.at_axle = at_axle.value_or(Force{});
    event.at_hand = at_hand.value_or(Force{});
    event.force = std::max({event.at_axle, event.at_hand, Force{}});
    event.obstacle = *obstacle;
    event.mass = leg->mass;
    event.lift_share = std::max(climb.loads.front, climb.loads.rear) / climb.normal;
    return event;
}

}  // namespace push_detail

bool gather_push_events(const CheckContext& context, std::vector<PushEvent>& events) {
    events.clear();
    if (context.cart->moved_by.given && context.cart->moved_by.value == MovedBy::tug) return false;
    Judge judge(CheckId::push, context);
    for_each_push_event(judge, context, [&](const PushEvent& event) { events.push_back(event); });
    return judge.finish().outcome != Outcome::not_known;
}

/// The blow at the edge, and the height of a bevel by energy alone. The pitching mass is taken as the whole mass, the
/// careful end, because a cart's moment of inertia is not read.
Coasting coasting_over(Judge& judge, const CheckContext& context, const PushEvent& event) {
    Coasting coasting;
    const auto wetness = judge.value(event.crossing->run_up);
    if (event.crossing->run_up.ref.field == Field::room_wetness) judge.assume(Assumption::wetness_of_room);
    coasting.known = wetness.has_value();
    coasting.run_up_counts = wetness && allows_run_up(*wetness);
    if (!coasting.run_up_counts) return coasting;
    const auto speed = judge.low(context.cart->speed);
    coasting.known = speed.has_value();
    if (!speed || !(*speed > Speed{})) return coasting;
    coasting.speed = *speed;
    const auto rise = rolled_rise(judge, context.wheel->diameter, event.obstacle, *speed);
    if (!rise) return coasting;
    StepSpeedInput input;
    input.diameter = context.wheel->diameter;
    input.rise = *rise;
    input.lift_share = std::clamp(event.lift_share, 1e-3, 1.0);
    input.speed = *speed;
    input.mass = event.mass;
    const auto step = step_speed(input);
    if (!step) return coasting;
    const double bevel = 2.0 * standard_gravity.si() * event.obstacle.bevel_height.si() * input.lift_share;
    coasting.least = Speed::from_si(std::sqrt(step->least.si() * step->least.si() + bevel));
    coasting.lost = step->lost.value_or(Energy{});
    coasting.impulse = step->impulse.value_or(Impulse{});
    return coasting;
}

TeamUse team_use(double single_use, double people) {
    const double team = std::floor(people);
    if (team < 2.0) return {single_use, std::nullopt, false};
    if (single_use > team) return {single_use / team, Outcome::fails, true};
    return {std::min(single_use, 1.0), Outcome::tight, true};
}

}  // namespace sillwalk::engine
