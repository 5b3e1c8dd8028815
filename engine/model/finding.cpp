#include "engine/model/finding.hpp"

#include "engine/base/contract.hpp"

namespace sillwalk::engine {
namespace {

const char* field_name(Field field) {
    switch (field) {
        case Field::none:
            return "";
        case Field::room_air:
            return "air";
        case Field::room_humidity:
            return "humidity";
        case Field::room_air_movement:
            return "air_movement";
        case Field::room_wetness:
            return "wetness";
        case Field::room_floor:
            return "floor";
        case Field::room_hygiene:
            return "hygiene";
        case Field::room_cleanroom:
            return "cleanroom_class";
        case Field::crossing_kind:
            return "kind";
        case Field::crossing_rise:
            return "rise";
        case Field::crossing_lip_slope:
            return "lip_slope";
        case Field::crossing_lip_height:
            return "lip_height";
        case Field::crossing_gap:
            return "gap";
        case Field::crossing_slot:
            return "slot";
        case Field::crossing_slope:
            return "slope";
        case Field::crossing_slope_length:
            return "slope_length";
        case Field::crossing_wetness:
            return "wetness";
        case Field::washing_agent:
            return "agent";
        case Field::washing_strength:
            return "strength";
        case Field::washing_temperature:
            return "temperature";
        case Field::washing_contact:
            return "contact";
        case Field::washing_frequency:
            return "frequency";
        case Field::washing_rinsed:
            return "rinsed";
        case Field::cart_tare:
            return "tare";
        case Field::cart_payload:
            return "payload";
        case Field::cart_sharing:
            return "sharing";
        case Field::cart_moved_by:
            return "moved_by";
        case Field::cart_people:
            return "people";
        case Field::cart_cg_forward_loaded:
            return "cg_forward_loaded";
        case Field::cart_cg_forward_empty:
            return "cg_forward_empty";
        case Field::cart_cg_height_loaded:
            return "cg_height_loaded";
        case Field::cart_cg_height_empty:
            return "cg_height_empty";
        case Field::cart_handle_height:
            return "handle_height";
        case Field::cart_speed:
            return "speed";
        case Field::cart_push_distance:
            return "push_distance";
        case Field::cart_push_rate:
            return "push_rate";
        case Field::cart_parked_loaded:
            return "parked_loaded";
        case Field::cart_trips_per_day:
            return "trips_per_day";
        case Field::cart_load_factor:
            return "load_factor";
        case Field::cart_fork_width:
            return "fork_width";
        case Field::cart_axle_diameter:
            return "axle_diameter";
        case Field::cart_overall_height_limit:
            return "overall_height_limit";
        case Field::cart_plate_pattern:
            return "plate_pattern";
        case Field::cart_static_ask:
            return "static_ask";
        case Field::cart_non_marking:
            return "non_marking";
        case Field::cart_castors:
            return "castors";
        case Field::cart_route:
            return "route";
        case Field::cart_stay:
            return "stay";
        case Field::cart_damage_size:
            return "size";
    }
    EXPECT_CONTRACT(false && "a field has a name");
    return "";
}

const char* list_of(Field field) {
    if (field >= Field::room_air && field <= Field::room_cleanroom) return "rooms";
    if (field >= Field::crossing_kind && field <= Field::crossing_wetness) return "crossings";
    if (field >= Field::washing_agent && field <= Field::washing_rinsed) return "washings";
    return "carts";
}

}  // namespace

const char* check_name(CheckId check) {
    switch (check) {
        case CheckId::load:
            return "load";
        case CheckId::parked:
            return "parked";
        case CheckId::step:
            return "step";
        case CheckId::gap:
            return "gap";
        case CheckId::cold:
            return "cold";
        case CheckId::heat:
            return "heat";
        case CheckId::bond:
            return "bond";
        case CheckId::chemical:
            return "chemical";
        case CheckId::corrosion:
            return "corrosion";
        case CheckId::hygiene:
            return "hygiene";
        case CheckId::push:
            return "push";
        case CheckId::traction:
            return "traction";
        case CheckId::floor:
            return "floor";
        case CheckId::bearing:
            return "bearing";
        case CheckId::tip:
            return "tip";
        case CheckId::fit:
            return "fit";
        case CheckId::static_charge:
            return "static";
        case CheckId::room:
            return "room";
    }
    EXPECT_CONTRACT(false && "a check has a name");
    return "";
}

const char* outcome_name(Outcome outcome) {
    switch (outcome) {
        case Outcome::does_not_apply:
            return "does not apply";
        case Outcome::holds:
            return "holds";
        case Outcome::tight:
            return "tight";
        case Outcome::not_known:
            return "not known";
        case Outcome::fails:
            return "fails";
    }
    EXPECT_CONTRACT(false && "an outcome has a name");
    return "";
}

const char* verdict_name(Verdict verdict) {
    switch (verdict) {
        case Verdict::fits:
            return "fits";
        case Verdict::fits_with_conditions:
            return "fits with conditions";
        case Verdict::cannot_tell:
            return "cannot tell";
        case Verdict::does_not_fit:
            return "does not fit";
    }
    EXPECT_CONTRACT(false && "a verdict has a name");
    return "";
}

const char* statement_key(Statement statement) {
    switch (statement) {
        case Statement::none:
            return "none";
        case Statement::load_rating:
            return "load.rating";
        case Statement::load_speed_unknown:
            return "load.speed_unknown";
        case Statement::parked_rating:
            return "parked.rating";
        case Statement::parked_flat_spot:
            return "parked.flat_spot";
        case Statement::parked_short:
            return "parked.short";
        case Statement::step_tested_rise:
            return "step.tested_rise";
        case Statement::step_no_climb:
            return "step.no_climb";
        case Statement::step_bevel:
            return "step.bevel";
        case Statement::step_none:
            return "step.none";
        case Statement::gap_sag:
            return "gap.sag";
        case Statement::gap_swallows:
            return "gap.swallows";
        case Statement::gap_slot:
            return "gap.slot";
        case Statement::gap_none:
            return "gap.none";
        case Statement::cold_rated_minimum:
            return "cold.rated_minimum";
        case Statement::cold_impact_floor:
            return "cold.impact_floor";
        case Statement::cold_brittle_struck:
            return "cold.brittle_struck";
        case Statement::cold_brittle_unstruck:
            return "cold.brittle_unstruck";
        case Statement::cold_warm:
            return "cold.warm";
        case Statement::heat_rated_maximum:
            return "heat.rated_maximum";
        case Statement::heat_standing:
            return "heat.standing";
        case Statement::heat_rolling:
            return "heat.rolling";
        case Statement::bond_shear:
            return "bond.shear";
        case Statement::bond_temperature:
            return "bond.temperature";
        case Statement::bond_chemical:
            return "bond.chemical";
        case Statement::bond_one_piece:
            return "bond.one_piece";
        case Statement::chemical_level:
            return "chemical.level";
        case Statement::corrosion_rusts:
            return "corrosion.rusts";
        case Statement::corrosion_resists:
            return "corrosion.resists";
        case Statement::corrosion_dry:
            return "corrosion.dry";
        case Statement::hygiene_crevice:
            return "hygiene.crevice";
        case Statement::hygiene_clean:
            return "hygiene.clean";
        case Statement::hygiene_no_rule:
            return "hygiene.no_rule";
        case Statement::push_start:
            return "push.start";
        case Statement::push_sustain:
            return "push.sustain";
        case Statement::push_crossing_rest:
            return "push.crossing_rest";
        case Statement::push_crossing_rolling:
            return "push.crossing_rolling";
        case Statement::push_ramp:
            return "push.ramp";
        case Statement::push_hold_back:
            return "push.hold_back";
        case Statement::push_team:
            return "push.team";
        case Statement::push_tugged:
            return "push.tugged";
        case Statement::push_jams:
            return "push.jams";
        case Statement::traction_start:
            return "traction.start";
        case Statement::traction_crossing:
            return "traction.crossing";
        case Statement::traction_crossing_rolling:
            return "traction.crossing_rolling";
        case Statement::traction_ramp:
            return "traction.ramp";
        case Statement::traction_none:
            return "traction.none";
        case Statement::floor_pressure:
            return "floor.pressure";
        case Statement::bearing_life:
            return "bearing.life";
        case Statement::bearing_static:
            return "bearing.static";
        case Statement::bearing_pv:
            return "bearing.pv";
        case Statement::bearing_temperature:
            return "bearing.temperature";
        case Statement::tip_stop:
            return "tip.stop";
        case Statement::tip_slope:
            return "tip.slope";
        case Statement::fit_width:
            return "fit.width";
        case Statement::fit_height:
            return "fit.height";
        case Statement::fit_axle:
            return "fit.axle";
        case Statement::fit_bore:
            return "fit.bore";
        case Statement::fit_hub:
            return "fit.hub";
        case Statement::fit_plate:
            return "fit.plate";
        case Statement::fit_diameter:
            return "fit.diameter";
        case Statement::fit_ok:
            return "fit.ok";
        case Statement::static_resistance:
            return "static.resistance";
        case Statement::static_not_asked:
            return "static.not_asked";
        case Statement::room_cleanroom:
            return "room.cleanroom";
        case Statement::room_marking:
            return "room.marking";
        case Statement::room_noise:
            return "room.noise";
        case Statement::room_ok:
            return "room.ok";
    }
    EXPECT_CONTRACT(false && "a statement has a key");
    return "";
}

const char* assumption_key(Assumption assumption) {
    switch (assumption) {
        case Assumption::reading_assumed:
            return "reading_assumed";
        case Assumption::reading_by_eye:
            return "reading_by_eye";
        case Assumption::load_factor_from_table:
            return "load_factor_from_table";
        case Assumption::load_factor_hole:
            return "load_factor_hole";
        case Assumption::film_coefficient:
            return "film_coefficient";
        case Assumption::cold_factor:
            return "cold_factor";
        case Assumption::body_mass:
            return "body_mass";
        case Assumption::friction_from_table:
            return "friction_from_table";
        case Assumption::rolling_arm_from_table:
            return "rolling_arm_from_table";
        case Assumption::solid_disc:
            return "solid_disc";
        case Assumption::lumped_core:
            return "lumped_core";
        case Assumption::dry_nylon:
            return "dry_nylon";
        case Assumption::ester_limits:
            return "ester_limits";
        case Assumption::creep_estimate:
            return "creep_estimate";
        case Assumption::modulus_band:
            return "modulus_band";
        case Assumption::crossing_both_ways:
            return "crossing_both_ways";
        case Assumption::cg_central:
            return "cg_central";
        case Assumption::wetness_of_room:
            return "wetness_of_room";
        case Assumption::rigid_pair_share:
            return "rigid_pair_share";
        case Assumption::free_fall_careful:
            return "free_fall_careful";
        case Assumption::bearing_friction_from_table:
            return "bearing_friction_from_table";
        case Assumption::memory_rating:
            return "memory_rating";
        case Assumption::practice_figure:
            return "practice_figure";
    }
    EXPECT_CONTRACT(false && "an assumption has a key");
    return "";
}

std::string reading_path(const ReadingRef& ref) {
    if (ref.field == Field::none) return {};
    std::string path = std::string("/") + list_of(ref.field) + "/" + std::to_string(ref.index);
    if (ref.field == Field::cart_stay) path += "/route/" + std::to_string(ref.stop);
    if (ref.field == Field::cart_damage_size) path += "/damage/" + std::to_string(ref.stop);
    return path + "/" + field_name(ref.field);
}

}  // namespace sillwalk::engine
