#include "engine/walk/thermal_wheel.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <utility>

namespace sillwalk::engine {
namespace {

constexpr int solid_radial_cells = 14, solid_axial_cells = 8;  // within 0.1 K of fine ones
constexpr int bonded_core_cells = 6, bonded_tread_cells = 8, lumped_core_tread_cells = 7;

bool is_bonded(const WalkKey& key) {
    return key.core != key.tread;
}

bool is_metal(const Material& material) {
    return material.family == MaterialFamily::steel || material.family == MaterialFamily::iron ||
           material.family == MaterialFamily::stainless;
}

bool stores_heat(const Material* material) {
    return material != nullptr && material->density.has_value() && material->specific_heat.has_value();
}
bool conducts_and_stores(const Material* material) {
    return stores_heat(material) && material->conductivity.has_value();
}

HeatLayer lumped(const Material& material, double inner_m, double outer_m) {
    return {inner_m * metre, outer_m * metre, std::nullopt, material.density->value, material.specific_heat->value, 1};
}
HeatLayer conducting(const Material& material, double inner_m, double outer_m, int cells) {
    HeatLayer layer = lumped(material, inner_m, outer_m);
    layer.conductivity = material.conductivity->value;
    layer.cells = cells;
    return layer;
}

FilmModel solid_model(const WalkKey& key, FilmCoefficient film) {
    const double radius = key.diameter / 2.0, half_width = key.width / 2.0;
    HeatLine radial({LineShape::radial, {conducting(*key.tread, 0.0, radius, solid_radial_cells)}, film});
    HeatLine axial({LineShape::axial, {conducting(*key.tread, 0.0, half_width, solid_axial_cells)}, film});
    FilmModel model(film, std::move(radial), std::move(axial));
    const std::vector<double> core = model.radial.weights_at(Length{});
    model.radial_views = {core, model.radial.weights_at(radius * metre), core, core, model.radial.mean_weights()};
    model.axial_middle = model.axial.weights_at(Length{});
    model.axial_mean = model.axial.mean_weights();
    return model;
}

FilmModel bonded_model(const WalkKey& key, FilmCoefficient film) {
    const double radius = key.diameter / 2.0, joint = radius - key.tread_thickness, bore_radius = key.bore / 2.0;
    const Length half_width = key.width / 2.0 * metre;
    const int tread_cells = is_metal(*key.core) ? lumped_core_tread_cells : bonded_tread_cells;
    const HeatLayer core = is_metal(*key.core) ? lumped(*key.core, bore_radius, joint)
                                               : conducting(*key.core, bore_radius, joint, bonded_core_cells);
    const HeatLayer tread = conducting(*key.tread, joint, radius, tread_cells);
    HeatLine radial({LineShape::radial, {core, tread}, film, half_width});
    // The rings already lose heat through their faces, so nothing varies across the width.
    HeatLine axial({LineShape::axial, {lumped(*key.tread, 0.0, half_width.si())}, FilmCoefficient{}});
    FilmModel model(film, std::move(radial), std::move(axial));
    const std::vector<double> bore = model.radial.weights_at(key.bore / 2.0 * metre);
    model.radial_views = {bore, model.radial.weights_at(radius * metre), bore, model.radial.weights_at(joint * metre),
                          model.radial.mean_weights()};
    model.axial_middle = model.axial.weights_at(Length{});
    model.axial_mean = model.axial.mean_weights();
    return model;
}

FilmModel model_of(const WalkKey& key, FilmCoefficient film) {
    FilmModel model = is_bonded(key) ? bonded_model(key, film) : solid_model(key, film);
    model.core_on_modes = model.radial.on_modes(model.radial_views[static_cast<std::size_t>(WheelPlace::core)]);
    model.rim_on_modes = model.radial.on_modes(model.radial_views[static_cast<std::size_t>(WheelPlace::rim)]);
    model.axial_on_modes = model.axial.on_modes(model.axial_middle);
    const std::size_t columns = model.axial.size();
    model.axial_to_modes_turned.resize(columns * columns);
    for (std::size_t mode = 0; mode < columns; ++mode) {
        for (std::size_t cell = 0; cell < columns; ++cell) {
            model.axial_to_modes_turned[cell * columns + mode] = model.axial.to_modes()[mode * columns + cell];
        }
    }
    EXPECT_CONTRACT(model.radial.size() <= ThermalWheel::max_rows && model.axial.size() <= ThermalWheel::max_columns);
    return model;
}

}  // namespace

bool ThermalWheel::figures_known(const WalkKey& key) {
    if (!(key.diameter > 0.0 && key.width > 0.0) || !conducts_and_stores(key.tread)) return false;
    if (!is_bonded(key)) return true;
    if (is_metal(*key.tread) || key.core == nullptr) return false;
    const bool core_known = is_metal(*key.core) ? stores_heat(key.core) : conducts_and_stores(key.core);
    return core_known && key.tread_thickness > 0.0 && key.bore >= 0.0 &&
           key.tread_thickness < (key.diameter - key.bore) / 2.0;
}

ThermalWheel::ThermalWheel(const WalkKey& key) : key_(key) {
    EXPECT_CONTRACT(figures_known(key));
}

const FilmModel& ThermalWheel::under(FilmCoefficient film) {
    const auto found =
        std::find_if(models_.begin(), models_.end(), [&](const FilmModel& model) { return model.film == film; });
    return found != models_.end() ? *found : models_.emplace_back(model_of(key_, film));
}

}  // namespace sillwalk::engine
