#include "engine/base/units.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;

// Laws that hold at compile time.
static_assert((3.0 * metre).in(millimetre) == 3000.0);
static_assert(std::is_same_v<decltype(newton / (metre * metre)), Pressure>);
static_assert(std::is_same_v<decltype(metre / metre), double>);
static_assert(std::is_same_v<decltype(celsius(1.0) - celsius(0.0)), TemperatureChange>);

TEST_CASE("units convert by their exact definitions", "[engine][base]") {
    // International yard and pound agreement 1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, exactly.
    CHECK(inch.in(millimetre) == Approx(25.4).epsilon(1e-15));
    CHECK(pound.in(kilogram) == Approx(0.45359237).epsilon(1e-15));
    CHECK(pound_force.in(newton) == Approx(4.4482216152605).epsilon(1e-14));
    CHECK(pound_per_square_inch.in(pascal) == Approx(6894.757293168).epsilon(1e-12));
    CHECK(fahrenheit(-40.0).celsius() == Approx(-40.0).margin(1e-12));
    CHECK(mile_per_hour.in(metre_per_second) == Approx(0.44704).epsilon(1e-15));
}

TEST_CASE("a slope of 1:12 is a tangent", "[engine][base]") {
    const Slope ramp = Slope::from_tangent(1.0 / 12.0);
    CHECK(ramp.degrees() == Approx(4.7636417).epsilon(1e-7));
    CHECK(ramp.sine() * ramp.sine() + ramp.cosine() * ramp.cosine() == Approx(1.0).epsilon(1e-15));
}
