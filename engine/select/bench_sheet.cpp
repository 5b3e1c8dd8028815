#include "engine/select/bench_sheet.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

bool is_precision(BearingKind kind) {
    return kind == BearingKind::precision_ball || kind == BearingKind::stainless_precision_ball;
}

void add_part(BenchSheet& sheet, std::string name, std::string note, int per_wheel) {
    sheet.parts.push_back({std::move(name), std::move(note), per_wheel, per_wheel * sheet.wheels});
}

bool is_fellow(const Rig& a, const Rig& b) {
    return same_make(a, b) && a.wheel_diameter == b.wheel_diameter && a.fork_width == b.fork_width &&
           a.axle_diameter == b.axle_diameter && a.overall_height == b.overall_height &&
           a.plate_pattern == b.plate_pattern;
}

/// The checks looked at `rig` alone: its fellow must bear as much, as cold. A figure that is not given is not as good.
bool is_as_good(const Rig& fellow, const Rig& rig) {
    const bool bears = !rig.rated_load || (fellow.rated_load && *fellow.rated_load >= *rig.rated_load);
    const bool stands_cold =
        !rig.temperature_min || (fellow.temperature_min && *fellow.temperature_min <= *rig.temperature_min);
    return bears && stands_cold;
}

const Rig* fellow_with(const Catalogue& catalogue, const Rig& rig, CastorFunction function) {
    if (rig.function == function) return &rig;
    for (const Rig& other : catalogue.rigs) {
        if (other.function == function && is_fellow(other, rig) && is_as_good(other, rig)) return &other;
    }
    return nullptr;
}

/// The candidate's own function first.
void add_rigs(BenchSheet& sheet, const Catalogue& catalogue, const Rig& rig,
              std::span<const CastorFunction> functions) {
    std::vector<CastorFunction> order{rig.function};
    for (const CastorFunction function : {CastorFunction::swivel, CastorFunction::rigid, CastorFunction::total_lock}) {
        if (function != rig.function) order.push_back(function);
    }
    for (const CastorFunction function : order) {
        const auto count = static_cast<int>(std::count(functions.begin(), functions.end(), function));
        if (count == 0) continue;
        const Rig* fellow = fellow_with(catalogue, rig, function);
        if (fellow == nullptr) {
            sheet.rig_gaps.push_back({function, count});
        } else {
            const int per_wheel = count == sheet.wheels ? 1 : 0;
            sheet.parts.push_back({fellow->id.text(), fellow->description, per_wheel, count});
        }
    }
}

void add_parts(BenchSheet& sheet, const Catalogue& catalogue, const Wheel& wheel, const Bearing& bearing,
               const Rig& rig, std::span<const CastorFunction> functions) {
    add_part(sheet, wheel.id.text(), wheel.description, 1);
    add_rigs(sheet, catalogue, rig, functions);
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

void add_hand_checks(BenchSheet& sheet, const Bearing& bearing, std::span<const CastorFunction> functions) {
    sheet.check_by_hand = {"bench.check.count", "bench.check.seated", "bench.check.spins", "bench.check.no_grinding",
                           "bench.check.end_play"};
    if (is_precision(bearing.kind)) sheet.check_by_hand.push_back("bench.check.inner_rings_touch");
    if (bearing.grease_exposed) sheet.check_by_hand.push_back("bench.check.no_grease_outside");
    sheet.check_by_hand.push_back("bench.check.clear_of_fork");
    const auto any = [&](auto&& wanted) { return std::any_of(functions.begin(), functions.end(), wanted); };
    if (any([](CastorFunction f) { return f == CastorFunction::total_lock; }))
        sheet.check_by_hand.push_back("bench.check.brake_holds");
    if (any([](CastorFunction f) { return f != CastorFunction::rigid; }))
        sheet.check_by_hand.push_back("bench.check.swivels");
}

}  // namespace

BenchSheet bench_sheet(const Catalogue& catalogue, const Tables& tables, const Candidate& candidate,
                       std::span<const CastorFunction> functions) {
    EXPECT_CONTRACT(!functions.empty());
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
    sheet.wheels = static_cast<int>(functions.size());
    add_parts(sheet, catalogue, wheel, bearing, rig, functions);
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
    add_hand_checks(sheet, bearing, functions);
    return sheet;
}

}  // namespace sillwalk::engine
