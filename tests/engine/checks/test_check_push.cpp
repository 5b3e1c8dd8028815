#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

// The plain wheel rolls with f = 1.25 mm on a radius of 62.5 mm and no bearing friction: 0.02 of the weight.
constexpr double rolling = 0.02;
constexpr double weight_300 = 300.0 * 9.80665;

double limit_of(const Finding& finding) {
    return finding.capacity.si;
}

}  // namespace

TEST_CASE("push: a peak takes the least of three limits and names it", "[push]") {
    // 75 % of women, hand 1.016 m, 2.1 m, once per 8 h: 309.5 N by the 2021 equations; the 80 % guideline at 40 in is
    // 54 lbf = 240.2 N; whole body 225 N, which governs. At 32 in the guideline gives 48 lbf = 213.5 N and governs.
    CheckCase edge;
    edge.cart().push_distance = measured(2.1 * metre);
    edge.cart().push_rate = measured(1.0 / 480.0 * per_minute);
    edge.cart().handle_height = measured(40.0 * inch);
    edge.cart().payload = measured(10.0 * kilogram);
    edge.crossing().rise = measured(2.0 * millimetre);
    const Finding at_40 = edge.run_at(CheckId::push, 0);
    INFO(describe(at_40));
    REQUIRE(at_40.statement == Statement::push_crossing_rest);
    CHECK(at_40.numbers[2].si == Approx(309.5).epsilon(1e-3));
    CHECK(at_40.numbers[3].si == Approx(240.2).epsilon(1e-3));
    CHECK(at_40.numbers[4].si == Approx(225.0));
    CHECK(limit_of(at_40) == Approx(225.0));
    CHECK(at_40.numbers[5].si == Approx(150.0));
    CHECK(at_40.numbers[6].si == 2.0);  // the upper limit governs
    edge.cart().handle_height = measured(32.0 * inch);
    const Finding at_32 = edge.run_at(CheckId::push, 0);
    CHECK(limit_of(at_32) == Approx(213.5).epsilon(1e-3));
    CHECK(at_32.numbers[6].si == 1.0);
}

TEST_CASE("push: rolling on has the lower limit and so may decide", "[push]") {
    // Women 75 %, sustained, hand 1.0 m, 20 m, once in 5 minutes. By hand: VSF -0.6539 + 1/0.2941 - 1/0.5722 = 0.99866,
    // DHSF 1.0391 - 20/52.91 + 400/7975 = 0.71125, FSF 0.6086 + 1.60944/11.95 - 2.59029/304.4 = 0.73477;
    // 25.5 x 0.99866 x 0.71125 x 0.73477 = 13.3086 kgf; x (1 - 0.67449 x 0.286) x 9.80665 = 105.33 N.
    CheckCase rolling_on;
    rolling_on.cart().push_distance = measured(20.0 * metre);
    const Finding finding = rolling_on.run(CheckId::push);
    INFO(describe(finding));
    CHECK(finding.statement == Statement::push_sustain);
    CHECK(limit_of(finding) == Approx(105.33).epsilon(1e-3));
    CHECK(finding.demand.si == Approx(rolling * weight_300));
    CHECK(finding.numbers[5].si == Approx(70.0));
}

TEST_CASE("push: 1:12 takes 150 N of a 149 kg cart", "[push]") {
    // F = mg(sin t + 0.02 cos t): 149 kg on 1:12 is 150 N (worked from the ramp formula: 0.083045 + 0.02 x 0.996546 =
    // 0.102976; x 1461.19 N = 150.47 N).
    CheckCase ramp;
    ramp.cart().payload = measured(89.0 * kilogram);
    ramp.crossing().kind = chosen(CrossingKind::ramp);
    ramp.crossing().slope = measured(Slope::from_tangent(1.0 / 12.0));
    ramp.cart().route.pop_back();
    const Finding up = ramp.run_at(CheckId::push, 0);
    INFO(describe(up));
    CHECK(up.statement == Statement::push_ramp);
    CHECK(up.demand.si == Approx(150.47).epsilon(1e-3));
}

TEST_CASE("push: on the way down the cart must be held back", "[push]") {
    // F = mg(sin t - 0.02 cos t) = 1461.19 x (0.083045 - 0.019931) = 92.22 N.
    CheckCase down;
    down.cart().payload = measured(89.0 * kilogram);
    down.crossing().kind = chosen(CrossingKind::ramp);
    down.crossing().slope = measured(Slope::from_tangent(-1.0 / 12.0));
    down.cart().route.pop_back();
    const Finding finding = down.run_at(CheckId::push, 0);
    INFO(describe(finding));
    CHECK(finding.statement == Statement::push_hold_back);
    CHECK(finding.demand.si == Approx(92.22).epsilon(1e-3));
}

TEST_CASE("push: from rest over an edge, pushed at axle height and at the hands", "[push]") {
    // 300 kg midway on 1 m. Rise 6.25 mm: k = 0.48432; at the axles one pair climbs and the other rolls:
    // 0.48432 x 1471.0 + 0.02 x 1471.0 = 741.85 N. At the hands (1 m, so 0.9375 m over the axles) the push presses the
    // leading pair down: F = (0.02 W + 0.46432 W/2)/(1 - 0.46432 x 0.9375) = 741.85/0.56470 = 1313.7 N.
    CheckCase sill;
    sill.crossing().rise = measured(6.25 * millimetre);
    sill.cart().speed = measured(0.1 * metre_per_second);  // too slow to coast over
    const Finding finding = sill.run_at(CheckId::push, 0);
    INFO(describe(finding));
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.statement == Statement::push_crossing_rest);
    CHECK(finding.demand.si == Approx(1313.7).epsilon(1e-3));

    sill.cart().handle_height =
        within(1.0 * metre, 0.05 * metre);  // the higher hands decide: 741.85/(1 - 0.46432 x 0.9875)
    CHECK(sill.run_at(CheckId::push, 0).demand.si == Approx(1370.1).epsilon(1e-3));
}

TEST_CASE("push: pushed high, a short cart tilts or jams at the edge", "[push]") {
    CheckCase short_cart;
    short_cart.crossing().rise = measured(6.25 * millimetre);
    short_cart.cart().speed = measured(0.1 * metre_per_second);
    short_cart.cart().castors = {{Length{}, {}, CastorFunction::swivel}, {0.4 * metre, {}, CastorFunction::swivel}};
    short_cart.cart().cg_forward_loaded = measured(0.2 * metre);
    const Finding finding = short_cart.run_at(CheckId::push, 0);  // 0.46432 x 0.9375/0.4 > 1
    CHECK(finding.outcome == Outcome::fails);
    CHECK(finding.statement == Statement::push_jams);
}

TEST_CASE("push: what rolls over but cannot be started is tight, on the condition to cross it rolling", "[push]") {
    // Inelastic blow, light wheels, the whole mass pitching: s = sin f, cos f = 0.9, lambda = 0.19, lift share 0.5:
    // sqrt(2g x 0.00625 x 0.5/0.81) = 0.2751 m/s against 0.8 m/s.
    CheckCase sill;
    sill.crossing().rise = measured(6.25 * millimetre);
    const Finding finding = sill.run_at(CheckId::push, 0);
    INFO(describe(finding));
    CHECK(finding.outcome == Outcome::tight);
    CHECK(finding.statement == Statement::push_crossing_rolling);
    CHECK(finding.needs_rolling);
    CHECK(finding.demand.si == Approx(0.2751).epsilon(1e-3));

    SECTION("a wet or frozen run-up is not counted") {
        for (const Wetness wetness :
             {Wetness::wet, Wetness::greasy, Wetness::frost, Wetness::ice, Wetness::melting_ice}) {
            sill.crossing().wetness = chosen(wetness);
            CHECK(sill.run_at(CheckId::push, 0).outcome == Outcome::fails);
        }
    }
    SECTION("an unread run-up is the wetter room's, and says so") {
        sill.crossing().wetness = {};
        sill.survey.rooms[1].wetness = chosen(Wetness::wet);
        const Finding wet = sill.run_at(CheckId::push, 0);
        CHECK(wet.outcome == Outcome::fails);
        CHECK(std::find(wet.assumptions.begin(), wet.assumptions.end(), Assumption::wetness_of_room) !=
              wet.assumptions.end());
        sill.survey.rooms[1].wetness = {};
        const Finding unread = sill.run_at(CheckId::push, 0);
        CHECK(unread.outcome == Outcome::not_known);
        REQUIRE(unread.missing.size() == 1);
        CHECK(reading_path(unread.missing[0]) == "/crossings/0/wetness");
    }
}

TEST_CASE("push: two people are at best tight, and not twice one", "[push]") {
    CheckCase team;
    team.cart().people = measured(2.0);
    const Finding light = team.run(CheckId::push);
    CHECK(light.outcome == Outcome::tight);
    CHECK(light.needs_team);
    CHECK(light.use < 0.85);

    // Sustained 0.02 of 1000 kg is 196 N, over one person's limit and under twice that: tight, the single limit shown.
    team.cart().payload = measured(940.0 * kilogram);
    const Finding heavy = team.run(CheckId::push);
    INFO(describe(heavy));
    CHECK(heavy.outcome == Outcome::tight);
    CHECK(heavy.statement == Statement::push_team);
    CHECK(heavy.demand.si > heavy.capacity.si);
    CHECK(heavy.use <= 1.0);

    // What is more than twice the single limit fails for certain.
    team.cart().payload = measured(2500.0 * kilogram);
    CHECK(team.run(CheckId::push).outcome == Outcome::fails);
}

TEST_CASE("push: cold lowers the limit by judgement and says so", "[push]") {
    CheckCase cold;
    const double warm = limit_of(cold.run(CheckId::push));
    for (Room& room : cold.survey.rooms) room.air = measured(celsius(4.0));
    CHECK(limit_of(cold.run(CheckId::push)) == Approx(0.95 * warm));
    for (Room& room : cold.survey.rooms) room.air = measured(celsius(-25.0));
    const Finding freezer = cold.run(CheckId::push);
    CHECK(limit_of(freezer) == Approx(0.90 * warm));
    CHECK(std::find(freezer.assumptions.begin(), freezer.assumptions.end(), Assumption::cold_factor) !=
          freezer.assumptions.end());
}

TEST_CASE("push: where sources differ on rolling resistance both forces are told", "[push]") {
    // A drive-sizing database (second-hand) has 5.08 mm for polymer on concrete: 0.08128 on a radius of 62.5 mm.
    CheckCase disputed;
    disputed.tables.rolling.front().lever_arm.conflicting.push_back({5.08 * millimetre, 1});
    const Finding finding = disputed.run(CheckId::push);
    CHECK(finding.conflict);
    CHECK(finding.numbers[0].si == Approx(rolling * weight_300));
    CHECK(finding.numbers[8].si == Approx(0.08128 * weight_300));
    CHECK_FALSE(CheckCase{}.run(CheckId::push).conflict);
}

TEST_CASE("push: a tug is no business of people", "[push]") {
    CheckCase tug;
    tug.cart().moved_by = chosen(MovedBy::tug);
    const Finding finding = tug.run(CheckId::push);
    CHECK(finding.outcome == Outcome::does_not_apply);
    CHECK(finding.statement == Statement::push_tugged);
}

TEST_CASE("push: outside the published ranges there is no verdict", "[push]") {
    CheckCase high;
    high.cart().handle_height = measured(1.4 * metre);
    CHECK(high.run(CheckId::push).outcome == Outcome::not_known);
    high.cart().handle_height = measured(1.0 * metre);
    high.cart().push_rate = measured(10.0 * per_minute);  // 76 m/min of distance times rate
    CHECK(high.run(CheckId::push).outcome == Outcome::not_known);
}

TEST_CASE("push: heavier, steeper or higher never improves it", "[push][property]") {
    const auto severity = [](const Finding& finding) {
        return std::make_pair(finding.outcome,
                              finding.statement == Statement::push_crossing_rolling ? 0.0 : finding.use);
    };
    CheckCase growing;
    auto last = severity(growing.run(CheckId::push));
    for (double payload = 0.0; payload < 2000.0; payload += 50.0) {
        growing.cart().payload = measured(payload * kilogram);
        const auto now = severity(growing.run(CheckId::push));
        if (payload > 0.0) CHECK(now >= last);
        last = now;
    }
    growing = CheckCase{};
    Outcome worst = Outcome::does_not_apply;
    for (double rise = 0.0; rise < 60.0; rise += 1.0) {
        growing.crossing().rise = measured(rise * millimetre);
        const Outcome now = growing.run(CheckId::push).outcome;
        CHECK(now >= worst);
        worst = now;
    }
}
