#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

TEST_CASE("gap: the sag is a step against the tested rise", "[gap]") {
    // s = R - sqrt(R2 - G2/4): it reaches 5 % of D at D/G = 2.294 (worked out from s = R/10: G = 2R sqrt(0.19)).
    CheckCase door;
    door.crossing().gap = measured(125.0 * std::sqrt(0.19) * millimetre);
    const Finding finding = door.run(CheckId::gap);
    INFO(describe(finding));
    CHECK(finding.use == Approx(1.0));
    CHECK(finding.numbers[1].si == Approx(0.00625));
    door.crossing().gap = measured(32.0 * millimetre);  // 62.5 - sqrt(3906.25 - 256) = 2.0825 mm
    CHECK(door.run(CheckId::gap).demand.si == Approx(0.0020825).epsilon(1e-4));
    CHECK(door.run(CheckId::gap).outcome == Outcome::holds);
}

TEST_CASE("gap: a gap as wide as the wheel swallows it", "[gap]") {
    CheckCase pit;
    pit.crossing().gap = measured(125.0 * millimetre);
    const Finding finding = pit.run(CheckId::gap);
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.statement == Statement::gap_swallows);
}

TEST_CASE("gap: along the travel the tread must be wider than the slot", "[gap]") {
    // US rail research (read): castors can turn and drop in sideways where the gap is wider than the tread.
    CheckCase drain;
    drain.crossing().kind = chosen(CrossingKind::drain);
    drain.crossing().slot = measured(38.0 * millimetre);
    const Finding tight = drain.run(CheckId::gap);
    CHECK(tight.statement == Statement::gap_slot);
    CHECK(tight.outcome == Outcome::tight);
    CHECK(tight.use == Approx(0.95));
    drain.wheel.tread_width = 35.0 * millimetre;
    CHECK(drain.run(CheckId::gap).outcome == Outcome::fails);
}

TEST_CASE("gap: the kind of crossing says whether a slot has to be read", "[gap]") {
    CheckCase unread;
    CHECK(unread.run(CheckId::gap).outcome == Outcome::does_not_apply);  // a doorway has none
    unread.crossing().kind = chosen(CrossingKind::drain);
    const Finding drain = unread.run(CheckId::gap);
    CHECK(drain.outcome == Outcome::not_known);
    REQUIRE(drain.missing.size() == 1);
    CHECK(reading_path(drain.missing[0]) == "/crossings/0/slot");
    unread.crossing().kind = {};
    CHECK(unread.run(CheckId::gap).outcome == Outcome::not_known);
}

TEST_CASE("gap: a wider gap never improves it", "[gap][property]") {
    CheckCase widening;
    double last = 0.0;
    for (double gap = 1.0; gap < 160.0; gap += 1.0) {
        widening.crossing().gap = measured(gap * millimetre);
        const double use = widening.run(CheckId::gap).use;
        CHECK(use >= last);
        last = use;
    }
}
