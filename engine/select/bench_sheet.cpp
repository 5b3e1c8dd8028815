#include "engine/select/bench_sheet.hpp"

#include "engine/base/contract.hpp"

namespace sillwalk::engine {
namespace {

bool is_precision(BearingKind kind) {
    return kind == BearingKind::precision_ball || kind == BearingKind::stainless_precision_ball;
}

void add_part(BenchSheet& sheet, std::string name, std::string note, int per_wheel) {
    sheet.parts.push_back({std::move(name), std::move(note), per_wheel, per_wheel * sheet.wheels});
}

void add_parts(BenchSheet& sheet, const Wheel& wheel, const Bearing& bearing, const Rig& rig) {
    add_part(sheet, wheel.id.text(), wheel.description, 1);
    add_part(sheet, rig.id.text(), rig.description, 1);
    for (const SmallPart& part : bearing.parts) add_part(sheet, part.name, part.note, part.count);
}

/// A seal keeps its grease in and the bath out, and a plain plastic bearing runs dry: neither is degreased.
bool takes_preparation(const Bearing& bearing) {
    return !bearing.sealed && bearing.kind != BearingKind::plain_acetal;
}

void add_preparation(BenchSheet& sheet, const Bearing& bearing) {
    if (sheet.preparation == Preparation::as_supplied) return;
    if (!takes_preparation(bearing)) {
        sheet.prepare = {"bench.prepare.outside_only"};
        if (bearing.sealed) sheet.prepare.push_back("bench.prepare.seal_stays_shut");
        return;
    }
    sheet.prepare = {"bench.prepare.safety_sheet", "bench.prepare.degrease", "bench.prepare.dry"};
    if (sheet.preparation == Preparation::degreased) {
        sheet.finish = {"bench.finish.no_oil", "bench.finish.label_degreased"};
        return;
    }
    sheet.finish = {"bench.finish.h1_thin_film", "bench.finish.h1_wipe_off", "bench.finish.label_h1"};
}

void add_hand_checks(BenchSheet& sheet, const Bearing& bearing, const Rig& rig) {
    sheet.check_by_hand = {"bench.check.count", "bench.check.seated", "bench.check.spins", "bench.check.no_grinding",
                           "bench.check.end_play"};
    if (is_precision(bearing.kind)) sheet.check_by_hand.push_back("bench.check.inner_rings_touch");
    if (bearing.grease_exposed) sheet.check_by_hand.push_back("bench.check.no_grease_outside");
    sheet.check_by_hand.push_back("bench.check.clear_of_fork");
    if (rig.function == CastorFunction::total_lock) sheet.check_by_hand.push_back("bench.check.brake_holds");
    if (rig.function != CastorFunction::rigid) sheet.check_by_hand.push_back("bench.check.swivels");
}

}  // namespace

BenchSheet bench_sheet(const Catalogue& catalogue, const Tables& tables, const Candidate& candidate, int castors) {
    EXPECT_CONTRACT(castors >= 1);
    EXPECT_CONTRACT(candidate.wheel < catalogue.wheels.size() && candidate.bearing < catalogue.bearings.size() &&
                    candidate.rig < catalogue.rigs.size());
    const Wheel& wheel = catalogue.wheels[candidate.wheel];
    const Bearing& bearing = catalogue.bearings[candidate.bearing];
    const Rig& rig = catalogue.rigs[candidate.rig];
    BenchSheet sheet;
    sheet.wheel = wheel.id.text();
    sheet.bearing = bearing.id.text();
    sheet.rig = rig.id.text();
    sheet.wheel_description = wheel.description;
    sheet.bearing_description = bearing.description;
    sheet.rig_description = rig.description;
    sheet.preparation = candidate.preparation;
    sheet.wheels = castors;
    add_parts(sheet, wheel, bearing, rig);
    add_preparation(sheet, bearing);
    for (const FittingStep& step : bearing.fitting) sheet.fitting.push_back(step.text);
    sheet.tool = is_precision(bearing.kind) ? "bench.tool.press_only" : "bench.tool.press_or_mallet";
    sheet.first_side = "bench.side.marked";
    const BearingRow* row = tables.bearing(bearing.kind);
    if (row != nullptr && row->end_play) {
        const Figure<Length>& play = *row->end_play;
        sheet.end_play = EndPlay{play.low.value_or(play.value), play.high.value_or(play.value), play.citation};
    }
    sheet.room_in_fork = rig.fork_width - wheel.hub_length;
    add_hand_checks(sheet, bearing, rig);
    return sheet;
}

}  // namespace sillwalk::engine
