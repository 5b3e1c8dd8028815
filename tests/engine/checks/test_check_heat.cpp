#include "rule_case.hpp"

#include <catch2/catch.hpp>

#include <numbers>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

Figure<FilmCoefficient> film(double low, double value) {
    auto made = figure(value * watt_per_square_metre_kelvin);
    made.low = low * watt_per_square_metre_kelvin;
    return made;
}

/// A soft urethane tread with a loss angle of 0.1, rated to 180 F (common practice), in rooms of +10 and +35 C.
struct HeatCase : RuleCase {
    HeatCase() {
        wheel.hardness = Hardness{HardnessScale::shore_a, 70.0};
        wheel.temperature_max = fahrenheit(180.0);
        tread.tan_delta = figure(0.1, 2);
        cart.stops[1].air = read(celsius(35.0), Field::room_air, 1);
        cart.push_rate = unread<Frequency>(Field::cart_push_rate);
        tables.film = {{AirMovement::natural, film(7.0, 9.37)}};
        tables.practice.creep_critical = figure(celsius(66.0));
        tables.practice.creep_flat_hot = figure(0.85);
        tables.practice.temperature_tight = figure(5.0 * kelvin_step);
        tables.practice.urethane_rated_max = figure(fahrenheit(180.0));
    }
};

/// No heat of its own: a hard tread.
struct HardCase : HeatCase {
    HardCase() {
        tread.family = MaterialFamily::nylon;
        tread.tan_delta.reset();
    }
};

}  // namespace

TEST_CASE("rolling warms the tread over the air", "[engine][heat][derived]") {
    HeatCase given;
    given.corner = Corner::nominal;
    const Finding finding = given.run(check_heat);
    // By hand. Gent at 70 A: 0.0981 (56 + 533.635)/(0.137505 x 76.2) = 5.5205 MPa. Hertz line contact, nu 0.49, on a
    // rigid floor: E* = 5.5205/0.7599 = 7.2648 MPa, W = 1520.03 N (diagonal: half of 310 kg), R 63.5 mm, L 31.75 mm: b
    // = sqrt(4 W R/(pi L E*)) = 23.08 mm. c = (2/3) 0.1 b/R = 0.02423; Q = c W v = 33.15 W at 0.9 m/s. Surface 2 pi
    // (R^2 + R L) = 0.038003 m2; Q/(9.37 x A) = 93.1 K over +35 C.
    CHECK(finding.statement == Statement::heat_rolling);
    REQUIRE(finding.number_count == 7);
    CHECK(finding.numbers[5].si == Approx(33.15).epsilon(2e-3));
    CHECK(finding.numbers[4].si == Approx(93.1).epsilon(2e-3));
    CHECK(finding.numbers[0].si - 273.15 == Approx(128.1).margin(0.3));
    CHECK(finding.numbers[6].si == 1.0);
    CHECK(finding.place == Place{PlaceKind::room, 1});
    CHECK(finding.outcome == Outcome::fails);  // rolled without a stop at 1520 N on so soft a tread
    CHECK(assumes(finding, Assumption::film_coefficient));
}

TEST_CASE("pushes that were read count for their share of the time", "[engine][heat][derived]") {
    HeatCase given;
    given.corner = Corner::nominal;
    // 20 m six times an hour at 0.9 m/s: 120/3600/0.9 = 0.03704 of the time; 93.1 K x 0.03704 = 3.45 K.
    given.cart.push_distance = read(20.0 * metre, Field::cart_push_distance);
    given.cart.push_rate = read(Frequency::from_si(6.0 / 3600.0), Field::cart_push_rate);
    given.cart.stops[1].air = read(celsius(60.0), Field::room_air, 1);  // warm enough for the rating to speak
    const Finding finding = given.run(check_heat);
    CHECK(finding.numbers[6].si == Approx(0.037037).epsilon(1e-4));
    CHECK(finding.numbers[4].si == Approx(3.45).epsilon(3e-3));
    CHECK(finding.outcome == Outcome::holds);
}

TEST_CASE("a wash at 82 C against 180 F is tight by a fifth of a kelvin", "[engine][heat][derived]") {
    HardCase given;
    given.cart.washings = {washing_with("hot-water", 1.0, celsius(82.0))};
    for (StopDemand& stop : given.cart.stops) stop.loaded = false;
    const Finding finding = given.run(check_heat);
    // 180 F = 82.222 C: margin 0.222 K, use 0.99333.
    CHECK(finding.outcome == Outcome::tight);
    CHECK(finding.use == Approx(0.993333).epsilon(1e-5));
    CHECK(finding.statement == Statement::heat_rated_maximum);
    CHECK(finding.place == Place{PlaceKind::washing, 0});
}

TEST_CASE("steam fails, warm water holds", "[engine][heat]") {
    HardCase given;
    for (StopDemand& stop : given.cart.stops) stop.loaded = false;
    given.cart.washings = {washing_with("saturated-steam", 1.0, celsius(134.0))};
    CHECK(given.run(check_heat).outcome == Outcome::fails);
    given.cart.washings = {washing_with("hot-water", 1.0, celsius(50.0))};
    CHECK(given.run(check_heat).outcome == Outcome::holds);
}

TEST_CASE("standing loaded while hot is a condition, never a failure of its own", "[engine][heat]") {
    HardCase given;
    given.wheel.temperature_max = celsius(121.0);
    given.cart.washings = {washing_with("hot-water", 1.0, celsius(70.0))};
    const Finding finding = given.run(check_heat);
    CHECK(finding.outcome == Outcome::tight);
    CHECK(finding.statement == Statement::heat_standing);
    CHECK(finding.numbers[2].si == Approx(0.85));
    CHECK(assumes(finding, Assumption::practice_figure));
    for (StopDemand& stop : given.cart.stops) stop.loaded = false;
    CHECK(given.run(check_heat).outcome == Outcome::holds);
}

TEST_CASE("heat without its figures and readings is not known", "[engine][heat]") {
    SECTION("rated maximum") {
        HardCase given;
        given.wheel.temperature_max.reset();
        given.wheel.construction = Construction::nylon;
        CHECK(given.run(check_heat).outcome == Outcome::not_known);
        given.wheel.construction = Construction::one_piece_urethane;
        CHECK(given.run(check_heat).outcome == Outcome::holds);
    }
    SECTION("loss angle of a soft tread") {
        HeatCase given;
        given.tread.tan_delta.reset();
        CHECK(given.run(check_heat).outcome == Outcome::not_known);
    }
    SECTION("speed") {
        HeatCase given;
        given.cart.speed = unread<Speed>(Field::cart_speed);
        CHECK(misses(given.run(check_heat), Field::cart_speed));
    }
    SECTION("wash temperature") {
        HardCase given;
        given.cart.washings = {washing_with("hot-water", 1.0, celsius(50.0))};
        given.cart.washings[0].temperature = unread<Temperature>(Field::washing_temperature);
        CHECK(misses(given.run(check_heat), Field::washing_temperature));
    }
    SECTION("a route") {
        HardCase given;
        given.cart.stops.clear();
        given.cart.crossings.clear();
        CHECK(misses(given.run(check_heat), Field::cart_route));
    }
}

TEST_CASE("hotter rooms, faster carts and lossier treads never help", "[engine][heat][property]") {
    HeatCase given;
    given.cart.push_distance = read(20.0 * metre, Field::cart_push_distance);
    given.cart.push_rate = read(Frequency::from_si(6.0 / 3600.0), Field::cart_push_rate);
    Finding before = given.run(check_heat);
    for (int k = 0; k < 12; ++k) {
        given.cart.stops[1].air = read(celsius(35.0 + 5.0 * k), Field::room_air, 1);
        const Finding hotter = given.run(check_heat);
        CHECK(no_better(hotter, before));
        before = hotter;
    }
    HeatCase lossy;
    lossy.tread.tan_delta = figure(0.02, 2);
    before = lossy.run(check_heat);
    for (const double tan_delta : {0.04, 0.08, 0.15, 0.3}) {
        lossy.tread.tan_delta = figure(tan_delta, 2);
        const Finding worse = lossy.run(check_heat);
        CHECK(no_better(worse, before));
        before = worse;
    }
}
