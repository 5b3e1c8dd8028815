#include "engine/physics/heat.hpp"
#include "engine/physics/heat_line.hpp"
#include "engine/physics/tridiagonal.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

using namespace sillwalk::engine;

namespace {

Body urethane(double diameter_mm, double width_mm) {
    return {diameter_mm * millimetre, width_mm * millimetre, 0.21 * watt_per_metre_kelvin,
            1150 * kilogram_per_cubic_metre, 1800 * joule_per_kilogram_kelvin};
}
FilmCoefficient film(double value) {
    return value * watt_per_square_metre_kelvin;
}

double difference(Temperature a, Temperature b) {
    return abs(a - b).in(kelvin_step);
}

}  // namespace

TEST_CASE("series and finite volumes agree within 0.05 K", "[engine][heat][property]") {
    const BodyPoint point{30 * millimetre, 5 * millimetre};
    double worst = 0.0;
    for (const double diameter : {75.0, 100.0, 152.4, 200.0, 250.0}) {
        for (const double width : {25.0, 50.8, 75.0}) {
            for (const double h : {3.0, 9.37, 20.0, 34.0, 60.0}) {
                for (const double minutes : {2.0, 5.0, 15.0, 30.0, 60.0, 240.0, 1440.0}) {
                    const std::vector<HeatStage> stages{{celsius(-32), film(h), minutes * minute},
                                                        {celsius(10), film(h), minutes / 2 * minute}};
                    const Body body = urethane(diameter, width);
                    const auto a = temperatures_by_series(body, celsius(20), stages, point);
                    const auto b = temperatures_by_volumes(body, celsius(20), stages, point);
                    REQUIRE(a);
                    REQUIRE(b);
                    for (std::size_t k = 0; k < stages.size(); ++k) {
                        const double here = std::max(
                            {difference((*a)[k].core, (*b)[k].core), difference((*a)[k].rim, (*b)[k].rim),
                             difference((*a)[k].mean, (*b)[k].mean), difference(*(*a)[k].point, *(*b)[k].point)});
                        worst = std::max(worst, here);
                        CAPTURE(diameter, width, h, minutes, k, here);
                        CHECK(here < 0.05);
                    }
                }
            }
        }
    }
    CAPTURE(worst);
    CHECK(worst > 0.0);  // two methods, not one under two names
}

TEST_CASE("temperatures stay between start and air, and end at the air", "[engine][heat][property]") {
    const Body body = urethane(125, 40);
    for (const double minutes : {0.5, 10.0, 100.0, 20000.0}) {
        const std::vector<HeatStage> stages{{celsius(-30), film(20), minutes * minute}};
        const auto result = wheel_temperatures(body, celsius(15), stages);
        REQUIRE(result);
        const BodyTemperatures& t = result->front();
        CHECK(t.rim <= t.mean + TemperatureChange::from_si(1e-9));
        CHECK(t.mean <= t.core + TemperatureChange::from_si(1e-9));
        CHECK(t.core <= celsius(15.001));
        CHECK(t.rim >= celsius(-30.001));
    }
    const auto late = wheel_temperatures(body, celsius(15), {{celsius(-30), film(20), 20000 * minute}});
    CHECK(late->front().core.celsius() == Approx(-30).margin(1e-6));
}

TEST_CASE("an hour in one room is twice half an hour", "[engine][heat][property]") {
    const Body body = urethane(152.4, 50.8);
    const HeatStage hour_long{celsius(-25), film(34), 60 * minute}, half{celsius(-25), film(34), 30 * minute};
    const auto once = temperatures_by_volumes(body, celsius(20), {hour_long});
    const auto twice = temperatures_by_volumes(body, celsius(20), {half, half});
    // Exact in time: only rounding may differ.
    CHECK(difference(once->back().core, twice->back().core) < 1e-9);
    CHECK(difference(once->back().rim, twice->back().rim) < 1e-9);
}

TEST_CASE("the heat that leaves the body leaves through its film", "[engine][heat][property]") {
    // Energy balance over a short time from a uniform start: loss = film x surface x (start - air), to first order.
    const Body body = urethane(152.4, 50.8);
    const double radius = 0.0762, width = 0.0508, pi = 3.14159265358979;
    const double surface = 2 * pi * radius * radius + 2 * pi * radius * width;
    const double heat_capacity = 1150.0 * 1800.0 * pi * radius * radius * width;
    const auto result = temperatures_by_volumes(body, celsius(20), {{celsius(-20), film(5), 1 * second}});
    const double lost = (20.0 - result->back().mean.celsius()) * heat_capacity;
    CHECK(lost == Approx(5.0 * surface * 40.0).epsilon(0.03));  // the surface has cooled by about 2 % of 40 K meanwhile
}

TEST_CASE("a changed film coefficient is refused by the series and taken by the volumes", "[engine][heat]") {
    const std::vector<HeatStage> stages{{celsius(-25), film(34), 60 * minute}, {celsius(4), film(9), 30 * minute}};
    const auto refused = temperatures_by_series(urethane(152.4, 50.8), celsius(20), stages);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().where == "stages");
    CHECK(wheel_temperatures(urethane(152.4, 50.8), celsius(20), stages));
}

TEST_CASE("unusable input is refused by its key", "[engine][heat]") {
    const std::vector<HeatStage> one{{celsius(-25), film(34), 60 * minute}};
    CHECK(wheel_temperatures(urethane(0, 50), celsius(20), one).error().where == "diameter");
    CHECK(wheel_temperatures(urethane(100, -1), celsius(20), one).error().where == "width");
    CHECK(wheel_temperatures(urethane(100, 50), celsius(20), {}).error().where == "stages");
    CHECK(wheel_temperatures(urethane(100, 50), celsius(20), {{celsius(0), film(0), 1 * minute}}).error().where ==
          "stages");
    CHECK(wheel_temperatures(urethane(100, 50), celsius(20), one, BodyPoint{51 * millimetre, {}}).error().where ==
          "radius-at");
    CHECK(wheel_temperatures(urethane(100, 50), celsius(20), one, BodyPoint{{}, 51 * millimetre}).error().where ==
          "depth-from-face");
}

TEST_CASE("the modes of a chain are those of the closed form", "[engine][heat][published]") {
    // Eigenvalues of the second difference matrix (2, -1): 4 sin^2(k pi / 2(n+1)). Strang, Introduction to Applied
    // Mathematics, section 5.5 (from memory).
    const std::size_t n = 12;
    const TridiagonalModes modes = tridiagonal_modes(std::vector<double>(n, 2.0), std::vector<double>(n - 1, -1.0));
    for (std::size_t k = 0; k < n; ++k) {
        const double half_angle = static_cast<double>(k + 1) * 3.14159265358979323846 / (2.0 * (n + 1));
        CHECK(modes.values[k] == Approx(4.0 * std::sin(half_angle) * std::sin(half_angle)).epsilon(1e-12));
    }
    for (std::size_t a = 0; a < n; ++a) {
        for (std::size_t b = 0; b < n; ++b) {
            double product = 0.0;
            for (std::size_t row = 0; row < n; ++row) product += modes.vector(row, a) * modes.vector(row, b);
            CHECK(product == Approx(a == b ? 1.0 : 0.0).margin(1e-12));
        }
    }
}
