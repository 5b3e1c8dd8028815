#include "app/core/plausible.hpp"

#include "app/core/reading_access.hpp"

#include <cctype>
#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

namespace sillwalk::app {

namespace {

std::string small_letters(std::string text) {
    for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return text;
}

bool is_typical(std::int64_t canonical, QuantityKind kind, const Plausible& row) {
    if (canonical == 0 && row.zero_is_typical) return true;
    const double si = to_si(canonical, kind);
    const double slack = 0.5 / canonical_per_si(kind);
    return si >= row.typical_low - slack && si <= row.typical_high + slack;
}

bool is_possible(std::int64_t canonical, QuantityKind kind, const Plausible& row) {
    const double si = to_si(canonical, kind);
    const double slack = 0.5 / canonical_per_si(kind);
    return si >= row.hard_low - slack && si <= row.hard_high + slack;
}

Entry without_digit(Entry entry, std::size_t at) {
    entry.digits.erase(at, 1);
    return entry;
}

/// What may have been meant, likeliest first.
std::vector<Suggestion> candidates(const TypedValue& typed) {
    std::vector<Suggestion> all;
    const auto units = units_of(typed.kind);
    const auto add = [&](const Entry& entry, std::size_t unit) {
        const auto canonical = canonical_of(entry, units[unit]);
        if (canonical) all.push_back({*canonical, unit, entry});
    };
    for (std::size_t i = 0; i < units.size(); ++i) {
        if (i != typed.unit && (typed.entry.sixteenths == 0 || units[i].sixteenths)) add(typed.entry, i);
    }
    for (std::size_t i = 1; i < typed.entry.digits.size(); ++i) {
        if (typed.entry.digits[i] == typed.entry.digits[i - 1]) add(without_digit(typed.entry, i), typed.unit);
    }
    if (typed.kind == QuantityKind::temperature || typed.kind == QuantityKind::slope || typed.entry.negative) {
        Entry turned = typed.entry;
        turned.negative = !turned.negative;
        add(turned, typed.unit);
    }
    const auto value = canonical_of(typed.entry, units[typed.unit]);
    const Unit& unit = units[typed.unit];
    if (value && unit.shape == UnitShape::linear && unit.offset == 0) {
        add(entry_for(*value / 10, unit), typed.unit);
        add(entry_for(*value * 10, unit), typed.unit);
    } else if (const auto point = typed.entry.digits.find('.'); point != std::string::npos) {
        add(without_digit(typed.entry, point), typed.unit);
    } else if (typed.entry.digits.size() > 2) {
        Entry shifted = typed.entry;
        shifted.digits.insert(shifted.digits.size() - 1, ".");
        add(shifted, typed.unit);
    }
    return all;
}

std::optional<Suggestion> likeliest(const TypedValue& typed, const Plausible& row) {
    for (const Suggestion& one : candidates(typed)) {
        if (is_typical(one.canonical, typed.kind, row)) return one;
    }
    return std::nullopt;
}

bool finer_than(const TypedValue& typed, std::int64_t canonical) {
    if (typed.resolution_si <= 0 || canonical == 0) return false;
    const double steps = std::fabs(to_si(canonical, typed.kind)) / typed.resolution_si;
    // A value of fewer than ten steps with a decimal typed cannot have been read to that digit.
    return typed.entry.digits.find('.') != std::string::npos && steps < 10;
}

}  // namespace

const Plausible* plausible_row(const EntryTables& tables, const engine::Survey& survey, const engine::ReadingRef& ref) {
    const std::string name = small_letters(owner_name(survey, ref));
    for (const Plausible& row : tables.plausible) {
        if (row.field != ref.field) continue;
        bool fits = row.name_has.empty();
        for (const std::string& part : row.name_has) fits = fits || name.find(part) != std::string::npos;
        if (fits) return &row;
    }
    return nullptr;
}

Hint judge_entry(const TypedValue& typed, const Plausible* row) {
    const auto canonical = canonical_of(typed.entry, units_of(typed.kind)[typed.unit]);
    if (!canonical || !row) return {};
    if (!is_possible(*canonical, typed.kind, *row)) return {HintKind::impossible, likeliest(typed, *row)};
    if (!is_typical(*canonical, typed.kind, *row)) {
        const bool low = to_si(*canonical, typed.kind) < row->typical_low;
        return {low ? HintKind::unusual_low : HintKind::unusual_high, likeliest(typed, *row)};
    }
    if (finer_than(typed, *canonical)) return {HintKind::finer_than_tool, std::nullopt};
    return {};
}

bool readings_disagree(std::int64_t first, std::int64_t second, std::int64_t tolerance) {
    return std::llabs(first - second) > 2 * tolerance;
}

}  // namespace sillwalk::app
