#include "engine/checks/cold_limits.hpp"

#include "engine/physics/elastic.hpp"

namespace sillwalk::engine {
namespace {

bool is_metal(MaterialFamily family) {
    return family == MaterialFamily::steel || family == MaterialFamily::iron || family == MaterialFamily::stainless;
}

std::optional<ColdLimit> of_row(const std::optional<Figure<Temperature>>& own,
                                const std::optional<Figure<Temperature>>& service) {
    if (own) return ColdLimit{own->value, own->citation, "cold-gate"};
    if (service) return ColdLimit{service->value, service->citation, "cold-service"};
    return std::nullopt;
}

/// The rule for hard urethane; empty where it has no limits (below 50 D) or the hardness cannot be told in Shore D.
std::optional<ColdLimits> of_hard_urethane(Judge& judge, const Material& material, const Hardness& hardness) {
    const Result<double> shore_d =
        hardness.scale == HardnessScale::shore_d ? Result<double>(hardness.value) : shore_d_from_a(hardness.value);
    if (!shore_d) return std::nullopt;
    const bool unknown = material.soft_segment == SoftSegment::unknown;
    const auto cold = urethane_cold(*shore_d, unknown ? SoftSegment::ester : material.soft_segment);
    if (!cold || !cold->brittle_struck || !cold->brittle_unstruck) return std::nullopt;
    if (unknown) judge.assume(Assumption::ester_limits);
    const CitationId citation = material.brittle_struck ? material.brittle_struck->citation : CitationId{0};
    return ColdLimits{ColdLimit{*cold->brittle_struck, citation, "cold-urethane"},
                      ColdLimit{*cold->brittle_unstruck, citation, "cold-urethane"}};
}

}  // namespace

ColdAnswer cold_limits(Judge& judge, const Material* material, const Hardness* hardness) {
    if (material == nullptr) return {};
    if (is_metal(material->family)) return {ColdKnowledge::cannot_break, {}};
    if (material->family == MaterialFamily::nylon) judge.assume(Assumption::dry_nylon);
    if (material->family == MaterialFamily::urethane && hardness != nullptr) {
        if (auto limits = of_hard_urethane(judge, *material, *hardness)) return {ColdKnowledge::limits, *limits};
        const bool between_scales = hardness->scale == HardnessScale::shore_a && hardness->value > 95.0;
        if (between_scales) return {};  // 96 A is 45 D at one maker and 55 D at another: ask for Shore D
    }
    const ColdLimits limits{of_row(material->brittle_struck, material->service_low),
                            of_row(material->brittle_unstruck, material->service_low)};
    if (!limits.struck && !limits.unstruck) return {};
    return {ColdKnowledge::limits, limits};
}

}  // namespace sillwalk::engine
