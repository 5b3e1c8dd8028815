#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

TEST_CASE("step: a quarter inch is over the tested rise of most 125 mm wheels", "[step]") {
    // Obstacles of the rating tests (second-hand): ISO 22883 5 % up to 90 Shore A, 2.5 % harder; ISO 22881 3 %; ANSI
    // ICWM 1/8 in.
    CheckCase quarter_inch;
    quarter_inch.crossing().rise = measured(6.35 * millimetre);
    const auto use_of = [&](RatingClass rating_class) {
        quarter_inch.wheel.rating_class = rating_class;
        return quarter_inch.run(CheckId::step).use;
    };
    CHECK(use_of(RatingClass::industrial_soft) == Approx(6.35 / 6.25));
    CHECK(use_of(RatingClass::institutional) == Approx(6.35 / 3.75));
    CHECK(use_of(RatingClass::industrial_hard) == Approx(6.35 / 3.125));
    CHECK(use_of(RatingClass::drum_fixed) == Approx(2.0));
}

TEST_CASE("step: the fixed height of the drum test does not grow with the wheel", "[step]") {
    CheckCase large;
    large.crossing().rise = measured(3.0 * millimetre);
    large.wheel.rating_class = RatingClass::drum_fixed;
    large.wheel.diameter = 250.0 * millimetre;
    CHECK(large.run(CheckId::step).capacity.si == Approx(0.003175));
}

TEST_CASE("step: the force ratio and the coasting speed stand beside the answer", "[step]") {
    // 5 % of the diameter asks for 0.4843 of the load at any diameter: sqrt(2Rh - h2)/(R - h) with h = R/10 is
    // sqrt(0.19)/0.9 = 0.48432. Coasting: v2/v1 = 1 - h/R = 0.9, least speed sqrt(2gh)/0.9.
    CheckCase five_percent;
    five_percent.crossing().rise = measured(6.25 * millimetre);
    const Finding finding = five_percent.run(CheckId::step);
    INFO(describe(finding));
    CHECK(finding.outcome == Outcome::tight);
    CHECK(finding.numbers[2].si == Approx(0.05));
    CHECK(finding.numbers[3].si == Approx(std::sqrt(0.19) / 0.9));
    CHECK(finding.numbers[4].si == Approx(std::sqrt(2.0 * 9.80665 * 0.00625) / 0.9));
}

TEST_CASE("step: a gap before the rise counts only where the wheel sinks into it", "[step]") {
    // R 62.5, h 3 mm: no effect while G <= sqrt(2Rh - h2) = sqrt(366) = 19.13 mm. At G = 32 mm by hand:
    // asin(sqrt(1024 + 9)/125) + atan(3/32) = 0.26004 + 0.09348 = 0.35352 rad, R(1 - cos) = 3.8652 mm.
    CheckCase door;
    door.crossing().rise = measured(3.0 * millimetre);
    door.crossing().gap = measured(19.0 * millimetre);
    CHECK(door.run(CheckId::step).demand.si == Approx(0.003));
    door.crossing().gap = measured(32.0 * millimetre);
    CHECK(door.run(CheckId::step).demand.si == Approx(0.0038652).epsilon(2e-4));
}

TEST_CASE("step: a bevel no steeper than 1:2 is a slope, a steeper one a rise", "[step]") {
    // ADA 2010 303.2 and 303.3: up to 1/4 in vertical, the rest bevelled 1:2 at most.
    CheckCase lip;
    lip.crossing().rise = measured(3.0 * millimetre);
    lip.crossing().lip_height = measured(2.0 * millimetre);
    lip.crossing().lip_slope = measured(Slope::from_tangent(0.5));
    CHECK(lip.run(CheckId::step).demand.si == Approx(0.003));
    lip.crossing().lip_slope = measured(Slope::from_tangent(0.6));
    CHECK(lip.run(CheckId::step).demand.si == Approx(0.005));
    // Unread bevel: a square edge.
    lip.crossing().lip_slope = {};
    CHECK(lip.run(CheckId::step).demand.si == Approx(0.005));
}

TEST_CASE("step: no wheel climbs what reaches its axle", "[step]") {
    CheckCase wall;
    wall.crossing().rise = measured(62.5 * millimetre);
    const Finding finding = wall.run(CheckId::step);
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.statement == Statement::step_no_climb);
}

TEST_CASE("step: a measured zero is none and does not apply; unread is not known", "[step]") {
    CheckCase flat;
    flat.crossing().rise = within(Length{}, 0.8 * millimetre);
    CHECK(flat.run(CheckId::step).outcome == Outcome::does_not_apply);
    flat.crossing().rise = {};
    const Finding finding = flat.run(CheckId::step);
    CHECK(finding.outcome == Outcome::not_known);
    REQUIRE(finding.missing.size() == 1);
    CHECK(reading_path(finding.missing[0]) == "/crossings/0/rise");
}

TEST_CASE("step: an outcome that changes inside the tape's tolerance turns on that reading", "[step]") {
    CheckCase tape;
    tape.crossing().rise = within(6.0 * millimetre, 0.8 * millimetre);  // 6.25 mm is tested
    const Finding finding = tape.run_in_detail(CheckId::step);
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.outcome_nominal == Outcome::tight);
    CHECK(finding.turns_on);
    CHECK(reading_path(finding.turns_on_reading) == "/crossings/0/rise");
}

TEST_CASE("step: the readings of the deciding crossing are named first", "[step]") {
    CheckCase two;
    Crossing higher = two.survey.crossings[0];
    higher.id = CrossingId("higher");
    higher.rise = measured(5.0 * millimetre);
    two.crossing().rise = measured(2.0 * millimetre);
    two.survey.crossings.push_back(higher);
    two.cart().route[1].leaves_by = CrossingId("higher");
    const Finding finding = two.run_in_detail(CheckId::step);
    CHECK(finding.place == Place{PlaceKind::crossing, 1});
    REQUIRE(finding.drivers.size() >= 2);
    CHECK(reading_path(finding.drivers[0]) == "/crossings/1/rise");
}

TEST_CASE("step: a higher rise never improves it, a larger wheel never worsens it", "[step][property]") {
    CheckCase rising;
    double last = 0.0;
    for (double rise = 0.5; rise < 80.0; rise += 0.5) {
        rising.crossing().rise = measured(rise * millimetre);
        const double use = rising.run(CheckId::step).use;
        CHECK(use >= last);
        last = use;
    }
    rising.crossing().rise = measured(6.0 * millimetre);
    rising.crossing().gap = measured(20.0 * millimetre);
    last = 1e9;
    for (double diameter = 75.0; diameter <= 250.0; diameter += 5.0) {
        rising.wheel.diameter = diameter * millimetre;
        const double use = rising.run(CheckId::step).use;
        CHECK(use <= last);
        last = use;
    }
}
