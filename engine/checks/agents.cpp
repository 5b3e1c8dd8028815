#include "engine/checks/agents.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

/// Weaker than any row of the table.
constexpr double least_strength = 1e-9;

/// Whether the rows of an agent end at some strength below the pure agent, so that the strength must be known.
bool strength_matters(const Chemicals& chemicals, const std::string& agent) {
    return std::any_of(chemicals.rows.begin(), chemicals.rows.end(), [&](const ChemicalRow& row) {
        return row.strength && *row.strength < 1.0 && row.agent == agent;
    });
}

void set(AgentEffect& effect, double use, Outcome outcome) {
    effect.use = use;
    effect.outcome = outcome;
}

/// Short contact only: allowed where it is known to be rinsed off in time. False where a reading or figure is missing.
bool judge_short_contact(Judge& judge, const CheckContext& context, AgentEffect& effect) {
    const auto rinsed = judge.value(effect.washing->rinsed);
    if (!rinsed) return false;
    if (!*rinsed) {
        set(effect, 1.5, Outcome::fails);
        return true;
    }
    const auto contact = judge.high(effect.washing->contact);
    const Figure<Duration>& limit = context.tables->practice.short_contact;
    if (limit.value <= Duration{}) judge.missing_figure();
    if (!contact || limit.value <= Duration{}) return false;
    judge.cite(limit.citation);
    const double share = *contact / limit.value;
    if (share > 1.0) {
        set(effect, share, Outcome::fails);
        return true;
    }
    effect.allowed = ChemicalLevel::short_contact;
    set(effect, 0.9 + 0.1 * share, Outcome::tight);
    return true;
}

bool judge_level(Judge& judge, const CheckContext& context, AgentEffect& effect) {
    switch (effect.answer.level) {
        case ChemicalLevel::suited:
            set(effect, 0.4, Outcome::holds);
            return true;
        case ChemicalLevel::watch:
            set(effect, 0.9, Outcome::tight);
            return true;
        case ChemicalLevel::short_contact:
            return judge_short_contact(judge, context, effect);
        case ChemicalLevel::unfit:
            break;
    }
    set(effect, 2.0, Outcome::fails);
    return true;
}

std::optional<AgentEffect> effect_of(Judge& judge, const CheckContext& context, const Material& material,
                                     const WashingDemand& washing) {
    const std::string* agent = judge.choice(washing.agent);
    if (material.chemical_column.empty()) judge.missing_figure();
    if (agent == nullptr || material.chemical_column.empty()) return std::nullopt;
    const Chemicals& chemicals = context.tables->chemicals;
    std::optional<double> strength;
    // Where it was not read, the mildest row shows what fails at any strength; the rest stays not known.
    if (strength_matters(chemicals, *agent)) {
        strength = std::clamp(judge.high(washing.strength).value_or(0.0), least_strength, 1.0);
    }
    const auto temperature = judge.high(washing.temperature);
    const auto answer = chemical(chemicals, material.chemical_column, *agent, strength, temperature);
    if (!answer) {
        judge.missing_figure();
        return std::nullopt;
    }
    AgentEffect effect;
    effect.answer = *answer;
    effect.washing = &washing;
    effect.temperature = temperature.value_or(Temperature{});
    if (answer->rating->status == "memory") judge.assume(Assumption::memory_rating);
    if (!judge_level(judge, context, effect)) return std::nullopt;
    return effect;
}

}  // namespace

bool worse(const AgentEffect& a, const AgentEffect& b) {
    return a.outcome != b.outcome ? a.outcome > b.outcome : a.use > b.use;
}

std::optional<AgentEffect> worst_agent(Judge& judge, const CheckContext& context, const Material* material) {
    std::optional<AgentEffect> worst;
    for (const WashingDemand& washing : context.cart->washings) {
        if (material == nullptr) {
            judge.missing_figure();
            break;
        }
        const auto effect = effect_of(judge, context, *material, washing);
        if (effect && (!worst || worse(*effect, *worst))) worst = effect;
    }
    return worst;
}

}  // namespace sillwalk::engine
