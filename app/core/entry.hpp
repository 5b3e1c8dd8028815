#pragma once
/// What stands on the keypad: digits as they were pressed, a sign, sixteenths of an inch. The value behind it is an
/// exact whole number of the canonical unit wherever the unit allows it; every k/16 in is.

#include "app/core/quantity.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace sillwalk::app {

struct Entry {
    bool negative = false;
    std::string digits;  ///< "19", "19.5", "."; at most six digits, three of them decimals
    int sixteenths = 0;  ///< 0 to 15
    friend bool operator==(const Entry&, const Entry&) = default;
    [[nodiscard]] bool empty() const { return digits.empty() && sixteenths == 0; }
};

/// '0' to '9' or '.'; a key that does not fit is ignored.
void press_digit(Entry& entry, char key);
/// Takes back the last key: the fraction first, then a digit, then the sign.
void press_backspace(Entry& entry);

/// Empty while nothing is typed, or where the unit cannot express it ("1:0").
[[nodiscard]] std::optional<std::int64_t> canonical_of(const Entry& entry, const Unit& unit);
/// "3/4 in", "-25 degC", "1:12": exactly what was typed, with its unit. Fractions are reduced.
[[nodiscard]] std::string as_entered(const Entry& entry, const Unit& unit);
/// The entry that types this value in this unit, as near as the unit's decimals allow.
[[nodiscard]] Entry entry_for(std::int64_t canonical, const Unit& unit);

/// sixteenths 12 gives 3 and 4.
struct Fraction {
    int numerator = 0, denominator = 1;
};
[[nodiscard]] Fraction reduced(int sixteenths);

}  // namespace sillwalk::app
