#pragma once
/// Judges a value while it is typed: usual, unusual, impossible; and guesses the slip (unit, decimal point, sign,
/// doubled key) where another value would be usual. Guards typing only: nothing here reaches the engine.

#include "app/core/entry.hpp"
#include "app/data/entry_tables.hpp"
#include "engine/model/survey.hpp"

#include <cstdint>
#include <optional>

namespace sillwalk::app {

enum class HintKind : std::uint8_t {
    none,
    unusual_low,
    unusual_high,
    finer_than_tool,  ///< more digits than this way of reading gives
    impossible        ///< cannot be kept
};

/// Another value that would be usual: the same keys in another unit, or one key put right.
struct Suggestion {
    std::int64_t canonical = 0;
    std::size_t unit = 0;  ///< index in units_of(kind)
    Entry entry;
    friend bool operator==(const Suggestion&, const Suggestion&) = default;
};

struct Hint {
    HintKind kind = HintKind::none;
    std::optional<Suggestion> suggestion;
    friend bool operator==(const Hint&, const Hint&) = default;
};

/// The row that judges this reading, if there is one. Where it stands (name of the room) may choose the row.
[[nodiscard]] const Plausible* plausible_row(const EntryTables& tables, const engine::Survey& survey,
                                             const engine::ReadingRef& ref);

struct TypedValue {
    Entry entry;
    std::size_t unit = 0;  ///< index in units_of(kind)
    QuantityKind kind = QuantityKind::count;
    double resolution_si = 0;  ///< of the way of reading; 0 = any
};
/// `row` may be null: then nothing is said.
[[nodiscard]] Hint judge_entry(const TypedValue& typed, const Plausible* row);

/// Two readings of one thing that differ by more than both tolerances together.
[[nodiscard]] bool readings_disagree(std::int64_t first, std::int64_t second, std::int64_t tolerance);

}  // namespace sillwalk::app
