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

/// True where `a` is the weaker row; a row for any strength is the strongest. Ties: the cooler row, then the id.
bool weaker(const ChemicalRow* a, const ChemicalRow* b) {
    if (a->strength != b->strength) {
        return a->strength && (!b->strength || *a->strength < *b->strength);
    }
    return a->temperature_max != b->temperature_max ? a->temperature_max < b->temperature_max : a->id < b->id;
}

/// The row that a strength takes: the weakest that reaches it; of rows of one strength, the coolest that reaches the
/// temperature, else the hottest.
bool takes_before(const ChemicalRow* a, const ChemicalRow* b, std::optional<Temperature> temperature) {
    if (a->strength != b->strength) {
        return weaker(a, b);
    }
    const bool a_reaches = !temperature || *temperature <= a->temperature_max;
    const bool b_reaches = !temperature || *temperature <= b->temperature_max;
    if (a_reaches != b_reaches) {
        return a_reaches;
    }
    return a_reaches ? weaker(a, b) : weaker(b, a);
}

struct AgentRows {
    const ChemicalRow* strongest = nullptr;  ///< null where the table has no such agent
    const ChemicalRow* taken = nullptr;      ///< null where no row reaches the strength, or none was given
};

/// In one pass and without a copy: the checks ask thousands of times.
AgentRows rows_of(const Chemicals& chemicals, std::string_view agent, std::optional<double> strength,
                  std::optional<Temperature> temperature) {
    AgentRows rows;
    for (const ChemicalRow& row : chemicals.rows) {
        if (row.agent != agent) {
            continue;
        }
        if (rows.strongest == nullptr || weaker(rows.strongest, &row)) {
            rows.strongest = &row;
        }
        const bool reaches = strength && (!row.strength || *row.strength >= *strength - same_strength);
        if (reaches && (rows.taken == nullptr || takes_before(&row, rows.taken, temperature))) {
            rows.taken = &row;
        }
    }
    return rows;
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
    const AgentRows rows = rows_of(chemicals, agent, strength, temperature);
    if (rows.strongest == nullptr) {
        return unknown_agent(chemicals, agent);
    }

    ChemicalAnswer out;
    out.stronger_than_rows = strength && rows.taken == nullptr;
    out.row = rows.taken != nullptr ? rows.taken : rows.strongest;
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
