#pragma once
/// Reads assets/sources.json: where the figures come from.

#include "app/data/json_reader.hpp"
#include "engine/model/citation.hpp"

namespace sillwalk::app {

/// Rows sorted by key. Each error is added with its path.
[[nodiscard]] std::vector<engine::Source> load_sources(JsonObject& file, JsonErrors& errors);

}  // namespace sillwalk::app
