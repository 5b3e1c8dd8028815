/// Can it be cleaned? The worst feature of wheel, bearing, rig and preparation against the strictest area of the route.
/// A feature one step below what the area asks is tight (a condition), two steps fail.
/// Statement hygiene_crevice: feature (order of HygieneFeature), its score, score asked. hygiene_clean: score, score
/// asked. hygiene_no_rule: none. The place is the room with the strictest area. Source: rows of the hygiene table.

#include "engine/checks/checks.hpp"
#include "engine/checks/judge.hpp"

namespace sillwalk::engine {
namespace {

struct StrictestArea {
    HygieneZone zone = HygieneZone::none;
    Place place;
};

StrictestArea find_strictest(Judge& judge, const CartDemand& cart) {
    StrictestArea area;
    for (const StopDemand& stop : cart.stops) {
        const HygieneZone* zone = judge.choice(stop.hygiene);
        if (zone != nullptr && *zone > area.zone) area = {*zone, {PlaceKind::room, stop.room}};
    }
    return area;
}

const Figure<double>* score_of(const Tables& tables, HygieneFeature feature) {
    for (const HygieneRow& row : tables.hygiene) {
        if (row.feature == feature) return &row.score;
    }
    return nullptr;
}

const Figure<double>* asked_in(const Tables& tables, HygieneZone zone) {
    for (const HygieneZoneRow& row : tables.hygiene_zones) {
        if (row.zone == zone) return &row.asked;
    }
    return nullptr;
}

/// Own scale: a step better than asked, just as asked, one step below (tight), then failing.
double use_of(double steps_short) {
    if (steps_short <= -1.0) return 0.4;
    if (steps_short <= 0.0) return 0.7;
    return steps_short <= 1.0 ? 0.95 : 0.5 + 0.5 * steps_short;
}

void add_feature(Judge& judge, const CheckContext& context, const StrictestArea& area, HygieneFeature feature) {
    const Figure<double>* score = score_of(*context.tables, feature);
    const Figure<double>* asked = asked_in(*context.tables, area.zone);
    if (score == nullptr || asked == nullptr) {
        judge.missing_figure();
        return;
    }
    const Amount has{score->value, Kind::number}, needs{asked->value, Kind::number};
    const Amount name{static_cast<double>(feature), Kind::number};
    const std::initializer_list<Amount> clean{has, needs};
    const std::initializer_list<Amount> crevice{name, has, needs};
    const bool closed = feature == HygieneFeature::closed;
    judge.part({.demand = needs,
                .capacity = has,
                .use = use_of(asked->value - score->value),
                .statement = closed ? Statement::hygiene_clean : Statement::hygiene_crevice,
                .place = area.place,
                .formula = "hygiene-rule",
                .numbers = closed ? clean : crevice,
                .citations = {score->citation, asked->citation}});
}

/// The grease that a wash can reach after the bench has prepared the bearing.
HygieneFeature grease_of(const Bearing& bearing, Preparation preparation) {
    const bool inside_reach = !bearing.sealed;
    if (inside_reach && preparation == Preparation::degreased) return HygieneFeature::closed;
    if (bearing.grease == "none" && preparation != Preparation::h1_lubricated) return HygieneFeature::closed;
    const bool h1 = bearing.grease == "H1" || (inside_reach && preparation == Preparation::h1_lubricated);
    if (bearing.grease_exposed) return h1 ? HygieneFeature::exposed_h1_grease : HygieneFeature::exposed_grease;
    return inside_reach && !h1 ? HygieneFeature::open_bearing_grease : HygieneFeature::closed;
}

}  // namespace

Finding check_hygiene(const CheckContext& context) {
    Judge judge(CheckId::hygiene, context);
    const StrictestArea area = find_strictest(judge, *context.cart);
    if (area.zone == HygieneZone::none) {
        judge.part({.statement = Statement::hygiene_no_rule, .outcome = Outcome::does_not_apply});
        return judge.finish();
    }
    const auto add = [&](bool present, HygieneFeature feature) {
        if (present) add_feature(judge, context, area, feature);
    };
    const HygieneFeatures& wheel = context.wheel->hygiene;
    add(true, HygieneFeature::closed);
    add(wheel.open_hub, HygieneFeature::open_hub);
    add(wheel.spoked, HygieneFeature::spoked_core);
    add(wheel.visible_tread_joint, HygieneFeature::visible_tread_joint);
    add(wheel.thread_guard, HygieneFeature::thread_guard);
    add(context.rig->exposed_threads, HygieneFeature::exposed_threads);
    add(context.rig->hollow_back, HygieneFeature::hollow_back);
    if (context.bearing->grease.empty()) {
        judge.missing_figure();
    } else {
        add(true, grease_of(*context.bearing, context.preparation));
    }
    return judge.finish();
}

}  // namespace sillwalk::engine
