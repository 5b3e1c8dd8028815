#pragma once
/// One row of a catalogue from JSON: shared by the strict loader and by the import, which keeps the good rows.

#include "app/data/json_reader.hpp"
#include "engine/model/catalogue.hpp"

#include <string>

namespace sillwalk::app {

inline constexpr std::string_view catalogue_format = "sillwalk-catalogue/1";

/// Each adds every error of the row, with its path. A row is usable only where it added none.
[[nodiscard]] engine::Wheel read_wheel(const Json& value, const std::string& path, JsonErrors& errors);
[[nodiscard]] engine::Bearing read_bearing(const Json& value, const std::string& path, JsonErrors& errors);
[[nodiscard]] engine::Rig read_rig(const Json& value, const std::string& path, JsonErrors& errors);

/// Name, edition and whether it is invented; the lists are left to the caller.
void read_catalogue_head(JsonObject& document, engine::Catalogue& catalogue);

/// Sorts the three lists by id.
void sort_catalogue(engine::Catalogue& catalogue);

}  // namespace sillwalk::app
