#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

TEST_CASE("tip: a cart that passes a 10 degree tilt does not survive a stop at walking pace", "[tip]") {
    // Centre 1.0 m up and 0.17633 m behind the leading wheels: tilt atan(0.17633) = 10.0 degrees; by energy alone
    // sqrt(2g(sqrt(d2 + H2) - H)) = 0.5500 m/s at g 9.81, 0.5499 at 9.80665; with the loss in the blow of a point mass
    // times sqrt(1 + d2/H2) = 1.01543, so 0.5584 m/s. IEC 60601-1 asks for a 10 degree tilt in transport (second-hand).
    CheckCase tall;
    tall.cart().cg_height_loaded = measured(1.0 * metre);
    tall.cart().cg_forward_loaded = measured((1.0 - 0.04 - 0.17633) * metre);  // 40 mm of swivel lead
    tall.crossing().rise = measured(3.0 * millimetre);
    const Finding finding = tall.run(CheckId::tip);
    INFO(describe(finding));
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.numbers[1].si == Approx(0.5584).epsilon(1e-3));
    CHECK(finding.numbers[2].si == Approx(0.5499).epsilon(1e-3));
    CHECK(finding.numbers[3].si == Approx(10.0 * 3.14159265 / 180.0).epsilon(1e-3));
    CHECK(finding.use == Approx(0.8 / 0.5584).epsilon(1e-3));
}

TEST_CASE("tip: rigid leading castors keep their whole base", "[tip]") {
    CheckCase rigid;
    rigid.crossing().rise = measured(3.0 * millimetre);
    const double swivel_use = rigid.run(CheckId::tip).use;
    for (CastorPosition& castor : rigid.cart().castors) castor.function = CastorFunction::rigid;
    CHECK(rigid.run(CheckId::tip).use < swivel_use);
}

TEST_CASE("tip: the leg's own load state decides", "[tip]") {
    CheckCase empty_leg;
    empty_leg.crossing().rise = measured(3.0 * millimetre);
    const double loaded_use = empty_leg.run(CheckId::tip).use;
    for (Stop& stop : empty_leg.cart().route) stop.loaded = false;
    CHECK(empty_leg.run(CheckId::tip).use < loaded_use);  // the empty cart's centre is lower
    empty_leg.cart().cg_height_empty = {};
    const Finding finding = empty_leg.run(CheckId::tip);
    REQUIRE(finding.missing.size() == 1);
    CHECK(reading_path(finding.missing[0]) == "/carts/0/cg_height_empty");
}

TEST_CASE("tip: on a slope the centre must stay between the wheels", "[tip]") {
    // Centre 0.5 m ahead of the rear axle and 0.8 m up: up the slope it tips at tan = 0.5/0.8 = 0.625.
    CheckCase ramp;
    ramp.crossing().kind = chosen(CrossingKind::ramp);
    ramp.crossing().slope = measured(Slope::from_tangent(0.1));
    ramp.cart().route.pop_back();
    const Finding finding = ramp.run(CheckId::tip);
    CHECK(finding.statement == Statement::tip_slope);
    CHECK(finding.use == Approx(0.1 / 0.625));
    // The way back is downhill: 0.5 m less 40 mm of lead ahead of the centre, 0.1 / (0.46/0.8).
    ramp.cart().route = plain_survey().carts.front().route;
    CHECK(ramp.run(CheckId::tip).use == Approx(0.1 / 0.575));
}

TEST_CASE("tip: nothing to stop at does not apply", "[tip]") {
    CHECK(CheckCase{}.run(CheckId::tip).outcome == Outcome::does_not_apply);
}

TEST_CASE("tip: faster or taller never improves it", "[tip][property]") {
    CheckCase growing;
    growing.crossing().gap = measured(20.0 * millimetre);
    double last = 0.0;
    for (double height = 0.2; height < 2.0; height += 0.05) {
        growing.cart().cg_height_loaded = within(height * metre, 0.02 * metre);
        const double use = growing.run(CheckId::tip).use;
        CHECK(use >= last);
        last = use;
    }
}
