#include "engine/physics/heat.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace sillwalk::engine;

namespace {

Body body(double diameter_mm, double width_mm, double conductivity, double density, double specific_heat) {
    return {diameter_mm * millimetre, width_mm * millimetre, conductivity * watt_per_metre_kelvin,
            density * kilogram_per_cubic_metre, specific_heat * joule_per_kilogram_kelvin};
}
FilmCoefficient film(double value) {
    return value * watt_per_square_metre_kelvin;
}

/// 6 x 2 in urethane wheel with the properties of materials data collections: k 0.21, 1150 kg/m3, 1800 J/kgK.
Body urethane_wheel() {
    return body(152.4, 50.8, 0.21, 1150, 1800);
}

BodyTemperatures series(const Body& wheel, Temperature start, std::vector<HeatStage> stages,
                        std::optional<BodyPoint> point = std::nullopt) {
    const auto result = temperatures_by_series(wheel, start, stages, point);
    REQUIRE(result);
    return result->back();
}

}  // namespace

TEST_CASE("a short brass cylinder cools as in the textbook example", "[engine][heat][published]") {
    // Cengel, Heat and Mass Transfer, example 4-8 (cylinder 100 mm across, 120 mm high, 120 C into 25 C air at 60
    // W/m2K, 900 s): 63 C at the centre from the charts, 62.7 C by the one-term product. Second-hand (companion
    // notebook). Brass there: k 110, 8530 kg/m3, 380 J/kgK (diffusivity 33.9e-6 m2/s, that is cp 380.4).
    const Body brass = body(100, 120, 110, 8530, 380.4);
    const HeatStage air{celsius(25), film(60), 900 * second};
    CHECK(series(brass, celsius(120), {air}).core.celsius() == Approx(62.7).margin(0.5));
    // The same example asks for the centre of the top face: 62.2 C.
    const BodyPoint top{Length{}, Length{}};
    CHECK(series(brass, celsius(120), {air}, top).point->celsius() == Approx(62.2).margin(0.5));
}

TEST_CASE("a urethane wheel in a freezer follows the product of series", "[engine][heat][derived]") {
    // 40-term product worked out independently in Python for the project's sources; 30 min at -25 F from 20 C.
    struct Row {
        double film_W_per_m2K, core_C;
    };
    for (const Row& row : {Row{9.37, 14.4}, Row{34.0, 8.4}}) {
        const HeatStage air{fahrenheit(-25), film(row.film_W_per_m2K), 30 * minute};
        CHECK(series(urethane_wheel(), celsius(20), {air}).core.celsius() == Approx(row.core_C).margin(0.05));
    }
}

TEST_CASE("the core goes on cooling in the dock", "[engine][heat][derived]") {
    // Duhamel superposition, same source: 60 min at -25 F, then 30 min at 40 F, 34 W/m2K in both.
    const std::vector<HeatStage> stages{{fahrenheit(-25), film(34), 60 * minute},
                                        {fahrenheit(40), film(34), 30 * minute}};
    const auto result = temperatures_by_series(urethane_wheel(), celsius(20), stages);
    REQUIRE(result);
    CHECK((*result)[0].core.celsius() == Approx(-6.74).margin(0.01));
    CHECK((*result)[1].core.celsius() == Approx(-8.87).margin(0.01));
    CHECK((*result)[1].rim > (*result)[0].rim);
}

TEST_CASE("the slowest modes decay with the printed one-term roots", "[engine][heat][published]") {
    // Cengel, Heat and Mass Transfer, Table 4-2 (verified second-hand, roots recomputed for the sources): for late
    // times the centre of a wall decays as exp(-l1^2 Fo) with amplitude A1, of a long cylinder with its own pair. A
    // body 1000 times as wide as thick is the one, a body 100 times as long the other: the far direction must then
    // stay at 1.
    struct Row {
        double biot, wall_root, wall_amplitude, cylinder_root, cylinder_amplitude;
    };
    const Row rows[] = {
        {0.1, 0.3111, 1.0161, 0.4417, 1.0246}, {0.5, 0.6533, 1.0701, 0.9408, 1.1143},
        {1.0, 0.8603, 1.1191, 1.2558, 1.2071}, {2.0, 1.0769, 1.1785, 1.5994, 1.3384},
        {5.0, 1.3138, 1.2402, 1.9898, 1.5029}, {10.0, 1.4289, 1.2620, 2.1795, 1.5677},
    };
    const double k = 0.2, density = 1000, heat = 2000;  // diffusivity 1e-7 m2/s
    const double half = 0.02;                           // m
    const double seconds = 0.8 * half * half / 1e-7;    // Fo 0.8: the second term is below 1e-5
    for (const Row& row : rows) {
        const HeatStage air{celsius(0), film(row.biot * k / half), seconds * second};
        const double wall = series(body(4000, 40, k, density, heat), celsius(100), {air}).core.celsius() / 100.0;
        const double wall_expected = row.wall_amplitude * std::exp(-row.wall_root * row.wall_root * 0.8);
        CHECK(wall == Approx(wall_expected).epsilon(4e-4));  // half a last digit of root and amplitude
        const double cylinder = series(body(40, 4000, k, density, heat), celsius(100), {air}).core.celsius() / 100.0;
        const double cylinder_expected =
            row.cylinder_amplitude * std::exp(-row.cylinder_root * row.cylinder_root * 0.8);
        CHECK(cylinder == Approx(cylinder_expected).epsilon(4e-4));
    }
}

TEST_CASE("one term alone would be far wrong on a wheel", "[engine][heat][derived]") {
    // Same sources: one term gives +22.7 C at the core after 30 min at 34 W/m2K, warmer than the start. The engine's
    // answer must stay below the start.
    const HeatStage air{fahrenheit(-25), film(34), 30 * minute};
    CHECK(series(urethane_wheel(), celsius(20), {air}).core < celsius(20));
}
