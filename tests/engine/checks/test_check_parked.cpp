#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

TEST_CASE("parked: more than 14 days leave 0.8 of the rating", "[parked]") {
    // Common practice, no published source: 20 % off for more than two weeks. 112.5 kg of 0.8 x 200 kg.
    CheckCase three_weeks;
    three_weeks.cart().parked_loaded = measured(21.0 * day);
    const Finding finding = three_weeks.run(CheckId::parked);
    INFO(describe(finding));
    CHECK(finding.outcome == Outcome::holds);
    CHECK(finding.statement == Statement::parked_rating);
    CHECK(finding.capacity.si == Approx(160.0));
    CHECK(finding.use == Approx(112.5 / 160.0));
    three_weeks.wheel.rated_load = 130.0 * kilogram;  // 104 kg remain
    CHECK(three_weeks.run(CheckId::parked).outcome == Outcome::fails);
}

TEST_CASE("parked: a short stay holds, whatever the load", "[parked]") {
    CheckCase short_stay;
    short_stay.cart().parked_loaded = measured(14.0 * day);
    short_stay.wheel.rated_load = 80.0 * kilogram;
    const Finding finding = short_stay.run(CheckId::parked);
    CHECK(finding.outcome == Outcome::holds);
    CHECK(finding.statement == Statement::parked_short);
    CHECK(finding.use == Approx(0.85));
}

TEST_CASE("parked: a soft tread that keeps its shape fails by the flat spot", "[parked]") {
    // The limit of 3 % of the diameter is that of a static test (second-hand): 3.75 mm. At 40 A the modulus is
    // about 1.7 MPa (Gent 1958), the contact under 75 kg some 50 mm long, and three weeks of creep make its sagitta
    // three times the limit.
    CheckCase soft;
    soft.cart().parked_loaded = measured(21.0 * day);
    soft.wheel.hardness = Hardness{HardnessScale::shore_a, 40.0};
    soft.tables.materials.front().set_share = sourced(1.0);
    const Finding finding = soft.run(CheckId::parked);
    INFO(describe(finding));
    CHECK(finding.statement == Statement::parked_flat_spot);
    CHECK(finding.outcome == Outcome::fails);
}

TEST_CASE("parked: without creep figures a long stay is not known", "[parked]") {
    CheckCase unknown;
    unknown.cart().parked_loaded = measured(21.0 * day);
    unknown.tables.materials.front().creep_per_decade.reset();
    CHECK(unknown.run(CheckId::parked).outcome == Outcome::not_known);
    unknown.cart().parked_loaded = {};
    REQUIRE(unknown.run(CheckId::parked).missing.size() == 1);
}
