#include "engine/select/limits_families.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

/// nearer_to_holding() counts the failing checks first, and orders those without any as ranks_before() does.
bool is_better(const ScoredCandidate& a, const ScoredCandidate& b) {
    return nearer_to_holding(a.score, a.candidate, b.score, b.candidate);
}

}  // namespace

std::vector<ScoredCandidate> best_of_families(CartScore& score, const Catalogue& catalogue) {
    const auto construction = [&](const ScoredCandidate& scored) {
        return catalogue.wheels[scored.candidate.wheel].construction;
    };
    std::vector<ScoredCandidate> best;
    for (ScoredCandidate scored : score.score_all()) {
        const auto same = std::find_if(best.begin(), best.end(), [&](const ScoredCandidate& other) {
            return construction(other) == construction(scored);
        });
        const auto may_win = [&] { return same == best.end() || is_better(scored, *same); };
        while (scored.next != Stage::complete && may_win()) score.advance(scored);
        if (!may_win()) continue;
        if (same == best.end()) {
            best.push_back(scored);
        } else {
            *same = scored;
        }
    }
    std::sort(best.begin(), best.end(), is_better);
    return best;
}

}  // namespace sillwalk::engine
