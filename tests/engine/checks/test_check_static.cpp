#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

Finding with(StaticAsk ask, double ohm) {
    RuleCase given;
    given.bearing.grease = "none";
    given.cart.static_ask = choose(ask, Field::cart_static_ask);
    given.wheel.resistance_ohm = ohm;
    return given.run(check_static);
}

}  // namespace

// Conductive at most 1e4 ohm, antistatic 1e5 to 1e7 ([iso-22878], second-hand); a service manual quoting ISO 22881
// accepts 100 kohm as conductive [service-manual-iso-22881].
TEST_CASE("electrical classes of a wheel", "[engine][static][published]") {
    CHECK(with(StaticAsk::conductive, 8e3).outcome == Outcome::holds);
    CHECK(with(StaticAsk::conductive, 5e4).outcome == Outcome::fails);
    CHECK(with(StaticAsk::conductive, 2e5).outcome == Outcome::fails);
    CHECK(with(StaticAsk::antistatic, 2e5).outcome == Outcome::holds);
    CHECK(with(StaticAsk::antistatic, 2e6).outcome == Outcome::holds);
    CHECK(with(StaticAsk::antistatic, 2e7).outcome == Outcome::fails);
    CHECK(with(StaticAsk::antistatic, 5e4).outcome == Outcome::fails);
}

TEST_CASE("where published limits conflict both are shown and the careful one decides", "[engine][static][published]") {
    const Finding between = with(StaticAsk::conductive, 5e4);
    CHECK(between.conflict);
    CHECK(between.numbers[0].si == 1e4);
    CHECK(between.numbers[1].si == 1e5);
    CHECK(between.numbers[3].si == 5e4);
    CHECK_FALSE(with(StaticAsk::conductive, 8e3).conflict);
    CHECK_FALSE(with(StaticAsk::conductive, 2e5).conflict);
    CHECK(with(StaticAsk::antistatic, 5e4).conflict);
}

TEST_CASE("grease and plain plastic bearings stand in the path", "[engine][static]") {
    RuleCase given;
    given.cart.static_ask = choose(StaticAsk::antistatic, Field::cart_static_ask);
    given.wheel.resistance_ohm = 1e6;
    given.bearing.sealed = false;
    given.bearing.grease = "general";
    CHECK(given.run(check_static).outcome == Outcome::tight);
    CHECK(given.run(check_static).numbers[2].si == 2.0);
    given.preparation = Preparation::h1_lubricated;
    CHECK(given.run(check_static).outcome == Outcome::tight);
    given.preparation = Preparation::degreased;
    CHECK(given.run(check_static).outcome == Outcome::holds);
    given.bearing.kind = BearingKind::plain_acetal;
    CHECK(given.run(check_static).outcome == Outcome::fails);
}

TEST_CASE("an unknown resistance or ask is never a pass", "[engine][static]") {
    RuleCase given;
    CHECK(given.run(check_static).outcome == Outcome::does_not_apply);
    CHECK(given.run(check_static).statement == Statement::static_not_asked);
    given.cart.static_ask = choose(StaticAsk::conductive, Field::cart_static_ask);
    CHECK(given.run(check_static).outcome == Outcome::not_known);
    given.cart.static_ask = unchosen<StaticAsk>(Field::cart_static_ask);
    const Finding finding = given.run(check_static);
    CHECK(finding.outcome == Outcome::not_known);
    CHECK(misses(finding, Field::cart_static_ask));
}

TEST_CASE("more resistance never makes a wheel conductive", "[engine][static][property]") {
    double before = 0;
    for (double ohm = 100.0; ohm < 1e9; ohm *= 3.0) {
        const double use = with(StaticAsk::conductive, ohm).use;
        CHECK(use > before);
        before = use;
    }
}
