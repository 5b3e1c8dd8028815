#include "engine/physics/stability.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace sillwalk::engine;

TEST_CASE("the blow only ever raises the speed it takes to tip", "[engine][physics][property]") {
    for (const double height : {0.3, 0.6, 1.2}) {
        double before = 0;
        for (double base = 0.1; base < 1; base += 0.1) {
            const auto tip = tipping(height * metre, base * metre);
            CHECK(tip->least >= tip->energy_only);
            CHECK(tip->energy_only.si() > before);
            CHECK(tip->tilt_degrees == Approx(std::atan(base / height) * 180 / 3.14159265358979));
            before = tip->energy_only.si();
        }
    }
    CHECK(tipping(1 * metre, 1e-6 * metre)->least.si() < 1e-5);
}

TEST_CASE("a higher centre tips sooner", "[engine][physics][property]") {
    double before = 1e9;
    for (double height = 0.2; height < 2; height += 0.1) {
        const double least = tipping(height * metre, 0.4 * metre)->least.si();
        CHECK(least < before);
        before = least;
    }
}

TEST_CASE("a point mass at a dead stop tips as a pendulum about the wheel", "[engine][physics]") {
    // Angular momentum m v H = m (H^2 + d^2) w, then energy to the balance point (derived).
    const double h = 0.8;
    const double d = 0.3;
    const double reach = std::hypot(h, d);
    const double spin = std::sqrt(2 * 9.80665 * (reach - h)) / reach;
    CHECK(tipping(h * metre, d * metre)->least.si() == Approx(spin * reach * reach / h));
}

TEST_CASE("a flat spot grows with time and is bounded by its dent", "[engine][physics][property]") {
    const auto spot = [](Duration time, double creep) {
        return *flat_spot(10 * millimetre, 150 * millimetre, time, creep, 0.2);
    };
    CHECK(spot(1 * minute, 0.1).half_width_later.in(millimetre) == Approx(10));
    CHECK(spot(Duration{}, 0.1).half_width_later.in(millimetre) == Approx(10));
    CHECK(spot(10 * minute, 0.1).half_width_later.in(millimetre) == Approx(10 * std::sqrt(1.1)));
    CHECK(spot(100 * minute, 0.1).half_width_later.in(millimetre) == Approx(10 * std::sqrt(1.2)));
    CHECK(spot(14 * day, 0.1).left > spot(1 * day, 0.1).left);
    CHECK(spot(1 * day, 0.2).left > spot(1 * day, 0.1).left);
    const FlatSpot one = spot(3 * day, 0.1);
    CHECK(one.left.si() == Approx(0.2 * one.sagitta.si()));
    CHECK(one.chord.si() == Approx(2 * one.half_width_later.si()));
    CHECK(flat_spot(10 * millimetre, 150 * millimetre, 1 * day, 0.1, 1.2).error().where == "set-share");
}
