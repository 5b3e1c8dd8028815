#pragma once
/// What the cleaning agents of a route do to one material, by the chemical table.

#include "engine/checks/judge.hpp"
#include "engine/physics/chemistry.hpp"

#include <optional>

namespace sillwalk::engine {

struct AgentEffect {
    ChemicalAnswer answer;
    const WashingDemand* washing = nullptr;
    Temperature temperature;                       ///< of the agent; meaningful where answer.hotter_than_row
    ChemicalLevel allowed = ChemicalLevel::watch;  ///< the worst level that this washing's rinsing allows
    Outcome outcome = Outcome::not_known;
    double use = 0;  ///< own scale: suited 0.4, watch 0.9, short contact 0.9 to 1 rinsed in time, unfit 2
};

/// The worst effect over all washings of the cart. A missing reading or rating is noted in the judge; a failure that no
/// value of the missing reading could undo is still returned. Empty where no agent could be judged.
/// Levels are for unstressed material. Source: the table's own readings; the scale is ours.
[[nodiscard]] std::optional<AgentEffect> worst_agent(Judge& judge, const CheckContext& context,
                                                     const Material* material);

/// True where `a` is the worse of the two.
[[nodiscard]] bool worse(const AgentEffect& a, const AgentEffect& b);

}  // namespace sillwalk::engine
