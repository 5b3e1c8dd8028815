#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

void use_carbon_steel(RuleCase& given) {
    given.bearing.kind = BearingKind::precision_ball;
    given.bearing_material.family = MaterialFamily::steel;
    given.bearing_material.chemical_column.clear();
}

void use_acetal(RuleCase& given) {
    given.bearing.kind = BearingKind::plain_acetal;
    given.bearing_material.family = MaterialFamily::acetal;
    given.bearing_material.chemical_column = "acetal-copolymer";
}

}  // namespace

// Stainless or acetal where it is wet: common practice, no published source.
TEST_CASE("a wet route asks for a stainless or acetal bearing", "[engine][corrosion][practice]") {
    RuleCase given;
    SECTION("dry: any bearing") {
        use_carbon_steel(given);
        const Finding finding = given.run(check_corrosion);
        CHECK(finding.outcome == Outcome::holds);
        CHECK(finding.statement == Statement::corrosion_dry);
    }
    SECTION("wet: carbon steel fails and the room is named") {
        use_carbon_steel(given);
        given.cart.stops[1].wetness = choose(Wetness::wet, Field::room_wetness, 1);
        const Finding finding = given.run(check_corrosion);
        CHECK(finding.outcome == Outcome::fails);
        CHECK(finding.statement == Statement::corrosion_rusts);
        CHECK(finding.place == Place{PlaceKind::room, 1});
        CHECK(finding.numbers[0].si == 2.0);
        CHECK(finding.numbers[1].si == 2.0);
    }
    SECTION("damp: carbon steel is tight") {
        use_carbon_steel(given);
        given.cart.stops[0].wetness = choose(Wetness::damp, Field::room_wetness, 0);
        CHECK(given.run(check_corrosion).outcome == Outcome::tight);
    }
    SECTION("wet: stainless and acetal hold") {
        given.cart.stops[1].wetness = choose(Wetness::wet, Field::room_wetness, 1);
        CHECK(given.run(check_corrosion).outcome == Outcome::holds);
        use_acetal(given);
        CHECK(given.run(check_corrosion).statement == Statement::corrosion_resists);
    }
    SECTION("damp: zinc on the rig is used up") {
        given.rig.finish = RigFinish::zinc_plated;
        given.cart.stops[1].wetness = choose(Wetness::wet, Field::room_wetness, 1);
        const Finding finding = given.run(check_corrosion);
        CHECK(finding.outcome == Outcome::tight);
        CHECK(finding.numbers[0].si == 3.0);
    }
}

// Acetal copolymer: unfit with 1-2 % nitric acid and with 5 % hypochlorite, from memory.
TEST_CASE("acetal is held against chlorine and acids by the matrix", "[engine][corrosion][published]") {
    RuleCase given;
    use_acetal(given);
    given.cart.washings = {washing_with("nitric-acid", 0.02, celsius(20.0))};
    CHECK(given.run(check_corrosion).outcome == Outcome::fails);
    given.cart.washings = {washing_with("sodium-hypochlorite", 0.0002, celsius(20.0))};
    const Finding dilute = given.run(check_corrosion);
    CHECK(dilute.outcome == Outcome::tight);
    CHECK(dilute.conflict);
    given.cart.washings = {washing_with("quaternary-ammonium", 0.0004, celsius(20.0))};
    CHECK(given.run(check_corrosion).outcome == Outcome::holds);
}

TEST_CASE("a cart out of the freezer gathers dew", "[engine][corrosion][derived]") {
    // Dew point at 4 C and 80 % is 1.0 C or so [magnus], from memory: a wheel from -25 C is below it.
    RuleCase given;
    use_carbon_steel(given);
    given.cart.stops[0].air = read(celsius(-25.0), Field::room_air, 0);
    given.cart.stops[1].air = read(celsius(4.0), Field::room_air, 1);
    given.cart.stops[1].humidity = read(0.8, Field::room_humidity, 1);
    const Finding dew = given.run(check_corrosion);
    CHECK(dew.outcome == Outcome::tight);
    CHECK(dew.place == Place{PlaceKind::room, 1});

    given.cart.stops[1].humidity = unread<double>(Field::room_humidity, 1);
    const Finding unknown = given.run(check_corrosion);
    CHECK(unknown.outcome == Outcome::not_known);
    CHECK(misses(unknown, Field::room_humidity));

    given.cart.stops[0].air = read(celsius(3.0), Field::room_air, 0);
    given.cart.stops[1].humidity = read(0.5, Field::room_humidity, 1);
    CHECK(given.run(check_corrosion).statement == Statement::corrosion_dry);
}

TEST_CASE("an unread wetness is named unless the route is wet anyway", "[engine][corrosion]") {
    RuleCase given;
    given.cart.stops[0].wetness = unchosen<Wetness>(Field::room_wetness, 0);
    CHECK(misses(given.run(check_corrosion), Field::room_wetness));
    given.cart.stops[1].wetness = choose(Wetness::wet, Field::room_wetness, 1);
    CHECK(given.run(check_corrosion).outcome == Outcome::holds);
}

TEST_CASE("an iron core rusts slowly where a plastic one does not", "[engine][corrosion][practice]") {
    RuleCase given;
    given.wheel.core_material = "cast-iron";
    given.core.family = MaterialFamily::iron;
    given.cart.stops[0].wetness = choose(Wetness::wet, Field::room_wetness, 0);
    const Finding finding = given.run(check_corrosion);
    CHECK(finding.outcome == Outcome::tight);
    CHECK(finding.numbers[0].si == 1.0);
    given.core.family = MaterialFamily::polyolefin;
    CHECK(given.run(check_corrosion).outcome == Outcome::holds);
}

TEST_CASE("a wetter room or another agent never improves corrosion", "[engine][corrosion][property]") {
    const Wetness rising[] = {Wetness::dry, Wetness::damp, Wetness::wet};
    for (const BearingKind kind :
         {BearingKind::plain_acetal, BearingKind::precision_ball, BearingKind::stainless_roller}) {
        RuleCase given;
        given.bearing.kind = kind;
        Finding drier = given.run(check_corrosion);
        for (const Wetness wetness : rising) {
            given.cart.stops[0].wetness = choose(wetness, Field::room_wetness, 0);
            const Finding wetter = given.run(check_corrosion);
            CHECK(no_better(wetter, drier));
            drier = wetter;
        }
        for (const char* agent : {"quaternary-ammonium", "sodium-hypochlorite", "nitric-acid"}) {
            given.cart.washings.push_back(washing_with(agent, 0.0004, celsius(20.0)));
            const Finding more = given.run(check_corrosion);
            CHECK(no_better(more, drier));
            drier = more;
        }
    }
}
