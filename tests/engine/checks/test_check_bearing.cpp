#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

/// Puts `load` on each of four castors.
void load_each_castor(RuleCase& given, Mass load) {
    given.cart.sharing = choose(FloorSharing::all, Field::cart_sharing);
    given.cart.tare = read(Mass{}, Field::cart_tare);
    given.cart.payload = read(4.0 * load, Field::cart_payload);
}

void use_plain(RuleCase& given) {
    given.bearing.kind = BearingKind::plain_acetal;
    given.bearing.count = 1;
    given.bearing.bore = 0.5 * inch;
    given.bearing.length = 1.5 * inch;
    given.bearing.temperature_max.reset();
}

}  // namespace

TEST_CASE("rating life as kilometres and years of the route", "[engine][bearing][published]") {
    // Wentzell, Machine Design, example 20.1: C 5050 lbf, P 2400 lbf, 1750 rpm give 88.7 h, so 9.3135 million turns.
    RuleCase given;
    given.bearing.dynamic_rating = 5050.0 * pound_force;
    given.bearing.static_rating = 50000.0 * pound_force;
    load_each_castor(given, 4800.0 * pound);  // two bearings in each wheel
    const Finding finding = given.run(check_bearing);
    CHECK(finding.statement == Statement::bearing_life);
    const double kilometres = 9.3135e6 * 3.14159265 * 0.127 / 1000.0;
    CHECK(finding.numbers[0].si / 1000.0 == Approx(kilometres).epsilon(0.002));
    // 20 rounds a day, two legs of 50 m: 2 km a day.
    CHECK(finding.numbers[6].si == Approx(2000.0));
    CHECK(finding.numbers[1].si / 86400.0 == Approx(kilometres / 2.0).epsilon(0.002));
    CHECK(finding.use == Approx(5.0 * 365.0 * 2.0 / kilometres).epsilon(0.002));
    CHECK(finding.outcome == Outcome::tight);
}

// Life times 0.1 washed out, 0.3 splashed, 1 dry and sealed: from memory.
TEST_CASE("what the wash leaves of the grease", "[engine][bearing][derived]") {
    RuleCase given;
    given.bearing.dynamic_rating = 3.0 * kilonewton;
    const auto factor = [&] { return given.run(check_bearing).numbers[5].si; };
    given.bearing.static_rating = 1000.0 * kilonewton;
    given.tables.practice.bearing_service = figure(100000.0 * day);  // life decides
    CHECK(factor() == 1.0);
    given.cart.stops[0].wetness = choose(Wetness::wet, Field::room_wetness, 0);
    CHECK(factor() == 0.3);
    given.bearing.sealed = false;
    CHECK(factor() == 0.1);
    given.cart.stops[0].wetness = choose(Wetness::damp, Field::room_wetness, 0);
    CHECK(factor() == 0.3);
    given.cart.stops[0].wetness = choose(Wetness::dry, Field::room_wetness, 0);
    CHECK(factor() == 1.0);
    given.preparation = Preparation::degreased;
    CHECK(factor() == 0.1);
}

TEST_CASE("static safety asks more of a roller that takes blows", "[engine][bearing][published]") {
    // s0 at least 1.5 for rollers, 3 with shock [bearing-textbook].
    RuleCase given;
    given.bearing.kind = BearingKind::roller;
    given.bearing.count = 1;
    given.bearing.dynamic_rating = 1000.0 * kilonewton;
    given.bearing.static_rating = 3000.0 * pound_force;
    load_each_castor(given, 1000.0 * pound);
    Finding finding = given.run(check_bearing);
    CHECK(finding.statement == Statement::bearing_static);
    CHECK(finding.numbers[0].si == Approx(3.0));
    CHECK(finding.use == Approx(1.0));
    given.cart.crossings.clear();
    CHECK(given.run(check_bearing).use == Approx(0.5));
}

TEST_CASE("pressure times speed of a plain bearing", "[engine][bearing][published]") {
    // W v/(L D) with 300 lbf, 176 fpm, 1.5 in, 6 in: 5867 psi fpm = 205 494 Pa m/s (derived);
    // limit 3000 psi fpm = 0.105 MPa m/s (from memory).
    RuleCase given;
    use_plain(given);
    given.wheel.diameter = 6.0 * inch;
    given.cart.speed = read(176.0 * foot_per_minute, Field::cart_speed);
    load_each_castor(given, 300.0 * pound);
    const Finding finding = given.run(check_bearing);
    CHECK(finding.statement == Statement::bearing_pv);
    CHECK(finding.numbers[0].si == Approx(205493.8).epsilon(1e-4));
    CHECK(finding.use == Approx(205493.8 / 105000.0).epsilon(1e-4));
    CHECK(finding.outcome == Outcome::fails);
    // 300 lbf on 0.5 x 1.5 in = 400 psi
    CHECK(finding.numbers[2].si == Approx(400.0 * 6894.757).epsilon(1e-4));
}

TEST_CASE("a bearing is kept inside its own temperatures", "[engine][bearing][derived]") {
    RuleCase given;
    use_plain(given);
    load_each_castor(given, 20.0 * kilogram);
    SECTION("82 C rinse on acetal rated 82 C: no margin left") {
        given.cart.washings = {washing_with("hot-water", 1.0, celsius(82.0))};
        const Finding finding = given.run(check_bearing);
        CHECK(finding.statement == Statement::bearing_temperature);
        CHECK(finding.use == Approx(1.0));
        CHECK(finding.outcome == Outcome::tight);
    }
    SECTION("77 C leaves the 5 K that hold") {
        given.cart.washings = {washing_with("hot-water", 1.0, celsius(76.9))};
        CHECK(given.run(check_bearing).outcome == Outcome::holds);
    }
    SECTION("a freezer below the maker's least temperature") {
        given.cart.stops[0].air = read(celsius(-42.0), Field::room_air, 0);
        CHECK(given.run(check_bearing).outcome == Outcome::fails);
    }
    SECTION("a freezer and no least temperature") {
        given.bearing.temperature_min.reset();
        CHECK(given.run(check_bearing).outcome == Outcome::holds);
        given.cart.stops[0].air = read(celsius(-5.0), Field::room_air, 0);
        CHECK(given.run(check_bearing).outcome == Outcome::not_known);
    }
}

TEST_CASE("a bearing is not passed where a reading or figure is missing", "[engine][bearing]") {
    RuleCase given;
    SECTION("trips") {
        given.cart.trips_per_day = unread<double>(Field::cart_trips_per_day);
        CHECK(misses(given.run(check_bearing), Field::cart_trips_per_day));
    }
    SECTION("rating") {
        given.bearing.dynamic_rating.reset();
        CHECK(given.run(check_bearing).outcome == Outcome::not_known);
    }
    SECTION("kind of bearing unknown to the table") {
        given.tables.bearings.clear();
        CHECK(given.run(check_bearing).outcome == Outcome::not_known);
    }
    SECTION("speed of a plain bearing") {
        use_plain(given);
        given.cart.speed = unread<Speed>(Field::cart_speed);
        CHECK(misses(given.run(check_bearing), Field::cart_speed));
    }
}

TEST_CASE("load, trips and heat never spare a bearing", "[engine][bearing][property]") {
    for (const bool plain : {false, true}) {
        double before = 0;
        for (double mass = 10.0; mass < 1500.0; mass *= 1.5) {
            RuleCase given;
            if (plain) use_plain(given);
            given.cart.payload = read(mass * kilogram, Field::cart_payload);
            const double use = given.run(check_bearing).use;
            CHECK(use >= before);
            before = use;
        }
        before = 0;
        for (double degrees = 0.0; degrees < 120.0; degrees += 10.0) {
            RuleCase given;
            if (plain) use_plain(given);
            given.cart.washings = {washing_with("hot-water", 1.0, celsius(degrees))};
            const double use = given.run(check_bearing).use;
            CHECK(use >= before);
            before = use;
        }
    }
    double before = 0;
    for (double trips = 0.0; trips < 5000.0; trips += 500.0) {
        RuleCase given;
        given.cart.trips_per_day = read(trips, Field::cart_trips_per_day);
        const double use = given.run(check_bearing).use;
        CHECK(use >= before);
        before = use;
    }
}
