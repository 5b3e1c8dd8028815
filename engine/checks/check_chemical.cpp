/// Do the cleaning agents attack tread, core, bearing or rig? The worst level over all agents of the route decides.
/// Statement chemical_level: level; part (0 tread, 1 core, 2 bearing, 3 rig); 1 where one level worse for heat; 1 where
/// stronger than every row; and where it is worse for heat: the agent's temperature, the row's highest temperature.
/// The place is the washing. Source: chemical table; how soon to rinse is our judgement.

#include "engine/checks/agents.hpp"
#include "engine/checks/checks.hpp"

namespace sillwalk::engine {
namespace {

Amount level(ChemicalLevel value) {
    return {static_cast<double>(value), Kind::level};
}

void add_part(Judge& judge, const AgentEffect& effect, double part) {
    const ChemicalAnswer& answer = effect.answer;
    const Amount heat{answer.hotter_than_row ? 1.0 : 0.0, Kind::number};
    const Amount strength{answer.stronger_than_rows ? 1.0 : 0.0, Kind::number};
    const std::initializer_list<Amount> plain{level(answer.level), {part, Kind::number}, heat, strength};
    const std::initializer_list<Amount> hot{level(answer.level),
                                            {part, Kind::number},
                                            heat,
                                            strength,
                                            {effect.temperature.kelvin(), Kind::temperature},
                                            {answer.row->temperature_max.kelvin(), Kind::temperature}};
    judge.part({.demand = level(answer.level),
                .capacity = level(effect.allowed),
                .use = effect.use,
                .statement = Statement::chemical_level,
                .place = {PlaceKind::washing, effect.washing->washing},
                .formula = "chemical-level",
                .numbers = answer.hotter_than_row ? hot : plain,
                .citations = {answer.rating->citation},
                .outcome = effect.outcome,
                .conflict = !answer.rating->disagreement.empty()});
}

}  // namespace

Finding check_chemical(const CheckContext& context) {
    Judge judge(CheckId::chemical, context);
    const Material* const parts[] = {context.tread, context.core, context.bearing_material, context.rig_material};
    std::optional<AgentEffect> worst;
    double worst_part = 0;
    for (std::size_t i = 0; i < std::size(parts); ++i) {
        if (i == 1 && context.core == context.tread) continue;
        const auto effect = worst_agent(judge, context, parts[i]);
        if (!effect || (worst && !worse(*effect, *worst))) continue;
        worst = effect;
        worst_part = static_cast<double>(i);
    }
    if (worst) add_part(judge, *worst, worst_part);
    return judge.finish();
}

}  // namespace sillwalk::engine
