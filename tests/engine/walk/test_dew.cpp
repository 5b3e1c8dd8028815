#include "engine/walk/dew.hpp"
#include "tests/engine/walk/walk_cases.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::test;

namespace {

Input<double> humidity(double value, std::uint16_t room) {
    return {true, value, value, value, {Field::room_humidity, room, 0}, Known::measured};
}

/// Days in a freezer at -25 F, then hours in a dock at 40 F and 80 %.
CartDemand out_of_the_freezer(AirMovement dock) {
    CartDemand demand =
        walk_through({{fahrenheit(-25).celsius(), 72 * 60, AirMovement::blast}, {fahrenheit(40).celsius(), 240, dock}});
    demand.stops[0].humidity = humidity(0.8, 0);
    demand.stops[1].humidity = humidity(0.8, 1);
    return demand;
}

DewOnRoute dew(const CartDemand& demand, double diameter_mm) {
    const Tables tables = walk_tables();
    const Walk walk = walk_route(demand, one_piece(tables, diameter_mm, 50.8), tables, WalkEnd::nominal, true);
    return dew_on_route(demand, walk);
}

}  // namespace

TEST_CASE("a wheel out of the freezer is wet for as long as the sources worked out", "[engine][walk][published]") {
    // Worked out apart from this program (product of series, no latent heat): a 6 x 2 in wheel from -25 F in a 40 F,
    // 80 % dock (dew point 1.3 C) collects frost until its tread passes 0 C and water until 1.3 C: 40 to 52 min at
    // 34 W/m2K, 132 to 161 min at 9.4. Within 5 %: the rim is read between trace points 20 min apart, and the film is
    // 9.37 here.
    struct Row {
        AirMovement dock;
        double frost_min, wet_min;
    };
    for (const Row& row : {Row{AirMovement::blast, 40, 52}, Row{AirMovement::natural, 132, 161}}) {
        const DewOnRoute route = dew(out_of_the_freezer(row.dock), 152.4);
        REQUIRE(route.stays.size() == 1);
        const DewOnStay& stay = route.stays.front();
        CHECK(stay.stop == 1);
        CHECK(stay.dew_point.celsius() == Approx(1.3).margin(0.05));
        CHECK(stay.frost_on_entry);
        REQUIRE(stay.frost_until);
        REQUIRE(stay.wet_until);
        CHECK(stay.frost_until->in(minute) == Approx(row.frost_min).epsilon(0.05));
        CHECK(stay.wet_until->in(minute) == Approx(row.wet_min).epsilon(0.05));
        CHECK_FALSE(stay.returns_wet);
    }
}

TEST_CASE("a short stay sends the wheel back wet", "[engine][walk]") {
    CartDemand demand = out_of_the_freezer(AirMovement::natural);
    demand.stops[1].stay = ranged(20 * minute, Duration{});
    const DewOnRoute route = dew(demand, 152.4);
    REQUIRE(route.stays.size() == 1);
    CHECK(route.stays.front().returns_wet);
    CHECK_FALSE(route.stays.front().wet_until);
}

TEST_CASE("a room without a humidity is named, a dry one is left out", "[engine][walk]") {
    CartDemand demand = out_of_the_freezer(AirMovement::natural);
    demand.stops[1].humidity.given = false;
    const DewOnRoute unread = dew(demand, 152.4);
    CHECK(unread.stays.empty());
    REQUIRE(unread.unread.size() == 1);
    CHECK(unread.unread.front() == ReadingRef{Field::room_humidity, 1, 0});
    demand.stops[1].humidity = humidity(0.05, 1);
    CHECK(dew(demand, 152.4).stays.empty());
}
