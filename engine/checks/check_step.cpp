/// Does the rise exceed what such wheels are tested for? A gap before the rise counts with it
/// (docs/reference/methods.md "rise-with-gap"). What the rise asks of people is the business of `push`; the force and
/// the speed stand beside the answer. Statements: step_tested_rise: rise with the gap, tested rise, rise over diameter,
/// force from rest at the axle as a share of the load, least coasting speed with the load at the axle, rise, gap.
/// step_no_climb: rise, radius, gap. step_bevel: height, slope.

#include "engine/checks/checks.hpp"
#include "engine/checks/crossing_case.hpp"
#include "engine/physics/obstacle.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

void judge_bevel(Judge& judge, const CrossingDemand& crossing, const Obstacle& obstacle) {
    judge.part({.demand = amount(obstacle.bevel),
                .statement = Statement::step_bevel,
                .place = place_of(crossing),
                .formula = "bevel-as-slope",
                .numbers = {amount(obstacle.bevel_height), amount(obstacle.bevel)},
                .outcome = Outcome::holds});
}

void judge_rise(Judge& judge, const CheckContext& context, const CrossingDemand& crossing, const Obstacle& obstacle,
                Length tested) {
    const Length diameter = context.wheel->diameter;
    const auto forces = step_forces(1.0 * newton, diameter, obstacle.equivalent_rise);
    StepSpeedInput coast;
    coast.diameter = diameter;
    coast.rise = obstacle.equivalent_rise;
    const auto coasting = step_speed(coast);
    if (obstacle.no_climb || !forces || !coasting) {
        const double use = std::max(obstacle.rise, diameter / 2.0) / tested;
        judge.part({.demand = amount(obstacle.rise),
                    .capacity = amount(tested),
                    .use = use,
                    .statement = Statement::step_no_climb,
                    .place = place_of(crossing),
                    .formula = "rise-with-gap",
                    .numbers = {amount(obstacle.rise), amount(diameter / 2.0), amount(obstacle.gap)},
                    .outcome = Outcome::fails});
        return;
    }
    judge.part(
        {.demand = amount(obstacle.equivalent_rise),
         .capacity = amount(tested),
         .use = obstacle.equivalent_rise / tested,
         .statement = Statement::step_tested_rise,
         .place = place_of(crossing),
         .formula = obstacle.gap > Length{} ? "rise-with-gap" : "rise-share",
         .numbers = {amount(obstacle.equivalent_rise), amount(tested), share(obstacle.equivalent_rise / diameter),
                     share(forces->ratio), amount(coasting->least), amount(obstacle.rise), amount(obstacle.gap)}});
}

}  // namespace

Finding check_step(const CheckContext& context) {
    Judge judge(CheckId::step, context);
    judge.part({.statement = Statement::step_none, .outcome = Outcome::does_not_apply});
    for_each_crossing(context, [&](const CrossingDemand& crossing) {
        const auto obstacle = obstacle_at(judge, context, crossing, context.wheel->diameter);
        if (!obstacle) return;
        if (obstacle->bevel_height > Length{}) judge_bevel(judge, crossing, *obstacle);
        if (!(obstacle->rise > Length{}) || obstacle->swallowed) return;
        if (const auto tested = tested_rise(judge, context)) judge_rise(judge, context, crossing, *obstacle, *tested);
    });
    return judge.finish();
}

}  // namespace sillwalk::engine
