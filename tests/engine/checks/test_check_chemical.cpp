#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

Finding against(const std::string& agent, double strength, double degrees, ChemicalLevel expected) {
    RuleCase given;
    given.cart.washings = {washing_with(agent, strength, celsius(degrees))};
    const Finding finding = given.run(check_chemical);
    CHECK(finding.demand == Amount{static_cast<double>(expected), Kind::level});
    CHECK(finding.numbers[0] == finding.demand);
    return finding;
}

}  // namespace

// Levels of the rows: those of rule_case.cpp, own scale (hypochlorite, quaternary ammonium, hot water, nitric acid).
TEST_CASE("the worst level of tread, core, bearing and rig decides", "[engine][chemical][published]") {
    SECTION("quaternary ammonium at 400 ppm suits them all") {
        const Finding finding = against("quaternary-ammonium", 0.0004, 20.0, ChemicalLevel::suited);
        CHECK(finding.outcome == Outcome::holds);
        CHECK(finding.statement == Statement::chemical_level);
        CHECK(assumes(finding, Assumption::memory_rating));
    }
    SECTION("200 ppm chlorine is to be watched on polyether and 304") {
        const Finding finding = against("sodium-hypochlorite", 0.0002, 20.0, ChemicalLevel::watch);
        CHECK(finding.outcome == Outcome::tight);
        CHECK(finding.place == Place{PlaceKind::washing, 0});
    }
    SECTION("5 % chlorine is unfit for 304 and the bearing is named") {
        const Finding finding = against("sodium-hypochlorite", 0.05, 20.0, ChemicalLevel::unfit);
        CHECK(finding.outcome == Outcome::fails);
        CHECK(finding.numbers[1].si == 2.0);
    }
    SECTION("nitric acid on a zinc plated rig") {
        RuleCase given;
        given.rig_material.chemical_column = "zinc-plated-steel";
        given.cart.washings = {washing_with("nitric-acid", 0.02, celsius(20.0))};
        const Finding finding = given.run(check_chemical);
        CHECK(finding.outcome == Outcome::fails);
        CHECK(finding.numbers[1].si == 3.0);
    }
}

TEST_CASE("a wash hotter than the row is one level worse and says so", "[engine][chemical][derived]") {
    // 200 ppm chlorine is rated to 40 C in its row: at 45 C watch becomes short contact only.
    const Finding finding = against("sodium-hypochlorite", 0.0002, 45.0, ChemicalLevel::short_contact);
    CHECK(finding.number_count == 6);
    CHECK(finding.numbers[2].si == 1.0);
    CHECK(finding.numbers[4].si == Approx(318.15));
    CHECK(finding.numbers[5].si == Approx(313.15));
}

TEST_CASE("stronger than every row is unfit and says so", "[engine][chemical][derived]") {
    const Finding finding = against("quaternary-ammonium", 0.01, 20.0, ChemicalLevel::unfit);
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.numbers[3].si == 1.0);
}

TEST_CASE("short contact is tight only where it is rinsed off in time", "[engine][chemical][derived]") {
    RuleCase given;
    WashingDemand foam = washing_with("nitric-acid", 0.02, celsius(20.0));
    given.tables.chemicals.rows[1].ratings[2]->level = ChemicalLevel::suited;
    SECTION("rinsed after 10 minutes of at most 30") {
        given.cart.washings = {foam};
        const Finding finding = given.run(check_chemical);
        CHECK(finding.outcome == Outcome::tight);
        CHECK(finding.use == Approx(0.9 + 0.1 / 3.0));
        CHECK(finding.capacity.si == 3.0);
    }
    SECTION("rinsed after 45 minutes") {
        foam.contact = read(45.0 * minute, Field::washing_contact);
        given.cart.washings = {foam};
        const Finding finding = given.run(check_chemical);
        CHECK(finding.outcome == Outcome::fails);
        CHECK(finding.use == Approx(1.5));
    }
    SECTION("not rinsed") {
        foam.rinsed = choose(false, Field::washing_rinsed);
        given.cart.washings = {foam};
        CHECK(given.run(check_chemical).outcome == Outcome::fails);
    }
    SECTION("not known whether it is rinsed") {
        foam.rinsed = unchosen<bool>(Field::washing_rinsed);
        given.cart.washings = {foam};
        const Finding finding = given.run(check_chemical);
        CHECK(finding.outcome == Outcome::not_known);
        CHECK(misses(finding, Field::washing_rinsed));
    }
    SECTION("no figure for how long short is") {
        given.tables.practice.short_contact = {};
        given.cart.washings = {foam};
        CHECK(given.run(check_chemical).outcome == Outcome::not_known);
    }
}

TEST_CASE("disagreeing sources are flagged where they decide", "[engine][chemical]") {
    RuleCase given;
    given.bearing_material.chemical_column = "acetal-copolymer";
    given.tables.chemicals.rows[3].ratings[0]->level = ChemicalLevel::suited;
    given.tables.chemicals.rows[3].ratings[2]->level = ChemicalLevel::suited;
    given.cart.washings = {washing_with("sodium-hypochlorite", 0.0002, celsius(20.0))};
    const Finding finding = given.run(check_chemical);
    CHECK(finding.conflict);
    CHECK(finding.numbers[1].si == 2.0);
    CHECK(finding.citations[0] == 2);
}

TEST_CASE("what is not known about an agent is never a pass", "[engine][chemical]") {
    RuleCase given;
    WashingDemand washing = washing_with("sodium-hypochlorite", 0.0002, celsius(20.0));
    SECTION("agent") {
        washing.agent = unchosen<std::string>(Field::washing_agent);
        given.cart.washings = {washing};
        CHECK(misses(given.run(check_chemical), Field::washing_agent));
    }
    SECTION("strength, where rows differ by it") {
        washing.strength = unread<double>(Field::washing_strength);
        given.cart.washings = {washing};
        const Finding finding = given.run(check_chemical);
        CHECK(finding.outcome == Outcome::not_known);
        CHECK(misses(finding, Field::washing_strength));
    }
    SECTION("temperature") {
        washing.temperature = unread<Temperature>(Field::washing_temperature);
        given.cart.washings = {washing};
        const Finding finding = given.run(check_chemical);
        CHECK(finding.outcome == Outcome::not_known);
        CHECK(misses(finding, Field::washing_temperature));
    }
    SECTION("the material has no column") {
        given.tread.chemical_column.clear();
        given.cart.washings = {washing};
        CHECK(given.run(check_chemical).outcome == Outcome::not_known);
    }
    SECTION("what fails at any strength and temperature fails without them") {
        given.bearing_material.chemical_column = "acetal-copolymer";
        washing = washing_with("nitric-acid", 0.02, celsius(20.0));
        washing.strength = unread<double>(Field::washing_strength);
        washing.temperature = unread<Temperature>(Field::washing_temperature);
        given.cart.washings = {washing};
        CHECK(given.run(check_chemical).outcome == Outcome::fails);
    }
    SECTION("the strength of hot water is not asked") {
        washing = washing_with("hot-water", 1.0, celsius(82.0));
        washing.strength = unread<double>(Field::washing_strength);
        given.cart.washings = {washing};
        CHECK_FALSE(misses(given.run(check_chemical), Field::washing_strength));
    }
}

TEST_CASE("without washings the agents do not apply", "[engine][chemical]") {
    RuleCase given;
    CHECK(given.run(check_chemical).outcome == Outcome::does_not_apply);
}

TEST_CASE("an agent, heat or strength more never improves the answer", "[engine][chemical][property]") {
    const char* const agents[] = {"hot-water", "nitric-acid", "quaternary-ammonium", "sodium-hypochlorite"};
    RuleCase given;
    for (const char* first : agents) {
        for (const double strength : {0.0001, 0.0004, 0.02, 0.5}) {
            given.cart.washings = {washing_with(first, strength, celsius(20.0))};
            const Finding alone = given.run(check_chemical);
            for (const char* second : agents) {
                given.cart.washings = {washing_with(first, strength, celsius(20.0)),
                                       washing_with(second, 0.0001, celsius(30.0), 1)};
                CHECK(no_better(given.run(check_chemical), alone));
            }
        }
        Finding cooler = given.run(check_chemical);
        bool any = false;
        for (double degrees = 5.0; degrees < 120.0; degrees += 5.0) {
            given.cart.washings = {washing_with(first, 0.0002, celsius(degrees))};
            const Finding hotter = given.run(check_chemical);
            if (any) CHECK(no_better(hotter, cooler));
            cooler = hotter;
            any = true;
        }
    }
}
