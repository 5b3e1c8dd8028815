#include "engine/checks/judge.hpp"
#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

struct Bench {
    Tables tables = plain_tables();
    CartDemand cart;
    CheckContext context;
    Bench() {
        context.cart = &cart;
        context.tables = &tables;
    }
};

Input<Length> length_input(double low, double nominal, double high) {
    return {true, low * metre, nominal * metre, high * metre, {Field::crossing_rise, 0}, Known::measured};
}

const ReadingRef gap_reading{Field::crossing_gap, 2};

}  // namespace

TEST_CASE("judge: up to 0.85 holds, up to 1 is tight, over 1 fails", "[judge]") {
    const Practice practice = plain_tables().practice;
    CHECK(outcome_of(0.0, practice) == Outcome::holds);
    CHECK(outcome_of(0.85, practice) == Outcome::holds);
    CHECK(outcome_of(0.8501, practice) == Outcome::tight);
    CHECK(outcome_of(1.0, practice) == Outcome::tight);
    CHECK(outcome_of(1.0001, practice) == Outcome::fails);
}

TEST_CASE("judge: a part over 1 decides over missing readings; otherwise missing readings do, all named", "[judge]") {
    const Bench bench;
    Judge judge(CheckId::gap, bench.context);
    CHECK(judge.finish().outcome == Outcome::does_not_apply);
    judge.part({.use = 0.5, .statement = Statement::gap_sag});
    CHECK(judge.finish().outcome == Outcome::holds);
    judge.missing(gap_reading);
    judge.missing({Field::crossing_slot, 2});
    const Finding unknown = judge.finish();
    CHECK(unknown.outcome == Outcome::not_known);
    CHECK(unknown.missing.size() == 2);
    CHECK_FALSE(unknown.has_use);
    judge.part({.use = 1.2, .statement = Statement::gap_slot});
    const Finding failing = judge.finish();
    CHECK(failing.outcome == Outcome::fails);
    CHECK(failing.statement == Statement::gap_slot);
    CHECK(failing.use == 1.2);
    CHECK(failing.missing.size() == 2);
}

TEST_CASE("judge: the worst part decides and the first of equals stays", "[judge]") {
    const Bench bench;
    Judge judge(CheckId::push, bench.context);
    judge.part({.use = 0.9, .statement = Statement::push_start});
    judge.part({.use = 0.9, .statement = Statement::push_sustain});
    CHECK(judge.finish().statement == Statement::push_start);
    judge.part({.use = 0.2, .statement = Statement::push_team, .outcome = Outcome::tight, .needs_team = true});
    CHECK(judge.finish().statement == Statement::push_start);
    CHECK(judge.finish().needs_team);
}

TEST_CASE("judge: a conflict is told with the part that decides, whose numbers show it", "[judge]") {
    const Bench bench;
    Judge judge(CheckId::push, bench.context);
    judge.part({.use = 0.2, .statement = Statement::push_start, .conflict = true});
    CHECK(judge.finish().conflict);
    judge.part({.use = 0.9, .statement = Statement::push_crossing_rest});
    CHECK_FALSE(judge.finish().conflict);
}

TEST_CASE("judge: takes the careful end at the worst corner and the value at nominal", "[judge]") {
    Bench bench;
    const Input<Length> input = length_input(1.0, 2.0, 4.0);
    Judge worst(CheckId::step, bench.context);
    CHECK(worst.high(input)->si() == 4.0);
    CHECK(worst.low(input)->si() == 1.0);
    CHECK(worst.finish().drivers.size() == 1);
    bench.context.corner = Corner::nominal;
    Judge nominal(CheckId::step, bench.context);
    CHECK(nominal.high(input)->si() == 2.0);
    CHECK(nominal.low(input)->si() == 2.0);
}

TEST_CASE("judge: an assumed reading and one by eye are said to be so", "[judge]") {
    const Bench bench;
    Judge judge(CheckId::step, bench.context);
    Input<Length> input = length_input(1.0, 2.0, 4.0);
    input.known = Known::assumed;
    (void)judge.high(input);
    input.known = Known::by_eye;
    (void)judge.high(input);
    const Finding finding = judge.finish();
    REQUIRE(finding.assumptions.size() == 2);
    CHECK(finding.assumptions[0] == Assumption::reading_assumed);
    CHECK(finding.assumptions[1] == Assumption::reading_by_eye);
}

TEST_CASE("judge: a walk that is not there names what it lacks", "[judge]") {
    Bench bench;
    WalkMissing gap;
    gap.readings.push({Field::room_air, 1});
    bench.context.walk_gap = &gap;
    Judge judge(CheckId::cold, bench.context);
    judge.missing_walk();
    const Finding finding = judge.finish();
    CHECK(finding.outcome == Outcome::not_known);
    REQUIRE(finding.missing.size() == 1);
    CHECK(reading_path(finding.missing[0]) == "/rooms/1/air");
}
