#pragma once
/// What can be typed: kinds of quantity, the units a person may choose, and whole numbers of the canonical unit behind
/// them. A unit changes how a value is typed and shown, never the value. Canonical units are those of the survey file:
/// nm, g, mK, ms, ppm, µm/s, millionths per day, thousandths.

#include "engine/model/finding.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace sillwalk::app {

enum class QuantityKind : std::uint8_t {
    small_length,  ///< mm, in with sixteenths
    long_length,   ///< m, ft
    mass,
    temperature,
    slope,
    share,
    strength,
    minutes,
    days,
    speed,
    washes,
    pushes,
    count
};
inline constexpr std::size_t quantity_kind_count = 13;
[[nodiscard]] std::string_view quantity_name(QuantityKind kind);  ///< "small_length": in tables and settings
[[nodiscard]] std::optional<QuantityKind> quantity_of_name(std::string_view name);

enum class UnitShape : std::uint8_t {
    linear,  ///< canonical = (value * factor + offset) / divisor
    one_to,  ///< "1:12"
    degrees  ///< angle whose tangent is meant
};
struct Unit {
    std::string_view name;    ///< in as-entered texts: "mm", "degC", "1:"
    std::string_view symbol;  ///< on the screen: "mm", "°C"; empty where `word` is used
    std::string_view word;    ///< language key where the unit is a word: "unit.per_day"
    UnitShape shape = UnitShape::linear;
    std::int64_t factor = 1, divisor = 1, offset = 0;
    std::int64_t step = 1;    ///< of the stepper, canonical
    bool us = false;          ///< US customary
    bool sixteenths = false;  ///< fractions of an inch are typed
    int decimals = 0;         ///< shown at most
};
[[nodiscard]] std::span<const Unit> units_of(QuantityKind kind);

/// None for a field that is chosen and not typed.
[[nodiscard]] std::optional<QuantityKind> quantity_of(engine::Field field);
/// Canonical units in one SI unit (temperature: kelvin).
[[nodiscard]] double canonical_per_si(QuantityKind kind);
[[nodiscard]] std::int64_t to_canonical(double si, QuantityKind kind);
[[nodiscard]] double to_si(std::int64_t canonical, QuantityKind kind);

/// The number to show in that unit, without the unit: "19.05", "3/4", "1:12" gives "12". True minus sign.
[[nodiscard]] std::string shown_number(std::int64_t canonical, const Unit& unit);
/// A difference (a tolerance) in that unit: no offset.
[[nodiscard]] std::string shown_difference(std::int64_t canonical, const Unit& unit);
[[nodiscard]] double in_unit(std::int64_t canonical, const Unit& unit);

}  // namespace sillwalk::app
