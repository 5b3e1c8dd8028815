#include "engine/select/site_set.hpp"

#include "engine/checks/demand.hpp"
#include "engine/select/score_cart.hpp"

#include <algorithm>
#include <optional>
#include <set>

namespace sillwalk::engine {
namespace {

// A cart that nothing serves outweighs every loss of verdict of a site, one step of verdict every loss of use.
constexpr std::int64_t cost_unserved = 1'000'000'000'000, cost_step = 1'000'000'000;

enum class KindOf { wheel, bearing };

std::uint32_t kind_of(const Candidate& candidate, KindOf part) {
    return part == KindOf::wheel ? candidate.wheel : candidate.bearing;
}

/// One cart and, per kind, the best candidate that holds.
struct Choices {
    std::uint16_t cart = 0;
    std::optional<ScoredCandidate> own;
    std::vector<std::optional<ScoredCandidate>> by_wheel, by_bearing;

    [[nodiscard]] const std::vector<std::optional<ScoredCandidate>>& by(KindOf part) const {
        return part == KindOf::wheel ? by_wheel : by_bearing;
    }
};

void keep_better(std::optional<ScoredCandidate>& best, const ScoredCandidate& scored) {
    if (!best || ranks_before(scored.score, scored.candidate, best->score, best->candidate)) best = scored;
}

Choices choices_of(CandidateSpace& space, const Survey& survey, std::size_t cart) {
    Choices choices;
    choices.cart = static_cast<std::uint16_t>(cart);
    choices.by_wheel.resize(space.catalogue().wheels.size());
    choices.by_bearing.resize(space.catalogue().bearings.size());
    const CartDemand demand = resolve(survey, cart, space.tables());
    CartScore score(space, demand);
    for (const ScoredCandidate& scored : score.score_all()) {
        if (scored.score.counts.fails > 0) continue;
        keep_better(choices.own, scored);
        keep_better(choices.by_wheel[scored.candidate.wheel], scored);
        keep_better(choices.by_bearing[scored.candidate.bearing], scored);
    }
    return choices;
}

int steps_between(const Score& own, const Score& other) {
    return static_cast<int>(verdict_of(other.counts)) - static_cast<int>(verdict_of(own.counts));
}

KindCosts costs_of(const std::vector<Choices>& carts, std::size_t kinds, KindOf part) {
    KindCosts costs;
    costs.carts = carts.size();
    costs.kinds = kinds;
    for (const Choices& cart : carts) {
        for (const auto& best : cart.by(part)) {
            costs.cost.push_back(best ? cost_step * steps_between(cart.own->score, best->score) + best->score.worst_use
                                      : cost_unserved);
        }
    }
    return costs;
}

ServedCart served(const Choices& cart, const std::vector<std::uint32_t>& kinds, KindOf part) {
    std::optional<ScoredCandidate> best;
    for (const std::uint32_t kind : kinds) {
        if (const auto& offered = cart.by(part)[kind]) keep_better(best, *offered);
    }
    ServedCart row;
    row.cart = cart.cart;
    row.own_verdict = verdict_of(cart.own->score.counts);
    row.own_use = cart.own->score.worst_use / 1000.0;
    row.served = best.has_value();
    if (!best) return row;
    row.candidate = best->candidate;
    row.verdict = verdict_of(best->score.counts);
    row.worst_use = best->score.worst_use / 1000.0;
    return row;
}

KindSet set_of(const std::vector<Choices>& carts, const std::vector<std::uint32_t>& kinds, KindOf part) {
    KindSet set;
    std::set<std::uint32_t> used;
    for (const Choices& cart : carts) {
        set.carts.push_back(served(cart, kinds, part));
        const ServedCart& row = set.carts.back();
        set.unserved += row.served ? 0 : 1;
        if (!row.served) continue;
        used.insert(kind_of(row.candidate, part));
        set.verdict_steps += static_cast<int>(row.verdict) - static_cast<int>(row.own_verdict);
        set.use_added += row.worst_use - row.own_use;
    }
    set.kinds.assign(used.begin(), used.end());
    return set;
}

FewestKinds fewest(const std::vector<Choices>& carts, std::size_t kinds, KindOf part) {
    FewestKinds result;
    std::set<std::uint32_t> own;
    for (const Choices& cart : carts) own.insert(kind_of(cart.own->candidate, part));
    result.own = own.size();
    const KindCosts costs = costs_of(carts, kinds, part);
    std::vector<KindSet> sets;  // of one kind, of two, … until no cart loses
    for (std::size_t count = 1; count <= own.size(); ++count) {
        sets.push_back(set_of(carts, cheapest_kinds(costs, count), part));
        if (sets.back().unserved == 0 && sets.back().verdict_steps == 0) break;
    }
    if (sets.empty()) return result;
    result.fewest = sets.back();
    result.fewer.assign(sets.rbegin() + 1, sets.rend());
    return result;
}

}  // namespace

SiteAdvice site_advice(const Survey& survey, const Catalogue& catalogue, const Tables& tables) {
    CandidateSpace space(catalogue, tables);
    SiteAdvice advice;
    std::vector<Choices> carts;
    for (std::size_t cart = 0; cart < survey.carts.size(); ++cart) {
        Choices choices = choices_of(space, survey, cart);
        if (choices.own) {
            carts.push_back(std::move(choices));
        } else {
            advice.nothing_holds.push_back(static_cast<std::uint16_t>(cart));
        }
    }
    advice.wheels = fewest(carts, catalogue.wheels.size(), KindOf::wheel);
    advice.bearings = fewest(carts, catalogue.bearings.size(), KindOf::bearing);
    return advice;
}

}  // namespace sillwalk::engine
