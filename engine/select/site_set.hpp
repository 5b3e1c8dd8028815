#pragma once
/// The fewest kinds of wheel, and of bearing, that serve all carts of a survey. Exact.

#include "engine/model/advice.hpp"
#include "engine/model/survey.hpp"
#include "engine/model/tables.hpp"

#include <cstdint>
#include <vector>

namespace sillwalk::engine {

/// What each kind costs each cart. Costs add over the carts; a cart takes the cheapest of the chosen kinds.
struct KindCosts {
    std::size_t carts = 0, kinds = 0;
    std::vector<std::int64_t> cost;  ///< carts x kinds, never negative
    [[nodiscard]] std::int64_t at(std::size_t cart, std::size_t kind) const { return cost[cart * kinds + kind]; }
};

/// The kinds that are left when each one is dropped that is nowhere cheaper than another; of equal ones the first
/// stays.
[[nodiscard]] std::vector<std::uint32_t> undominated(const KindCosts& costs);

/// The cheapest set of `count` kinds out of undominated(costs), or all of those where there are no more. Of sets that
/// cost the same, the first in the order of the kinds. Branch and bound over the cart that would lose most.
[[nodiscard]] std::vector<std::uint32_t> cheapest_kinds(const KindCosts& costs, std::size_t count);

/// The fewest wheels, and apart from that the fewest bearings, with which no cart gets a worse verdict than with its
/// own first choice; of such sets the one with the least sum of worst uses. Smaller sets weigh first how many carts
/// nothing serves, then the steps of verdict that are lost, then the sum of worst uses. Precondition: validate() is
/// empty.
[[nodiscard]] SiteAdvice site_advice(const Survey& survey, const Catalogue& catalogue, const Tables& tables);

}  // namespace sillwalk::engine
