#include "engine/physics/chemistry.hpp"

#include "engine/base/near_word.hpp"
#include "engine/physics/guard.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace sillwalk::engine {

namespace {

constexpr double same_strength = 1e-9;

std::optional<std::size_t> column_of(const Chemicals& chemicals, std::string_view material) {
    const auto found = std::find(chemicals.materials.begin(), chemicals.materials.end(), material);
    if (found == chemicals.materials.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - chemicals.materials.begin());
}

std::vector<const ChemicalRow*> rows_of(const Chemicals& chemicals, std::string_view agent) {
    std::vector<const ChemicalRow*> out;
    for (const ChemicalRow& row : chemicals.rows) {
        if (row.agent == agent) {
            out.push_back(&row);
        }
    }
    return out;
}

/// True where `a` is the weaker row; a row for any strength is the strongest. Ties: the cooler row, then the id.
bool weaker(const ChemicalRow* a, const ChemicalRow* b) {
    if (a->strength != b->strength) {
        return a->strength && (!b->strength || *a->strength < *b->strength);
    }
    return a->temperature_max != b->temperature_max ? a->temperature_max < b->temperature_max : a->id < b->id;
}

/// The weakest row that reaches the strength; of rows of one strength, the coolest that reaches the temperature.
const ChemicalRow* row_for(const std::vector<const ChemicalRow*>& rising, double strength,
                           std::optional<Temperature> temperature) {
    const ChemicalRow* chosen = nullptr;
    for (const ChemicalRow* row : rising) {
        if (row->strength && *row->strength < strength - same_strength) {
            continue;
        }
        if (chosen != nullptr && row->strength != chosen->strength) {
            break;
        }
        chosen = row;
        if (!temperature || *temperature <= row->temperature_max) {
            break;
        }
    }
    return chosen;
}

ChemicalLevel one_worse(ChemicalLevel level) {
    return level == ChemicalLevel::unfit ? level : static_cast<ChemicalLevel>(static_cast<int>(level) + 1);
}

tl::unexpected<Error> unknown(std::string_view what, std::string_view word, std::vector<std::string> known) {
    return fail(ErrorCode::not_found,
                fmt::format("there is no {} \"{}\"; the nearest are {}", what, word,
                            joined_with_or(nearest_words(word, std::move(known), 3))),
                std::string(what));
}

tl::unexpected<Error> unknown_agent(const Chemicals& chemicals, std::string_view agent) {
    std::vector<std::string> known;
    for (const ChemicalRow& row : chemicals.rows) {
        known.push_back(row.agent);
    }
    return unknown("agent", agent, std::move(known));
}

}  // namespace

Result<ChemicalAnswer> chemical(const Chemicals& chemicals, std::string_view material, std::string_view agent,
                                std::optional<double> strength, std::optional<Temperature> temperature) {
    Guard guard;
    guard.require(!strength || (*strength > 0 && *strength <= 1), "strength", "must be over 0 % and at most 100 %");
    if (guard.failed()) {
        return guard.failure();
    }
    const auto column = column_of(chemicals, material);
    if (!column) {
        return unknown("material", material, chemicals.materials);
    }
    std::vector<const ChemicalRow*> rising = rows_of(chemicals, agent);
    if (rising.empty()) {
        return unknown_agent(chemicals, agent);
    }
    std::sort(rising.begin(), rising.end(), weaker);

    ChemicalAnswer out;
    const ChemicalRow* row = strength ? row_for(rising, *strength, temperature) : rising.back();
    out.stronger_than_rows = row == nullptr;
    out.row = row != nullptr ? row : rising.back();
    if (*column >= out.row->ratings.size() || !out.row->ratings[*column]) {
        return no_answer(fmt::format("No source rates {} against {}.", material, out.row->name));
    }
    out.rating = &*out.row->ratings[*column];
    out.hotter_than_row = temperature && *temperature > out.row->temperature_max;
    out.level = out.hotter_than_row ? one_worse(out.rating->level) : out.rating->level;
    if (out.stronger_than_rows) {
        out.level = ChemicalLevel::unfit;
    }
    return out;
}

}  // namespace sillwalk::engine
