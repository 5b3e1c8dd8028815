#include "engine/physics/heat.hpp"
#include "engine/walk/walk.hpp"
#include "tests/engine/walk/walk_cases.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace sillwalk::engine;
using namespace sillwalk::test;

namespace {

Body body_of(const WalkKey& key) {
    return {key.diameter * metre, key.width * metre, key.tread->conductivity->value, key.tread->density->value,
            key.tread->specific_heat->value};
}

/// The same rooms again and again from 20 C, by the desk calculation; the last day's stage ends.
std::vector<BodyTemperatures> many_days(const CartDemand& demand, const WalkKey& key, const Tables& tables, int days,
                                        bool by_series) {
    std::vector<HeatStage> stages;
    for (int day = 0; day < days; ++day) {
        for (const StopDemand& stop : demand.stops) {
            stages.push_back(
                {stop.air.nominal, tables.film_for(stop.air_movement.value)->film.value, stop.stay.nominal});
        }
    }
    const auto result = by_series ? temperatures_by_series(body_of(key), celsius(20), stages)
                                  : temperatures_by_volumes(body_of(key), celsius(20), stages, std::nullopt, 28);
    REQUIRE(result);
    return {result->end() - static_cast<std::ptrdiff_t>(demand.stops.size()), result->end()};
}

double worst_difference(const Walk& walk, const std::vector<BodyTemperatures>& expected) {
    double worst = 0.0;
    for (std::size_t k = 0; k < expected.size(); ++k) {
        worst = std::max({worst, difference_K(walk.at_crossing[k].core, expected[k].core),
                          difference_K(walk.at_crossing[k].rim, expected[k].rim),
                          difference_K(walk.at_crossing[k].mean, expected[k].mean)});
    }
    return worst;
}

}  // namespace

TEST_CASE("a wheel that never leaves a room is as warm as the room", "[engine][walk][property]") {
    const Tables tables = walk_tables();
    for (const WalkEnd end : {WalkEnd::nominal, WalkEnd::cold, WalkEnd::hot}) {
        const Walk walk = walk_route(walk_through({{-25, 60}}), one_piece(tables, 125, 40), tables, end);
        CHECK(walk.repeats);
        CHECK(walk.at_crossing[0].core.celsius() == Approx(-25).margin(1e-9));
        CHECK(walk.coldest.celsius() == Approx(-25).margin(1e-9));
        CHECK(walk.hottest.celsius() == Approx(-25).margin(1e-9));
    }
}

TEST_CASE("the repeated day is what many days walked one by one come to", "[engine][walk][property]") {
    const Tables tables = walk_tables();
    struct Case {
        double diameter_mm, width_mm, hours;  // hours: over ten of the wheel's slowest time constants
        std::vector<sillwalk::test::Room> rooms;
    };
    const std::vector<Case> cases = {
        {75, 25, 40, {{-25, 60, AirMovement::fans}, {4, 20, AirMovement::natural}}},
        {152.4, 50.8, 60, {{-25, 60, AirMovement::fans}, {4, 20, AirMovement::natural}}},
        {125,
         40,
         60,
         {{-32, 15, AirMovement::blast}, {-25, 45, AirMovement::fans}, {4, 10}, {16, 30, AirMovement::still}}},
        {200, 50.8, 80, {{-32, 10, AirMovement::blast}, {4, 20, AirMovement::still}}},
        {200, 50.8, 60, {{35, 30, AirMovement::fans}, {-32, 240, AirMovement::blast}, {10, 15}}},
        {100, 38, 25, {{-32, 3, AirMovement::blast}, {4, 4, AirMovement::still}}},
    };
    for (const Case& c : cases) {
        CAPTURE(c.diameter_mm, c.width_mm, c.rooms.size());
        const CartDemand demand = walk_through(c.rooms);
        const WalkKey key = one_piece(tables, c.diameter_mm, c.width_mm);
        const Walk walk = walk_route(demand, key, tables, WalkEnd::nominal);
        CHECK(walk.repeats);
        CHECK(walk.days >= 3);
        double minutes = 0;
        for (const auto& room : c.rooms) minutes += room.minutes;
        const int days = static_cast<int>(c.hours * 60 / minutes) + 1;
        CHECK(worst_difference(walk, many_days(demand, key, tables, days, false)) < 0.1);
    }
}

TEST_CASE("the walk agrees with the exact series where the film stays the same", "[engine][walk][property]") {
    const Tables tables = walk_tables();
    const CartDemand demand = walk_through({{-25, 90, AirMovement::fans}, {4, 45, AirMovement::fans}});
    const WalkKey key = one_piece(tables, 152.4, 50.8);
    const Walk walk = walk_route(demand, key, tables, WalkEnd::nominal);
    CHECK(worst_difference(walk, many_days(demand, key, tables, 40, true)) < 0.1);
}

TEST_CASE("the day closes: the wheel ends it as it began", "[engine][walk][property]") {
    const Tables tables = walk_tables();
    WalkKey bonded = one_piece(tables, 150, 50);
    bonded.core = tables.material("nylon");
    bonded.tread_thickness = 0.012;
    bonded.bore = 0.030;
    for (const WalkKey& key : {one_piece(tables, 150, 50), bonded}) {
        const Walk walk =
            walk_route(walk_through({{-32, 30, AirMovement::blast}, {4, 20}, {-25, 60, AirMovement::fans}, {16, 15}}),
                       key, tables, WalkEnd::nominal, true);
        REQUIRE(walk.trace.size() == 4 * 13);
        CHECK(difference_K(walk.trace.front().mean, walk.trace.back().mean) < 0.1);
        CHECK(difference_K(walk.trace.front().core, walk.trace.back().core) < 0.1);
        CHECK(walk.trace.back().since_start.in(minute) == Approx(125));
        // The trace passes through the crossings.
        for (std::size_t k = 0; k < 4; ++k) {
            CHECK(difference_K(walk.trace[13 * k + 12].core, walk.at_crossing[k].core) < 1e-6);
            CHECK(difference_K(walk.trace[13 * k + 12].rim, walk.at_crossing[k].rim) < 1e-6);
        }
        // Coldest and hottest bound everything drawn, and are no further out than a sampling step.
        for (const WalkPoint& point : walk.trace) {
            CHECK(walk.coldest.kelvin() <= std::min(point.core, point.rim).kelvin() + 0.05);
            CHECK(walk.hottest.kelvin() >= std::max(point.core, point.rim).kelvin() - 0.05);
        }
        CHECK(walk.coldest >= celsius(-32));
        CHECK(walk.hottest <= celsius(16));
    }
}

TEST_CASE("the core goes on cooling after the freezer", "[engine][walk][property]") {
    const Tables tables = walk_tables();
    const Walk walk = walk_route(walk_through({{-32, 30, AirMovement::blast}, {4, 30, AirMovement::natural}}),
                                 one_piece(tables, 200, 50.8), tables, WalkEnd::nominal, true);
    // The trace's second stay starts at index 13: some point of it is colder in the core than its beginning.
    const Temperature arriving = walk.trace[13].core;
    const auto coldest = std::min_element(walk.trace.begin() + 13, walk.trace.end(),
                                          [](const WalkPoint& a, const WalkPoint& b) { return a.core < b.core; });
    CHECK(coldest->core < arriving);
    CHECK(coldest->since_start > walk.trace[13].since_start);
}

TEST_CASE("a lumped metal core follows the closed form", "[engine][walk][derived]") {
    // Two rooms, one heat capacity C losing U (T - air): with a = exp(-U t1/C), b = exp(-U t2/C) the repeated day ends
    // the first stay at T1 + (T2 - T1) a (1 - b)/(1 - ab). C is the core alone (the tread here stores next to nothing),
    // U = film x faces + the tread's 1/(1/film + R ln(R/r)/k) over the running surface.
    Tables tables = walk_tables();
    tables.materials[2] = heat_material("urethane", MaterialFamily::urethane, 0.21, 1.0, 10.0);
    WalkKey key;
    key.diameter = 0.200;
    key.width = 0.050;
    key.tread_thickness = 0.0005;
    key.bore = 0.030;
    key.tread = tables.material("urethane");
    key.core = tables.material("cast-iron");
    const Walk walk = walk_route(walk_through({{-25, 60, AirMovement::fans}, {4, 40, AirMovement::fans}}), key, tables,
                                 WalkEnd::nominal);

    const double pi = 3.14159265358979, film = 19, radius = 0.1, core = 0.0995, bore = 0.015, width = 0.05;
    const double capacity = 7200.0 * 490.0 * pi * (core * core - bore * bore) * width;
    const double through_tread = 2 * pi * radius * width / (1 / film + radius * std::log(radius / core) / 0.21);
    const double faces = 2 * pi * (radius * radius - bore * bore) * film;
    const double loss = through_tread + faces;
    const double a = std::exp(-loss * 3600 / capacity), b = std::exp(-loss * 2400 / capacity);
    const double expected = -25 + (4 + 25) * a * (1 - b) / (1 - a * b);
    CHECK(walk.at_crossing[0].core.celsius() == Approx(expected).margin(0.02));
    CHECK(walk.at_crossing[0].bore == walk.at_crossing[0].core);
}

TEST_CASE("a bonded wheel of one material, very wide, is a solid cylinder", "[engine][walk][property]") {
    Tables tables = walk_tables();
    tables.materials[1] = tables.materials[2];  // the core conducts and stores like the tread
    tables.materials[1].id = "nylon";
    WalkKey bonded = one_piece(tables, 150, 4000);
    bonded.core = tables.material("nylon");
    bonded.tread_thickness = 0.015;
    const CartDemand demand = walk_through({{-25, 60, AirMovement::fans}, {4, 40}});
    const Walk a = walk_route(demand, bonded, tables, WalkEnd::nominal);
    const Walk b = walk_route(demand, one_piece(tables, 150, 4000), tables, WalkEnd::nominal);
    for (std::size_t k = 0; k < 2; ++k) {
        CHECK(difference_K(a.at_crossing[k].rim, b.at_crossing[k].rim) < 0.1);
        CHECK(difference_K(a.at_crossing[k].core, b.at_crossing[k].core) < 0.1);
        CHECK(a.at_crossing[k].bond > std::min(a.at_crossing[k].rim, a.at_crossing[k].core));
        CHECK(a.at_crossing[k].bond < std::max(a.at_crossing[k].rim, a.at_crossing[k].core));
    }
}

TEST_CASE("the cold end is colder and the hot end warmer", "[engine][walk][property]") {
    const Tables tables = walk_tables();
    const CartDemand demand = walk_through({{-25, 60, AirMovement::fans, 2, 15}, {4, 20, AirMovement::natural, 1, 5}});
    const WalkKey key = one_piece(tables, 125, 40);
    const Walk cold = walk_route(demand, key, tables, WalkEnd::cold);
    const Walk nominal = walk_route(demand, key, tables, WalkEnd::nominal);
    const Walk hot = walk_route(demand, key, tables, WalkEnd::hot);
    for (std::size_t k = 0; k < 2; ++k) {
        CHECK(cold.at_crossing[k].core < nominal.at_crossing[k].core);
        CHECK(nominal.at_crossing[k].core < hot.at_crossing[k].core);
        CHECK(cold.at_crossing[k].rim < nominal.at_crossing[k].rim);
        CHECK(nominal.at_crossing[k].rim < hot.at_crossing[k].rim);
    }
    CHECK(cold.coldest < nominal.coldest);
    CHECK(hot.hottest > nominal.hottest);
}

TEST_CASE("what a walk lacks is named", "[engine][walk]") {
    const Tables tables = walk_tables();
    const WalkKey key = one_piece(tables, 125, 40);
    CHECK(walk_missing(walk_through({{-25, 60}, {4, 20}}), key, tables).empty());

    CartDemand gaps = walk_through({{-25, 60}, {4, 20}});
    gaps.cart = 3;
    gaps.stops[0].air.given = false;
    gaps.stops[1].stay.given = false;
    gaps.stops[1].air_movement.given = false;
    const WalkMissing missing = walk_missing(gaps, key, tables);
    REQUIRE(missing.readings.size() == 3);
    CHECK(missing.readings[0] == ReadingRef{Field::room_air, 0, 0});
    CHECK(missing.readings[1] == ReadingRef{Field::cart_stay, 0, 1});
    CHECK(missing.readings[2] == ReadingRef{Field::room_air_movement, 1, 0});
    CHECK_FALSE(missing.material_figures);

    CartDemand nowhere;
    nowhere.cart = 3;
    CHECK(walk_missing(nowhere, key, tables).readings[0] == ReadingRef{Field::cart_route, 3, 0});

    WalkKey bonded = key;
    bonded.core = tables.material("nylon");
    CHECK(walk_missing(walk_through({{-25, 60}}), bonded, tables).material_figures);  // the tread's thickness
    bonded.tread_thickness = 0.01;
    CHECK(walk_missing(walk_through({{-25, 60}}), bonded, tables).empty());
    bonded.tread_thickness = 0.07;  // more than the radius
    CHECK(walk_missing(walk_through({{-25, 60}}), bonded, tables).material_figures);

    Tables bare = walk_tables();
    bare.materials[2].conductivity.reset();
    CHECK(walk_missing(walk_through({{-25, 60}}), one_piece(bare, 125, 40), bare).material_figures);
}

TEST_CASE("stays of no length leave the wheel at the mean of the air", "[engine][walk]") {
    const Tables tables = walk_tables();
    const Walk walk =
        walk_route(walk_through({{-20, 0}, {10, 0}}), one_piece(tables, 125, 40), tables, WalkEnd::nominal);
    CHECK(walk.at_crossing[0].core.celsius() == Approx(-5));
    CHECK(walk.repeats);
}

TEST_CASE("equal wheels have equal keys, and a one-piece wheel's bore does not matter", "[engine][walk]") {
    const Tables tables = walk_tables();
    Wheel wheel;
    wheel.diameter = 125 * millimetre;
    wheel.tread_width = 40 * millimetre;
    wheel.tread_material = wheel.core_material = "urethane";
    wheel.hub_bore = 20 * millimetre;
    Wheel other = wheel;
    other.hub_bore = 30 * millimetre;
    CHECK(walk_key(wheel, tables) == walk_key(other, tables));
    other.core_material = "nylon";
    CHECK_FALSE(walk_key(wheel, tables) == walk_key(other, tables));
}
