#pragma once
/// The columns of a catalogue in CSV, and how a cell becomes the member of the same row in JSON.
/// Documented in docs/reference/catalogue-csv.md.

#include "app/data/json_reader.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace sillwalk::app {

struct CsvUnit {
    std::string_view suffix;        ///< "in" of diameter_in; empty where the column has no unit
    double factor = 1, offset = 0;  ///< to the unit of the JSON key: cell * factor + offset
};

enum class CellType { text, number, whole_number, flag, words, hardness, parts, steps };

struct CsvColumn {
    std::string_view json_key;  ///< "diameter_mm"
    CellType type = CellType::text;
    CsvUnit unit;
};

/// The column of a header cell. The error says what would be right: a unit, or the nearest name.
[[nodiscard]] engine::Result<CsvColumn> find_column(std::string_view header);

/// The cell's value as JSON. The error says what would be right.
[[nodiscard]] engine::Result<Json> cell_value(const CsvColumn& column, std::string_view cell);

[[nodiscard]] std::string_view trimmed(std::string_view text);

}  // namespace sillwalk::app
