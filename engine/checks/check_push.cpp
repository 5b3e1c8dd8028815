/// Can people be asked to push it? One person's limit against each force of the route. Rolling over a sill that cannot
/// be started on is tight, on the condition never to start on it; two or more people are at best tight (our rules,
/// docs/explanation/advice.md "People").
/// Statements: all but push_crossing_rolling begin alike: force, limit of one person, 75 % of women, the 80 %
/// biomechanical guideline (0 where the force is kept up), the upper limit, the national guide's figure for women,
/// which of these governs (0 women, 1 guideline, 2 upper), people. push_start, push_sustain, push_ramp and push_team go
/// on with the force by the greatest rolling resistance published elsewhere, where sources differ; push_crossing_rest
/// and push_jams with the forces at axle height and at hand height (0 where it tilts or jams). push_crossing_rolling:
/// least coasting speed, the cart's speed, energy lost in the blow, impulse, force from rest, limit, which governs.

#include "engine/checks/checks.hpp"
#include "engine/checks/push_events.hpp"
#include "engine/checks/push_limits.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

struct Setting {
    Judge& judge;
    const CheckContext& context;
    const PersonLimits& limits;
    double people;
};

Statement statement_of(PushEventKind kind) {
    switch (kind) {
        case PushEventKind::start:
            return Statement::push_start;
        case PushEventKind::sustain:
            return Statement::push_sustain;
        case PushEventKind::ramp:
            return Statement::push_ramp;
        case PushEventKind::hold_back:
            return Statement::push_hold_back;
        case PushEventKind::crossing:
            return Statement::push_crossing_rest;
    }
    return Statement::none;
}

const char* formula_of(PushEventKind kind) {
    switch (kind) {
        case PushEventKind::start:
        case PushEventKind::sustain:
            return "rolling-force";
        case PushEventKind::ramp:
            return "ramp-force";
        case PushEventKind::hold_back:
            return "hold-back-force";
        case PushEventKind::crossing:
            return "crossing-from-rest";
    }
    return "";
}

Amount governing(const PersonLimit& limit) {
    return amount(static_cast<double>(limit.governs));
}

void judge_rest(const Setting& setting, const PushEvent& event, const PersonLimit& limit, const TeamUse& team) {
    const Amount force = amount(event.jams ? event.at_axle : event.force);
    setting.judge.part({.demand = force,
                        .capacity = amount(limit.force),
                        .use = std::min(team.use, beyond_measure),
                        .statement = event.jams ? Statement::push_jams : Statement::push_crossing_rest,
                        .place = event.place,
                        .formula = formula_of(event.kind),
                        .numbers = {force, amount(limit.force), amount(limit.women), amount(limit.biomechanical),
                                    amount(limit.upper), amount(limit.guide), governing(limit), amount(setting.people),
                                    amount(event.at_axle), amount(event.at_hand)},
                        .outcome = team.outcome,
                        .needs_team = team.team});
}

void judge_force(const Setting& setting, const PushEvent& event, const PersonLimit& limit) {
    const TeamUse team = team_use(event.force / limit.force, setting.people);
    const bool by_team = team.team && event.force > limit.force;
    const bool disputed = event.other_force > Force{};
    const Amount force = amount(event.force), most = amount(limit.force), women = amount(limit.women),
                 guideline = amount(limit.biomechanical), upper = amount(limit.upper), guide = amount(limit.guide),
                 governs = governing(limit), people = amount(setting.people), other = amount(event.other_force);
    const std::initializer_list<Amount> agreed{force, most, women, guideline, upper, guide, governs, people};
    const std::initializer_list<Amount> differing{force, most, women, guideline, upper, guide, governs, people, other};
    setting.judge.part({.demand = force,
                        .capacity = most,
                        .use = team.use,
                        .statement = by_team ? Statement::push_team : statement_of(event.kind),
                        .place = event.place,
                        .formula = formula_of(event.kind),
                        .numbers = disputed ? differing : agreed,
                        .outcome = team.outcome,
                        .conflict = disputed,
                        .needs_team = team.team});
}

/// Colder of both sides: the push may begin on one and end on the other.
std::optional<double> coldest_factor(const Setting& setting, const PushEvent& event) {
    const auto here = cold_factor(setting.judge, setting.context, *event.air);
    if (event.air_beyond == nullptr) return here;
    const auto beyond = cold_factor(setting.judge, setting.context, *event.air_beyond);
    if (!here || !beyond) return std::nullopt;
    return std::min(*here, *beyond);
}

void judge_rolling(const Setting& setting, const PushEvent& event, const PersonLimit& limit, const Coasting& coasting) {
    setting.judge.part(
        {.demand = amount(*coasting.least),
         .capacity = amount(coasting.speed),
         .use = *coasting.least / coasting.speed,
         .statement = Statement::push_crossing_rolling,
         .place = event.place,
         .formula = "step-least-speed",
         .numbers = {amount(*coasting.least), amount(coasting.speed), Amount{coasting.lost.si(), Kind::energy},
                     amount(coasting.impulse), amount(event.force), amount(limit.force), governing(limit)},
         .outcome = Outcome::tight,
         .needs_rolling = true});
}

void judge_crossing(const Setting& setting, const PushEvent& event, const PersonLimit& limit) {
    const double single = event.jams ? beyond_measure : event.force / limit.force;
    const TeamUse team = team_use(single, setting.people);
    if (!event.jams && team.use <= 1.0) {
        judge_rest(setting, event, limit, team);
        return;
    }
    const Coasting coasting = coasting_over(setting.judge, setting.context, event);
    if (!coasting.known) return;
    if (coasting.rolls_over()) {
        judge_rolling(setting, event, limit, coasting);
        return;
    }
    // Neither from rest nor rolling: the easier way sets how far off it is.
    const bool may_roll = coasting.run_up_counts && coasting.least && coasting.speed > Speed{};
    const double rolling_use = may_roll ? *coasting.least / coasting.speed : beyond_measure;
    judge_rest(setting, event, limit, {std::min(team.use, rolling_use), Outcome::fails, false});
}

void judge_event(const Setting& setting, const PushEvent& event) {
    const auto cold = coldest_factor(setting, event);
    if (!cold) return;
    switch (event.kind) {
        case PushEventKind::start: {
            const auto limit = setting.limits.peak(*cold);
            if (limit) judge_force(setting, event, *limit);
            return;
        }
        case PushEventKind::sustain: {
            const auto limit = setting.limits.sustained(*cold);
            if (limit) judge_force(setting, event, *limit);
            return;
        }
        case PushEventKind::ramp: {  // people stop on ramps, so the start there counts too
            const auto kept = setting.limits.sustained(*cold, event.length);
            const auto start = setting.limits.peak(*cold);
            if (kept) judge_force(setting, event, *kept);
            if (start) judge_force(setting, event, *start);
            return;
        }
        case PushEventKind::hold_back: {
            const auto limit = setting.limits.sustained(*cold, event.length, PushAction::pull);
            if (limit) judge_force(setting, event, *limit);
            return;
        }
        case PushEventKind::crossing: {
            const auto limit = setting.limits.peak(*cold);
            if (limit) judge_crossing(setting, event, *limit);
            return;
        }
    }
}

}  // namespace

Finding check_push(const CheckContext& context) {
    Judge judge(CheckId::push, context);
    const auto moved_by = judge.value(context.cart->moved_by);
    if (moved_by == MovedBy::tug) {
        judge.part({.statement = Statement::push_tugged, .outcome = Outcome::does_not_apply});
        return judge.finish();
    }
    const auto people = judge.low(context.cart->people);
    const PersonLimits limits(judge, context);
    if (!moved_by || !people) return judge.finish();
    const Setting setting{judge, context, limits, *people};
    for_each_push_event(judge, context, [&](const PushEvent& event) { judge_event(setting, event); });
    return judge.finish();
}

}  // namespace sillwalk::engine
