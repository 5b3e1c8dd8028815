#include "app/core/entry.hpp"

#include <cmath>
#include <numeric>

namespace sillwalk::app {

namespace {

constexpr std::size_t most_digits = 6;
constexpr std::size_t most_decimals = 3;
/// The smallest step that keys can type: a thousandth and a sixteenth both are whole numbers of it.
constexpr std::int64_t parts_per_unit = 16000;

std::int64_t rounded(std::int64_t numerator, std::int64_t denominator) {
    const std::int64_t half = denominator / 2;
    return numerator >= 0 ? (numerator + half) / denominator : -((-numerator + half) / denominator);
}

std::int64_t parts_of(const Entry& entry) {
    std::int64_t parts = 0;
    std::int64_t place = 0;
    for (const char c : entry.digits) {
        if (c == '.') {
            place = parts_per_unit;
            continue;
        }
        const std::int64_t digit = c - '0';
        if (place == 0) {
            parts = parts * 10 + digit * parts_per_unit;
        } else {
            place /= 10;
            parts += digit * place;
        }
    }
    parts += entry.sixteenths * (parts_per_unit / 16);
    return entry.negative ? -parts : parts;
}

std::string number_of(const Entry& entry) {
    std::string text = entry.negative ? "-" : "";
    std::string digits = entry.digits;
    while (digits.size() > 1 && digits[0] == '0' && digits[1] != '.') digits.erase(0, 1);
    if (!digits.empty() && digits.back() == '.') digits.pop_back();
    if (!digits.empty() && digits.front() == '.') digits.insert(0, "0");
    if (entry.sixteenths == 0) return text + (digits.empty() ? "0" : digits);
    const Fraction fraction = reduced(entry.sixteenths);
    if (!digits.empty() && digits != "0") text += digits + " ";
    return text + std::to_string(fraction.numerator) + "/" + std::to_string(fraction.denominator);
}

}  // namespace

Fraction reduced(int sixteenths) {
    const int common = std::gcd(sixteenths, 16);
    return {sixteenths / common, 16 / common};
}

void press_digit(Entry& entry, char key) {
    const auto point = entry.digits.find('.');
    const bool has_point = point != std::string::npos;
    if (key == '.') {
        if (!has_point && entry.sixteenths == 0) entry.digits += '.';
        return;
    }
    const std::size_t count = entry.digits.size() - (has_point ? 1 : 0);
    const std::size_t decimals = has_point ? entry.digits.size() - point - 1 : 0;
    if (count >= most_digits || decimals >= most_decimals) return;
    if (entry.digits == "0") entry.digits.clear();
    entry.digits += key;
}

void press_backspace(Entry& entry) {
    if (entry.sixteenths != 0) {
        entry.sixteenths = 0;
    } else if (!entry.digits.empty()) {
        entry.digits.pop_back();
    } else {
        entry.negative = false;
    }
}

std::optional<std::int64_t> canonical_of(const Entry& entry, const Unit& unit) {
    if (entry.empty() || entry.digits == ".") return std::nullopt;
    const std::int64_t parts = parts_of(entry);
    if (unit.shape == UnitShape::one_to) {
        if (parts == 0) return std::nullopt;
        return rounded(1000000 * parts_per_unit, parts);
    }
    if (unit.shape == UnitShape::degrees) {
        const double degrees = static_cast<double>(parts) / static_cast<double>(parts_per_unit);
        if (std::fabs(degrees) >= 90) return std::nullopt;
        return std::llround(std::tan(degrees * 3.14159265358979323846 / 180.0) * 1e6);
    }
    // (parts / parts_per_unit * factor + offset) / divisor, reduced first so that 64 bits hold it
    const std::int64_t common = std::gcd(unit.factor, parts_per_unit);
    const std::int64_t scale = parts_per_unit / common;
    return rounded(parts * (unit.factor / common) + unit.offset * scale, unit.divisor * scale);
}

std::string as_entered(const Entry& entry, const Unit& unit) {
    const std::string number = number_of(entry);
    if (unit.shape == UnitShape::one_to) return entry.negative ? "-1:" + number.substr(1) : "1:" + number;
    if (unit.name.empty()) return number;
    return number + (unit.name == "%" ? "" : " ") + std::string(unit.name);
}

Entry entry_for(std::int64_t canonical, const Unit& unit) {
    Entry entry;
    const double value = in_unit(canonical, unit);
    entry.negative = value < 0;
    const double magnitude = std::fabs(value);
    if (unit.sixteenths && canonical % (unit.factor / 16) == 0) {
        const auto all = std::llround(magnitude * 16);
        entry.sixteenths = static_cast<int>(all % 16);
        if (all >= 16 || entry.sixteenths == 0) entry.digits = std::to_string(all / 16);
        return entry;
    }
    const auto thousandths = std::llround(magnitude * 1000);
    entry.digits = std::to_string(thousandths / 1000);
    if (const auto rest = thousandths % 1000; rest != 0) {
        std::string decimals = std::to_string(1000 + rest).substr(1);
        while (decimals.back() == '0') decimals.pop_back();
        entry.digits += "." + decimals;
    }
    return entry;
}

}  // namespace sillwalk::app
