#pragma once
/// One reading of a survey by its reference, whatever its type: numbers as canonical whole numbers, choices as words.

#include "app/core/quantity.hpp"
#include "engine/model/survey.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::app {

struct NumberReading {
    std::optional<std::int64_t> value;  ///< canonical
    std::int64_t tolerance = 0;         ///< canonical, without offset
    engine::Known known = engine::Known::not_yet_read;
    std::string as_entered, method;
    friend bool operator==(const NumberReading&, const NumberReading&) = default;
};
struct WordReading {
    std::optional<std::string> word;
    engine::Known known = engine::Known::not_yet_read;
    friend bool operator==(const WordReading&, const WordReading&) = default;
};

/// True where the survey has the room, crossing, washing, cart or stop that it names.
[[nodiscard]] bool exists(const engine::Survey& survey, const engine::ReadingRef& ref);
/// Empty where the field is not a number, or does not exist.
[[nodiscard]] std::optional<NumberReading> read_number(const engine::Survey& survey, const engine::ReadingRef& ref);
[[nodiscard]] std::optional<WordReading> read_word(const engine::Survey& survey, const engine::ReadingRef& ref);
/// False where the field is not a number, or does not exist; then nothing is written.
bool write_number(engine::Survey& survey, const engine::ReadingRef& ref, const NumberReading& reading);
/// False also where the word is none of words_of().
bool write_word(engine::Survey& survey, const engine::ReadingRef& ref, const WordReading& reading);
/// Words of a field with a closed list, in the order in which they are offered; empty for ids of tables.
[[nodiscard]] std::vector<std::string> words_of(engine::Field field);

/// Name of the room, crossing, washing or cart that the reading belongs to.
[[nodiscard]] std::string owner_name(const engine::Survey& survey, const engine::ReadingRef& ref);
/// Path of the entry: "/crossings/<id>/rise".
[[nodiscard]] std::string entry_path(const engine::Survey& survey, const engine::ReadingRef& ref);

/// Language key of its name: field_key(), and one of its own for each distance of the castors.
[[nodiscard]] std::string reading_key(const engine::ReadingRef& ref);

/// Under which a sheet's keys are kept: reading_path(), with the stop for the distances of the castors.
[[nodiscard]] std::string draft_path(const engine::ReadingRef& ref);
/// The number whose draft_path() this is; empty where there is none. For a sheet that was open when the power went.
[[nodiscard]] std::optional<engine::ReadingRef> find_reading(const engine::Survey& survey, const std::string& path);

enum class Owner { none, room, crossing, washing, cart };
[[nodiscard]] Owner owner_of(engine::Field field);

}  // namespace sillwalk::app
