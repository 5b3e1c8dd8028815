#include "engine/select/assess.hpp"

#include "engine/base/contract.hpp"
#include "engine/checks/demand.hpp"
#include "engine/select/score_cart.hpp"

#include <algorithm>
#include <map>
#include <span>

namespace sillwalk::engine {
namespace {

using Detail = CartScore::Detail;

bool fails(const ScoredCandidate& scored) {
    return scored.score.counts.fails > 0;
}

RankedCandidate in_full(CartScore& score, const Candidate& candidate) {
    RankedCandidate ranked;
    ranked.candidate = candidate;
    ranked.findings = score.findings(candidate, Detail::which_reading);
    ranked.verdict = verdict_of(ranked.findings);
    Score sum;
    for (const Finding& finding : ranked.findings) add(sum, finding);
    ranked.worst_use = sum.worst_use / 1000.0;
    return ranked;
}

bool is_nearer(const ScoredCandidate& a, const ScoredCandidate& b) {
    return nearer_to_holding(a.score, a.candidate, b.score, b.candidate);
}

/// The nearest of some failing candidates, completed. Scores only grow as stages are added, so the nearest so far is
/// taken a stage further, again and again, until it is complete: the others cannot become nearer. Most need no walk.
ScoredCandidate nearest_of(CartScore& score, std::vector<ScoredCandidate> failing) {
    const auto is_further = [](const ScoredCandidate& a, const ScoredCandidate& b) { return is_nearer(b, a); };
    std::make_heap(failing.begin(), failing.end(), is_further);
    while (failing.front().next != Stage::complete) {
        std::pop_heap(failing.begin(), failing.end(), is_further);
        score.advance(failing.back());
        std::push_heap(failing.begin(), failing.end(), is_further);
    }
    return failing.front();
}

/// For each wheel of the catalogue the number of its construction, in the order in which they come.
std::vector<std::size_t> constructions_of(const Catalogue& catalogue) {
    std::vector<std::size_t> numbers;
    std::map<Construction, std::size_t> seen;
    for (const Wheel& wheel : catalogue.wheels) {
        numbers.push_back(seen.emplace(wheel.construction, seen.size()).first->second);
    }
    return numbers;
}

/// The nearest failing candidate of every construction, nearest first. One of each is completed first, so that most of
/// the others are seen to be further as they are.
std::vector<ScoredCandidate> nearest_of_each_construction(CartScore& score, std::span<const ScoredCandidate> failing,
                                                          const Catalogue& catalogue) {
    const std::vector<std::size_t> construction = constructions_of(catalogue);
    std::vector<std::optional<ScoredCandidate>> leads(construction.size());
    for (const ScoredCandidate& scored : failing) {
        auto& lead = leads[construction[scored.candidate.wheel]];
        if (!lead || is_nearer(scored, *lead)) lead = scored;
    }
    std::vector<std::vector<ScoredCandidate>> contenders(leads.size());
    for (std::size_t kind = 0; kind < leads.size(); ++kind) {
        if (!leads[kind]) continue;
        while (leads[kind]->next != Stage::complete) score.advance(*leads[kind]);
        contenders[kind].push_back(*leads[kind]);
    }
    for (const ScoredCandidate& scored : failing) {
        const std::size_t kind = construction[scored.candidate.wheel];
        if (is_nearer(scored, *leads[kind])) contenders[kind].push_back(scored);
    }
    std::vector<ScoredCandidate> nearest;
    for (auto& candidates : contenders) {
        if (!candidates.empty()) nearest.push_back(nearest_of(score, std::move(candidates)));
    }
    std::sort(nearest.begin(), nearest.end(), is_nearer);
    return nearest;
}

/// Another bearing or preparation in the same wheel is no alternative where that wheel cannot be had.
std::optional<Candidate> best_with_another_wheel(std::span<const ScoredCandidate> holding) {
    const auto is_before = [](const ScoredCandidate& a, const ScoredCandidate& b) {
        return ranks_before(a.score, a.candidate, b.score, b.candidate);
    };
    const auto first = std::min_element(holding.begin(), holding.end(), is_before);
    const ScoredCandidate* best = nullptr;
    for (const ScoredCandidate& scored : holding) {
        if (scored.candidate.wheel == first->candidate.wheel) continue;
        if (best == nullptr || is_before(scored, *best)) best = &scored;
    }
    return best != nullptr ? std::optional(best->candidate) : std::nullopt;
}

TurnedDown turned_down(CartScore& score, const Candidate& candidate) {
    const CheckContext context = score.context_of(candidate);
    for (const CheckEntry& check : all_checks()) {
        if (check.run(context).outcome == Outcome::fails) return {candidate, run_check_in_detail(check, context)};
    }
    EXPECT_CONTRACT(false && "a candidate that was turned down fails a check");
    return {};
}

CrossingOutcome at_crossing(const CheckContext& context, std::uint16_t pass) {
    CheckContext alone = context;
    alone.only_crossing = pass;
    CrossingOutcome outcome;
    outcome.crossing = context.cart->crossings[pass].crossing;
    outcome.outcome = Outcome::does_not_apply;
    for (const CheckEntry& check : all_checks()) {
        if (!check.by_crossing) continue;
        outcome.findings.push_back(run_check(check, alone));
        outcome.outcome = std::max(outcome.outcome, outcome.findings.back().outcome);
    }
    return outcome;
}

bool is_worse(const Finding& a, const Finding& b) {
    return a.outcome != b.outcome ? a.outcome > b.outcome : a.use > b.use;
}

/// A cart may pass a crossing more than once: the worse pass counts, check by check.
void merge(CrossingOutcome& into, const CrossingOutcome& other) {
    into.outcome = std::max(into.outcome, other.outcome);
    for (std::size_t i = 0; i < into.findings.size(); ++i) {
        if (is_worse(other.findings[i], into.findings[i])) into.findings[i] = other.findings[i];
    }
}

std::vector<CrossingOutcome> crossings_of(CartScore& score, const Candidate& candidate) {
    const CheckContext context = score.context_of(candidate);
    std::vector<CrossingOutcome> outcomes;
    for (std::uint16_t pass = 0; pass < context.cart->crossings.size(); ++pass) {
        CrossingOutcome outcome = at_crossing(context, pass);
        const auto earlier = std::find_if(outcomes.begin(), outcomes.end(), [&](const CrossingOutcome& other) {
            return other.crossing == outcome.crossing;
        });
        if (earlier == outcomes.end()) {
            outcomes.push_back(std::move(outcome));
        } else {
            merge(*earlier, outcome);
        }
    }
    return outcomes;
}

template <class Rows, class Text>
std::optional<std::uint32_t> index_of(const Rows& rows, const Text& id) {
    if (!id.value) return std::nullopt;
    for (std::uint32_t i = 0; i < rows.size(); ++i) {
        if (rows[i].id.text() == *id.value) return i;
    }
    return std::nullopt;
}

/// The wheel on the cart now, where wheel, bearing and rig were all recognised.
std::optional<Candidate> present_on(const Cart& cart, const Catalogue& catalogue) {
    const auto wheel = index_of(catalogue.wheels, cart.present_wheel);
    const auto bearing = index_of(catalogue.bearings, cart.present_bearing);
    const auto rig = index_of(catalogue.rigs, cart.present_rig);
    if (!wheel || !bearing || !rig) return std::nullopt;
    return Candidate{*wheel, *bearing, *rig, Preparation::as_supplied};
}

std::vector<ReadingRef> missing_in(const std::vector<Finding>& findings) {
    std::vector<ReadingRef> missing;
    for (const Finding& finding : findings) {
        missing.insert(missing.end(), finding.missing.begin(), finding.missing.end());
    }
    std::sort(missing.begin(), missing.end());
    missing.erase(std::unique(missing.begin(), missing.end()), missing.end());
    return missing;
}

void add_headline(CartAdvice& advice, CartScore& score) {
    const RankedCandidate* headline = advice.nearest ? &*advice.nearest : nullptr;
    if (!advice.ranked.empty()) headline = &advice.ranked.front();
    if (headline == nullptr) return;
    advice.crossings = crossings_of(score, headline->candidate);
    advice.not_read = missing_in(headline->findings);
}

void add_present(CartAdvice& advice, CartScore& score, const Cart& cart, const Catalogue& catalogue) {
    const auto present = present_on(cart, catalogue);
    if (!present) return;
    advice.present = in_full(score, *present);
    advice.crossings_present = crossings_of(score, *present);
}

CartAdvice advise(CandidateSpace& space, const Survey& survey, std::size_t cart_index, const AssessOptions& options) {
    const CartDemand demand = resolve(survey, cart_index, space.tables());
    CartScore score(space, demand);
    std::vector<ScoredCandidate> all = score.score_all();
    const auto failing = std::partition(all.begin(), all.end(), [](const auto& scored) { return !fails(scored); });
    const auto holding = static_cast<std::size_t>(failing - all.begin());
    const std::size_t shown = std::min(options.ranked, holding);
    std::partial_sort(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(shown), failing,
                      [](const ScoredCandidate& a, const ScoredCandidate& b) {
                          return ranks_before(a.score, a.candidate, b.score, b.candidate);
                      });

    CartAdvice advice;
    advice.cart = static_cast<std::uint16_t>(cart_index);
    advice.candidates_total = all.size();
    advice.turned_down_total = all.size() - holding;
    advice.nothing_holds = holding == 0;
    for (std::size_t i = 0; i < shown; ++i) advice.ranked.push_back(in_full(score, all[i].candidate));
    if (const auto second = best_with_another_wheel({all.data(), holding})) advice.runner_up = in_full(score, *second);

    const auto nearest =
        nearest_of_each_construction(score, {all.data() + holding, all.size() - holding}, space.catalogue());
    if (advice.nothing_holds && !nearest.empty()) advice.nearest = in_full(score, nearest.front().candidate);
    for (std::size_t i = 0; i < std::min(nearest.size(), options.turned_down); ++i) {
        advice.turned_down.push_back(turned_down(score, nearest[i].candidate));
    }
    add_headline(advice, score);
    add_present(advice, score, survey.carts[cart_index], space.catalogue());
    return advice;
}

}  // namespace

const char* engine_version() {
    return "0.1.0";
}

Advice assess(const Survey& survey, const Catalogue& catalogue, const Tables& tables, const AssessOptions& options) {
    CandidateSpace space(catalogue, tables);
    return assess(survey, space, options);
}

Advice assess(const Survey& survey, CandidateSpace& space, const AssessOptions& options) {
    Advice advice;
    advice.engine_version = engine_version();
    advice.survey = survey.id;
    advice.revision = survey.revision;
    advice.catalogue_edition = space.catalogue().edition;
    advice.tables_edition = space.tables().edition;
    for (std::size_t cart = 0; cart < survey.carts.size(); ++cart) {
        if (options.only_cart && *options.only_cart != cart) continue;
        advice.carts.push_back(advise(space, survey, cart, options));
    }
    return advice;
}

}  // namespace sillwalk::engine
