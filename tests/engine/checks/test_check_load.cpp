#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

// The plain cart weighs 300 kg gross on four castors, its centre midway: 75 kg each.

TEST_CASE("load: the factor is the upper end of its published row", "[load]") {
    // Castor makers' table (second-hand): manual, obstacle below 5 % of the diameter, 1.0 to 1.5. 75 kg x 1.5 = 112.5
    // kg.
    const CheckCase plain;
    const Finding finding = plain.run(CheckId::load);
    INFO(describe(finding));
    CHECK(finding.outcome == Outcome::holds);
    CHECK(finding.statement == Statement::load_rating);
    CHECK(finding.demand.si == Approx(112.5));
    CHECK(finding.capacity.si == Approx(200.0));
    CHECK(finding.use == Approx(0.5625));
    CHECK(finding.numbers[2].si == Approx(1.5));
}

TEST_CASE("load: a rise over 5 % of the diameter takes the harsher row and says that the table has a hole", "[load]") {
    // 6.35 mm (1/4 in) on 125 mm is 5.08 %. 75 kg x 2.2 = 165 kg.
    CheckCase rough;
    rough.crossing().rise = measured(6.35 * millimetre);
    const Finding finding = rough.run(CheckId::load);
    INFO(describe(finding));
    CHECK(finding.demand.si == Approx(165.0));
    CHECK(finding.assumptions.size() > 0);
    CHECK(std::find(finding.assumptions.begin(), finding.assumptions.end(), Assumption::load_factor_hole) !=
          finding.assumptions.end());
}

TEST_CASE("load: the survey's factor replaces the table's", "[load]") {
    CheckCase chosen_factor;
    chosen_factor.cart().load_factor = measured(1.2);
    CHECK(chosen_factor.run(CheckId::load).demand.si == Approx(90.0));
}

TEST_CASE("load: the floor's condition chooses how many castors carry", "[load]") {
    // T = S(E+Z)/n, n-1 in place of n, and W/2 on two diagonal castors (moments, rigid frame, central load).
    CheckCase uneven;
    uneven.cart().load_factor = measured(1.0);
    const auto demand_with = [&](FloorSharing sharing) {
        uneven.cart().sharing = chosen(sharing);
        return uneven.run(CheckId::load).demand.si;
    };
    CHECK(demand_with(FloorSharing::all) == Approx(75.0));
    CHECK(demand_with(FloorSharing::all_but_one) == Approx(100.0));
    CHECK(demand_with(FloorSharing::diagonal) == Approx(150.0));
}

TEST_CASE("load: half the heavier axle decides where it is more", "[load]") {
    // Centre 0.7 m ahead of the rear axle on 1 m: the front axle carries 0.7 x 300 = 210 kg, each castor 105 kg.
    CheckCase heavy_front;
    heavy_front.cart().load_factor = measured(1.0);
    heavy_front.cart().cg_forward_loaded = measured(0.7 * metre);
    CHECK(heavy_front.run(CheckId::load).demand.si == Approx(105.0));

    // Within 0.05 m of 0.7 m the careful end is 0.75 m: 112.5 kg.
    heavy_front.cart().cg_forward_loaded = within(0.7 * metre, 0.05 * metre);
    CHECK(heavy_front.run(CheckId::load).demand.si == Approx(112.5));
}

TEST_CASE("load: the steepest slope moves load to the lower axle", "[load]") {
    // Moments about the axles, worked by hand: 600 kg, centre midway on 1 m and 0.8 m up, 1:12: 3322.49 N on the lower
    // axle, half of it 1661.25 N or 169.40 kg on each castor; level it would be 150 kg.
    CheckCase ramp;
    ramp.cart().load_factor = measured(1.0);
    ramp.cart().payload = measured(540.0 * kilogram);
    ramp.wheel.rated_load = 300.0 * kilogram;
    ramp.crossing().kind = chosen(CrossingKind::ramp);
    ramp.crossing().slope = measured(Slope::from_tangent(1.0 / 12.0));
    CHECK(ramp.run(CheckId::load).demand.si == Approx(169.40).epsilon(1e-4));
}

TEST_CASE("load: the rig's rating counts where it is the lower one", "[load]") {
    CheckCase weak_rig;
    weak_rig.rig.rated_load = 100.0 * kilogram;
    const Finding finding = weak_rig.run(CheckId::load);
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.use == Approx(1.125));
}

TEST_CASE("load: above the speed of the rating test the capacity is not known", "[load]") {
    // ISO 22883 tests at 4 km/h (second-hand).
    CheckCase fast;
    fast.cart().speed = measured(5.0 * kilometre_per_hour);
    const Finding finding = fast.run(CheckId::load);
    CHECK(finding.outcome == Outcome::not_known);
    CHECK(finding.statement == Statement::load_speed_unknown);
    CHECK_FALSE(finding.has_use);

    // An overload is an overload at any speed.
    fast.wheel.rated_load = 80.0 * kilogram;
    CHECK(fast.run(CheckId::load).outcome == Outcome::fails);
}

TEST_CASE("load: missing readings and ratings are named, never replaced", "[load]") {
    CheckCase unread;
    unread.cart().payload = {};
    const Finding finding = unread.run(CheckId::load);
    CHECK(finding.outcome == Outcome::not_known);
    REQUIRE(finding.missing.size() == 1);
    CHECK(reading_path(finding.missing[0]) == "/carts/0/payload");

    CheckCase unrated;
    unrated.wheel.rated_load.reset();
    CHECK(unrated.run(CheckId::load).outcome == Outcome::not_known);
}

TEST_CASE("load: more payload never improves it", "[load][property]") {
    CheckCase heavier;
    double last = 0.0;
    for (double payload = 0.0; payload <= 600.0; payload += 20.0) {
        heavier.cart().payload = within(payload * kilogram, 5.0 * kilogram);
        const double use = heavier.run(CheckId::load).use;
        CHECK(use >= last);
        last = use;
    }
}
