#pragma once
/// Loads the tables of published and practice figures, checked, from the files that were compiled in.

#include "engine/base/result.hpp"
#include "engine/model/tables.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

struct LoadedTables {
    engine::Tables tables;
    /// All that is wrong, each with file and JSON path: "tables/materials.json#/rows/14/density_kg_per_m3". Where it is
    /// not empty the tables must not be used.
    std::vector<engine::Error> errors;
};

/// The text of a file below assets/, or nothing where there is none.
using FileLookup = std::function<std::optional<std::string>(std::string_view path)>;

/// From the files that were compiled in.
[[nodiscard]] LoadedTables load_tables();
/// From any files. Never throws.
[[nodiscard]] LoadedTables load_tables_from(const FileLookup& lookup);

/// The files that load_tables_from() asks for, in its order.
[[nodiscard]] std::vector<std::string_view> table_files();

}  // namespace sillwalk::app
