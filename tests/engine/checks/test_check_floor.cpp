#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

/// 6 x 2 in wheel of 46 MPa with 1000 lbf on it, worked out apart from this program.
void use_worked_case(RuleCase& given) {
    given.tread.family = MaterialFamily::other;
    given.tread.modulus = figure(46.0 * megapascal);
    given.tread.poisson = figure(0.49);
    given.wheel.diameter = 6.0 * inch;
    given.wheel.tread_width = 2.0 * inch;
    given.cart.sharing = choose(FloorSharing::all, Field::cart_sharing);
    given.cart.tare = read(0.0 * pound, Field::cart_tare);
    given.cart.payload = read(4000.0 * pound, Field::cart_payload);
}

/// The first rows of the table of [bonded-layer].
LayerTable layer_table() {
    LayerTable table;
    table.contact_over_thickness = {0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 6.0};
    table.rows = {{0.50,
                   {1.063, 1.248, 1.534, 1.903, 2.342, 2.845, 4.048, 5.534, 7.332, 11.99, 26.48},
                   {1.064, 1.258, 1.575, 2.002, 2.524, 3.133, 4.605, 6.442, 8.691, 14.62, 33.52}},
                  {0.49,
                   {1.062, 1.240, 1.517, 1.869, 2.283, 2.751, 3.848, 5.159, 6.691, 10.43, 20.53},
                   {1.063, 1.250, 1.556, 1.963, 2.456, 3.022, 4.361, 5.979, 7.885, 12.60, 25.59}},
                  {0.45,
                   {1.056, 1.217, 1.459, 1.759, 2.101, 2.473, 3.295, 4.201, 5.176, 7.290, 11.92},
                   {1.057, 1.225, 1.493, 1.840, 2.245, 2.694, 3.691, 4.797, 5.992, 8.593, 14.31}}};
    table.citation = 3;
    return table;
}

}  // namespace

TEST_CASE("peak pressure of a solid tread against concrete", "[engine][floor][published]") {
    RuleCase given;
    use_worked_case(given);
    const Finding finding = given.run(check_floor);
    // Hertz line contact [johnson-contact], worked out apart: 4.70 MPa (682 psi); concrete 20 MPa (from memory).
    CHECK(finding.numbers[0].si == Approx(4.70e6).epsilon(0.01));
    CHECK(finding.use == Approx(0.235).epsilon(0.01));
    CHECK(finding.numbers[2].si == Approx(4448.22).epsilon(1e-4));
    CHECK(finding.outcome == Outcome::holds);
    CHECK(std::string(finding.formula) == "contact-line");
}

TEST_CASE("a thin bonded tread presses harder than a solid one", "[engine][floor][published]") {
    RuleCase given;
    use_worked_case(given);
    given.tables.layer = layer_table();
    given.floor.modulus.reset();
    given.wheel.tread_thickness = 6.35 * millimetre;
    const Finding finding = given.run(check_floor);
    // Bonded layer on a rigid core [bonded-layer]: 7.6 MPa.
    CHECK(finding.numbers[0].si == Approx(7.61e6).epsilon(0.02));
    CHECK(std::string(finding.formula) == "contact-layer");
    CHECK(finding.citations[1] == 3);
}

TEST_CASE("a crown presses harder than a flat tread", "[engine][floor][property]") {
    RuleCase given;
    use_worked_case(given);
    const double flat = given.run(check_floor).use;
    given.wheel.crown_radius = 0.2 * metre;
    const Finding crowned = given.run(check_floor);
    CHECK(crowned.use > flat);
    CHECK(std::string(crowned.formula) == "contact-elliptic");
}

TEST_CASE("hard urethane is as stiff as the coldest room makes it", "[engine][floor][published]") {
    // E of an ether 60D: 250 MPa at 23 C, 1400 MPa at -25 C [urethane-hardness-fit]. The pressure goes with its root.
    RuleCase given;
    given.tread.soft_segment = SoftSegment::ether;
    given.corner = Corner::nominal;
    given.cart.stops[0].air = read(celsius(23.0), Field::room_air, 0);
    given.cart.stops[1].air = read(celsius(23.0), Field::room_air, 1);
    const Finding warm = given.run(check_floor);
    CHECK(warm.numbers[3].si == Approx(250e6).epsilon(0.03));
    given.cart.stops[0].air = read(celsius(-25.0), Field::room_air, 0);
    const Finding cold = given.run(check_floor);
    CHECK(cold.numbers[3].si == Approx(1400e6).epsilon(0.04));
    CHECK(cold.numbers[5].si == Approx(248.15));
    CHECK(cold.use / warm.use == Approx(std::sqrt(1400.0 / 250.0)).epsilon(0.04));
    given.corner = Corner::worst;
    CHECK(given.run(check_floor).use > cold.use);
    CHECK(assumes(given.run(check_floor), Assumption::modulus_band));
}

TEST_CASE("soft treads follow the rubber relation", "[engine][floor][published]") {
    RuleCase given;
    given.corner = Corner::nominal;
    given.tread.family = MaterialFamily::rubber;
    given.wheel.hardness = Hardness{HardnessScale::shore_a, 50.0};
    CHECK(given.run(check_floor).numbers[3].si == Approx(2.456e6).epsilon(0.005));  // Gent 1958
}

TEST_CASE("the floor is not passed where a figure is missing", "[engine][floor]") {
    RuleCase given;
    SECTION("the floor's own") {
        given.floor.contact_limit.reset();
        CHECK(given.run(check_floor).outcome == Outcome::not_known);
    }
    SECTION("hardness of a urethane") {
        given.wheel.hardness.reset();
        CHECK(given.run(check_floor).outcome == Outcome::not_known);
    }
    SECTION("Shore A above 95 is not converted") {
        given.wheel.hardness = Hardness{HardnessScale::shore_a, 98.0};
        CHECK(given.run(check_floor).outcome == Outcome::not_known);
    }
    SECTION("the kind of floor") {
        given.cart.stops[1].floor = unchosen<const Floor*>(Field::room_floor, 1);
        const Finding finding = given.run(check_floor);
        CHECK(finding.outcome == Outcome::not_known);
        CHECK(misses(finding, Field::room_floor));
    }
    SECTION("payload") {
        given.cart.payload = unread<Mass>(Field::cart_payload);
        CHECK(misses(given.run(check_floor), Field::cart_payload));
    }
}

TEST_CASE("load, cold and a narrow tread never spare the floor", "[engine][floor][property]") {
    double lighter = 0, warmer = 0, wider = 0;
    for (double mass = 20.0; mass < 2000.0; mass *= 1.7) {
        RuleCase given;
        given.cart.payload = read(mass * kilogram, Field::cart_payload);
        const double use = given.run(check_floor).use;
        CHECK(use > lighter);
        lighter = use;
    }
    for (double degrees = 35.0; degrees > -35.0; degrees -= 5.0) {
        RuleCase given;
        given.cart.stops[0].air = read(celsius(degrees), Field::room_air, 0);
        const double use = given.run(check_floor).use;
        CHECK(use >= warmer);
        warmer = use;
    }
    for (double width = 80.0; width > 15.0; width -= 5.0) {
        RuleCase given;
        given.wheel.tread_width = width * millimetre;
        const double use = given.run(check_floor).use;
        CHECK(use > wider);
        wider = use;
    }
}
