// The cheapest set of kinds, a p-median problem of a site's size, by branch and bound.

#include "engine/base/contract.hpp"
#include "engine/select/site_set.hpp"

#include <algorithm>
#include <functional>
#include <numeric>
#include <utility>

namespace sillwalk::engine {
namespace {

using Kinds = std::vector<std::uint32_t>;
using Costs = std::vector<std::int64_t>;
constexpr int rounds_at_first = 200, rounds_inside = 20;
constexpr double price_pace = 0.97;  // how fast the steps shorten

bool nowhere_cheaper(const KindCosts& costs, std::size_t kind, std::size_t other) {
    for (std::size_t cart = 0; cart < costs.carts; ++cart) {
        if (costs.at(cart, kind) < costs.at(cart, other)) return false;
    }
    return true;
}

/// Costs that each cart has when nothing is chosen: as its dearest kind, so that a first choice is always a gain.
Costs dearest(const KindCosts& costs) {
    Costs most(costs.carts, 0);
    for (std::size_t cart = 0; cart < costs.carts; ++cart) {
        for (std::size_t kind = 0; kind < costs.kinds; ++kind) most[cart] = std::max(most[cart], costs.at(cart, kind));
    }
    return most;
}

std::int64_t cost_of(const KindCosts& costs, const Kinds& kinds) {
    std::int64_t sum = 0;
    for (std::size_t cart = 0; cart < costs.carts; ++cart) {
        std::int64_t least = costs.at(cart, kinds.front());
        for (const std::uint32_t kind : kinds) least = std::min(least, costs.at(cart, kind));
        sum += least;
    }
    return sum;
}

/// A good set to start from: exchange one kind for another as long as that is cheaper.
Kinds by_exchange(const KindCosts& costs, const Kinds& all, std::size_t count) {
    Kinds kinds(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count));
    std::int64_t cost = cost_of(costs, kinds);
    for (bool cheaper = true; cheaper;) {
        cheaper = false;
        for (std::size_t place = 0; place < count; ++place) {
            for (const std::uint32_t kind : all) {
                Kinds other = kinds;
                other[place] = kind;
                const std::int64_t other_cost = cost_of(costs, other);
                if (other_cost >= cost) continue;
                kinds = other;
                cost = other_cost;
                cheaper = true;
            }
        }
    }
    return kinds;
}

class Search {
public:
    explicit Search(const KindCosts& costs) : costs_(&costs) {}

    /// The least cost of `forced` with up to `more` of `allowed`, if it is below `bound`; else `bound`.
    std::int64_t least(const Kinds& forced, const Kinds& allowed, std::size_t more, std::int64_t bound) {
        best_ = bound;
        Costs now = dearest(*costs_);
        for (const std::uint32_t kind : forced) take(now, kind);
        branch(now, now, allowed, more, rounds_at_first);
        return best_;
    }

private:
    void take(Costs& now, std::uint32_t kind) const {
        for (std::size_t cart = 0; cart < costs_->carts; ++cart) {
            now[cart] = std::min(now[cart], costs_->at(cart, kind));
        }
    }

    /// Lagrangian bound of the p-median (Cornuejols, Fisher, Nemhauser 1977, from memory): let each cart pay any price
    /// instead of being served; then the sum of the prices, less what the `more` kinds that save most of them save, is
    /// never above the least cost, as long as no price is above what the cart pays now. Whole numbers, so exact for any
    /// prices. The prices are bettered by subgradient steps. Leaves out of `allowed` what cannot be in a set below the
    /// best cost; false where no such set is left.
    bool narrow(const Costs& now, Costs& prices, Kinds& allowed, std::size_t more, int rounds) const {
        for (std::size_t cart = 0; cart < costs_->carts; ++cart) prices[cart] = std::min(prices[cart], now[cart]);
        double pace = 1.0;
        for (int round = 0; round < rounds; ++round) {
            std::vector<Saving> savings = savings_of(prices, allowed);
            const std::size_t kept = std::min(more, allowed.size());
            std::int64_t bound = std::accumulate(prices.begin(), prices.end(), std::int64_t{0});
            for (std::size_t i = 0; i < kept; ++i) bound -= savings[i].first;
            if (bound >= best_) return false;
            // With another kind in place of the last of the kept ones the bound rises by the difference.
            if (kept == more) {
                const std::int64_t last = savings[kept - 1].first;
                allowed.clear();
                for (const auto& [saving, kind] : savings) {
                    if (saving >= last || bound + last - saving < best_) allowed.push_back(kind);
                }
                std::sort(allowed.begin(), allowed.end());
            }
            savings.resize(kept);
            if (!better_prices(now, prices, savings, pace * static_cast<double>(best_ - bound))) return true;
            pace *= price_pace;
        }
        return true;
    }

    using Saving = std::pair<std::int64_t, std::uint32_t>;  // of a kind, over all carts

    /// Greatest first.
    std::vector<Saving> savings_of(const Costs& prices, const Kinds& allowed) const {
        std::vector<Saving> savings;
        for (const std::uint32_t kind : allowed) savings.emplace_back(saved(prices, kind), kind);
        std::sort(savings.begin(), savings.end(), std::greater<>());
        return savings;
    }

    /// A step towards prices at which each cart is served once. False where it is so already.
    bool better_prices(const Costs& now, Costs& prices, const std::vector<Saving>& chosen, double to_gain) const {
        Costs wanted(costs_->carts, 1);
        std::int64_t length = 0;
        for (std::size_t cart = 0; cart < costs_->carts; ++cart) {
            for (const auto& [saving, kind] : chosen) wanted[cart] -= costs_->at(cart, kind) < prices[cart] ? 1 : 0;
            length += wanted[cart] * wanted[cart];
        }
        if (length == 0) return false;
        for (std::size_t cart = 0; cart < costs_->carts; ++cart) {
            const double step = to_gain / static_cast<double>(length) * static_cast<double>(wanted[cart]);
            prices[cart] = std::clamp<std::int64_t>(prices[cart] + static_cast<std::int64_t>(step), 0, now[cart]);
        }
        return true;
    }

    std::int64_t saved(const Costs& prices, std::uint32_t kind) const {
        std::int64_t sum = 0;
        for (std::size_t cart = 0; cart < costs_->carts; ++cart) {
            sum += std::max<std::int64_t>(0, prices[cart] - costs_->at(cart, kind));
        }
        return sum;
    }

    /// No set is cheaper than if every cart got the best that is still allowed. Tells the cart that would gain most.
    std::int64_t least_by_carts(const Costs& now, const Kinds& allowed, std::size_t& gains_most) const {
        std::int64_t sum = 0, most = -1;
        for (std::size_t cart = 0; cart < costs_->carts; ++cart) {
            std::int64_t least = now[cart];
            for (const std::uint32_t kind : allowed) least = std::min(least, costs_->at(cart, kind));
            sum += least;
            if (now[cart] - least > most) {
                most = now[cart] - least;
                gains_most = cart;
            }
        }
        return sum;
    }

    void branch(const Costs& now, Costs prices, Kinds allowed, std::size_t more, int rounds) {
        best_ = std::min(best_, std::accumulate(now.begin(), now.end(), std::int64_t{0}));
        std::size_t cart = 0;
        if (more == 0 || allowed.empty() || least_by_carts(now, allowed, cart) >= best_) return;
        if (!narrow(now, prices, allowed, more, rounds)) return;
        least_by_carts(now, allowed, cart);
        // Either the cheapest for this cart is chosen, or it is not and the next one is, … or the cart gains nothing.
        Kinds cheaper, rest;
        for (const std::uint32_t kind : allowed) {
            (costs_->at(cart, kind) < now[cart] ? cheaper : rest).push_back(kind);
        }
        std::stable_sort(cheaper.begin(), cheaper.end(),
                         [&](std::uint32_t a, std::uint32_t b) { return costs_->at(cart, a) < costs_->at(cart, b); });
        for (std::size_t i = 0; i < cheaper.size(); ++i) {
            Costs with = now;
            take(with, cheaper[i]);
            Kinds left = rest;
            left.insert(left.end(), cheaper.begin() + static_cast<std::ptrdiff_t>(i) + 1, cheaper.end());
            branch(with, prices, left, more - 1, rounds_inside);
        }
        if (!cheaper.empty()) branch(now, prices, rest, more, rounds_inside);
    }

    const KindCosts* costs_;
    std::int64_t best_ = 0;
};

}  // namespace

std::vector<std::uint32_t> undominated(const KindCosts& costs) {
    EXPECT_CONTRACT(costs.cost.size() == costs.carts * costs.kinds);
    Kinds left;
    for (std::uint32_t kind = 0; kind < costs.kinds; ++kind) {
        bool dropped = false;
        for (std::uint32_t other = 0; other < costs.kinds && !dropped; ++other) {
            if (other == kind || !nowhere_cheaper(costs, kind, other)) continue;
            dropped = other < kind || !nowhere_cheaper(costs, other, kind);
        }
        if (!dropped) left.push_back(kind);
    }
    return left;
}

std::vector<std::uint32_t> cheapest_kinds(const KindCosts& costs, std::size_t count) {
    const Kinds all = undominated(costs);
    if (all.size() <= count) return all;
    Search search(costs);
    const std::int64_t least = search.least({}, all, count, cost_of(costs, by_exchange(costs, all, count)));
    // The first set in the order of the kinds: each kind stays in where the rest can still reach the least cost.
    Kinds chosen;
    for (std::size_t i = 0; i < all.size() && chosen.size() < count; ++i) {
        Kinds with = chosen;
        with.push_back(all[i]);
        const Kinds later(all.begin() + static_cast<std::ptrdiff_t>(i) + 1, all.end());
        if (search.least(with, later, count - with.size(), least + 1) == least) chosen = with;
    }
    return chosen;
}

}  // namespace sillwalk::engine
