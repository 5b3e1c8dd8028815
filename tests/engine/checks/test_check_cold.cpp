#include "rule_case.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

WalkPoint point(std::uint16_t stop, double air_C, double core_C, double rim_C) {
    WalkPoint made;
    made.stop = stop;
    made.air = celsius(air_C);
    made.core = made.bore = made.bond = celsius(core_C);
    made.rim = celsius(rim_C);
    made.mean = celsius((core_C + rim_C) / 2);
    return made;
}

/// A cart that leaves a freezer over a sill of 19 mm and comes back over a flat doorway. One-piece wheel with the
/// maker's figures of -40 F and, struck, -20 F (common practice); its tread row breaks below -55/-65 C like
/// polyethylene.
struct ColdCase : RuleCase {
    Walk walk;

    ColdCase() {
        tread.family = MaterialFamily::polyolefin;
        tread.brittle_struck = figure(celsius(-55.0), 2);
        tread.brittle_unstruck = figure(celsius(-65.0), 2);
        wheel.temperature_min = fahrenheit(-40.0);
        wheel.impact_floor = fahrenheit(-20.0);
        cart.crossings[0].rise = read(19.0 * millimetre, Field::crossing_rise, 0);
        cart.stops[0].air = read(celsius(-32.0), Field::room_air, 0);
        tables.practice.urethane_rated_min = figure(fahrenheit(-40.0));
        tables.practice.urethane_impact_floor = figure(fahrenheit(-20.0));
        set_walk(-24.0, -25.4);
    }
    void set_walk(double core_C, double rim_C) {
        walk = {};
        walk.at_crossing = {point(0, -32.0, core_C, rim_C), point(1, 4.0, -10.0, -5.0)};
        walk.coldest = celsius(std::min(core_C, rim_C));
        walk.hottest = celsius(-5.0);
    }
    [[nodiscard]] CheckContext context_with_walk() const {
        CheckContext made = context();
        made.walk_cold = made.walk_nominal = &walk;
        return made;
    }
    [[nodiscard]] Finding run_cold() const { return check_cold(context_with_walk()); }
};

}  // namespace

TEST_CASE("a wheel 3.5 K over its impact floor at a sill is tight", "[engine][cold][derived]") {
    const ColdCase given;
    const Finding finding = given.run_cold();
    // -20 F is -28.889 C; margin 28.889 - 25.4 = 3.489 K; use 1 - 0.03 x 3.489 = 0.8953.
    CHECK(finding.outcome == Outcome::tight);
    CHECK(finding.statement == Statement::cold_impact_floor);
    CHECK(finding.use == Approx(0.89533).epsilon(1e-4));
    CHECK(finding.place == Place{PlaceKind::crossing, 0});
    CHECK(finding.numbers[0].si == Approx(273.15 - 25.4));
    CHECK(finding.numbers[1].si == Approx(273.15 - 28.8889).epsilon(1e-6));
    CHECK(finding.numbers[2].si == Approx(3.4889).epsilon(1e-4));
    CHECK(finding.numbers[3].si == Approx(273.15 - 32.0));
    CHECK(finding.numbers[4].si == Approx(273.15 - 55.0));  // the material's own limit, beside the maker's
    // Leading axle: 310 kg, centre in the middle: half of 3040.06 N. Blow of 19 mm on 127 mm at 0.9 m/s with 155 kg:
    // v2/v1 = 1 - 19/63.5 = 0.70079; energy 0.5 x 155 x 0.81 (1 - 0.4911) = 31.95 J.
    REQUIRE(finding.number_count == 8);
    CHECK(finding.numbers[5].si == Approx(1520.03).epsilon(1e-4));
    CHECK(finding.numbers[6].si == Approx(0.9));
    CHECK(finding.numbers[7].si == Approx(31.95).epsilon(1e-3));
    CHECK_FALSE(finding.conflict);  // the maker is stricter than the material: no disagreement
}

TEST_CASE("the scale is 0.03 per kelvin: 5 K holds, 0 K is the edge", "[engine][cold][derived]") {
    ColdCase given;
    given.wheel.impact_floor = celsius(-30.0);
    struct Row {
        double rim_C;
        Outcome outcome;
        double use;
    };
    for (const Row& row : {Row{-24.9, Outcome::holds, 0.847}, Row{-25.1, Outcome::tight, 0.853},
                           Row{-29.9, Outcome::tight, 0.997}, Row{-30.1, Outcome::fails, 1.003}}) {
        given.set_walk(-20.0, row.rim_C);
        const Finding finding = given.run_cold();
        CHECK(finding.outcome == row.outcome);
        CHECK(finding.use == Approx(row.use).epsilon(1e-6));
    }
}

TEST_CASE("the colder of core and rim decides", "[engine][cold]") {
    ColdCase given;
    given.set_walk(-29.5, -10.0);
    CHECK(given.run_cold().outcome == Outcome::fails);
    given.set_walk(-10.0, -29.5);
    CHECK(given.run_cold().outcome == Outcome::fails);
    given.set_walk(-10.0, -10.0);
    CHECK(given.run_cold().outcome == Outcome::holds);
}

TEST_CASE("a gap strikes like a rise, a flat doorway does not", "[engine][cold]") {
    ColdCase given;
    given.set_walk(-35.0, -35.0);
    CHECK(given.run_cold().outcome == Outcome::fails);
    given.cart.crossings[0].rise = read(Length{}, Field::crossing_rise, 0);
    const Finding flat = given.run_cold();
    // Only the rated minimum of -40 C speaks: 5 K of margin, on the edge of holding.
    CHECK(flat.statement == Statement::cold_rated_minimum);
    CHECK(flat.use == Approx(0.85));
    CHECK(flat.place == Place{PlaceKind::room, 0});
    given.cart.crossings[0].gap = read(32.0 * millimetre, Field::crossing_gap, 0);
    CHECK(given.run_cold().outcome == Outcome::fails);
}

TEST_CASE("hard urethane breaks by its hardness; an unknown soft segment takes the ester limits",
          "[engine][cold][published]") {
    ColdCase given;
    given.tread.family = MaterialFamily::urethane;
    given.wheel.hardness = Hardness{HardnessScale::shore_d, 60.0};
    struct Row {
        SoftSegment soft;
        double struck_C;
    };
    // Our judgement [urethane-cold-rule]: notched 60D ether -29, ester -17 C, both rounded.
    for (const Row& row :
         {Row{SoftSegment::ether, -29.0}, Row{SoftSegment::ester, -17.0}, Row{SoftSegment::unknown, -17.0}}) {
        given.tread.soft_segment = row.soft;
        given.set_walk(-20.0, -20.0);
        const Finding finding = given.run_cold();
        const bool ether = row.soft == SoftSegment::ether;
        const auto limit_at = static_cast<std::size_t>(ether ? 4 : 1);
        CHECK(finding.numbers[limit_at].si - 273.15 == Approx(row.struck_C).margin(0.6));
        CHECK(finding.outcome == (ether ? Outcome::holds : Outcome::fails));
        CHECK(assumes(finding, Assumption::ester_limits) == (row.soft == SoftSegment::unknown));
        if (!ether) {
            CHECK(finding.statement == Statement::cold_brittle_struck);
            CHECK(std::string(finding.formula) == "cold-urethane");
            CHECK(finding.conflict);  // the maker allows blows down to -28.9 C
            CHECK(finding.numbers[4].si - 273.15 == Approx(-28.889).margin(0.001));
        }
    }
}

TEST_CASE("96 Shore A is not turned into Shore D", "[engine][cold]") {
    // Two makers put the same 96A ten D points apart [urethane-data-sheets].
    ColdCase given;
    given.tread.family = MaterialFamily::urethane;
    given.wheel.hardness = Hardness{HardnessScale::shore_a, 96.0};
    CHECK(given.run_cold().outcome == Outcome::not_known);
    given.wheel.hardness = Hardness{HardnessScale::shore_a, 90.0};
    CHECK(given.run_cold().outcome == Outcome::tight);
}

TEST_CASE("a polypropylene core shatters under a good tread", "[engine][cold]") {
    // Polypropylene's service floor is 0 C, brittle below freezing [plastics-property-sheet].
    ColdCase given;
    given.wheel.core_material = "polypropylene";
    given.wheel.tread_material = "tread";
    given.core.family = MaterialFamily::polyolefin;
    given.core.brittle_struck = figure(celsius(0.0), 3);
    given.core.brittle_unstruck = figure(celsius(-10.0), 3);
    const Finding finding = given.run_cold();
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.statement == Statement::cold_brittle_struck);
    CHECK(finding.numbers[1].si == Approx(273.15));
}

TEST_CASE("an iron core has no cold limit of its own", "[engine][cold]") {
    ColdCase given;
    given.wheel.core_material = "iron";
    given.core = {};
    given.core.family = MaterialFamily::iron;
    CHECK(given.run_cold().outcome == Outcome::tight);
}

TEST_CASE("what is missing makes it not known, a failure stands all the same", "[engine][cold]") {
    ColdCase given;
    given.set_walk(-10.0, -10.0);
    REQUIRE(given.run_cold().outcome == Outcome::holds);

    SECTION("the maker's rated minimum") {
        given.wheel.temperature_min.reset();
        given.wheel.construction = Construction::polyolefin;
        CHECK(given.run_cold().outcome == Outcome::not_known);
    }
    SECTION("practice stands in for one-piece urethane, as an assumption") {
        given.wheel.temperature_min.reset();
        given.wheel.impact_floor.reset();
        given.wheel.construction = Construction::one_piece_urethane;
        const Finding finding = given.run_cold();
        CHECK(finding.outcome == Outcome::holds);
        CHECK(assumes(finding, Assumption::practice_figure));
    }
    SECTION("a rise that was not read") {
        given.cart.crossings[0].rise = unread<Length>(Field::crossing_rise, 0);
        const Finding finding = given.run_cold();
        CHECK(finding.outcome == Outcome::not_known);
        CHECK(misses(finding, Field::crossing_rise));
    }
    SECTION("material limits, only where it is struck") {
        given.tread.brittle_struck.reset();
        given.tread.brittle_unstruck.reset();
        CHECK(given.run_cold().outcome == Outcome::not_known);
        given.cart.crossings[0].rise = read(Length{}, Field::crossing_rise, 0);
        CHECK(given.run_cold().outcome == Outcome::holds);
    }
    SECTION("the walk") {
        WalkMissing gap;
        gap.readings.add({Field::cart_stay, 0, 1});
        CheckContext context = given.context();
        context.walk_gap = &gap;
        const Finding finding = check_cold(context);
        CHECK(finding.outcome == Outcome::not_known);
        CHECK(misses(finding, Field::cart_stay));
    }
    SECTION("a failure stands") {
        given.set_walk(-50.0, -50.0);
        given.cart.crossings[1].gap = unread<Length>(Field::crossing_gap, 1);
        CHECK(given.run_cold().outcome == Outcome::fails);
    }
}

TEST_CASE("far from the cold the finding says so", "[engine][cold]") {
    ColdCase given;
    given.cart.stops[0].air = read(celsius(10.0), Field::room_air, 0);
    given.set_walk(10.0, 10.0);
    const Finding finding = given.run_cold();
    CHECK(finding.outcome == Outcome::holds);
    CHECK(finding.statement == Statement::cold_warm);
    CHECK(finding.use == 0.0);
}

TEST_CASE("one crossing can be judged alone", "[engine][cold]") {
    ColdCase given;
    given.set_walk(-35.0, -35.0);
    CheckContext context = given.context_with_walk();
    context.only_crossing = 0;
    CHECK(check_cold(context).outcome == Outcome::fails);
    context.only_crossing = 1;
    CHECK(check_cold(context).outcome == Outcome::holds);
}

TEST_CASE("a colder wheel is never better off", "[engine][cold][property]") {
    ColdCase given;
    Finding warmer = given.run_cold();
    for (double rim = 5.0; rim > -60.0; rim -= 1.5) {
        given.set_walk(rim + 3.0, rim);
        const Finding colder = given.run_cold();
        if (rim < 3.0) CHECK(no_better(colder, warmer));
        warmer = colder;
    }
}
