#include "engine/walk/crossing_state.hpp"
#include "tests/engine/walk/walk_cases.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::test;

namespace {

/// 310 kg on a wheelbase of 1 m, centre 0.4 m ahead of the rear axle and 0.9 m high; empty 60 kg.
CartDemand cart_of() {
    CartDemand cart = walk_through({{-25, 60}, {4, 20}});
    cart.castors = {
        {0 * metre, 0.3 * metre}, {0 * metre, -0.3 * metre}, {1 * metre, 0.3 * metre}, {1 * metre, -0.3 * metre}};
    cart.tare = ranged(60 * kilogram, 2 * kilogram);
    cart.payload = ranged(250 * kilogram, 10 * kilogram);
    cart.cg_forward_loaded = ranged(0.4 * metre, 0.05 * metre);
    cart.cg_height_loaded = ranged(0.9 * metre, 0.1 * metre);
    cart.cg_forward_empty = ranged(0.5 * metre, Length{});
    cart.cg_height_empty = ranged(0.5 * metre, Length{});
    cart.speed = ranged(0.9 * metre_per_second, Speed{});
    cart.crossings[0].slope = {
        true, Slope::from_tangent(-0.08), Slope::from_tangent(-0.08), Slope::from_tangent(-0.08), {}, Known::measured};
    cart.crossings[1].loaded = false;
    return cart;
}

}  // namespace

TEST_CASE("axle loads at a crossing are those of the leg, level and on its slope", "[engine][walk][derived]") {
    const auto states = crossing_states(cart_of());
    REQUIRE(states.size() == 2);
    REQUIRE(states[0]);
    REQUIRE(states[1]);
    // Moments about the axles: 310 x 9.80665 = 3040.06 N; front 0.4 of it, rear 0.6.
    CHECK(states[0]->level.front.in(newton) == Approx(1216.02).epsilon(1e-5));
    CHECK(states[0]->level.rear.in(newton) == Approx(1824.04).epsilon(1e-5));
    // Downhill 8 %: front = W (0.4 cos t + 0.9 sin t) with cos t = 0.996815, sin t = 0.079745: 1212.15 + 218.18 =
    // 1430.34 N; rear = W cos t - front = 3030.38 - 1430.34 = 1600.04 N.
    REQUIRE(states[0]->on_slope);
    CHECK(states[0]->on_slope->front.in(newton) == Approx(1430.34).epsilon(1e-4));
    CHECK(states[0]->on_slope->rear.in(newton) == Approx(1600.04).epsilon(1e-4));
    // Empty on the way back: 60 kg, half on each axle; its slope was not read.
    CHECK(states[1]->level.front.in(newton) == Approx(60 * 9.80665 / 2).epsilon(1e-9));
    CHECK_FALSE(states[1]->on_slope);
    CHECK(states[1]->speed == 0.9 * metre_per_second);
}

TEST_CASE("the heavy end carries more on either axle", "[engine][walk][property]") {
    const CartDemand cart = cart_of();
    const auto nominal = crossing_state(cart, cart.crossings[0], LoadEnd::nominal);
    const auto heavy = crossing_state(cart, cart.crossings[0], LoadEnd::heavy);
    REQUIRE(nominal);
    REQUIRE(heavy);
    CHECK(heavy->level.front > nominal->level.front);
    CHECK(heavy->level.rear > nominal->level.rear);
    CHECK(heavy->on_slope->front > nominal->on_slope->front);
}

TEST_CASE("a leg without its mass or centre has no loads", "[engine][walk]") {
    CartDemand cart = cart_of();
    cart.payload.given = false;
    CHECK_FALSE(crossing_states(cart)[0]);
    CHECK(crossing_states(cart)[1]);  // the empty leg does not need it
    cart.castors.clear();
    CHECK_FALSE(crossing_states(cart)[1]);
}
