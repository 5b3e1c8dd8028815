#pragma once
/// The catalogue that ships with the program, and any other in the same JSON format. Strict: for a user's own file with
/// slips in it see import_catalogue.hpp. Format: docs/reference/catalogue.md,
/// assets/schema/catalogue/catalogue.schema.json.

#include "engine/base/result.hpp"
#include "engine/model/catalogue.hpp"

#include <string_view>
#include <vector>

namespace sillwalk::app {

struct LoadedCatalogue {
    engine::Catalogue catalogue;        ///< sorted by id; use it only where errors is empty
    std::vector<engine::Error> errors;  ///< each with its JSON path
};

/// The one that was compiled in.
[[nodiscard]] LoadedCatalogue load_catalogue();
/// Never throws, never stops at the first error.
[[nodiscard]] LoadedCatalogue read_catalogue(std::string_view text);

}  // namespace sillwalk::app
