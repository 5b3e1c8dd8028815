#include "app/data/table_loaders.hpp"

#include <fmt/format.h>

#include <set>

namespace sillwalk::app {

using engine::HygieneFeature;
using engine::HygieneZone;
using engine::Practice;

void load_practice(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    Practice& practice = tables.practice;
    const Range share{0.001, 1}, margin{0, 100}, fahrenheit{-150, 500}, ohm{1, 1e12};
    const auto temperature_change = si<engine::TemperatureChange>;
    practice.holds_below = fields.needed(file, "holds_below", share, plain);
    practice.temperature_tight = fields.needed(file, "temperature_tight_k", margin, temperature_change);
    practice.cold_use_per_kelvin = fields.needed(file, "cold_use_per_k", share, plain);
    practice.parked_limit = fields.needed(file, "parked_limit_d", {1, 365}, days);
    practice.parked_capacity_share = fields.needed(file, "parked_capacity_share", share, plain);
    practice.flat_spot_share = fields.needed(file, "flat_spot_share", share, plain);
    practice.bevel_counts_as_slope = fields.needed(file, "bevel_counts_as_slope", {0.01, 10}, tangent);
    practice.walking_speed = fields.needed(file, "walking_speed_m_per_s", {0.1, 5}, si<engine::Speed>);
    practice.urethane_rated_min = fields.needed(file, "urethane_rated_min_degf", fahrenheit, degrees_fahrenheit);
    practice.urethane_impact_floor = fields.needed(file, "urethane_impact_floor_degf", fahrenheit, degrees_fahrenheit);
    practice.urethane_rated_max = fields.needed(file, "urethane_rated_max_degf", fahrenheit, degrees_fahrenheit);
    practice.brittle_margin_struck = fields.needed(file, "brittle_margin_struck_k", margin, temperature_change);
    practice.brittle_margin_unstruck = fields.needed(file, "brittle_margin_unstruck_k", margin, temperature_change);
    practice.creep_flat_hot = fields.needed(file, "creep_flat_hot", share, plain);
    practice.creep_critical = fields.needed(file, "creep_critical_c", {20, 200}, degrees_celsius);
    practice.bond_shear_limit = fields.needed(file, "bond_shear_limit_pa", {1e5, 1e9}, si<engine::Pressure>);
    practice.bond_retention_70 = fields.needed(file, "bond_retention_70", share, plain);
    practice.bond_retention_100 = fields.needed(file, "bond_retention_100", share, plain);
    practice.life_wet_factor = fields.needed(file, "life_wet_factor", share, plain);
    practice.life_splash_factor = fields.needed(file, "life_splash_factor", share, plain);
    practice.conductive_ohm = fields.needed(file, "conductive_ohm", ohm, plain);
    practice.conductive_ohm_other = fields.needed(file, "conductive_ohm_other", ohm, plain);
    practice.antistatic_low_ohm = fields.needed(file, "antistatic_low_ohm", ohm, plain);
    practice.antistatic_high_ohm = fields.needed(file, "antistatic_high_ohm", ohm, plain);
    practice.bridge_reserve = fields.needed(file, "bridge_reserve", {1, 5}, plain);
    practice.short_contact = fields.needed(file, "short_contact_min", {1, 1440}, minutes);
    practice.rust_damp_use = fields.needed(file, "rust_damp_use", {0.1, 5}, plain);
    practice.rust_wet_use = fields.needed(file, "rust_wet_use", {0.1, 5}, plain);
    practice.bearing_service = fields.needed(file, "bearing_service_d", {1, 10000}, days);
    practice.quiet_hardness = fields.needed(file, "quiet_hardness", {10, 100}, plain);
}

void load_hygiene(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    const std::initializer_list<std::pair<std::string_view, HygieneFeature>> feature_words = {
        {"open_hub", HygieneFeature::open_hub},
        {"spoked_core", HygieneFeature::spoked_core},
        {"visible_tread_joint", HygieneFeature::visible_tread_joint},
        {"thread_guard", HygieneFeature::thread_guard},
        {"exposed_threads", HygieneFeature::exposed_threads},
        {"hollow_back", HygieneFeature::hollow_back},
        {"exposed_grease", HygieneFeature::exposed_grease},
        {"exposed_h1_grease", HygieneFeature::exposed_h1_grease},
        {"open_bearing_grease", HygieneFeature::open_bearing_grease},
        {"closed", HygieneFeature::closed}};
    const std::initializer_list<std::pair<std::string_view, HygieneZone>> zone_words = {
        {"non_food", HygieneZone::non_food}, {"splash", HygieneZone::splash}, {"food", HygieneZone::food}};
    const Range score{0, 3};
    std::set<HygieneFeature> features;
    each_row(file, "features", fields.errors(), [&](JsonObject& row, std::size_t) {
        const auto feature = row.word<HygieneFeature>("feature", feature_words);
        if (feature && !features.insert(*feature).second) row.error("feature", "stands twice");
        tables.hygiene.push_back({feature.value_or(HygieneFeature::closed), fields.needed(row, "score", score, plain)});
    });
    if (features.size() != feature_words.size()) {
        file.error("features", fmt::format("{} of {} features", features.size(), feature_words.size()));
    }
    std::set<HygieneZone> zones;
    each_row(file, "zones", fields.errors(), [&](JsonObject& row, std::size_t) {
        const auto zone = row.word<HygieneZone>("zone", zone_words);
        if (zone && !zones.insert(*zone).second) row.error("zone", "stands twice");
        tables.hygiene_zones.push_back({zone.value_or(HygieneZone::food), fields.needed(row, "asked", score, plain)});
    });
    if (zones.size() != zone_words.size()) {
        file.error("zones", fmt::format("{} of {} zones", zones.size(), zone_words.size()));
    }
}

}  // namespace sillwalk::app
