/// Does the wheel bridge the gap? A gap across the travel is a step as high as the wheel sags into it; a slot along the
/// travel must be narrower than the tread. Statements: gap_sag: gap, sag, tested rise, force to leave it as a share of
/// the load. gap_swallows: gap, diameter. gap_slot: slot, tread width, reserve.

#include "engine/checks/checks.hpp"
#include "engine/checks/crossing_case.hpp"
#include "engine/physics/obstacle.hpp"

namespace sillwalk::engine {
namespace {

/// Nothing stops the wheel: further off than any gap that it still bridges, whose sag is at most the radius.
void judge_swallowed(Judge& judge, const CrossingDemand& crossing, Length gap, Length diameter,
                     std::optional<Length> tested) {
    judge.part({.demand = amount(gap),
                .capacity = amount(diameter),
                .use = tested ? (gap / diameter) * (diameter / 2.0 / *tested) : beyond_measure,
                .statement = Statement::gap_swallows,
                .place = place_of(crossing),
                .formula = "gap-sag",
                .numbers = {amount(gap), amount(diameter)},
                .outcome = Outcome::fails});
}

void judge_gap(Judge& judge, const CheckContext& context, const CrossingDemand& crossing, Length gap) {
    const Length diameter = context.wheel->diameter;
    const auto tested = tested_rise(judge, context);
    const auto standing = gap_crossing(diameter, gap);
    if (!standing) {
        judge_swallowed(judge, crossing, gap, diameter, tested);
        return;
    }
    if (!tested) return;
    judge.part({.demand = amount(standing->sag),
                .capacity = amount(*tested),
                .use = standing->sag / *tested,
                .statement = Statement::gap_sag,
                .place = place_of(crossing),
                .formula = "gap-sag",
                .numbers = {amount(gap), amount(standing->sag), amount(*tested), share(standing->ratio)}});
}

void judge_slot(Judge& judge, const CheckContext& context, const CrossingDemand& crossing, Length slot) {
    const auto& reserve = context.tables->practice.bridge_reserve;
    const Length width = context.wheel->tread_width;
    const double use = reserve.value * (slot / width);
    judge.part({.demand = amount(slot),
                .capacity = amount(width),
                .use = use,
                .statement = Statement::gap_slot,
                .place = place_of(crossing),
                .formula = "slot-along-travel",
                .numbers = {amount(slot), amount(width), amount(reserve.value)},
                .citations = {reserve.citation}});
}

}  // namespace

Finding check_gap(const CheckContext& context) {
    Judge judge(CheckId::gap, context);
    judge.part({.statement = Statement::gap_none, .outcome = Outcome::does_not_apply});
    for_each_crossing(context, [&](const CrossingDemand& crossing) {
        const auto obstacle = obstacle_at(judge, context, crossing, context.wheel->diameter);
        if (obstacle && obstacle->gap > Length{}) judge_gap(judge, context, crossing, obstacle->gap);
        const auto slot = slot_at(judge, crossing);
        if (slot && *slot > Length{}) judge_slot(judge, context, crossing, *slot);
    });
    return judge.finish();
}

}  // namespace sillwalk::engine
