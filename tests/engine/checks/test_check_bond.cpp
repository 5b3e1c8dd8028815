#include "engine/checks/tread_strain.hpp"
#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

/// Urethane of 65 Shore D, 12.7 mm on steel; expansions [urethane-data-sheets]; steel from memory.
struct BondCase : RuleCase {
    Walk walk;

    BondCase() {
        wheel.tread_material = "pu-65d";
        wheel.core_material = "steel";
        wheel.tread_thickness = 12.7 * millimetre;
        wheel.temperature_max = fahrenheit(180.0);
        wheel.hardness = Hardness{HardnessScale::shore_d, 65.0};
        tread.soft_segment = SoftSegment::ether;
        tread.expansion_per_kelvin = figure(115e-6, 2);
        tread.conductivity = figure(0.21 * watt_per_metre_kelvin, 2);
        tread.tan_delta = figure(0.02, 2);
        core = {};
        core.id = "steel";
        core.family = MaterialFamily::steel;
        core.chemical_column = "ss304";
        core.expansion_per_kelvin = figure(12e-6, 3);
        cart.push_rate = unread<Frequency>(Field::cart_push_rate);
        tables.film = {{AirMovement::natural, figure(9.37 * watt_per_square_metre_kelvin)}};
        tables.practice.bond_shear_limit = figure(8.0 * megapascal);
        tables.practice.bond_retention_70 = figure(0.6);
        tables.practice.bond_retention_100 = figure(0.35);
        tables.practice.temperature_tight = figure(5.0 * kelvin_step);
        // [bonded-layer], rigid core, nu 0.49 and 0.45.
        tables.layer.contact_over_thickness = {0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 6.0};
        tables.layer.rows = {{0.49,
                              {1.062, 1.240, 1.517, 1.869, 2.283, 2.751, 3.848, 5.159, 6.691, 10.43, 20.53},
                              {1.063, 1.250, 1.556, 1.963, 2.456, 3.022, 4.361, 5.979, 7.885, 12.60, 25.59}},
                             {0.45,
                              {1.056, 1.217, 1.459, 1.759, 2.101, 2.473, 3.295, 4.201, 5.176, 7.290, 11.92},
                              {1.057, 1.225, 1.493, 1.840, 2.245, 2.694, 3.691, 4.797, 5.992, 8.593, 14.31}}};
        freeze(-30.0);
    }
    void freeze(double coldest_C) {
        walk.coldest = celsius(coldest_C);
        walk.hottest = celsius(12.0);
        walk.at_crossing.resize(2);
    }
    [[nodiscard]] Finding run_bond() const {
        CheckContext made = context();
        made.walk_cold = made.walk_nominal = &walk;
        return check_bond(made);
    }
};

}  // namespace

TEST_CASE("a one-piece wheel has no bond", "[engine][bond]") {
    BondCase given;
    given.wheel.core_material = given.wheel.tread_material;
    const Finding finding = given.run_bond();
    CHECK(finding.outcome == Outcome::does_not_apply);
    CHECK(finding.statement == Statement::bond_one_piece);
}

TEST_CASE("hard urethane shrinking on steel is pre-loaded near the bond's strength", "[engine][bond][published]") {
    // Worked out apart from this program from [urethane-hardness-fit], 23 to -30 C, ether on steel: 0.9 (47D), 3.1
    // (55D), 6.1 (65D), 9.4 MPa (75D); on PA66 1.1 (65D). Expansions in 1e-6/K [urethane-data-sheets]: 82A 165 to 179,
    // 55D 130 to 152, 75D 86 to 89; PA66 98 [plastics-data-sheets]. Which value was taken is not known, so the stress
    // must lie between those of both ends. Between hardnesses the expansions are read on a straight line.
    struct Row {
        double shore_d, tread_low, tread_high, core, stress_MPa;
    };
    for (const Row& row :
         {Row{47, 142e-6, 161e-6, 12e-6, 0.9}, Row{55, 130e-6, 152e-6, 12e-6, 3.1}, Row{65, 108e-6, 121e-6, 12e-6, 6.1},
          Row{75, 86e-6, 89e-6, 12e-6, 9.4}, Row{65, 108e-6, 121e-6, 98e-6, 1.1}}) {
        BondCase given;
        given.wheel.hardness->value = row.shore_d;
        given.core.expansion_per_kelvin = figure(row.core, 3);
        const auto stress_MPa = [&](double tread) {
            given.tread.expansion_per_kelvin = figure(tread, 2);
            Judge judge(CheckId::bond, given.context());
            const auto mismatch = mismatch_at(judge, given.context(), celsius(-30.0));
            REQUIRE(mismatch);
            CHECK(mismatch->strain == Approx((tread - row.core) * 53.0).epsilon(1e-6));
            return mismatch->stress.in(megapascal);
        };
        CAPTURE(row.shore_d, row.core, stress_MPa(row.tread_low), stress_MPa(row.tread_high));
        CHECK(stress_MPa(row.tread_low) < row.stress_MPa + 0.05);  // half a last digit
        CHECK(stress_MPa(row.tread_high) > row.stress_MPa - 0.05);
    }
}

TEST_CASE("the pull of a cold tread decides", "[engine][bond]") {
    BondCase given;
    given.wheel.hardness->value = 75.0;
    given.tread.expansion_per_kelvin = figure(87.5e-6, 2);
    const Finding finding = given.run_bond();
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.statement == Statement::bond_shear);
    CHECK(finding.numbers[1].si == Approx(8e6));  // nothing is lost of the bond in the cold
    CHECK(finding.numbers[5].si == 1.0);
    CHECK(finding.place == Place{PlaceKind::room, 0});
    CHECK(assumes(finding, Assumption::modulus_band));
}

TEST_CASE("10 W in a 12.7 mm tread raise its bond by 13.6 K", "[engine][bond][published]") {
    // Worked out apart: q t^2/2k = 13.6 K for 10 W in a 12.7 mm tread (6 x 2 in wheel, k 0.21 W/mK
    // [property-page-urethane]).
    BondCase given;
    given.wheel.diameter = 6.0 * inch;
    given.wheel.tread_width = 2.0 * inch;
    given.corner = Corner::nominal;
    given.core.expansion_per_kelvin = given.tread.expansion_per_kelvin;  // no pull: the heat decides
    given.cart.stops[1].air = read(celsius(70.0), Field::room_air, 1);
    const Finding finding = given.run_bond();
    REQUIRE(finding.statement == Statement::bond_temperature);
    const double watts = finding.numbers[6].si;
    CHECK(watts > 0.0);
    CHECK(finding.numbers[5].si / watts == Approx(1.36).epsilon(0.01));
    CHECK(finding.numbers[0].si == Approx(finding.numbers[3].si + finding.numbers[4].si + finding.numbers[5].si));
}

TEST_CASE("a hot wash meets a weaker bond", "[engine][bond][derived]") {
    BondCase given;
    given.wheel.temperature_max = celsius(121.0);
    given.tread.expansion_per_kelvin = figure(400e-6, 2);  // far beyond any, so that the pull decides
    given.freeze(20.0);
    given.cart.washings = {washing_with("hot-water", 1.0, celsius(70.0))};
    given.tables.chemicals.rows[0].ratings[0]->level = ChemicalLevel::suited;
    const Finding finding = given.run_bond();
    // From memory: 0.6 of the room value is kept at 70 C: 4.8 MPa.
    REQUIRE(finding.statement == Statement::bond_shear);
    CHECK(finding.numbers[5].si == Approx(0.6));
    CHECK(finding.numbers[1].si == Approx(4.8e6));
    CHECK(finding.place == Place{PlaceKind::washing, 0});
}

TEST_CASE("an agent that eats the tread eats the bond line", "[engine][bond]") {
    BondCase given;
    given.cart.washings = {washing_with("sodium-hypochlorite", 0.05, celsius(20.0))};
    const Finding finding = given.run_bond();
    CHECK(finding.statement == Statement::bond_chemical);
    CHECK(finding.outcome == Outcome::fails);
}

TEST_CASE("bond figures that are missing make it not known", "[engine][bond]") {
    BondCase given;
    REQUIRE(given.run_bond().outcome != Outcome::not_known);
    SECTION("expansion of the core") {
        given.core.expansion_per_kelvin.reset();
        CHECK(given.run_bond().outcome == Outcome::not_known);
    }
    SECTION("thickness") {
        given.wheel.tread_thickness.reset();
        CHECK(given.run_bond().outcome == Outcome::not_known);
    }
    SECTION("loss angle") {
        given.tread.tan_delta.reset();
        CHECK(given.run_bond().outcome == Outcome::not_known);
    }
    SECTION("rated maximum") {
        given.wheel.temperature_max.reset();
        given.wheel.construction = Construction::urethane_on_iron;
        CHECK(given.run_bond().outcome == Outcome::not_known);
    }
}

TEST_CASE("colder stores and hotter washes never help the bond", "[engine][bond][property]") {
    BondCase given;
    given.freeze(20.0);
    Finding before = given.run_bond();
    for (double coldest = 10.0; coldest > -45.0; coldest -= 5.0) {
        given.freeze(coldest);
        const Finding colder = given.run_bond();
        CHECK(no_better(colder, before));
        before = colder;
    }
    BondCase washed;
    washed.tables.chemicals.rows[0].ratings[0]->level = ChemicalLevel::suited;
    washed.tables.chemicals.rows[0].temperature_max = celsius(120.0);
    washed.cart.washings = {washing_with("hot-water", 1.0, celsius(40.0))};
    before = washed.run_bond();
    for (double hot = 50.0; hot < 110.0; hot += 10.0) {
        washed.cart.washings = {washing_with("hot-water", 1.0, celsius(hot))};
        const Finding hotter = washed.run_bond();
        CHECK(no_better(hotter, before));
        before = hotter;
    }
}
