#pragma once
/// A user's own catalogue, from JSON (the format of load_catalogue.hpp) or CSV (docs/reference/catalogue-csv.md).
/// Good rows are kept; each bad row is named with its place, what is wrong and what would be right. Nothing throws.

#include "engine/base/result.hpp"
#include "engine/model/catalogue.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

struct ImportProblem {
    std::size_t row = 0;  ///< CSV: as a spreadsheet counts, the header is row 1. JSON: 0
    std::string column;   ///< CSV: the column's name; empty where the whole row is meant. JSON: the path
    std::string message;  ///< what is wrong and what would be right
    /// "row 14, column rated_load_kg: …" or "/wheels/3/rated_load_kg: …".
    [[nodiscard]] std::string line() const;
};

struct ImportedCatalogue {
    engine::Catalogue catalogue;          ///< the good rows, sorted by id
    std::size_t rows = 0, bad_rows = 0;   ///< rows seen; rows left out
    std::vector<ImportProblem> problems;  ///< in the order of the file
    /// "212 of 214 rows imported, 2 left out".
    [[nodiscard]] std::string summary() const;
};

[[nodiscard]] ImportedCatalogue import_catalogue_json(std::string_view text);
/// `name` becomes the catalogue's name; its edition is "imported".
[[nodiscard]] ImportedCatalogue import_catalogue_csv(std::string_view text, std::string name);
/// JSON where the first visible character is a brace, else CSV.
[[nodiscard]] ImportedCatalogue import_catalogue(std::string_view text, std::string name);

}  // namespace sillwalk::app
