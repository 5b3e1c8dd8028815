/// Will their feet hold? The forces of `push` against 0.7 of what a 50 kg person's shoes hold on that floor and slope.
/// Statements traction_start, traction_crossing, traction_ramp: force, what the shoes hold, friction, body mass, slope.
/// traction_crossing_rolling: least coasting speed, the cart's speed, force from rest, what the shoes hold, friction.

#include "engine/checks/checks.hpp"
#include "engine/checks/push_events.hpp"
#include "engine/physics/people.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

struct Grip {
    Force force{};  ///< 0 where nobody can stand and push
    double friction = 0;
};

const FrictionRow* friction_row(const Tables& tables, Wetness wetness, bool textured) {
    for (const FrictionRow& row : tables.friction) {
        if (row.wetness == wetness && row.textured == textured) return &row;
    }
    return nullptr;
}

std::optional<Grip> grip_at(Judge& judge, const CheckContext& context, const PushEvent& event) {
    const auto wetness = judge.value(*event.wetness);
    const Floor* const* floor = judge.choice(*event.floor);
    if (!wetness || floor == nullptr) return std::nullopt;
    const FrictionRow* row = friction_row(*context.tables, *wetness, (*floor)->textured);
    if (row == nullptr) {
        judge.missing_figure();
        return std::nullopt;
    }
    const PeopleLimits& people = context.tables->people;
    if (event.wetness->ref.field == Field::room_wetness && event.crossing != nullptr) {
        judge.assume(Assumption::wetness_of_room);
    }
    judge.assume(Assumption::friction_from_table);
    judge.assume(Assumption::body_mass);
    judge.cite(row->friction.citation);
    judge.cite(people.traction_reserve.citation);
    judge.cite(people.body_mass.citation);
    const Slope steepness = std::max(event.slope, -event.slope);
    const auto held =
        traction_force(people.body_mass.value, row->friction.value, steepness, {}, people.traction_reserve.value);
    return Grip{held ? *held : Force{}, row->friction.value};
}

Statement statement_of(PushEventKind kind) {
    if (kind == PushEventKind::crossing) return Statement::traction_crossing;
    return kind == PushEventKind::start ? Statement::traction_start : Statement::traction_ramp;
}

/// The feet slip where it is started from rest; rolling, the cart crosses by its speed, so that is what is compared.
void judge_rolling(Judge& judge, const PushEvent& event, const Grip& grip, const Coasting& coasting) {
    judge.part({.demand = amount(*coasting.least),
                .capacity = amount(coasting.speed),
                .use = *coasting.least / coasting.speed,
                .statement = Statement::traction_crossing_rolling,
                .place = event.place,
                .formula = "step-least-speed",
                .numbers = {amount(*coasting.least), amount(coasting.speed), amount(event.force), amount(grip.force),
                            amount(grip.friction)},
                .outcome = Outcome::tight,
                .needs_rolling = true});
}

void judge_event(Judge& judge, const CheckContext& context, const PushEvent& event, double people) {
    const auto grip = grip_at(judge, context, event);
    if (!grip) return;
    const bool stands = grip->force > Force{};
    const double single = event.jams || !stands ? beyond_measure : event.force / grip->force;
    TeamUse team = team_use(std::min(single, beyond_measure), stands ? people : 1.0);
    const Part part{.demand = amount(event.force),
                    .capacity = amount(grip->force),
                    .use = team.use,
                    .statement = statement_of(event.kind),
                    .place = event.place,
                    .formula = "traction",
                    .numbers = {amount(event.force), amount(grip->force), amount(grip->friction),
                                amount(context.tables->people.body_mass.value), amount(event.slope)},
                    .outcome = team.outcome,
                    .needs_team = team.team};
    if (event.kind == PushEventKind::crossing && team.use > 1.0) {
        const Coasting coasting = coasting_over(judge, context, event);
        if (!coasting.known) return;
        if (coasting.rolls_over()) {
            judge_rolling(judge, event, *grip, coasting);
            return;
        }
    }
    judge.part(part);
}

}  // namespace

Finding check_traction(const CheckContext& context) {
    Judge judge(CheckId::traction, context);
    const auto moved_by = judge.value(context.cart->moved_by);
    if (moved_by == MovedBy::tug) {
        judge.part({.statement = Statement::traction_none, .outcome = Outcome::does_not_apply});
        return judge.finish();
    }
    const auto people = judge.low(context.cart->people);
    if (!moved_by || !people) return judge.finish();
    for_each_push_event(judge, context, [&](const PushEvent& event) {
        // Rolling on asks less than starting did on the same floor.
        if (event.kind != PushEventKind::sustain) judge_event(judge, context, event, *people);
    });
    return judge.finish();
}

}  // namespace sillwalk::engine
