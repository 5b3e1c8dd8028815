#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

TEST_CASE("parts that match go on", "[engine][fit]") {
    RuleCase given;
    const Finding finding = given.run(check_fit);
    CHECK(finding.outcome == Outcome::holds);
    CHECK(finding.statement == Statement::fit_ok);
    CHECK(finding.numbers[0].si == Approx(0.0381));
    CHECK(finding.numbers[1].si == Approx(0.041275));
}

TEST_CASE("each size that does not match is named", "[engine][fit][derived]") {
    struct Case {
        const char* name;
        void (*spoil)(RuleCase&);
        Statement statement;
    };
    const Case cases[] = {
        {"wheel too large for the rig", [](RuleCase& c) { c.rig.wheel_diameter = 4.0 * inch; },
         Statement::fit_diameter},
        {"hub too long for the fork", [](RuleCase& c) { c.wheel.hub_length = 1.75 * inch; }, Statement::fit_width},
        {"tread too wide for the fork", [](RuleCase& c) { c.wheel.tread_width = 2.0 * inch; }, Statement::fit_width},
        {"bearing outside and bore", [](RuleCase& c) { c.wheel.hub_bore = 1.0 * inch; }, Statement::fit_bore},
        {"bearings longer than the hub", [](RuleCase& c) { c.bearing.length = 0.9 * inch; }, Statement::fit_hub},
        {"axle", [](RuleCase& c) { c.rig.axle_diameter = 0.375 * inch; }, Statement::fit_axle},
        {"castor higher than the limit", [](RuleCase& c) { c.rig.overall_height = 8.0 * inch; }, Statement::fit_height},
        {"plate pattern",
         [](RuleCase& c) { c.cart.plate_pattern = choose(std::string("B"), Field::cart_plate_pattern); },
         Statement::fit_plate},
        {"the cart's own fork", [](RuleCase& c) { c.cart.fork_width = read(1.25 * inch, Field::cart_fork_width); },
         Statement::fit_width},
        {"the cart's own axle",
         [](RuleCase& c) { c.cart.axle_diameter = read(0.375 * inch, Field::cart_axle_diameter); },
         Statement::fit_axle},
    };
    for (const Case& spoiled : cases) {
        DYNAMIC_SECTION(spoiled.name) {
            RuleCase given;
            spoiled.spoil(given);
            const Finding finding = given.run(check_fit);
            CHECK(finding.outcome == Outcome::fails);
            CHECK(finding.statement == spoiled.statement);
            CHECK(finding.use > 1.0);
        }
    }
}

TEST_CASE("the careful end of the height limit decides", "[engine][fit]") {
    RuleCase given;
    given.rig.overall_height = 198.0 * millimetre;
    given.cart.overall_height_limit =
        read_between(195.0 * millimetre, 200.0 * millimetre, 205.0 * millimetre, Field::cart_overall_height_limit);
    CHECK(given.run(check_fit).outcome == Outcome::fails);
    given.corner = Corner::nominal;
    CHECK(given.run(check_fit).outcome == Outcome::holds);
}

TEST_CASE("an axle read with a tolerance may be the bearing's", "[engine][fit]") {
    RuleCase given;
    given.cart.axle_diameter =
        read_between(11.0 * millimetre, 12.0 * millimetre, 13.0 * millimetre, Field::cart_axle_diameter);
    CHECK(given.run(check_fit).outcome == Outcome::holds);
}

TEST_CASE("an unread height limit is named, an unread plate or fork is any", "[engine][fit]") {
    RuleCase given;
    CHECK(given.run(check_fit).outcome == Outcome::holds);
    given.cart.overall_height_limit = unread<Length>(Field::cart_overall_height_limit);
    const Finding finding = given.run(check_fit);
    CHECK(finding.outcome == Outcome::not_known);
    CHECK(misses(finding, Field::cart_overall_height_limit));
}
