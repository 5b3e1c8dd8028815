// The fewest kinds against plain enumeration of every subset.

#include "engine/base/random.hpp"
#include "engine/select/assess.hpp"
#include "engine/select/site_set.hpp"
#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <map>
#include <optional>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

constexpr std::int64_t unserved = 1'000'000'000'000, step = 1'000'000'000;

class Dice {
public:
    explicit Dice(std::uint64_t seed) : seed_(seed) {}
    std::size_t below(std::size_t limit) { return static_cast<std::size_t>(random_bits(seed_, at_++) % limit); }

private:
    std::uint64_t seed_, at_ = 0;
};

/// A made-up site: some kinds serve many carts, some few; uses on a coarse scale, so that ties are common.
KindCosts random_site(std::uint64_t seed, std::size_t most_carts, std::size_t most_kinds) {
    Dice dice(seed);
    KindCosts costs;
    costs.carts = 1 + dice.below(most_carts);
    costs.kinds = 1 + dice.below(most_kinds);
    const std::size_t coarse = seed % 2 == 0 ? 100 : 7;
    for (std::size_t i = 0; i < costs.carts * costs.kinds; ++i) {
        const std::size_t kind_of_answer = dice.below(10);
        const auto use = static_cast<std::int64_t>(dice.below(coarse) * 1000 / coarse);
        if (kind_of_answer < 3) {
            costs.cost.push_back(unserved);
        } else {
            costs.cost.push_back((kind_of_answer < 5 ? step : 0) + use);
        }
    }
    return costs;
}

std::int64_t cost_with(const KindCosts& costs, const std::vector<std::uint32_t>& kinds) {
    std::int64_t sum = 0;
    for (std::size_t cart = 0; cart < costs.carts; ++cart) {
        std::int64_t least = costs.at(cart, kinds.front());
        for (const std::uint32_t kind : kinds) least = std::min(least, costs.at(cart, kind));
        sum += least;
    }
    return sum;
}

std::vector<std::uint32_t> members(std::uint32_t mask) {
    std::vector<std::uint32_t> kinds;
    for (std::uint32_t kind = 0; kind < 32; ++kind) {
        if ((mask >> kind) & 1u) kinds.push_back(kind);
    }
    return kinds;
}

bool first_of_its_like(const KindCosts& costs, std::uint32_t kind) {
    for (std::uint32_t other = 0; other < costs.kinds; ++other) {
        bool never_cheaper = other != kind, ever_dearer = false;
        for (std::size_t cart = 0; cart < costs.carts && never_cheaper; ++cart) {
            never_cheaper = costs.at(cart, kind) >= costs.at(cart, other);
            ever_dearer = ever_dearer || costs.at(cart, kind) > costs.at(cart, other);
        }
        if (never_cheaper && (ever_dearer || other < kind)) return false;
    }
    return true;
}

/// Every subset of every kind, the cheapest of `count` first, the earlier names before the later ones.
struct Plain {
    std::int64_t cost = 0;                // over all kinds
    std::vector<std::uint32_t> of_likes;  // over those that no other beats everywhere
};
Plain plain_cheapest(const KindCosts& costs, std::size_t count) {
    Plain plain;
    std::optional<std::int64_t> best_all, best_likes;
    std::uint32_t likes = 0;
    for (std::uint32_t kind = 0; kind < costs.kinds; ++kind) {
        if (first_of_its_like(costs, kind)) likes |= 1u << kind;
    }
    const std::size_t size_of_likes = std::min(count, members(likes).size());
    for (std::uint32_t mask = 1; mask < (1u << costs.kinds); ++mask) {
        const auto kinds = members(mask);
        const std::int64_t cost = kinds.size() <= count ? cost_with(costs, kinds) : 0;
        if (kinds.size() <= count && (!best_all || cost < *best_all)) best_all = cost;
        if (kinds.size() != size_of_likes || (mask & ~likes) != 0) continue;
        if (!best_likes || cost < *best_likes || (cost == *best_likes && kinds < plain.of_likes)) {
            best_likes = cost;
            plain.of_likes = kinds;
        }
    }
    plain.cost = *best_all;
    return plain;
}

}  // namespace

TEST_CASE("site set: as cheap as the cheapest of all subsets, ties in the order of the kinds", "[site_set][property]") {
    std::size_t several = 0;
    for (std::uint64_t seed = 1; seed <= 400; ++seed) {
        const KindCosts costs = random_site(seed, 8, 9);
        for (std::size_t count = 1; count <= std::min<std::size_t>(4, costs.kinds); ++count) {
            const Plain plain = plain_cheapest(costs, count);
            const auto chosen = cheapest_kinds(costs, count);
            INFO("site " << seed << ", " << costs.carts << " carts, " << costs.kinds << " kinds, choose " << count);
            REQUIRE(cost_with(costs, chosen) == plain.cost);
            REQUIRE(chosen == plain.of_likes);
            several += chosen.size() > 1 ? 1 : 0;
        }
    }
    CHECK(several > 300);  // the sites are not trivial
}

TEST_CASE("site set: a kind that another beats everywhere is dropped, of equal ones the first stays", "[site_set]") {
    KindCosts costs;
    costs.carts = 2;
    costs.kinds = 4;
    costs.cost = {5, 5, 3, 5,   //
                  2, 2, 2, 1};  // kind 0 and 1 are equal, 2 beats both
    CHECK(undominated(costs) == std::vector<std::uint32_t>{2, 3});
    costs.cost = {5, 5, 7, 7,  //
                  2, 2, 3, 3};
    CHECK(undominated(costs) == std::vector<std::uint32_t>{0});
}

TEST_CASE("site set: sixty carts", "[site_set]") {
    // Payload classes and hygiene needs in the manner of a site: kind k serves carts up to its class, dearly where it
    // is far too strong, and only in its own zone.
    Dice dice(60);
    KindCosts costs;
    costs.carts = 60;
    costs.kinds = 200;
    std::vector<std::size_t> kind_class, kind_zone;
    for (std::size_t kind = 0; kind < costs.kinds; ++kind) {
        kind_class.push_back(dice.below(12));
        kind_zone.push_back(dice.below(15));  // bits: which of four zones it stands
    }
    for (std::size_t cart = 0; cart < costs.carts; ++cart) {
        const std::size_t cart_class = dice.below(12), zone = std::size_t{1} << dice.below(4);
        for (std::size_t kind = 0; kind < costs.kinds; ++kind) {
            const bool stands = ((kind_zone[kind] + 1) & zone) != 0 && kind_class[kind] >= cart_class;
            const auto use = static_cast<std::int64_t>(400 + dice.below(600));
            costs.cost.push_back(!stands ? unserved : (kind_class[kind] > cart_class + 6 ? step : 0) + use);
        }
    }
    std::int64_t last = unserved * 60;
    for (std::size_t count = 1; count <= 4; ++count) {
        const auto chosen = cheapest_kinds(costs, count);
        const std::int64_t cost = cost_with(costs, chosen);
        CHECK(cost <= last);
        last = cost;
        // No exchange of one kind is cheaper: a check that needs no enumeration.
        for (std::size_t out = 0; out < chosen.size(); ++out) {
            for (std::uint32_t in = 0; in < costs.kinds; ++in) {
                auto other = chosen;
                other[out] = in;
                REQUIRE(cost_with(costs, other) >= cost);
            }
        }
    }
}

namespace {

/// Six wheels of different rating and size, and carts of different load and gap.
Catalogue small_catalogue() {
    Catalogue catalogue = plain_catalogue();
    catalogue.wheels.clear();
    catalogue.rigs.clear();
    Bearing second = plain_bearing();
    second.id = BearingId("ball-b");
    second.dynamic_rating = 400.0 * newton;
    second.static_rating = 300.0 * newton;
    catalogue.bearings.push_back(second);
    for (const double diameter : {75.0, 125.0, 200.0}) {
        for (const double rated : {90.0, 250.0}) {
            Wheel wheel = plain_wheel();
            wheel.id = WheelId("w" + std::to_string(10 + catalogue.wheels.size()));
            wheel.diameter = diameter * millimetre;
            wheel.rated_load = rated * kilogram;
            wheel.bearings = {BearingId("ball"), BearingId("ball-b")};
            catalogue.wheels.push_back(wheel);
        }
        Rig rig = plain_rig();
        rig.id = RigId("r" + std::to_string(10 + catalogue.rigs.size()));
        rig.wheel_diameter = diameter * millimetre;
        rig.overall_height = (diameter + 40.0) * millimetre;
        catalogue.rigs.push_back(rig);
    }
    return catalogue;
}

Survey random_survey(std::uint64_t seed) {
    Dice dice(seed);
    Survey survey = plain_survey();
    const Cart pattern = survey.carts.front();
    Crossing sill = survey.crossings.front();
    sill.id = CrossingId("sill");
    sill.rise = measured(static_cast<double>(2 + dice.below(3)) * millimetre);  // 2.5 % of 75, 125, 200 mm are tested
    survey.crossings.push_back(sill);
    survey.carts.clear();
    const std::size_t carts = 2 + dice.below(4);
    for (std::size_t i = 0; i < carts; ++i) {
        Cart cart = pattern;
        cart.id = CartId("cart-" + std::to_string(i));
        cart.payload = measured(static_cast<double>(20 + 20 * dice.below(12)) * kilogram);
        cart.overall_height_limit = measured(static_cast<double>(120 + 50 * dice.below(4)) * millimetre);
        const bool over_the_sill = dice.below(2) == 0;
        for (Stop& stop : cart.route) stop.leaves_by = CrossingId(over_the_sill ? "sill" : "door");
        survey.carts.push_back(cart);
    }
    return survey;
}

/// Per cart, the best verdict and use with each wheel, from the whole ranked list of assess().
struct Offer {
    Verdict verdict = Verdict::does_not_fit;
    double use = 0;
};
std::map<std::uint32_t, Offer> offers_of(const CartAdvice& advice) {
    std::map<std::uint32_t, Offer> offers;
    for (const RankedCandidate& row : advice.ranked) {
        offers.emplace(row.candidate.wheel, Offer{row.verdict, row.worst_use});  // best first: later ones are not taken
    }
    return offers;
}

std::size_t plain_fewest(const std::vector<std::map<std::uint32_t, Offer>>& carts, const Advice& advice,
                         std::size_t wheels) {
    std::size_t fewest = wheels + 1;
    for (std::uint32_t mask = 1; mask < (1u << wheels); ++mask) {
        const auto chosen = members(mask);
        bool serves_all = true;
        for (std::size_t i = 0; i < carts.size(); ++i) {
            if (carts[i].empty()) continue;
            const Verdict own = advice.carts[i].ranked.front().verdict;
            serves_all = serves_all && std::any_of(chosen.begin(), chosen.end(), [&](std::uint32_t wheel) {
                             const auto offer = carts[i].find(wheel);
                             return offer != carts[i].end() && offer->second.verdict <= own;
                         });
        }
        if (serves_all) fewest = std::min(fewest, chosen.size());
    }
    return fewest;
}

}  // namespace

TEST_CASE("site set: the fewest wheels of small surveys, from the ranked lists of assess()", "[site_set][property]") {
    const Tables tables = plain_tables();
    const Catalogue catalogue = small_catalogue();
    std::map<std::size_t, int> sizes;
    int with_nothing = 0, with_price = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        const Survey survey = random_survey(seed);
        const Advice advice = assess(survey, catalogue, tables, {1000, 0, std::nullopt});
        std::vector<std::map<std::uint32_t, Offer>> carts;
        std::vector<std::uint16_t> nothing;
        for (const CartAdvice& cart : advice.carts) {
            carts.push_back(offers_of(cart));
            if (cart.nothing_holds) nothing.push_back(cart.cart);
        }
        const SiteAdvice site = site_advice(survey, catalogue, tables);
        INFO("survey " << seed);
        CHECK(site.nothing_holds == nothing);
        with_nothing += nothing.empty() ? 0 : 1;
        if (nothing.size() == carts.size()) {
            CHECK(site.wheels.fewest.kinds.empty());
            continue;
        }
        const std::size_t fewest = plain_fewest(carts, advice, catalogue.wheels.size());
        CHECK(site.wheels.fewest.kinds.size() == fewest);
        CHECK(site.wheels.fewest.unserved == 0);
        CHECK(site.wheels.fewest.verdict_steps == 0);
        CHECK(site.wheels.fewer.size() == fewest - 1);
        ++sizes[fewest];
        for (const KindSet& set : site.wheels.fewer) {
            with_price += set.unserved + set.verdict_steps > 0 ? 1 : 0;
            double added = 0.0;
            for (const ServedCart& row : set.carts) {
                const auto& offers = carts[row.cart];
                if (!row.served) {
                    for (const std::uint32_t wheel : set.kinds) CHECK(offers.count(wheel) == 0);
                    continue;
                }
                CHECK(row.verdict == offers.at(row.candidate.wheel).verdict);
                CHECK(row.worst_use == Approx(offers.at(row.candidate.wheel).use));
                CHECK(row.own_use == Approx(advice.carts[row.cart].ranked.front().worst_use));
                added += row.worst_use - row.own_use;
            }
            CHECK(set.use_added == Approx(added).margin(1e-9));
            CHECK(set.unserved + set.verdict_steps > 0);  // else fewer would do
        }
    }
    CHECK(sizes.size() > 1);
    CHECK(with_price > 0);
    CHECK(with_nothing > 0);
}
