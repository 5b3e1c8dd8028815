#include "app/data/load_tables.hpp"

#include "app/data/load_sources.hpp"
#include "app/data/table_loaders.hpp"
#include "assets/embedded.hpp"
#include "engine/physics/bonded_layer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace sillwalk::app {

using engine::Tables;

namespace {

constexpr std::string_view sources_path = "sources.json";

struct TableFile {
    std::string_view path;
    void (*load)(JsonObject&, TableFields&, Tables&);
};
constexpr std::array table_list = {
    TableFile{"tables/bearings.json", load_bearings},
    TableFile{"tables/chemicals.json", load_chemicals},
    TableFile{"tables/film.json", load_film},
    TableFile{"tables/floors.json", load_floors},
    TableFile{"tables/formulas.json", load_formulas},
    TableFile{"tables/friction.json", load_friction},
    TableFile{"tables/hygiene.json", load_hygiene},
    TableFile{"tables/layer.json", load_layer},
    TableFile{"tables/load_factors.json", load_load_factors},
    TableFile{"tables/materials.json", load_materials},
    TableFile{"tables/people.json", load_people},
    TableFile{"tables/practice.json", load_practice},
    TableFile{"tables/rating_classes.json", load_rating_classes},
    TableFile{"tables/rolling.json", load_rolling},
};

/// Parses one file and hands its root object to `load`; then checks the edition and unknown members.
void load_file(const FileLookup& lookup, std::string_view path, LoadedTables& loaded,
               const std::function<void(JsonObject&)>& load) {
    const std::string root = std::string(path) + "#";
    const std::optional<std::string> text = lookup(path);
    if (!text) {
        loaded.errors.push_back({engine::ErrorCode::not_found, "the file is missing", root});
        return;
    }
    const std::size_t before = loaded.errors.size();
    const std::optional<Json> document = parse_json(*text, loaded.errors);
    for (std::size_t i = before; i < loaded.errors.size(); ++i) loaded.errors[i].where = root;
    if (!document) return;
    JsonObject file(*document, root, loaded.errors);
    const std::string edition = file.text("edition").value_or("");
    if (loaded.tables.edition.empty()) loaded.tables.edition = edition;
    if (edition != loaded.tables.edition && !edition.empty()) {
        file.error("edition", "'" + edition + "' differs from '" + loaded.tables.edition + "' of the other files");
    }
    load(file);
    file.done();
}

/// References from one table to another.
void check_references(LoadedTables& loaded) {
    const auto wrong = [&](std::string where, std::string message) {
        loaded.errors.push_back({engine::ErrorCode::bad_input, std::move(message), std::move(where)});
    };
    const Tables& tables = loaded.tables;
    for (std::size_t i = 0; i < tables.materials.size(); ++i) {
        const std::string& column = tables.materials[i].chemical_column;
        if (!column.empty() && !tables.chemical_column(column)) {
            wrong(fmt::format("tables/materials.json#/rows/{}/chemical_column", i),
                  "'" + column + "' is no column of chemicals.json");
        }
    }
    for (std::size_t i = 0; i < tables.floors.size(); ++i) {
        const std::string& surface = tables.floors[i].rolling_surface;
        const bool known = std::any_of(tables.rolling.begin(), tables.rolling.end(),
                                       [&](const engine::RollingRow& row) { return row.surface == surface; });
        if (!known && !surface.empty()) {
            wrong(fmt::format("tables/floors.json#/rows/{}/rolling_surface", i),
                  "'" + surface + "' is no surface of rolling.json");
        }
    }
}

/// The curves of bonded treads for the materials that have a Poisson's ratio inside the table.
void prepare_layer(Tables& tables) {
    engine::LayerTable& layer = tables.layer;
    for (const engine::Material& material : tables.materials) {
        if (!material.poisson) continue;
        const double poisson = material.poisson->value;
        const bool inside = poisson >= layer.rows.back().poisson && poisson <= layer.rows.front().poisson;
        const bool done = std::any_of(layer.prepared.begin(), layer.prepared.end(),
                                      [&](const engine::LayerCurves& curves) { return curves.poisson == poisson; });
        if (inside && !done) layer.prepared.push_back(engine::layer_curves(layer, poisson));
    }
}

}  // namespace

LoadedTables load_tables_from(const FileLookup& lookup) {
    LoadedTables loaded;
    load_file(lookup, sources_path, loaded,
              [&](JsonObject& file) { loaded.tables.sources = load_sources(file, loaded.errors); });
    TableFields fields(loaded.tables, loaded.errors);
    for (const TableFile& table : table_list) {
        load_file(lookup, table.path, loaded, [&](JsonObject& file) { table.load(file, fields, loaded.tables); });
    }
    check_references(loaded);
    if (loaded.errors.empty()) prepare_layer(loaded.tables);
    return loaded;
}

LoadedTables load_tables() {
    return load_tables_from([](std::string_view path) -> std::optional<std::string> {
        const auto bytes = assets::embedded(path);
        if (!bytes) return std::nullopt;
        return std::string(*bytes);
    });
}

std::vector<std::string_view> table_files() {
    std::vector<std::string_view> paths{sources_path};
    for (const TableFile& table : table_list) paths.push_back(table.path);
    return paths;
}

}  // namespace sillwalk::app
