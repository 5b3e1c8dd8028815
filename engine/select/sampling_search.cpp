#include "engine/select/sampling_search.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

bool is_better(const ScoredCandidate& a, const ScoredCandidate& b) {
    return ranks_before(a.score, a.candidate, b.score, b.candidate);
}

bool is_nearer(const ScoredCandidate& a, const ScoredCandidate& b) {
    return nearer_to_holding(a.score, a.candidate, b.score, b.candidate);
}

/// The first `count` in the order of `before` of those that are still wanted when complete.
template <class Before, class Wanted>
std::vector<ScoredCandidate> first_of(CartScore& score, std::span<const ScoredCandidate> unscored, std::size_t count,
                                      Before&& before, Wanted&& wanted) {
    std::vector<ScoredCandidate> kept;
    const auto may_enter = [&](const ScoredCandidate& scored) {
        return wanted(scored) && (kept.size() < count || before(scored, kept.back()));
    };
    for (ScoredCandidate scored : unscored) {
        while (scored.next != Stage::complete && may_enter(scored)) score.advance(scored);
        if (!may_enter(scored)) continue;
        if (kept.size() == count) kept.pop_back();
        kept.insert(std::upper_bound(kept.begin(), kept.end(), scored, before), scored);
    }
    return kept;
}

}  // namespace

std::vector<ScoredCandidate> unscored_candidates(CandidateSpace& space, const CartDemand& demand) {
    CartScore score(space, demand);
    std::vector<ScoredCandidate> unscored;
    for (const ScoredCandidate& scored : score.score_all()) {
        ScoredCandidate fresh;
        fresh.candidate = scored.candidate;
        fresh.bearing_slot = scored.bearing_slot;
        fresh.rig_slot = scored.rig_slot;
        unscored.push_back(fresh);
    }
    return unscored;
}

std::vector<ScoredCandidate> best_holding(CartScore& score, std::span<const ScoredCandidate> unscored,
                                          std::size_t count) {
    return first_of(score, unscored, count, is_better,
                    [](const ScoredCandidate& scored) { return scored.score.counts.fails == 0; });
}

std::vector<ScoredCandidate> nearest_to_holding(CartScore& score, std::span<const ScoredCandidate> unscored,
                                                std::size_t count) {
    return first_of(score, unscored, count, is_nearer, [](const ScoredCandidate&) { return true; });
}

void bring_forward(std::vector<ScoredCandidate>& list, const Candidate& candidate) {
    const auto at =
        std::find_if(list.begin(), list.end(), [&](const ScoredCandidate& row) { return row.candidate == candidate; });
    if (at != list.end()) std::rotate(list.begin(), at, at + 1);
}

Headline headline_of(const std::vector<ScoredCandidate>& best) {
    Headline headline;
    headline.nothing_holds = best.empty();
    if (best.empty()) return headline;
    headline.candidate = best.front().candidate;
    headline.verdict = verdict_of(best.front().score.counts);
    return headline;
}

Headline headline_of(const CartAdvice& advice) {
    Headline headline;
    headline.nothing_holds = advice.ranked.empty();
    if (advice.ranked.empty()) return headline;
    headline.candidate = advice.ranked.front().candidate;
    headline.verdict = advice.ranked.front().verdict;
    return headline;
}

}  // namespace sillwalk::engine
