#include "engine/select/bench_sheet.hpp"
#include "engine/select/cautions.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <string>

using namespace sillwalk::engine;

namespace {

struct Bench {
    Catalogue catalogue;
    Tables tables;

    Bench() {
        Wheel wheel;
        wheel.id = WheelId("hard-5x1.25");
        wheel.description = "one-piece urethane";
        wheel.hub_length = 1.5 * inch;
        Rig rig;
        rig.id = RigId("swivel-5");
        rig.fork_width = 1.5625 * inch;
        rig.function = CastorFunction::swivel;
        Bearing roller;
        roller.id = BearingId("roller");
        roller.kind = BearingKind::roller;
        roller.grease_exposed = true;
        roller.parts = {{"roller bearing", 1, ""}, {"spanner bushing", 1, "1/2 in bore"}, {"retainer washer", 2, ""}};
        roller.fitting = {{"First sentence."}, {"Second sentence."}};
        Bearing ball;
        ball.id = BearingId("sealed-ball");
        ball.kind = BearingKind::stainless_precision_ball;
        ball.sealed = true;
        catalogue.wheels = {wheel};
        catalogue.bearings = {roller, ball};
        catalogue.rigs = {rig};
        BearingRow row;
        row.kind = BearingKind::roller;
        row.end_play = Figure<Length>{};
        row.end_play->value = 0.75 * millimetre;
        row.end_play->low = 0.5 * millimetre;
        row.end_play->high = 1.0 * millimetre;
        row.end_play->citation = 7;
        tables.bearings = {row};
    }

    [[nodiscard]] BenchSheet sheet(std::uint32_t bearing, Preparation preparation, std::size_t castors = 4) const {
        return sheet_for(std::vector<CastorFunction>(castors, CastorFunction::swivel), bearing, preparation);
    }
    [[nodiscard]] BenchSheet sheet_for(const std::vector<CastorFunction>& functions, std::uint32_t bearing = 0,
                                       Preparation preparation = Preparation::as_supplied) const {
        return bench_sheet(catalogue, tables, Candidate{0, bearing, 0, preparation}, functions);
    }
};

bool has(const std::vector<const char*>& keys, const std::string& key) {
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

}  // namespace

TEST_CASE("every part is counted per wheel and per cart", "[engine][bench_sheet]") {
    const BenchSheet sheet = Bench().sheet(0, Preparation::as_supplied, 6);
    CHECK(sheet.wheels == 6);
    REQUIRE(sheet.parts.size() == 5);
    CHECK(sheet.parts[0].name == "hard-5x1.25");
    CHECK(sheet.parts[0].per_cart == 6);
    CHECK(sheet.parts[1].name == "swivel-5");
    CHECK(sheet.parts[3] == BenchPart{"spanner bushing", "1/2 in bore", 1, 6});
    CHECK(sheet.parts[4] == BenchPart{"retainer washer", "", 2, 12});
    CHECK(sheet.fitting == std::vector<std::string>{"First sentence.", "Second sentence."});
}

// A cart with two rigid and two swivel castors takes two rigs of each, which share wheel, fork, axle, plate and height,
// so that it stands level on one series: common practice, no published source.
TEST_CASE("rigs are counted by the functions of the cart's castors", "[engine][bench_sheet][practice]") {
    Bench bench;
    Rig rigid = bench.catalogue.rigs.front();
    rigid.id = RigId("rigid-5");
    rigid.function = CastorFunction::rigid;
    Rig tall = rigid;
    tall.id = RigId("rigid-5-tall");
    tall.overall_height = 1.0 * inch;
    bench.catalogue.rigs.push_back(tall);
    bench.catalogue.rigs.push_back(rigid);
    constexpr CastorFunction swivel = CastorFunction::swivel, fixed = CastorFunction::rigid,
                             lock = CastorFunction::total_lock;

    const BenchSheet pair = bench.sheet_for({fixed, fixed, swivel, swivel, swivel});
    CHECK(pair.parts[0].per_cart == 5);
    CHECK(pair.parts[1] == BenchPart{"swivel-5", "", 0, 3});
    CHECK(pair.parts[2] == BenchPart{"rigid-5", "", 0, 2});
    CHECK(pair.rig_gaps.empty());
    CHECK(has(pair.check_by_hand, "bench.check.swivels"));
    CHECK_FALSE(has(pair.check_by_hand, "bench.check.brake_holds"));

    // The checks have looked at the swivel rig: one that is rated for less, or for less cold, is no fellow of it.
    bench.catalogue.rigs[0].rated_load = 150.0 * kilogram;
    CHECK(bench.sheet_for({fixed, swivel}).rig_gaps == std::vector<RigGap>{{fixed, 1}});
    bench.catalogue.rigs[2].rated_load = 149.0 * kilogram;
    CHECK(bench.sheet_for({fixed, swivel}).rig_gaps == std::vector<RigGap>{{fixed, 1}});
    bench.catalogue.rigs[2].rated_load = 150.0 * kilogram;
    CHECK(bench.sheet_for({fixed, swivel}).rig_gaps.empty());
    bench.catalogue.rigs[0].temperature_min = Temperature::from_kelvin(233.15);
    bench.catalogue.rigs[2].temperature_min = Temperature::from_kelvin(243.15);
    CHECK(bench.sheet_for({fixed, swivel}).rig_gaps == std::vector<RigGap>{{fixed, 1}});
    bench.catalogue.rigs[2].temperature_min = Temperature::from_kelvin(233.15);
    CHECK(bench.sheet_for({fixed, swivel}).rig_gaps.empty());

    const BenchSheet locked = bench.sheet_for({lock, lock, swivel, swivel});
    CHECK(locked.parts[1] == BenchPart{"swivel-5", "", 0, 2});
    CHECK(locked.parts[2].name == "roller bearing");
    CHECK(locked.rig_gaps == std::vector<RigGap>{{lock, 2}});
    CHECK(has(locked.check_by_hand, "bench.check.brake_holds"));
}

// Precision bearings are pressed, never driven: common practice, no published source.
TEST_CASE("tool, play and room in the fork", "[engine][bench_sheet][practice]") {
    const Bench bench;
    const BenchSheet roller = bench.sheet(0, Preparation::as_supplied);
    CHECK(std::string(roller.tool) == "bench.tool.press_or_mallet");
    REQUIRE(roller.end_play);
    CHECK(roller.end_play->least.in(millimetre) == Approx(0.5));
    CHECK(roller.end_play->most.in(millimetre) == Approx(1.0));
    CHECK(roller.end_play->citation == 7);
    CHECK(roller.room_in_fork.in(inch) == Approx(1.0 / 16.0));
    const BenchSheet ball = bench.sheet(1, Preparation::as_supplied);
    CHECK(std::string(ball.tool) == "bench.tool.press_only");
    CHECK_FALSE(ball.end_play);
}

TEST_CASE("preparation is a bath only where the bath gets in", "[engine][bench_sheet][practice]") {
    const Bench bench;
    CHECK(bench.sheet(0, Preparation::as_supplied).prepare.empty());
    const BenchSheet degreased = bench.sheet(0, Preparation::degreased);
    CHECK(std::string(degreased.prepare.front()) == "bench.prepare.safety_sheet");
    CHECK(has(degreased.finish, "bench.finish.no_oil"));
    const BenchSheet h1 = bench.sheet(0, Preparation::h1_lubricated);
    CHECK(h1.prepare == degreased.prepare);
    CHECK(has(h1.finish, "bench.finish.h1_thin_film"));
    const BenchSheet sealed = bench.sheet(1, Preparation::h1_lubricated);
    CHECK(has(sealed.prepare, "bench.prepare.seal_stays_shut"));
    CHECK(sealed.finish.empty());
}

TEST_CASE("what is checked by hand follows the parts", "[engine][bench_sheet]") {
    const Bench bench;
    const BenchSheet roller = bench.sheet(0, Preparation::as_supplied);
    CHECK(has(roller.check_by_hand, "bench.check.no_grease_outside"));
    CHECK(has(roller.check_by_hand, "bench.check.swivels"));
    CHECK_FALSE(has(roller.check_by_hand, "bench.check.inner_rings_touch"));
    CHECK(has(bench.sheet(1, Preparation::as_supplied).check_by_hand, "bench.check.inner_rings_touch"));
    CHECK_FALSE(has(bench.sheet_for({CastorFunction::rigid}).check_by_hand, "bench.check.swivels"));
    CHECK(has(bench.sheet_for({CastorFunction::total_lock}).check_by_hand, "bench.check.brake_holds"));
}

TEST_CASE("each caution is shown once", "[engine][cautions]") {
    const std::set<std::string> different(caution_keys.begin(), caution_keys.end());
    CHECK(different.size() == caution_keys.size());
}
