#include "engine/physics/rolling.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace sillwalk::engine;

namespace {

RollingInput wheel() {
    RollingInput out;
    out.load = 1 * kilonewton;
    out.diameter = 125 * millimetre;
    out.lever_arm = 2 * millimetre;
    return out;
}

}  // namespace

TEST_CASE("rolling force is in proportion to load and falls with diameter", "[engine][physics][property]") {
    RollingInput input = wheel();
    const double one = rolling_force(input)->force.si();
    input.load = 3 * kilonewton;
    CHECK(rolling_force(input)->force.si() == Approx(3 * one));
    input = wheel();
    input.diameter = 250 * millimetre;
    CHECK(rolling_force(input)->force.si() == Approx(one / 2));
}

TEST_CASE("up and down a slope differ by twice the weight's share", "[engine][physics][property]") {
    RollingInput input = wheel();
    input.slope = Slope::from_tangent(0.08);
    const double up = rolling_force(input)->force.si();
    const double weight_share = 1000 * input.slope.sine();
    input.slope = -input.slope;
    const double down = rolling_force(input)->force.si();
    CHECK(up - down == Approx(2 * weight_share));
    CHECK(down < 0);  // it runs away and must be held
    input.slope = Slope{};
    CHECK(rolling_force(input)->force.si() == Approx(1000 * rolling_force(input)->coefficient));
}

TEST_CASE("bearing and seal drag add to the tread's", "[engine][physics][property]") {
    RollingInput input = wheel();
    const double bare = rolling_force(input)->coefficient;
    input.bearing_friction = 0.1;
    input.bearing_diameter = 12 * millimetre;
    const double with_bearing = rolling_force(input)->coefficient;
    CHECK(with_bearing - bare == Approx(0.1 * 12 / 125));
    input.seal_coefficient = 0.003;
    CHECK(rolling_force(input)->coefficient - with_bearing == Approx(0.003));
}

TEST_CASE("the work of turning on the spot is that of the line of contact", "[engine][physics]") {
    // Uniform pressure over width w: the mean distance from the middle is w/4; summed here in strips.
    const double width = 0.032;
    double torque = 0;
    const int strips = 100000;
    for (int i = 0; i < strips; ++i) {
        const double x = (i + 0.5) / strips * width - width / 2;
        torque += 0.5 * 500.0 / strips * std::abs(x);
    }
    const auto turn = swivel_turn(500 * newton, 0.5, 32 * millimetre, 40 * millimetre);
    CHECK(turn->torque.si() == Approx(torque).epsilon(1e-6));
    CHECK(turn->force.si() == Approx(torque / 0.040).epsilon(1e-6));
}

TEST_CASE("the loss coefficient is the front half of a Hertz line contact", "[engine][physics]") {
    // Greenwood, Minshall & Tabor 1961 (from memory): the moment of the front half is 2 W b/(3 pi), a share
    // alpha = pi tan d of it is lost; summed here from the half-ellipse.
    const double b = 0.01;
    const double radius = 0.0762;
    double moment = 0;
    const int strips = 200000;
    for (int i = 0; i < strips; ++i) {
        const double x = (i + 0.5) / strips * b;
        moment += 2 / (3.14159265358979 * b) * std::sqrt(1 - x * x / (b * b)) * x * (b / strips);
    }
    const double lost = 3.14159265358979 * 0.06 * moment / radius;
    const auto loss = rolling_loss(1 * newton, b * metre, 2 * radius * metre, 0.06, 2 * metre_per_second);
    CHECK(loss->coefficient == Approx(lost).epsilon(1e-5));
    CHECK(loss->heat.si() == Approx(2 * loss->force.si()));
}

TEST_CASE("rolling refuses what cannot be", "[engine][physics]") {
    RollingInput input = wheel();
    input.lever_arm = -1 * millimetre;
    CHECK(rolling_force(input).error().where == "f");
    CHECK(rolling_loss(1 * newton, 80 * millimetre, 150 * millimetre, 0.1, Speed{}).error().where == "half-width");
    CHECK(swivel_turn(1 * newton, 0.5, 32 * millimetre, Length{}).error().where == "lead");
}
