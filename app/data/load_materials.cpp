#include "app/data/table_loaders.hpp"

namespace sillwalk::app {

using engine::Material;
using engine::MaterialFamily;
using engine::SoftSegment;

namespace {

void read_thermal(JsonObject& row, TableFields& fields, Material& material) {
    const Need may = Need::optional;
    material.density = fields.figure(row, "density_kg_per_m3", {500, 10000}, si<engine::Density>, may);
    material.conductivity = fields.figure(row, "conductivity_w_per_m_k", {0.05, 500}, si<engine::Conductivity>, may);
    material.specific_heat = fields.figure(row, "specific_heat_j_per_kg_k", {200, 4500}, si<engine::SpecificHeat>, may);
    material.softening = fields.figure(row, "softening_c", {20, 400}, degrees_celsius, may);
    material.hot_water_max = fields.figure(row, "hot_water_max_c", {20, 200}, degrees_celsius, may);
    material.expansion_per_kelvin = fields.figure(row, "expansion_per_kelvin", {1e-6, 500e-6}, plain, may);
}

void read_elastic(JsonObject& row, TableFields& fields, Material& material) {
    const Need may = Need::optional;
    material.modulus = fields.figure(row, "modulus_pa", {1e5, 1e12}, si<engine::Pressure>, may);
    material.poisson = fields.figure(row, "poisson", {0.1, 0.5}, plain, may);
    material.tan_delta = fields.figure(row, "tan_delta", {0.001, 1}, plain, may);
    material.creep_per_decade = fields.figure(row, "creep_per_decade", {0, 1}, plain, may);
    material.set_share = fields.figure(row, "set_share", {0, 1}, plain, may);
}

void read_cold(JsonObject& row, TableFields& fields, Material& material) {
    const Need may = Need::optional;
    const Range cold{-150, 60};
    material.brittle_struck = fields.figure(row, "brittle_struck_c", cold, degrees_celsius, may);
    material.brittle_unstruck = fields.figure(row, "brittle_unstruck_c", cold, degrees_celsius, may);
    material.brittle_point = fields.figure(row, "brittle_point_c", cold, degrees_celsius, may);
    material.glass_transition = fields.figure(row, "glass_transition_c", {-150, 150}, degrees_celsius, may);
    material.service_low = fields.figure(row, "service_low_c", cold, degrees_celsius, may);
    material.service_high = fields.figure(row, "service_high_c", {20, 400}, degrees_celsius, may);
    material.cold_note = row.text("cold_note", may).value_or("");
    material.water_note = row.text("water_note", may).value_or("");
    if (material.brittle_struck && material.brittle_unstruck &&
        material.brittle_unstruck->value > material.brittle_struck->value) {
        row.error("brittle_unstruck_c", "above brittle_struck_c; a blow never helps");
    }
}

}  // namespace

MaterialFamily read_family(JsonObject& row, std::string_view key) {
    const auto family = row.word<MaterialFamily>(key, {{"urethane", MaterialFamily::urethane},
                                                       {"polyolefin", MaterialFamily::polyolefin},
                                                       {"nylon", MaterialFamily::nylon},
                                                       {"acetal", MaterialFamily::acetal},
                                                       {"phenolic", MaterialFamily::phenolic},
                                                       {"rubber", MaterialFamily::rubber},
                                                       {"thermoplastic_rubber", MaterialFamily::thermoplastic_rubber},
                                                       {"steel", MaterialFamily::steel},
                                                       {"iron", MaterialFamily::iron},
                                                       {"stainless", MaterialFamily::stainless},
                                                       {"other", MaterialFamily::other}});
    return family.value_or(MaterialFamily::other);
}

void load_materials(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    std::string before;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        Material material;
        material.id = rising_id(row, "id", before);
        material.name = row.text("name").value_or("");
        material.family = read_family(row, "family");
        material.chemical_column = row.text("chemical_column", Need::optional).value_or("");
        material.soft_segment =
            row.word<SoftSegment>(
                   "soft_segment",
                   {{"unknown", SoftSegment::unknown}, {"ether", SoftSegment::ether}, {"ester", SoftSegment::ester}},
                   Need::optional)
                .value_or(SoftSegment::unknown);
        read_thermal(row, fields, material);
        read_elastic(row, fields, material);
        read_cold(row, fields, material);
        tables.materials.push_back(std::move(material));
    });
}

}  // namespace sillwalk::app
