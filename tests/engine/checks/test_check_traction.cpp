#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

TEST_CASE("traction: shoes of a 50 kg person with a reserve of 0.7", "[traction]") {
    // Level: 0.7 x 0.6 x 50 kg x 9.80665 = 205.94 N dry, 0.2 wet and smooth gives 68.65 N. Start: 0.02 x 300 kg = 58.84
    // N.
    CheckCase floor;
    const Finding dry = floor.run(CheckId::traction);
    INFO(describe(dry));
    CHECK(dry.outcome == Outcome::holds);
    CHECK(dry.capacity.si == Approx(205.94).epsilon(1e-4));
    floor.survey.rooms[1].wetness = chosen(Wetness::wet);
    const Finding wet = floor.run(CheckId::traction);
    CHECK(wet.outcome == Outcome::tight);
    CHECK(wet.capacity.si == Approx(68.65).epsilon(1e-3));
    CHECK(wet.use == Approx(58.84 / 68.65).epsilon(1e-3));
    CHECK(wet.place == Place{PlaceKind::room, 1});
}

TEST_CASE("traction: on melting ice nobody can be expected to push", "[traction]") {
    // Friction 0.055 (footwear on melting ice): 0.7 x 0.055 x 490.3 N = 18.9 N.
    CheckCase ice;
    ice.survey.rooms[0].wetness = chosen(Wetness::melting_ice);
    const Finding finding = ice.run(CheckId::traction);
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.capacity.si == Approx(18.88).epsilon(1e-3));
}

TEST_CASE("traction: a slope takes from both sides of the balance", "[traction]") {
    // Wet 1:12: 0.7 x 490.33 x (0.2 x 0.996546 - 0.083045) = 39.90 N against mg(sin t + 0.02 cos t) = 2942 x 0.102976 =
    // 302.96 N.
    CheckCase ramp;
    ramp.crossing().kind = chosen(CrossingKind::ramp);
    ramp.crossing().slope = measured(Slope::from_tangent(1.0 / 12.0));
    ramp.crossing().wetness = chosen(Wetness::wet);
    ramp.cart().route.pop_back();
    const Finding finding = ramp.run_at(CheckId::traction, 0);
    INFO(describe(finding));
    CHECK(finding.statement == Statement::traction_ramp);
    CHECK(finding.capacity.si == Approx(39.90).epsilon(1e-3));
    CHECK(finding.demand.si == Approx(302.96).epsilon(1e-3));
    // Frost at 1:5 leaves nothing to stand on.
    ramp.crossing().slope = measured(Slope::from_tangent(0.2));
    ramp.crossing().wetness = chosen(Wetness::frost);
    const Finding frost = ramp.run_at(CheckId::traction, 0);
    CHECK(frost.outcome == Outcome::fails);
    CHECK(frost.capacity.si == 0.0);
}

TEST_CASE("traction: where the edge can be rolled over dry, that is the condition", "[traction]") {
    CheckCase sill;
    sill.crossing().rise = measured(6.25 * millimetre);
    const Finding rolled = sill.run_at(CheckId::traction, 0);
    CHECK(rolled.outcome == Outcome::tight);
    CHECK(rolled.needs_rolling);
    // What is compared is the speed, not the force from rest that the feet do not hold.
    CHECK(rolled.statement == Statement::traction_crossing_rolling);
    CHECK(rolled.demand.kind == Kind::speed);
    CHECK(rolled.demand.si < rolled.capacity.si);
    CHECK(rolled.numbers[2].si > rolled.numbers[3].si);
    sill.crossing().wetness = chosen(Wetness::wet);
    CHECK(sill.run_at(CheckId::traction, 0).outcome == Outcome::fails);
}

TEST_CASE("traction: a tug needs no shoes; an unread floor is named", "[traction]") {
    CheckCase tug;
    tug.cart().moved_by = chosen(MovedBy::tug);
    CHECK(tug.run(CheckId::traction).outcome == Outcome::does_not_apply);
    CheckCase unread;
    unread.survey.rooms[0].wetness = {};
    const Finding finding = unread.run(CheckId::traction);
    CHECK(finding.outcome == Outcome::not_known);
    REQUIRE(finding.missing.size() == 1);
    CHECK(reading_path(finding.missing[0]) == "/rooms/0/wetness");
}

TEST_CASE("traction: less friction never improves it", "[traction][property]") {
    CheckCase slippery;
    double last = 0.0;
    for (double friction = 0.8; friction > 0.03; friction -= 0.02) {
        slippery.tables.friction.front().friction = sourced(friction);
        const double use = slippery.run(CheckId::traction).use;
        CHECK(use >= last);
        last = use;
    }
}
