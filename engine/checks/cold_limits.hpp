#pragma once
/// Temperatures below which a material may break, struck and unstruck.
///
/// Urethane of 50 Shore D and harder by its hardness and soft segment (our judgement [urethane-cold-rule]; the soft
/// segment unknown: the stricter ester limits). All others by their own row of the material table, whose limits have
/// their margins inside; where a row has none, its service floor. Metals have none: cold does not change them enough,
/// or they break at every temperature.

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

struct ColdLimit {
    Temperature value;
    CitationId citation = 0;
    const char* formula = "";
};
struct ColdLimits {
    std::optional<ColdLimit> struck, unstruck;
};
enum class ColdKnowledge { limits, cannot_break, missing };
struct ColdAnswer {
    ColdKnowledge known = ColdKnowledge::missing;
    ColdLimits limits;
};

/// `hardness` belongs to the tread; pass nullptr for a core.
[[nodiscard]] ColdAnswer cold_limits(Judge& judge, const Material* material, const Hardness* hardness);

}  // namespace sillwalk::engine
