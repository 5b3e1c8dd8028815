#pragma once
/// Looks an agent up in the chemical table.

#include "engine/base/result.hpp"
#include "engine/model/tables.hpp"

#include <optional>
#include <string_view>

namespace sillwalk::engine {

struct ChemicalAnswer {
    ChemicalLevel level = ChemicalLevel::unfit;
    const ChemicalRow* row = nullptr;
    const ChemicalRating* rating = nullptr;
    bool hotter_than_row = false;     ///< one level worse for that
    bool stronger_than_rows = false;  ///< no row reaches the strength: the strongest row, unfit, says so
};
/// A strength takes the row at or above it (no strength: the mildest row is not assumed; the strongest row decides).
/// not_found names the nearest ids.
[[nodiscard]] Result<ChemicalAnswer> chemical(const Chemicals& chemicals, std::string_view material,
                                              std::string_view agent, std::optional<double> strength = std::nullopt,
                                              std::optional<Temperature> temperature = std::nullopt);

}  // namespace sillwalk::engine
