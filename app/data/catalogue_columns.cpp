#include "app/data/catalogue_columns.hpp"

#include "engine/base/near_word.hpp"
#include "engine/base/numeric_text.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <span>
#include <vector>

namespace sillwalk::app {

using engine::bad_input;
using engine::Result;

namespace {

enum class Measure { none, length, mass, temperature, speed, force };

constexpr CsvUnit length_units[] = {{"mm", 1.0, 0.0}, {"in", 25.4, 0.0}};
constexpr CsvUnit mass_units[] = {{"kg", 1.0, 0.0}, {"lb", 0.45359237, 0.0}};
constexpr CsvUnit temperature_units[] = {{"c", 1.0, 0.0}, {"f", 1.0 / 1.8, -32.0 / 1.8}};
constexpr CsvUnit speed_units[] = {{"m_per_s", 1.0, 0.0}, {"km_per_h", 1.0 / 3.6, 0.0}, {"mph", 0.44704, 0.0}};
constexpr CsvUnit force_units[] = {{"kn", 1.0, 0.0}, {"lbf", 0.0044482216152605, 0.0}};

std::span<const CsvUnit> units_of(Measure measure) {
    switch (measure) {
        case Measure::length:
            return length_units;
        case Measure::mass:
            return mass_units;
        case Measure::temperature:
            return temperature_units;
        case Measure::speed:
            return speed_units;
        case Measure::force:
            return force_units;
        case Measure::none:
            break;
    }
    return {};
}

struct Spec {
    std::string_view name;      ///< without the unit
    std::string_view json_key;  ///< with the unit of the JSON format
    Measure measure = Measure::none;
    CellType type = CellType::number;
};

constexpr Spec specs[] = {
    {"part", "part", Measure::none, CellType::text},
    {"id", "id", Measure::none, CellType::text},
    {"description", "description", Measure::none, CellType::text},
    {"source", "source", Measure::none, CellType::text},
    {"construction", "construction", Measure::none, CellType::text},
    {"tread_material", "tread_material", Measure::none, CellType::text},
    {"core_material", "core_material", Measure::none, CellType::text},
    {"diameter", "diameter_mm", Measure::length},
    {"tread_width", "tread_width_mm", Measure::length},
    {"tread_thickness", "tread_thickness_mm", Measure::length},
    {"crown_radius", "crown_radius_mm", Measure::length},
    {"hardness", "hardness", Measure::none, CellType::hardness},
    {"rated_load", "rated_load_kg", Measure::mass},
    {"rating_class", "rating_class", Measure::none, CellType::text},
    {"rated_speed", "rated_speed_m_per_s", Measure::speed},
    {"temperature_min", "temperature_min_c", Measure::temperature},
    {"temperature_max", "temperature_max_c", Measure::temperature},
    {"impact_floor", "impact_floor_c", Measure::temperature},
    {"non_marking", "non_marking", Measure::none, CellType::flag},
    {"resistance_ohm", "resistance_ohm", Measure::none, CellType::number},
    {"cleanroom_class", "cleanroom_class", Measure::none, CellType::whole_number},
    {"hub_length", "hub_length_mm", Measure::length},
    {"hub_bore", "hub_bore_mm", Measure::length},
    {"hygiene", "hygiene", Measure::none, CellType::words},
    {"bearings", "bearings", Measure::none, CellType::words},
    {"kind", "kind", Measure::none, CellType::text},
    {"material", "material", Measure::none, CellType::text},
    {"bore", "bore_mm", Measure::length},
    {"axle_diameter", "axle_diameter_mm", Measure::length},
    {"outer_diameter", "outer_diameter_mm", Measure::length},
    {"length", "length_mm", Measure::length},
    {"count", "count", Measure::none, CellType::whole_number},
    {"dynamic_rating", "dynamic_rating_kn", Measure::force},
    {"static_rating", "static_rating_kn", Measure::force},
    {"sealed", "sealed", Measure::none, CellType::flag},
    {"grease_exposed", "grease_exposed", Measure::none, CellType::flag},
    {"grease", "grease", Measure::none, CellType::text},
    {"parts", "parts", Measure::none, CellType::parts},
    {"fitting", "fitting", Measure::none, CellType::steps},
    {"function", "function", Measure::none, CellType::text},
    {"finish", "finish", Measure::none, CellType::text},
    {"wheel_diameter", "wheel_diameter_mm", Measure::length},
    {"fork_width", "fork_width_mm", Measure::length},
    {"overall_height", "overall_height_mm", Measure::length},
    {"swivel_lead", "swivel_lead_mm", Measure::length},
    {"plate_pattern", "plate_pattern", Measure::none, CellType::text},
    {"exposed_threads", "exposed_threads", Measure::none, CellType::flag},
    {"hollow_back", "hollow_back", Measure::none, CellType::flag},
};

std::vector<std::string> names_with_units(const Spec& spec) {
    if (spec.measure == Measure::none) return {std::string(spec.name)};
    std::vector<std::string> out;
    for (const CsvUnit& unit : units_of(spec.measure)) out.push_back(fmt::format("{}_{}", spec.name, unit.suffix));
    return out;
}

std::vector<std::string_view> split(std::string_view text, char mark) {
    std::vector<std::string_view> out;
    while (!text.empty()) {
        const std::size_t end = text.find(mark);
        const std::string_view piece = trimmed(text.substr(0, end));
        if (!piece.empty()) out.push_back(piece);
        if (end == std::string_view::npos) break;
        text.remove_prefix(end + 1);
    }
    return out;
}

Result<double> plain_number(std::string_view cell) {
    if (cell.find(',') != std::string_view::npos) {
        return bad_input(fmt::format(
            "'{}' holds a comma; write the decimal point as '.' and no thousands mark, as in 1234.5", cell));
    }
    const Result<double> value = engine::parse_number(cell);
    if (!value)
        return bad_input(fmt::format("'{}' is not a number; the unit stands in the header, as in 127 or 31.75", cell));
    return value;
}

Result<Json> number_value(const CsvColumn& column, std::string_view cell) {
    const Result<double> value = plain_number(cell);
    if (!value) return tl::make_unexpected(value.error());
    if (column.type == CellType::number) return Json(*value * column.unit.factor + column.unit.offset);
    if (*value != std::floor(*value) || std::abs(*value) > 1e9)
        return bad_input(fmt::format("'{}' is not a whole number", cell));
    return Json(static_cast<std::int64_t>(*value));
}

Result<Json> flag_value(std::string_view cell) {
    if (cell == "yes" || cell == "true") return Json(true);
    if (cell == "no" || cell == "false") return Json(false);
    return bad_input(fmt::format("'{}' is neither yes nor no", cell));
}

Result<Json> hardness_value(std::string_view cell) {
    const char scale = cell.back();
    const auto value = plain_number(trimmed(cell.substr(0, cell.size() - 1)));
    if ((scale != 'A' && scale != 'D') || !value)
        return bad_input(fmt::format("'{}' is no hardness; write 85 A or 75 D", cell));
    return Json{{"scale", scale == 'A' ? "shore_a" : "shore_d"}, {"value", *value}};
}

/// "2 flanged bearing | 1 sleeve".
Result<Json> parts_value(std::string_view cell) {
    Json out = Json::array();
    for (const std::string_view piece : split(cell, '|')) {
        const std::size_t blank = piece.find(' ');
        const auto count = plain_number(piece.substr(0, blank));
        const std::string_view name = blank == std::string_view::npos ? "" : trimmed(piece.substr(blank));
        if (!count || *count != std::floor(*count) || *count < 1 || *count > 100 || name.empty()) {
            return bad_input(fmt::format(
                "'{}' is no part; write a count and a name, as in 2 retainer washer | 1 spanner bushing", piece));
        }
        out.push_back({{"count", static_cast<std::int64_t>(*count)}, {"name", std::string(name)}});
    }
    return out;
}

Json list_value(std::string_view cell, char mark) {
    Json out = Json::array();
    for (const std::string_view piece : split(cell, mark)) out.push_back(std::string(piece));
    return out;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

Result<CsvColumn> find_column(std::string_view header) {
    std::vector<std::string> all;
    for (const Spec& spec : specs) {
        if (spec.measure == Measure::none && spec.name == header) return CsvColumn{spec.json_key, spec.type, {}};
        for (const CsvUnit& unit : units_of(spec.measure)) {
            if (header == fmt::format("{}_{}", spec.name, unit.suffix))
                return CsvColumn{spec.json_key, spec.type, unit};
        }
        if (spec.name == header) {
            return bad_input(fmt::format("'{}' needs its unit in the name: {}", header,
                                         engine::joined_with_or(names_with_units(spec))));
        }
        for (std::string& name : names_with_units(spec)) all.push_back(std::move(name));
    }
    constexpr std::size_t most_suggestions = 2;
    const auto near = engine::nearest_words(header, std::move(all), most_suggestions);
    return bad_input(fmt::format("there is no column '{}'; nearest: {}", header, engine::joined_with_or(near)));
}

Result<Json> cell_value(const CsvColumn& column, std::string_view cell) {
    switch (column.type) {
        case CellType::number:
        case CellType::whole_number:
            return number_value(column, cell);
        case CellType::flag:
            return flag_value(cell);
        case CellType::words:
            return list_value(cell, ' ');
        case CellType::hardness:
            return hardness_value(cell);
        case CellType::parts:
            return parts_value(cell);
        case CellType::steps:
            return list_value(cell, '|');
        case CellType::text:
            break;
    }
    return Json(std::string(cell));
}

}  // namespace sillwalk::app
