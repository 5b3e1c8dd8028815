/// Can a stop at the sill tip the cart? The inelastic-stop speed decides (docs/explanation/doubts.md "Tipping"); the
/// energy-only speed stands beside it. Statements: tip_stop: speed, tipping speed, tipping speed by energy alone, tilt
/// at the balance point. tip_slope: slope, slope at which it tips.

#include "engine/checks/checks.hpp"
#include "engine/checks/crossing_case.hpp"
#include "engine/physics/stability.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

/// Swivel castors trail: their wheels stand behind the plate by the lead, so the leading wheels stand nearer to the
/// centre.
Length trailing_lead(const CheckContext& context) {
    const auto& castors = context.cart->castors;
    const auto front =
        std::max_element(castors.begin(), castors.end(),
                         [](const CastorPosition& a, const CastorPosition& b) { return a.forward < b.forward; });
    return front->function == CastorFunction::rigid ? Length{} : context.rig->swivel_lead;
}

void judge_stop(Judge& judge, const CheckContext& context, const CrossingDemand& crossing, const Centre& centre,
                Length ahead) {
    const auto speed = judge.high(context.cart->speed);
    if (!speed) return;
    const auto tip = ahead > Length{} ? tipping(centre.height, ahead) : Result<Tipping>(no_answer({}));
    if (!tip) {
        judge.part({.demand = amount(*speed),
                    .capacity = amount(Speed{}),
                    .use = beyond_measure,
                    .statement = Statement::tip_stop,
                    .place = place_of(crossing),
                    .formula = "tip-inelastic-stop",
                    .numbers = {amount(*speed), amount(Speed{}), amount(Speed{}), Amount{0.0, Kind::angle}}});
        return;
    }
    judge.part({.demand = amount(*speed),
                .capacity = amount(tip->least),
                .use = *speed / tip->least,
                .statement = Statement::tip_stop,
                .place = place_of(crossing),
                .formula = "tip-inelastic-stop",
                .numbers = {amount(*speed), amount(tip->least), amount(tip->energy_only),
                            Amount{tip->tilt_degrees * 3.14159265358979323846 / 180.0, Kind::angle}}});
}

/// Standing on a slope: it tips where the tangent reaches the distance to the downhill wheels over the height.
void judge_slope(Judge& judge, const CrossingDemand& crossing, const Centre& centre, Length ahead,
                 const SlopeEnds& slope) {
    const auto part = [&](double tangent, Length base) {
        if (tangent <= 0.0) return;
        const double limit = std::max(base.si(), 0.0) / centre.height.si();
        const double use = limit > 0.0 ? tangent / limit : beyond_measure;
        judge.part({.demand = amount(Slope::from_tangent(tangent)),
                    .capacity = amount(Slope::from_tangent(limit)),
                    .use = use,
                    .statement = Statement::tip_slope,
                    .place = place_of(crossing),
                    .formula = "tip-slope",
                    .numbers = {amount(Slope::from_tangent(tangent)), amount(Slope::from_tangent(limit))}});
    };
    part(slope.high.tangent(), centre.forward_low);
    part(-slope.low.tangent(), ahead);
}

}  // namespace

Finding check_tip(const CheckContext& context) {
    Judge judge(CheckId::tip, context);
    const auto wheelbase = wheelbase_of(judge, *context.cart);
    for_each_crossing(context, [&](const CrossingDemand& crossing) {
        const auto obstacle = obstacle_at(judge, context, crossing, context.rig->wheel_diameter);
        const auto slope = slope_at(judge, context, crossing);
        const bool edge = obstacle && obstacle->has_edge();
        const bool sloped = slope && (slope->high > Slope{} || slope->low < Slope{});
        if (!wheelbase || (!edge && !sloped)) return;
        const auto centre = centre_on_leg(judge, context, crossing.loaded);
        if (!centre || !(centre->height > Length{})) return;
        const Length ahead = *wheelbase - trailing_lead(context) - centre->forward_high;
        if (edge) judge_stop(judge, context, crossing, *centre, ahead);
        if (sloped) judge_slope(judge, crossing, *centre, ahead, *slope);
    });
    return judge.finish();
}

}  // namespace sillwalk::engine
