#include "engine/physics/load_share.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;

TEST_CASE("fewer carrying castors never lower the load", "[engine][physics][property]") {
    const auto share = [](int castors, FloorSharing sharing) {
        return wheel_load(100 * kilogram, 500 * kilogram, castors, sharing)->in(kilogram);
    };
    CHECK(share(4, FloorSharing::all) < share(4, FloorSharing::all_but_one));
    CHECK(share(4, FloorSharing::all_but_one) < share(4, FloorSharing::diagonal));
    for (int castors = 2; castors < 12; ++castors) {
        CHECK(share(castors, FloorSharing::all) > share(castors + 1, FloorSharing::all));
        CHECK(share(castors, FloorSharing::all_but_one) == Approx(share(castors - 1, FloorSharing::all)));
    }
    CHECK(share(1, FloorSharing::all) == Approx(600));
}

TEST_CASE("axle loads carry the whole weight and follow the slope", "[engine][physics][property]") {
    const Mass mass = 600 * kilogram;
    for (const double tangent : {-0.2, -0.05, 0.0, 0.05, 0.2}) {
        const Slope slope = Slope::from_tangent(tangent);
        const auto loads = axle_loads(mass, 1 * metre, 0.4 * metre, 0.6 * metre, slope);
        REQUIRE(loads);
        CHECK((loads->front + loads->rear).si() == Approx(weight_of(mass).si() * slope.cosine()));
        // Turned round, the same cart on the same slope.
        const auto turned = axle_loads(mass, 1 * metre, 0.6 * metre, 0.6 * metre, -slope);
        REQUIRE(turned);
        CHECK(turned->rear.si() == Approx(loads->front.si()));
    }
    const auto level = axle_loads(mass, 1 * metre, 0.25 * metre);
    CHECK(level->front / (level->front + level->rear) == Approx(0.25));
}

TEST_CASE("a cart whose uphill axle lifts has no axle loads", "[engine][physics]") {
    const auto tipped = axle_loads(100 * kilogram, 0.5 * metre, 0.25 * metre, 2 * metre, Slope::from_tangent(0.2));
    REQUIRE_FALSE(tipped);
    CHECK(tipped.error().code == ErrorCode::no_answer);
}

TEST_CASE("load shares refuse what no cart has", "[engine][physics]") {
    CHECK_FALSE(wheel_load(1 * kilogram, 1 * kilogram, 0, FloorSharing::all));
    CHECK_FALSE(wheel_load(1 * kilogram, 1 * kilogram, 1, FloorSharing::all_but_one));
    CHECK_FALSE(wheel_load(1 * kilogram, 1 * kilogram, 5, FloorSharing::diagonal));
    CHECK_FALSE(wheel_load(Mass{}, Mass{}, 4, FloorSharing::all));
    CHECK_FALSE(wheel_load(-1 * kilogram, 5 * kilogram, 4, FloorSharing::all));
    CHECK_FALSE(wheel_load(1 * kilogram, 5 * kilogram, 4, FloorSharing::all, 0));
    CHECK(axle_loads(1 * kilogram, 1 * metre, 1.1 * metre).error().where == "cg-from-rear");
}
