// Steps, bevels and gaps against brute force: the floor is a set of points, the wheel's centre rides at the height at
// which the wheel just clears them all, and the level push over the load is the steepest climb of that height.

#include "engine/physics/obstacle.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

using namespace sillwalk::engine;

namespace {

struct Point {
    double x = 0, y = 0;
};

/// Where the centre rides at `x`: the floor's points and, left of `floor_ends`, a level floor at 0.
double centre_height(const std::vector<Point>& points, double radius, double floor_ends, double x) {
    double height = x <= floor_ends ? radius : -std::numeric_limits<double>::infinity();
    for (const Point& point : points) {
        const double across = x - point.x;
        if (std::abs(across) < radius) {
            height = std::max(height, point.y + std::sqrt(radius * radius - across * across));
        }
    }
    return height;
}

/// The steepest climb between `from` and `to`, by small differences.
double steepest(const std::vector<Point>& points, double radius, double floor_ends, double from, double to) {
    constexpr int steps = 20000;
    const double step = (to - from) / steps;
    double before = centre_height(points, radius, floor_ends, from);
    double most = 0;
    for (int i = 1; i <= steps; ++i) {
        const double now = centre_height(points, radius, floor_ends, from + i * step);
        most = std::max(most, (now - before) / step);
        before = now;
    }
    return most;
}

}  // namespace

TEST_CASE("the push over a step is the steepest climb of the centre", "[grids][step]") {
    for (const double diameter : {0.075, 0.125, 0.2}) {
        for (const double share : {0.01, 0.05, 0.2, 0.4}) {
            const double rise = share * diameter, radius = diameter / 2;
            const double brute = steepest({{0, rise}}, radius, 0, -radius, 0);
            INFO(diameter << " m, rise " << rise);
            CHECK(step_forces(newton, diameter * metre, rise * metre)->ratio == Approx(brute).epsilon(2e-3));
        }
    }
}

TEST_CASE("a bevelled lip is the easier of its slope and its edge", "[grids][step]") {
    for (const double diameter : {0.1, 0.2, 0.3}) {
        for (const double tangent : {0.2, 0.5, 1.0}) {
            const double rise = 0.0127, radius = diameter / 2;
            std::vector<Point> bevel;
            constexpr int samples = 400;
            for (int i = 0; i <= samples; ++i) {
                const double share = static_cast<double>(i) / samples;
                bevel.push_back({-(1 - share) * rise / tangent, share * rise});
            }
            const double brute = steepest(bevel, radius, 0, -radius - rise / tangent, 0);
            const auto forces = step_forces(newton, diameter * metre, rise * metre, Slope::from_tangent(tangent));
            INFO(diameter << " m, bevel " << tangent);
            REQUIRE(forces);
            CHECK(forces->ratio == Approx(brute).epsilon(1e-2));
        }
    }
}

TEST_CASE("a wheel in a gap sinks and leaves as its rim tells", "[grids][gap]") {
    for (const double diameter : {0.05, 0.1, 0.15}) {
        for (const double share : {0.1, 0.3, 0.6, 0.9}) {
            const double gap = share * diameter, radius = diameter / 2;
            std::vector<Point> floor;
            constexpr int samples = 400;
            for (int i = 0; i <= samples; ++i) {
                const double out = gap / 2 + (radius - gap / 2) * i / samples;
                floor.push_back({out, 0});
                floor.push_back({-out, 0});
            }
            const double nowhere = -10;
            const auto crossing = gap_crossing(diameter * metre, gap * metre);
            INFO(diameter << " m, gap " << gap);
            REQUIRE(crossing);
            CHECK(crossing->sag.si() == Approx(radius - centre_height(floor, radius, nowhere, 0)).epsilon(1e-9));
            CHECK(crossing->ratio == Approx(steepest(floor, radius, nowhere, 0, gap / 2)).epsilon(2e-3));
        }
    }
}

TEST_CASE("a gap before a rise is as hard as the rise it is said to equal", "[grids][gap]") {
    for (const double diameter : {0.1, 0.15}) {
        for (const double rise_share : {0.02, 0.05, 0.1}) {
            for (const double gap_share : {0.05, 0.2, 0.4, 0.6}) {
                const double rise = rise_share * diameter, gap = gap_share * diameter, radius = diameter / 2;
                const double brute = steepest({{0, 0}, {gap, rise}}, radius, 0, -radius, gap);
                const double brute_rise = radius * (1 - 1 / std::sqrt(1 + brute * brute));
                const auto equal = rise_with_gap(diameter * metre, rise * metre, gap * metre);
                INFO(diameter << " m, rise " << rise << ", gap " << gap);
                REQUIRE(equal);
                CHECK(equal->si() == Approx(brute_rise).epsilon(4e-3));
            }
        }
    }
}
