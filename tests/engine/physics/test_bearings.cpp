#include "engine/physics/bearings.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace sillwalk::engine;

namespace {

BearingLifeInput bearing(Force rating, Force load, RollingElement element = RollingElement::ball) {
    BearingLifeInput out;
    out.rating = rating;
    out.load = load;
    out.element = element;
    return out;
}

}  // namespace

TEST_CASE("life follows the power of the load ratio", "[engine][physics][property]") {
    for (const auto element : {RollingElement::ball, RollingElement::roller}) {
        const double power = element == RollingElement::ball ? 3.0 : 10.0 / 3.0;
        BearingLifeInput input = bearing(10 * kilonewton, 10 * kilonewton, element);
        CHECK(bearing_life(input)->revolutions == Approx(1e6));
        double last = 1e6;
        for (int i = 0; i < 6; ++i) {
            input.load = 0.5 * input.load;
            const double life = bearing_life(input)->revolutions;
            CHECK(life / last == Approx(std::pow(2.0, power)));
            last = life;
        }
    }
}

TEST_CASE("speed with a wheel and turns per minute tell the same life", "[engine][physics][property]") {
    BearingLifeInput by_speed = bearing(5 * kilonewton, 1 * kilonewton);
    by_speed.speed = 1 * metre_per_second;
    by_speed.wheel_diameter = 150 * millimetre;
    BearingLifeInput by_turns = bearing(5 * kilonewton, 1 * kilonewton);
    by_turns.turns = Frequency::from_si(1 / (3.14159265358979324 * 0.150));
    const auto a = bearing_life(by_speed);
    const auto b = bearing_life(by_turns);
    CHECK(a->hours->si() == Approx(b->hours->si()));
    CHECK(a->distance->si() == Approx(a->hours->si() * 1.0));
    CHECK_FALSE(b->distance);
    by_speed.turns = by_turns.turns;
    CHECK(bearing_life(by_speed).error().where == "rpm");
}

TEST_CASE("the axle's diameter cancels in PV", "[engine][physics][property]") {
    for (const double axle : {8.0, 12.7, 20.0}) {
        const auto plain =
            plain_bearing(1 * kilonewton, 150 * millimetre, 1.2 * metre_per_second, 30 * millimetre, axle * millimetre);
        CHECK((*plain->pressure * *plain->velocity).si() == Approx(plain->pv.si()));
        CHECK(plain->pv.si() == Approx(1000 * 1.2 / (0.030 * 0.150)));
    }
    CHECK(plain_bearing(1 * newton, 10 * millimetre, Speed{}, 1 * millimetre, 10 * millimetre).error().where ==
          "axle-diameter");
}
