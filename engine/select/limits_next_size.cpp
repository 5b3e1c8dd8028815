#include "engine/select/limits_next_size.hpp"

#include <algorithm>
#include <tuple>

namespace sillwalk::engine {
namespace {

bool is_offered(const CandidateSpace& space, const WheelRows& rows, CastorFunction function) {
    const bool rig = std::any_of(rows.rigs.begin(), rows.rigs.end(), [&](std::uint32_t index) {
        return space.catalogue().rigs[index].function == function;
    });
    return rig && !rows.bearings.empty();
}

std::optional<Length> least_diameter(const CandidateSpace& space, Construction construction, CastorFunction function,
                                     Length least) {
    std::optional<Length> found;
    for (std::size_t i = 0; i < space.wheels().size(); ++i) {
        const Wheel& wheel = space.catalogue().wheels[i];
        if (wheel.construction != construction || wheel.diameter < least) continue;
        if (!is_offered(space, space.wheels()[i], function)) continue;
        if (!found || wheel.diameter < *found) found = wheel.diameter;
    }
    return found;
}

}  // namespace

std::optional<NextSize> next_size(const CandidateSpace& space, const Candidate& candidate, Length least,
                                  const std::function<bool(const Candidate&)>& holds) {
    const Catalogue& catalogue = space.catalogue();
    const Construction construction = catalogue.wheels[candidate.wheel].construction;
    const CastorFunction function = catalogue.rigs[candidate.rig].function;
    const auto diameter = least_diameter(space, construction, function, least);
    if (!diameter) return std::nullopt;
    using Key = std::tuple<bool, bool, std::uint32_t, std::uint32_t, std::uint32_t>;  // the lowest is taken
    std::optional<NextSize> best;
    Key best_key;
    for (std::uint32_t w = 0; w < space.wheels().size(); ++w) {
        const Wheel& wheel = catalogue.wheels[w];
        if (wheel.construction != construction || wheel.diameter != *diameter) continue;
        for (const std::uint32_t bearing : space.wheels()[w].bearings) {
            for (const std::uint32_t rig : space.wheels()[w].rigs) {
                if (catalogue.rigs[rig].function != function) continue;
                const Candidate other{w, bearing, rig, candidate.preparation};
                const bool held = holds(other);
                const Key key{!held, bearing != candidate.bearing, w, bearing, rig};
                if (best && !(key < best_key)) continue;
                best = NextSize{*diameter, other, held};
                best_key = key;
            }
        }
    }
    return best;
}

}  // namespace sillwalk::engine
