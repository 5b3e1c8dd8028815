#include "engine/physics/obstacle.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace sillwalk::engine;

namespace {

constexpr Force load = 1000 * newton;

double step_ratio(double diameter_mm, double rise_mm) {
    return step_forces(load, diameter_mm * millimetre, rise_mm * millimetre)->ratio;
}

StepSpeedInput rolling_into(Length diameter, Length rise) {
    StepSpeedInput out;
    out.diameter = diameter;
    out.rise = rise;
    return out;
}

}  // namespace

TEST_CASE("the force ratio of a step depends on the share of the diameter only", "[engine][physics][property]") {
    for (const double share : {0.001, 0.025, 0.05, 0.2, 0.45}) {
        const double first = step_ratio(75, 75 * share);
        for (const double diameter : {100.0, 125.0, 152.4, 200.0, 300.0}) {
            CHECK(step_ratio(diameter, diameter * share) == Approx(first));
        }
    }
}

TEST_CASE("step forces keep their order and their limits", "[engine][physics][property]") {
    double before = 0;
    for (double rise = 1; rise < 62.5; rise += 1) {
        const auto forces = step_forces(load, 125 * millimetre, rise * millimetre);
        REQUIRE(forces);
        CHECK(forces->ratio > before);
        before = forces->ratio;
        CHECK(forces->least_anywhere < forces->at_top);
        CHECK(forces->at_top < forces->least_at_axle);
        CHECK(forces->least_at_axle < forces->at_axle);
        CHECK(forces->least_anywhere.si() == Approx(forces->least_at_axle.si() / 2));
        // Statics text: at the top W sqrt(h/(2R - h)).
        CHECK(forces->at_top.si() == Approx(1000 * std::sqrt(rise / (125 - rise))));
    }
    CHECK(step_forces(load, 125 * millimetre, Length{})->at_axle.si() == 0);
    CHECK(step_ratio(125, 62.4999) > 300);
    CHECK(step_forces(load, 125 * millimetre, 62.5 * millimetre).error().code == ErrorCode::no_answer);
}

TEST_CASE("a bevel never makes a step harder and ends at its own tangent", "[engine][physics][property]") {
    const Slope bevel = Slope::from_tangent(0.5);
    for (double rise = 1; rise < 60; rise += 1) {
        const auto sharp = step_forces(load, 125 * millimetre, rise * millimetre);
        const auto bevelled = step_forces(load, 125 * millimetre, rise * millimetre, bevel);
        CHECK(bevelled->ratio == Approx(std::min(sharp->ratio, 0.5)));
    }
    CHECK(step_forces(load, 125 * millimetre, 200 * millimetre, bevel)->ratio == Approx(0.5));
}

TEST_CASE("a gap is a step of the height of its sag", "[engine][physics][property]") {
    for (double gap = 2; gap < 124; gap += 3) {
        const auto crossing = gap_crossing(125 * millimetre, gap * millimetre, load);
        REQUIRE(crossing);
        const auto step = step_forces(load, 125 * millimetre, crossing->sag);
        CHECK(crossing->ratio == Approx(step->ratio));
        CHECK(crossing->force->si() == Approx(step->at_axle.si()));
        CHECK(crossing->sag.in(millimetre) == Approx(62.5 - std::sqrt(62.5 * 62.5 - gap * gap / 4)).margin(1e-9));
    }
    CHECK(gap_crossing(125 * millimetre, Length{})->sag.si() == 0);
    CHECK(gap_crossing(125 * millimetre, 125 * millimetre).error().code == ErrorCode::no_answer);
}

TEST_CASE("a faster wheel drops less into a gap, never more than sag or depth", "[engine][physics][property]") {
    Length before = 1 * metre;
    for (double v = 0.1; v < 5; v += 0.1) {
        const auto crossing = gap_crossing(100 * millimetre, 32 * millimetre, std::nullopt, v * metre_per_second);
        CHECK(*crossing->drop <= crossing->sag);
        CHECK(*crossing->drop <= before);
        CHECK(*crossing->full_drop == (*crossing->drop == crossing->sag));
        before = *crossing->drop;
    }
    const auto shallow =
        gap_crossing(100 * millimetre, 32 * millimetre, std::nullopt, 0.5 * metre_per_second, 1 * millimetre);
    CHECK(shallow->drop->in(millimetre) == Approx(1));
    CHECK_FALSE(*shallow->full_drop);
}

TEST_CASE("a gap before a rise joins on to both alone", "[engine][physics][property]") {
    const Length diameter = 125 * millimetre;
    for (const double gap : {5.0, 20.0, 60.0, 100.0}) {
        const auto sag = gap_crossing(diameter, gap * millimetre)->sag;
        CHECK(rise_with_gap(diameter, Length{}, gap * millimetre)->si() == Approx(sag.si()));
    }
    for (const double rise : {3.0, 6.35, 12.7}) {
        const double reach = std::sqrt(rise * (125 - rise));
        CHECK(rise_with_gap(diameter, rise * millimetre, reach * 0.5 * millimetre)->in(millimetre) == Approx(rise));
        CHECK(rise_with_gap(diameter, rise * millimetre, reach * (1 + 1e-9) * millimetre)->in(millimetre) ==
              Approx(rise).epsilon(1e-6));
        Length before = rise * millimetre;
        for (double gap = reach + 1; gap < 90; gap += 1) {
            const auto both = rise_with_gap(diameter, rise * millimetre, gap * millimetre);
            REQUIRE(both);
            CHECK(*both > before);
            CHECK(*both > gap_crossing(diameter, gap * millimetre)->sag);
            before = *both;
        }
    }
    CHECK(rise_with_gap(diameter, 20 * millimetre, 124 * millimetre).error().code == ErrorCode::no_answer);
    CHECK(rise_with_gap(diameter, 62.5 * millimetre, Length{}).error().code == ErrorCode::no_answer);
}

TEST_CASE("at the least speed the energy after the blow just lifts the load", "[engine][physics][property]") {
    for (const double inertia : {0.0, 0.5, 1.0}) {
        StepSpeedInput input = rolling_into(125 * millimetre, 15 * millimetre);
        input.inertia = inertia;
        const Speed least = step_speed(input)->least;
        input.speed = least;
        input.mass = 100 * kilogram;
        const auto result = step_speed(input);
        const double energy = 0.5 * (1 + inertia) * 100 * result->after->si() * result->after->si();
        CHECK(energy == Approx(100 * 9.80665 * 0.015));
    }
    // A coasting cart: what is left of its energy lifts its share of the rise.
    StepSpeedInput cart = rolling_into(125 * millimetre, 10 * millimetre);
    cart.lift_share = 0.5;
    cart.pitch_mass_ratio = 1.0 / 3;
    cart.speed = step_speed(cart)->least;
    cart.mass = 300 * kilogram;
    const auto result = step_speed(cart);
    const double before = 0.5 * 300 * cart.speed->si() * cart.speed->si();
    CHECK(before - result->lost->si() == Approx(300 * 9.80665 * 0.010 * 0.5));
}

TEST_CASE("a blow takes some of the energy, never all and never less than none", "[engine][physics][property]") {
    for (double rise = 0.5; rise < 62; rise += 2) {
        for (const double ratio : {0.2, 0.5, 1.0}) {
            StepSpeedInput input = rolling_into(125 * millimetre, rise * millimetre);
            input.pitch_mass_ratio = ratio;
            input.speed = 1 * metre_per_second;
            input.mass = 200 * kilogram;
            const auto result = step_speed(input);
            REQUIRE(result);
            CHECK(result->speed_ratio > 0);
            CHECK(result->speed_ratio <= 1);
            CHECK(result->lost->si() >= 0);
            CHECK(result->lost->si() < 100);
            CHECK(result->impulse->si() <= 200.0001);
        }
    }
}

TEST_CASE("the cart's form with both ratios near 1 meets the plain form", "[engine][physics][property]") {
    for (const double rise : {2.0, 10.0, 40.0}) {
        StepSpeedInput plain = rolling_into(125 * millimetre, rise * millimetre);
        plain.speed = 1 * metre_per_second;
        plain.mass = 50 * kilogram;
        StepSpeedInput cart = plain;
        cart.pitch_mass_ratio = 1 - 1e-9;
        CHECK(step_speed(cart)->least.si() == Approx(step_speed(plain)->least.si()));
        CHECK(step_speed(cart)->speed_ratio == Approx(step_speed(plain)->speed_ratio));
        CHECK(step_speed(cart)->lost->si() == Approx(step_speed(plain)->lost->si()));
        CHECK(step_speed(cart)->impulse->si() == Approx(step_speed(plain)->impulse->si()));
    }
}

TEST_CASE("the least speed rises with the step and falls to nothing with it", "[engine][physics][property]") {
    double before = 0;
    for (double rise = 0.1; rise < 60; rise += 1) {
        const double least = step_speed(rolling_into(125 * millimetre, rise * millimetre))->least.si();
        CHECK(least > before);
        before = least;
    }
    CHECK(step_speed(rolling_into(125 * millimetre, Length{}))->least.si() == 0);
    CHECK(step_speed(rolling_into(125 * millimetre, 62.5 * millimetre)).error().code == ErrorCode::no_answer);
    StepSpeedInput mixed = rolling_into(125 * millimetre, 10 * millimetre);
    mixed.inertia = 0.5;
    mixed.lift_share = 0.5;
    CHECK(step_speed(mixed).error().where == "inertia");
}
