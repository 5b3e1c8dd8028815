#include "engine/checks/demand.hpp"
#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

TEST_CASE("demand: a reading becomes a range; quantities end at zero", "[demand]") {
    Survey survey = plain_survey();
    survey.carts[0].payload = within(240.0 * kilogram, 20.0 * kilogram);
    survey.crossings[0].gap = within(2.0 * millimetre, 3.0 * millimetre);
    survey.rooms[0].air = within(celsius(1.0), 2.0 * kelvin_step);
    const Tables tables = plain_tables();
    const CartDemand demand = resolve(survey, 0, tables);
    CHECK(demand.payload.low.si() == Approx(220.0));
    CHECK(demand.payload.high.si() == Approx(260.0));
    CHECK(demand.crossings[0].gap.low.si() == 0.0);
    CHECK(demand.crossings[0].gap.high.si() == Approx(0.005));
    CHECK(demand.stops[0].air.low.celsius() == Approx(-1.0));
}

TEST_CASE("demand: a crossing is met the way the cart travels", "[demand]") {
    Survey survey = plain_survey();
    survey.crossings[0].slope = within(Slope::from_tangent(0.08), Slope::from_tangent(0.01));
    const Tables tables = plain_tables();
    const CartDemand demand = resolve(survey, 0, tables);
    REQUIRE(demand.crossings.size() == 2);
    CHECK_FALSE(demand.crossings[0].reversed);
    CHECK(demand.crossings[0].slope.high.tangent() == Approx(0.09));
    CHECK(demand.crossings[1].reversed);
    CHECK(demand.crossings[1].slope.nominal.tangent() == Approx(-0.08));
    CHECK(demand.crossings[1].slope.low.tangent() == Approx(-0.09));
    CHECK(demand.crossings[1].slope.high.tangent() == Approx(-0.07));
}

TEST_CASE("demand: an unread run-up is the wetter room's, if both are known", "[demand]") {
    Survey survey = plain_survey();
    survey.crossings[0].wetness = {};
    survey.rooms[1].wetness = chosen(Wetness::frost);
    const Tables tables = plain_tables();
    const auto run_up = resolve(survey, 0, tables).crossings[0].run_up;
    CHECK(run_up.value == Wetness::frost);
    CHECK(reading_path(run_up.ref) == "/rooms/1/wetness");
    survey.rooms[0].wetness = {};
    CHECK_FALSE(resolve(survey, 0, tables).crossings[0].run_up.given);
}

TEST_CASE("demand: only washings of rooms on the route are met", "[demand]") {
    Survey survey = plain_survey();
    Room far = survey.rooms[0];
    far.id = RoomId("far");
    survey.rooms.push_back(far);
    Washing washing;
    washing.rooms = {RoomId("far")};
    survey.washings = {washing};
    const Tables tables = plain_tables();
    CHECK(resolve(survey, 0, tables).washings.empty());
    survey.washings[0].rooms.push_back(RoomId("there"));
    CHECK(resolve(survey, 0, tables).washings.size() == 1);
}

TEST_CASE("demand: collapsing keeps one range open", "[demand]") {
    Survey survey = plain_survey();
    survey.carts[0].payload = within(240.0 * kilogram, 20.0 * kilogram);
    survey.carts[0].tare = within(60.0 * kilogram, 5.0 * kilogram);
    const Tables tables = plain_tables();
    const CartDemand demand = collapse(resolve(survey, 0, tables), ReadingRef{Field::cart_payload, 0});
    CHECK(demand.tare.low == demand.tare.high);
    CHECK(demand.payload.low < demand.payload.high);
}
