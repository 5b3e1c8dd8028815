#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

// ISO 14644-1: a lower class number is a cleaner room.
TEST_CASE("the cleanest room asks for the wheel's class", "[engine][room]") {
    RuleCase given;
    given.cart.stops[1].cleanroom_class = choose(6, Field::room_cleanroom, 1);
    CHECK(given.run(check_room).outcome == Outcome::not_known);
    given.wheel.cleanroom_class = 7;
    const Finding dirtier = given.run(check_room);
    CHECK(dirtier.outcome == Outcome::fails);
    CHECK(dirtier.statement == Statement::room_cleanroom);
    CHECK(dirtier.place == Place{PlaceKind::room, 1});
    for (int offered = 1; offered <= 6; ++offered) {
        given.wheel.cleanroom_class = offered;
        CHECK(given.run(check_room).outcome == Outcome::holds);
    }
    given.cart.stops[0].cleanroom_class = unchosen<int>(Field::room_cleanroom, 0);
    CHECK(misses(given.run(check_room), Field::room_cleanroom));
}

TEST_CASE("a floor that must not be marked", "[engine][room]") {
    RuleCase given;
    given.cart.non_marking = choose(true, Field::cart_non_marking);
    CHECK(given.run(check_room).outcome == Outcome::holds);
    given.wheel.non_marking = false;
    CHECK(given.run(check_room).statement == Statement::room_marking);
    CHECK(given.run(check_room).outcome == Outcome::fails);
    given.wheel.non_marking.reset();
    CHECK(given.run(check_room).outcome == Outcome::not_known);
    given.cart.non_marking = unchosen<bool>(Field::cart_non_marking);
    CHECK(misses(given.run(check_room), Field::cart_non_marking));
}

TEST_CASE("a hard tread is said to be louder but never fails for it", "[engine][room]") {
    RuleCase given;
    const Finding hard = given.run(check_room);
    CHECK(hard.statement == Statement::room_noise);
    CHECK(hard.outcome == Outcome::holds);
    given.wheel.hardness = Hardness{HardnessScale::shore_a, 75.0};
    CHECK(given.run(check_room).statement == Statement::room_ok);
}
