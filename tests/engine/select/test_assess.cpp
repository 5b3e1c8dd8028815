#include "engine/select/assess.hpp"
#include "engine/select/score_cart.hpp"
#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

/// Wheels of several diameters, classes and ratings, two bearings, rigs for each diameter: small enough to score by
/// hand.
Catalogue mixed_catalogue() {
    Catalogue catalogue = plain_catalogue();
    catalogue.wheels.clear();
    catalogue.rigs.clear();
    Bearing second = plain_bearing();
    second.id = BearingId("ball-b");
    second.sealed = false;
    catalogue.bearings.push_back(second);
    for (const double diameter : {75.0, 100.0, 125.0, 160.0, 200.0}) {
        for (const RatingClass rating : {RatingClass::institutional, RatingClass::industrial_soft}) {
            for (const double rated : {60.0, 140.0, 250.0}) {
                Wheel wheel = plain_wheel();
                wheel.id = WheelId("w" + std::to_string(100 + catalogue.wheels.size()));
                wheel.diameter = diameter * millimetre;
                wheel.rating_class = rating;
                wheel.construction = rated < 100.0 ? Construction::nylon : Construction::polyolefin;
                wheel.rated_load = rated * kilogram;
                wheel.bearings = {BearingId("ball"), BearingId("ball-b")};
                catalogue.wheels.push_back(wheel);
            }
        }
        for (const bool strong : {true, false}) {
            Rig rig = plain_rig();
            rig.id = RigId("r" + std::to_string(100 + catalogue.rigs.size()));
            rig.wheel_diameter = diameter * millimetre;
            rig.rated_load = (strong ? 300.0 : 120.0) * kilogram;
            catalogue.rigs.push_back(rig);
        }
    }
    return catalogue;
}

Survey with_sill(double rise_mm) {
    Survey survey = plain_survey();
    survey.crossings[0].rise = within(rise_mm * millimetre, 0.5 * millimetre);
    survey.carts[0].speed = measured(0.7 * metre_per_second);
    return survey;
}

Score score_of(const std::vector<Finding>& findings) {
    Score score;
    for (const Finding& finding : findings) add(score, finding);
    return score;
}

/// Every candidate with all its checks, the slow and plain way.
struct Plain {
    Candidate candidate;
    Score score;
};
std::vector<Plain> all_the_plain_way(const Survey& survey, const Catalogue& catalogue, const Tables& tables) {
    CandidateSpace space(catalogue, tables);
    const CartDemand demand = resolve(survey, 0, tables);
    CartScore score(space, demand);
    std::vector<Plain> all;
    for (const ScoredCandidate& scored : score.score_all()) {
        CartScore fresh(space, demand);
        all.push_back({scored.candidate, score_of(fresh.findings(scored.candidate, CartScore::Detail::outcome_only))});
    }
    return all;
}

}  // namespace

TEST_CASE("assess: ranks as if every check of every candidate had been run", "[assess][property]") {
    const Tables tables = plain_tables();
    const Catalogue catalogue = mixed_catalogue();
    for (const double rise : {0.0, 2.0, 4.0, 30.0}) {
        const Survey survey = with_sill(rise);
        std::vector<Plain> all = all_the_plain_way(survey, catalogue, tables);
        const auto failing = std::stable_partition(all.begin(), all.end(),
                                                   [](const Plain& plain) { return plain.score.counts.fails == 0; });
        std::sort(all.begin(), failing, [](const Plain& a, const Plain& b) {
            return ranks_before(a.score, a.candidate, b.score, b.candidate);
        });
        std::sort(failing, all.end(), [](const Plain& a, const Plain& b) {
            return nearer_to_holding(a.score, a.candidate, b.score, b.candidate);
        });
        const Advice advice = assess(survey, catalogue, tables, {20, 20, std::nullopt});
        REQUIRE(advice.carts.size() == 1);
        const CartAdvice& cart = advice.carts[0];
        const auto holding = static_cast<std::size_t>(failing - all.begin());
        INFO("rise " << rise << " mm, " << holding << " of " << all.size() << " hold");
        CHECK((holding > 0) == (rise < 10.0));
        CHECK(holding < all.size());
        CHECK(cart.candidates_total == all.size());
        CHECK(cart.turned_down_total == all.size() - holding);
        REQUIRE(cart.ranked.size() == std::min<std::size_t>(20, holding));
        for (std::size_t i = 0; i < cart.ranked.size(); ++i) {
            CHECK(candidate_key(catalogue, cart.ranked[i].candidate) == candidate_key(catalogue, all[i].candidate));
            CHECK(cart.ranked[i].worst_use == Approx(all[i].score.worst_use / 1000.0));
        }
        const auto wheel_of = [](const Plain& plain) { return plain.candidate.wheel; };
        const auto second = std::find_if(all.begin(), failing,
                                         [&](const Plain& plain) { return wheel_of(plain) != wheel_of(all.front()); });
        REQUIRE(cart.runner_up.has_value() == (second != failing));
        if (cart.runner_up) {
            CHECK(candidate_key(catalogue, cart.runner_up->candidate) == candidate_key(catalogue, second->candidate));
        }
        std::vector<Plain> nearest;
        std::set<Construction> seen;
        for (auto plain = failing; plain != all.end(); ++plain) {
            if (seen.insert(catalogue.wheels[wheel_of(*plain)].construction).second) nearest.push_back(*plain);
        }
        if (rise > 10.0) CHECK(seen.size() > 1);
        REQUIRE(cart.turned_down.size() == nearest.size());
        for (std::size_t i = 0; i < nearest.size(); ++i) {
            CHECK(candidate_key(catalogue, cart.turned_down[i].candidate) ==
                  candidate_key(catalogue, nearest[i].candidate));
            CHECK(cart.turned_down[i].first_failing.outcome == Outcome::fails);
        }
    }
}

TEST_CASE("assess: where nothing holds there is no first choice", "[assess]") {
    const Tables tables = plain_tables();
    const Survey wall = with_sill(120.0);
    const Advice advice = assess(wall, mixed_catalogue(), tables);
    const CartAdvice& cart = advice.carts[0];
    CHECK(cart.nothing_holds);
    CHECK(cart.ranked.empty());
    REQUIRE(cart.nearest);
    CHECK(cart.nearest->verdict == Verdict::does_not_fit);
    CHECK(cart.turned_down_total == cart.candidates_total);
    CHECK_FALSE(cart.crossings.empty());
}

TEST_CASE("assess: no ranked candidate fails a check, in any order of wheels", "[assess][property]") {
    const Tables tables = plain_tables();
    const Advice advice = assess(with_sill(2.0), mixed_catalogue(), tables, {1000, 0, std::nullopt});
    for (const RankedCandidate& ranked : advice.carts[0].ranked) {
        REQUIRE(ranked.findings.size() == check_count);
        for (std::size_t i = 0; i < check_count; ++i) {
            CHECK(ranked.findings[i].check == static_cast<CheckId>(i));
            CHECK(ranked.findings[i].outcome != Outcome::fails);
        }
        CHECK(ranked.verdict != Verdict::does_not_fit);
    }
}

TEST_CASE("assess: the first failing check is the first in the order of the checks", "[assess]") {
    const Tables tables = plain_tables();
    const Catalogue catalogue = mixed_catalogue();
    const Survey survey = with_sill(30.0);
    const Advice advice = assess(survey, catalogue, tables);
    CandidateSpace space(catalogue, tables);
    const CartDemand demand = resolve(survey, 0, tables);
    CartScore score(space, demand);
    REQUIRE_FALSE(advice.carts[0].turned_down.empty());
    for (const TurnedDown& turned : advice.carts[0].turned_down) {
        for (const Finding& finding : score.findings(turned.candidate, CartScore::Detail::outcome_only)) {
            if (finding.outcome != Outcome::fails) continue;
            CHECK(finding.check == turned.first_failing.check);
            break;
        }
    }
}

TEST_CASE("assess: the present wheel is judged beside the choice", "[assess]") {
    const Tables tables = plain_tables();
    Survey survey = with_sill(4.0);
    const Catalogue catalogue = mixed_catalogue();
    CHECK_FALSE(assess(survey, catalogue, tables).carts[0].present);
    survey.carts[0].present_wheel = chosen(std::string("w100"));
    survey.carts[0].present_bearing = chosen(std::string("ball"));
    survey.carts[0].present_rig = chosen(std::string("r100"));
    const CartAdvice cart = assess(survey, catalogue, tables).carts[0];
    REQUIRE(cart.present);
    CHECK(cart.present->candidate.wheel == 0);
    REQUIRE(cart.crossings_present.size() == 1);  // passed twice, told once
    CHECK(cart.crossings_present[0].outcome == Outcome::fails);
}

TEST_CASE("assess: missing readings are listed and nothing is guessed", "[assess]") {
    const Tables tables = plain_tables();
    Survey survey = with_sill(1.0);
    survey.crossings[0].gap = {};
    survey.carts[0].push_rate = {};
    const CartAdvice cart = assess(survey, mixed_catalogue(), tables).carts[0];
    REQUIRE_FALSE(cart.ranked.empty());
    CHECK(cart.ranked[0].verdict == Verdict::cannot_tell);
    std::vector<std::string> paths;
    for (const ReadingRef& ref : cart.not_read) paths.push_back(reading_path(ref));
    CHECK(std::find(paths.begin(), paths.end(), "/crossings/0/gap") != paths.end());
    CHECK(std::find(paths.begin(), paths.end(), "/carts/0/push_rate") != paths.end());
}

TEST_CASE("assess: the same survey gives the same advice", "[assess]") {
    const Tables tables = plain_tables();
    const Catalogue catalogue = mixed_catalogue();
    const Survey survey = with_sill(3.0);
    const Advice first = assess(survey, catalogue, tables), second = assess(survey, catalogue, tables);
    REQUIRE(first.carts[0].ranked.size() == second.carts[0].ranked.size());
    for (std::size_t i = 0; i < first.carts[0].ranked.size(); ++i) {
        CHECK(first.carts[0].ranked[i].candidate == second.carts[0].ranked[i].candidate);
        CHECK(first.carts[0].ranked[i].findings == second.carts[0].ranked[i].findings);
    }
}
