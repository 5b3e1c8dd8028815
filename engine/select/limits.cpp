#include "engine/select/limits.hpp"

#include "engine/select/conditions.hpp"
#include "engine/select/limits_families.hpp"
#include "engine/select/limits_next_size.hpp"
#include "engine/select/limits_trial.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {
namespace {

constexpr int scan_points = 12;
constexpr double precision = 1e-9;  ///< of the value as it is
constexpr int most_halvings = 60;

bool mended(Outcome outcome) {
    return outcome == Outcome::holds || outcome == Outcome::does_not_apply;
}

struct Bracket {
    double fails = 0, holds = 0;
};

/// From the value as it is outwards: the first place where the check begins to hold. A check that jumps (a load factor
/// that changes with the rise) is bracketed as one that crosses.
template <class Holds>
std::optional<Bracket> bracket(const DriverRange& driver, const Holds& holds) {
    if (driver.one_way) {
        if (!holds(driver.furthest)) return std::nullopt;
        return Bracket{driver.start, driver.furthest};
    }
    double before = driver.start;
    for (int k = 1; k <= scan_points; ++k) {
        const double value = driver.start + (driver.furthest - driver.start) * k / scan_points;
        if (holds(value)) return Bracket{before, value};
        before = value;
    }
    return std::nullopt;
}

/// The end at which the check holds.
template <class Holds>
std::optional<double> solve(const DriverRange& driver, const Holds& holds) {
    auto ends = bracket(driver, holds);
    if (!ends) return std::nullopt;
    for (int i = 0; i < most_halvings; ++i) {
        if (std::fabs(ends->holds - ends->fails) <= precision * std::fabs(driver.start)) break;
        const double middle = 0.5 * (ends->holds + ends->fails);
        (holds(middle) ? ends->holds : ends->fails) = middle;
    }
    return ends->holds;
}

class CheckSolver {
public:
    CheckSolver(CandidateSpace& space, const Survey& survey, std::size_t cart, const Candidate& candidate,
                const Finding& finding)
        : space_(space),
          survey_(survey),
          candidate_(candidate),
          check_(all_checks()[static_cast<std::size_t>(finding.check)]),
          trial_(space, survey, cart, candidate, check_, by_team(survey.carts[cart], finding.check)),
          drivers_(
              drivers_of(survey, cart, space.catalogue().wheels[candidate.wheel], space.tables(), check_.uses_walk)) {
        limits_.finding = finding;
        limits_.one_person = by_team(survey.carts[cart], finding.check);
        limits_.waits_for_readings = !finding.missing.empty();
    }

    CheckLimits solve_all() {
        for (const DriverRange& driver : drivers_) solve_for(driver, std::nullopt);
        for (const std::uint16_t crossing : failing_crossings()) {
            for (const DriverRange& driver : drivers_) {
                const bool elsewhere = driver.place.kind == PlaceKind::crossing && driver.place.index != crossing;
                if (!elsewhere && !is_solved(driver)) solve_for(driver, crossing);
            }
        }
        limits_.single_change = std::any_of(limits_.limits.begin(), limits_.limits.end(), [](const SolvedLimit& limit) {
            return limit.whole_check && limit.reachable;
        });
        return std::move(limits_);
    }

private:
    static bool by_team(const Cart& cart, CheckId check) {
        const bool pushed = check == CheckId::push || check == CheckId::traction;
        return pushed && cart.people.value && *cart.people.value > 1.0;
    }

    std::vector<std::uint16_t> failing_crossings() const {
        std::vector<std::uint16_t> failing;
        if (!check_.by_crossing) return failing;
        for (std::uint16_t crossing = 0; crossing < survey_.crossings.size(); ++crossing) {
            if (trial_.outcome(crossing) == Outcome::fails) failing.push_back(crossing);
        }
        return failing;
    }

    bool is_solved(const DriverRange& driver) const {
        return std::any_of(limits_.limits.begin(), limits_.limits.end(), [&](const SolvedLimit& limit) {
            return limit.whole_check && limit.driver == driver.driver && limit.reading == driver.reading;
        });
    }

    void solve_for(const DriverRange& driver, std::optional<std::uint16_t> crossing) {
        const auto holds = [&](double value) { return mended(trial_.outcome_with(driver, value, crossing)); };
        const auto value = solve(driver, holds);
        if (!value) return;
        SolvedLimit limit;
        limit.driver = driver.driver;
        limit.bound = driver.bound;
        limit.reading = driver.reading;
        limit.place = driver.place;
        limit.value = {*value, driver.kind};
        limit.present = {driver.present, driver.kind};
        limit.beside = beside(survey_, driver, *value);
        limit.whole_check = !crossing;
        limit.then = trial_.verdict_with(driver, *value);
        if (crossing) limit.holds_at = {PlaceKind::crossing, *crossing};
        if (driver.driver == Driver::diameter) {
            limit.next_size = next_size(space_, candidate_, Length::from_si(*value), [&](const Candidate& candidate) {
                return mended(trial_.outcome_of(candidate, crossing));
            });
            limit.reachable = limit.next_size.has_value();
        }
        limits_.limits.push_back(limit);
    }

    CandidateSpace& space_;
    const Survey& survey_;
    Candidate candidate_;
    const CheckEntry& check_;
    Trial trial_;
    std::vector<DriverRange> drivers_;
    CheckLimits limits_;
};

}  // namespace

std::vector<FamilyLimits> solve_limits(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                                       std::size_t cart) {
    CandidateSpace space(catalogue, tables);
    const CartDemand demand = resolve(survey, cart, tables);
    CartScore score(space, demand);
    std::vector<FamilyLimits> families;
    for (const ScoredCandidate& best : best_of_families(score, catalogue)) {
        FamilyLimits family;
        family.construction = catalogue.wheels[best.candidate.wheel].construction;
        family.candidate = best.candidate;
        for (const Finding& finding : score.findings(best.candidate, CartScore::Detail::both_corners)) {
            if (finding.outcome != Outcome::fails) continue;
            family.checks.push_back(CheckSolver(space, survey, cart, best.candidate, finding).solve_all());
        }
        if (!family.checks.empty()) families.push_back(std::move(family));
    }
    return families;
}

void complete_advice(Advice& advice, const Survey& survey, const Catalogue& catalogue, const Tables& tables) {
    for (CartAdvice& cart : advice.carts) {
        cart.would_hold = solve_limits(survey, catalogue, tables, cart.cart);
        cart.conditions.emplace();
        if (!cart.ranked.empty()) {
            cart.conditions = conditions_of(survey, catalogue, tables, cart.cart, cart.ranked.front());
        }
    }
}

}  // namespace sillwalk::engine
