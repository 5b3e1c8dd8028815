#pragma once
/// The forces that moving a cart asks of people on its route: starting, rolling, ramps, holding back, crossing from
/// rest and rolling. Shared by `push` and `traction`, which set other limits against the same forces.

#include "engine/checks/crossing_case.hpp"

namespace sillwalk::engine {

enum class PushEventKind { start, sustain, ramp, hold_back, crossing };

struct PushEvent {
    PushEventKind kind = PushEventKind::start;
    Place place;
    Force force{};               ///< that decides
    Force other_force{};         ///< by the greatest rolling resistance published elsewhere; 0 where sources agree
    Force at_axle{}, at_hand{};  ///< crossing only: pushed at axle height and at hand height
    bool jams = false;           ///< crossing only: pushed at hand height the cart tilts or jams instead of climbing
    const CrossingDemand* crossing = nullptr;  ///< null at a start
    Obstacle obstacle;                         ///< crossing only
    Mass mass{};
    double lift_share = 1.0;  ///< crossing only: of the weight, on the heavier axle
    Slope slope{};            ///< of the floor under the feet
    Length length{};          ///< of the ramp
    const ChoiceInput<Wetness>* wetness = nullptr;
    const ChoiceInput<const Floor*>* floor = nullptr;
    const Input<Temperature>* air = nullptr;         ///< where the feet stand
    const Input<Temperature>* air_beyond = nullptr;  ///< crossing and ramps: of the room on the other side
};

/// Calls `visit(const PushEvent&)` for every event whose readings are there; notes the missing ones in the judge.
/// With only_crossing, the events of that crossing alone.
template <class F>
void for_each_push_event(Judge& judge, const CheckContext& context, F&& visit);

namespace push_detail {

/// Rolling resistance of the candidate on one floor: the share of the load, at the careful end and at the low end.
struct Coefficient {
    double high = 0, low = 0;
    double other = 0;  ///< by the greatest conflicting figure; 0 where sources agree
};
[[nodiscard]] std::optional<Coefficient> rolling_on(Judge& judge, const CheckContext& context,
                                                    const ChoiceInput<const Floor*>& floor);
[[nodiscard]] std::optional<PushEvent> start_event(Judge& judge, const CheckContext& context, const StopDemand& stop);
[[nodiscard]] std::optional<PushEvent> ramp_event(Judge& judge, const CheckContext& context,
                                                  const CrossingDemand& crossing);
[[nodiscard]] std::optional<PushEvent> hold_back_event(Judge& judge, const CheckContext& context,
                                                       const CrossingDemand& crossing);
[[nodiscard]] std::optional<PushEvent> crossing_event(Judge& judge, const CheckContext& context,
                                                      const CrossingDemand& crossing);

}  // namespace push_detail

template <class F>
void for_each_push_event(Judge& judge, const CheckContext& context, F&& visit) {
    if (context.push_events) {
        for (const PushEvent& event : *context.push_events) visit(event);
        return;
    }
    if (!context.only_crossing) {
        for (const StopDemand& stop : context.cart->stops) {
            auto event = push_detail::start_event(judge, context, stop);
            if (!event) continue;
            visit(*event);
            event->kind = PushEventKind::sustain;
            visit(*event);
        }
    }
    for_each_crossing(context, [&](const CrossingDemand& crossing) {
        if (const auto event = push_detail::ramp_event(judge, context, crossing)) visit(*event);
        if (const auto event = push_detail::hold_back_event(judge, context, crossing)) visit(*event);
        if (const auto event = push_detail::crossing_event(judge, context, crossing)) visit(*event);
    });
}

/// All events of the route, for CheckContext::push_events. False where something that they need is missing, or where
/// nobody pushes: then the checks must look for themselves.
[[nodiscard]] bool gather_push_events(const CheckContext& context, std::vector<PushEvent>& events);

/// Rolling over the edge of a crossing event instead of climbing it from rest.
struct Coasting {
    bool known = false;          ///< the readings that it needs are there; the missing ones are noted
    bool run_up_counts = false;  ///< not on a wet, greasy or frozen floor
    Speed speed{};               ///< of the cart, at the slow end
    std::optional<Speed> least;  ///< to coast over; empty where the wheel cannot
    Energy lost{};               ///< in the blow, at the cart's speed
    Impulse impulse{};
    [[nodiscard]] bool rolls_over() const { return run_up_counts && least && *least <= speed; }
};
[[nodiscard]] Coasting coasting_over(Judge& judge, const CheckContext& context, const PushEvent& event);

/// How a force compares with the limit of one person where several push. Two are not twice one: with two or more the
/// outcome is at best tight; more than so many times the single limit fails for certain.
struct TeamUse {
    double use = 0;
    std::optional<Outcome> outcome;
    bool team = false;
};
[[nodiscard]] TeamUse team_use(double single_use, double people);

}  // namespace sillwalk::engine
