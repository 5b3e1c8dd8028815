#include "app/data/catalogue_rows.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace sillwalk::app {

using namespace engine;

namespace {

constexpr double greatest_length_mm = 2000, greatest_load_kg = 50000;

std::optional<Length> length_mm(JsonObject& row, std::string_view key, double low, Need need = Need::required) {
    const auto found = row.number(key, low, greatest_length_mm, need);
    return found ? std::optional<Length>(*found * millimetre) : std::nullopt;
}
std::optional<Mass> mass_kg(JsonObject& row, std::string_view key) {
    const auto found = row.number(key, 0.1, greatest_load_kg, Need::optional);
    return found ? std::optional<Mass>(*found * kilogram) : std::nullopt;
}
std::optional<Temperature> temperature_c(JsonObject& row, std::string_view key) {
    const auto found = row.number(key, -200, 600, Need::optional);
    return found ? std::optional<Temperature>(celsius(*found)) : std::nullopt;
}
std::optional<Force> force_kn(JsonObject& row, std::string_view key) {
    const auto found = row.number(key, 0.001, 1000, Need::optional);
    return found ? std::optional<Force>(*found * kilonewton) : std::nullopt;
}

std::string id_text(JsonObject& row) {
    const std::string id = row.text("id").value_or("");
    const bool bad = std::any_of(id.begin(), id.end(),
                                 [](char c) { return static_cast<unsigned char>(c) <= ' ' || c == '+' || c == 127; });
    if (row.has("id") && (bad || id.empty() || id.size() > 64)) {
        row.error("id", "an id is 1 to 64 characters without blanks and without '+'");
    }
    return id;
}

void check_order(JsonObject& row, const std::optional<Temperature>& low, const std::optional<Temperature>& high) {
    if (low && high && *low >= *high) row.error("temperature_max_c", "the maximum must be above the minimum");
}

std::optional<Hardness> hardness_of(JsonObject& row) {
    if (!row.has("hardness")) return std::nullopt;
    auto inner = row.object("hardness");
    const auto scale =
        inner->word<HardnessScale>("scale", {{"shore_a", HardnessScale::shore_a}, {"shore_d", HardnessScale::shore_d}});
    const auto value = inner->number("value", 0, 100);
    inner->done();
    return scale && value ? std::optional<Hardness>(Hardness{*scale, *value}) : std::nullopt;
}

HygieneFeatures hygiene_of(JsonObject& row, JsonErrors& errors) {
    HygieneFeatures features;
    row.each(
        "hygiene",
        [&](const Json& element, const std::string& path) {
            const std::string word = element.is_string() ? element.get<std::string>() : "";
            if (word == "open_hub") {
                features.open_hub = true;
            } else if (word == "spoked") {
                features.spoked = true;
            } else if (word == "visible_tread_joint") {
                features.visible_tread_joint = true;
            } else if (word == "thread_guard") {
                features.thread_guard = true;
            } else {
                errors.push_back(
                    {ErrorCode::bad_input,
                     fmt::format("'{}' is not one of: open_hub, spoked, visible_tread_joint, thread_guard", word),
                     path});
            }
        },
        Need::optional);
    return features;
}

std::optional<Construction> construction_of(JsonObject& row) {
    return row.word<Construction>("construction", {{"one_piece_urethane", Construction::one_piece_urethane},
                                                   {"urethane_on_polyolefin", Construction::urethane_on_polyolefin},
                                                   {"urethane_on_iron", Construction::urethane_on_iron},
                                                   {"nylon", Construction::nylon},
                                                   {"polyolefin", Construction::polyolefin},
                                                   {"phenolic", Construction::phenolic},
                                                   {"solid_rubber", Construction::solid_rubber},
                                                   {"thermoplastic_rubber", Construction::thermoplastic_rubber},
                                                   {"stainless", Construction::stainless}});
}

std::optional<RatingClass> rating_class_of(JsonObject& row) {
    return row.word<RatingClass>("rating_class",
                                 {{"institutional", RatingClass::institutional},
                                  {"industrial_soft", RatingClass::industrial_soft},
                                  {"industrial_hard", RatingClass::industrial_hard},
                                  {"drum_fixed", RatingClass::drum_fixed},
                                  {"furniture", RatingClass::furniture}},
                                 Need::optional);
}

void read_ratings(JsonObject& row, Wheel& wheel) {
    wheel.rated_load = mass_kg(row, "rated_load_kg");
    wheel.rating_class = rating_class_of(row);
    if (const auto speed = row.number("rated_speed_m_per_s", 0.01, 20, Need::optional)) {
        wheel.rated_speed = *speed * metre_per_second;
    }
    wheel.temperature_min = temperature_c(row, "temperature_min_c");
    wheel.temperature_max = temperature_c(row, "temperature_max_c");
    wheel.impact_floor = temperature_c(row, "impact_floor_c");
    check_order(row, wheel.temperature_min, wheel.temperature_max);
    wheel.non_marking = row.boolean("non_marking", Need::optional);
    wheel.resistance_ohm = row.number("resistance_ohm", 0, 1e18, Need::optional);
    if (const auto found = row.integer("cleanroom_class", 1, 9, Need::optional)) {
        wheel.cleanroom_class = static_cast<int>(*found);
    }
}

std::vector<SmallPart> parts_of(JsonObject& row, JsonErrors& errors) {
    std::vector<SmallPart> parts;
    row.each(
        "parts",
        [&](const Json& element, const std::string& path) {
            JsonObject inner(element, path, errors);
            SmallPart part;
            part.name = inner.text("name").value_or("");
            part.count = static_cast<int>(inner.integer("count", 1, 100).value_or(0));
            part.note = inner.text("note", Need::optional).value_or("");
            inner.done();
            parts.push_back(std::move(part));
        },
        Need::optional);
    return parts;
}

template <class Items>
void sort_by_id(Items& items) {
    std::sort(items.begin(), items.end(), [](const auto& a, const auto& b) { return a.id < b.id; });
}

}  // namespace

Wheel read_wheel(const Json& value, const std::string& path, JsonErrors& errors) {
    JsonObject row(value, path, errors);
    Wheel wheel;
    wheel.id = WheelId(id_text(row));
    wheel.description = row.text("description").value_or("");
    wheel.construction = construction_of(row).value_or(Construction::one_piece_urethane);
    wheel.tread_material = row.text("tread_material").value_or("");
    wheel.core_material = row.text("core_material").value_or("");
    wheel.diameter = length_mm(row, "diameter_mm", 10).value_or(Length{});
    wheel.tread_width = length_mm(row, "tread_width_mm", 5).value_or(Length{});
    wheel.tread_thickness = length_mm(row, "tread_thickness_mm", 0.5, Need::optional);
    if (wheel.tread_thickness && *wheel.tread_thickness >= 0.5 * wheel.diameter && wheel.diameter > Length{}) {
        row.error("tread_thickness_mm", "the tread is thicker than the wheel's radius");
    }
    wheel.crown_radius = length_mm(row, "crown_radius_mm", 5, Need::optional);
    wheel.hardness = hardness_of(row);
    read_ratings(row, wheel);
    wheel.hub_length = length_mm(row, "hub_length_mm", 5).value_or(Length{});
    wheel.hub_bore = length_mm(row, "hub_bore_mm", 3).value_or(Length{});
    wheel.hygiene = hygiene_of(row, errors);
    for (std::string& bearing : row.texts("bearings")) wheel.bearings.emplace_back(std::move(bearing));
    wheel.source = row.text("source").value_or("");
    row.done();
    return wheel;
}

Bearing read_bearing(const Json& value, const std::string& path, JsonErrors& errors) {
    JsonObject row(value, path, errors);
    Bearing bearing;
    bearing.id = BearingId(id_text(row));
    bearing.description = row.text("description").value_or("");
    bearing.kind = row.word<BearingKind>("kind", {{"plain_acetal", BearingKind::plain_acetal},
                                                  {"roller", BearingKind::roller},
                                                  {"stainless_roller", BearingKind::stainless_roller},
                                                  {"precision_ball", BearingKind::precision_ball},
                                                  {"stainless_precision_ball", BearingKind::stainless_precision_ball}})
                       .value_or(BearingKind::plain_acetal);
    bearing.material = row.text("material").value_or("");
    bearing.bore = length_mm(row, "bore_mm", 3).value_or(Length{});
    bearing.axle_diameter = length_mm(row, "axle_diameter_mm", 3).value_or(Length{});
    bearing.outer_diameter = length_mm(row, "outer_diameter_mm", 3).value_or(Length{});
    bearing.length = length_mm(row, "length_mm", 1).value_or(Length{});
    bearing.count = static_cast<int>(row.integer("count", 1, 8).value_or(1));
    bearing.dynamic_rating = force_kn(row, "dynamic_rating_kn");
    bearing.static_rating = force_kn(row, "static_rating_kn");
    bearing.temperature_min = temperature_c(row, "temperature_min_c");
    bearing.temperature_max = temperature_c(row, "temperature_max_c");
    check_order(row, bearing.temperature_min, bearing.temperature_max);
    bearing.sealed = row.boolean("sealed").value_or(false);
    bearing.grease_exposed = row.boolean("grease_exposed").value_or(false);
    bearing.grease =
        row.word<std::string>("grease", {{"none", "none"}, {"H1", "H1"}, {"general", "general"}}).value_or("");
    bearing.parts = parts_of(row, errors);
    for (std::string& step : row.texts("fitting", Need::optional)) bearing.fitting.push_back({std::move(step)});
    bearing.source = row.text("source").value_or("");
    row.done();
    return bearing;
}

Rig read_rig(const Json& value, const std::string& path, JsonErrors& errors) {
    JsonObject row(value, path, errors);
    Rig rig;
    rig.id = RigId(id_text(row));
    rig.description = row.text("description").value_or("");
    rig.function = row.word<CastorFunction>("function", {{"swivel", CastorFunction::swivel},
                                                         {"rigid", CastorFunction::rigid},
                                                         {"total_lock", CastorFunction::total_lock}})
                       .value_or(CastorFunction::swivel);
    rig.finish =
        row.word<RigFinish>("finish", {{"zinc_plated", RigFinish::zinc_plated}, {"stainless", RigFinish::stainless}})
            .value_or(RigFinish::zinc_plated);
    rig.material = row.text("material").value_or("");
    rig.wheel_diameter = length_mm(row, "wheel_diameter_mm", 10).value_or(Length{});
    rig.fork_width = length_mm(row, "fork_width_mm", 5).value_or(Length{});
    rig.axle_diameter = length_mm(row, "axle_diameter_mm", 3).value_or(Length{});
    rig.overall_height = length_mm(row, "overall_height_mm", 10).value_or(Length{});
    if (rig.overall_height > Length{} && rig.overall_height <= rig.wheel_diameter) {
        row.error("overall_height_mm", "the castor must be higher than its wheel");
    }
    rig.swivel_lead = length_mm(row, "swivel_lead_mm", 0).value_or(Length{});
    rig.plate_pattern = row.text("plate_pattern").value_or("");
    rig.rated_load = mass_kg(row, "rated_load_kg");
    rig.temperature_min = temperature_c(row, "temperature_min_c");
    rig.exposed_threads = row.boolean("exposed_threads").value_or(false);
    rig.hollow_back = row.boolean("hollow_back").value_or(false);
    rig.source = row.text("source").value_or("");
    row.done();
    return rig;
}

void read_catalogue_head(JsonObject& document, Catalogue& catalogue) {
    const auto format = document.text("format");
    if (format && *format != catalogue_format) {
        document.error("format", fmt::format("'{}' is not '{}'", *format, catalogue_format));
    }
    catalogue.name = document.text("name").value_or("");
    catalogue.edition = document.text("edition").value_or("");
    catalogue.invented = document.boolean("invented", Need::optional).value_or(false);
    (void)document.text("note", Need::optional);
}

void sort_catalogue(Catalogue& catalogue) {
    sort_by_id(catalogue.wheels);
    sort_by_id(catalogue.bearings);
    sort_by_id(catalogue.rigs);
}

}  // namespace sillwalk::app
