/// Will bearing, rig or an iron core rust? On a wet or corrosive route the practice is a stainless or acetal bearing;
/// acetal, stainless and zinc are then held against each agent by the chemical table.
/// Statements corrosion_rusts, corrosion_resists, corrosion_dry: part (1 core, 2 bearing, 3 rig); moisture (0 dry, 1
/// damp, 2 wet); chemical level of the worst agent (0 where no agent is met). The place is the washing or room that
/// decides.

#include "engine/checks/agents.hpp"
#include "engine/checks/checks.hpp"
#include "engine/checks/moisture.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

enum class PartCode { core = 1, bearing = 2, rig = 3 };
/// What water alone does: nothing; a coating or surface that is used up slowly; rust that seizes a bearing.
enum class Metal { resists, used_up, rusts };

Metal metal_of(BearingKind kind) {
    const bool steel = kind == BearingKind::roller || kind == BearingKind::precision_ball;
    return steel ? Metal::rusts : Metal::resists;
}

void add_water(Judge& judge, const CheckContext& context, const RouteMoisture& route, Metal metal, PartCode part) {
    const Practice& practice = context.tables->practice;
    const bool rusts = metal == Metal::rusts && route.moisture == Moisture::wet;
    const Figure<double>& figure = rusts ? practice.rust_wet_use : practice.rust_damp_use;
    const bool attacked = metal != Metal::resists && route.moisture != Moisture::dry;
    if (attacked && figure.value <= 0.0) {
        judge.missing_figure();
        return;
    }
    const double resists = route.moisture == Moisture::dry ? 0.3 : 0.5;
    const double use = attacked ? figure.value : resists;
    const Statement statement = attacked                          ? Statement::corrosion_rusts
                                : route.moisture == Moisture::dry ? Statement::corrosion_dry
                                                                  : Statement::corrosion_resists;
    judge.part({.demand = {use, Kind::number},
                .capacity = {1.0, Kind::number},
                .use = use,
                .statement = statement,
                .place = route.place,
                .formula = "corrosion-rule",
                .numbers = {{static_cast<double>(part), Kind::number},
                            {static_cast<double>(route.moisture), Kind::number},
                            {0.0, Kind::level}},
                .citations = {attacked ? figure.citation : practice.rust_wet_use.citation}});
    if (attacked) judge.assume(Assumption::practice_figure);
}

void add_agents(Judge& judge, const CheckContext& context, const RouteMoisture& route, const Material* material,
                PartCode part) {
    const auto effect = worst_agent(judge, context, material);
    if (!effect) return;
    const Amount level{static_cast<double>(effect->answer.level), Kind::level};
    judge.part(
        {.demand = level,
         .capacity = {static_cast<double>(effect->allowed), Kind::level},
         .use = effect->use,
         .statement = effect->outcome == Outcome::holds ? Statement::corrosion_resists : Statement::corrosion_rusts,
         .place = {PlaceKind::washing, effect->washing->washing},
         .formula = "chemical-level",
         .numbers = {{static_cast<double>(part), Kind::number},
                     {static_cast<double>(route.moisture), Kind::number},
                     level},
         .citations = {effect->answer.rating->citation},
         .outcome = effect->outcome,
         .conflict = !effect->answer.rating->disagreement.empty()});
}

bool is_metal(const Material& material) {
    return material.family == MaterialFamily::steel || material.family == MaterialFamily::iron ||
           material.family == MaterialFamily::stainless;
}

}  // namespace

Finding check_corrosion(const CheckContext& context) {
    Judge judge(CheckId::corrosion, context);
    const RouteMoisture route = route_moisture(judge, *context.cart);
    const Metal bearing = metal_of(context.bearing->kind);
    add_water(judge, context, route, bearing, PartCode::bearing);
    // Plain bearing steel has no column of its own: wet already fails it.
    if (bearing == Metal::resists) add_agents(judge, context, route, context.bearing_material, PartCode::bearing);

    const bool zinc = context.rig->finish == RigFinish::zinc_plated;
    add_water(judge, context, route, zinc ? Metal::used_up : Metal::resists, PartCode::rig);
    add_agents(judge, context, route, context.rig_material, PartCode::rig);

    if (context.core != nullptr && is_metal(*context.core)) {
        const bool stainless = context.core->family == MaterialFamily::stainless;
        add_water(judge, context, route, stainless ? Metal::resists : Metal::used_up, PartCode::core);
        add_agents(judge, context, route, context.core, PartCode::core);
    }
    return judge.finish();
}

}  // namespace sillwalk::engine
