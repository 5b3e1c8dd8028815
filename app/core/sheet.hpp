#pragma once
/// The measuring sheet: one reading being typed. All of it can be written down as a short text (draft), so that a dead
/// battery costs one key at most.

#include "app/core/entry.hpp"
#include "app/core/plausible.hpp"
#include "app/core/reading_access.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

struct Sheet {
    engine::ReadingRef ref;
    QuantityKind kind = QuantityKind::count;
    std::size_t unit = 0;  ///< index in units_of(kind)
    Entry entry;
    std::size_t method = 0;                   ///< index in methods_for()
    std::optional<std::int64_t> first_value;  ///< of "measure again"
    std::string first_entered;
    std::string copied_from;     ///< name of the place whose value was taken over
    bool fraction_page = false;  ///< narrow screens show digits or fractions
    bool ruler_page = false;     ///< the ruler stands in place of the keys
    NumberReading before;        ///< as it was when the sheet opened
    friend bool operator==(const Sheet&, const Sheet&) = default;
};

/// Ways of reading offered for this kind and unit, in the table's order.
[[nodiscard]] std::vector<const Method*> methods_for(const EntryTables& tables, QuantityKind kind, const Unit& unit);
[[nodiscard]] const Method* method_of(const Sheet& sheet, const EntryTables& tables);
[[nodiscard]] const Unit& unit_of(const Sheet& sheet);

/// Canonical half-width of a way of reading at this value.
[[nodiscard]] std::int64_t tolerance_of(const Method& method, QuantityKind kind, std::int64_t canonical);

/// What would be kept if the sheet were closed now; empty while nothing is typed.
[[nodiscard]] std::optional<NumberReading> reading_of(const Sheet& sheet, const EntryTables& tables);
[[nodiscard]] Hint hint_of(const Sheet& sheet, const EntryTables& tables, const engine::Survey& survey);
/// Both readings of "measure again" are further apart than their tolerances allow.
[[nodiscard]] bool disagrees(const Sheet& sheet, const EntryTables& tables);

/// Other places of the survey that have this reading, nearest in the list first; at most three.
[[nodiscard]] std::vector<engine::ReadingRef> same_as(const engine::Survey& survey, const engine::ReadingRef& ref);
/// The next field of the same owner that is worth reading after this one.
[[nodiscard]] std::optional<engine::ReadingRef> next_reading(const engine::Survey& survey,
                                                             const engine::ReadingRef& ref);

[[nodiscard]] std::string draft_text(const Sheet& sheet);
/// Puts a draft's keys, unit and method into a sheet that was opened for the same reading. False where it is no draft.
bool restore_draft(Sheet& sheet, std::string_view draft);

}  // namespace sillwalk::app
