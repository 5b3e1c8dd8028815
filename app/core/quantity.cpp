#include "app/core/quantity.hpp"

#include "engine/base/numeric_text.hpp"

#include <array>
#include <cmath>

namespace sillwalk::app {

using engine::Field;

namespace {

constexpr std::array<std::string_view, quantity_kind_count> names = {
    "small_length", "long_length", "mass",  "temperature", "slope",  "share", "strength",
    "minutes",      "days",        "speed", "washes",      "pushes", "count"};

// Exact factors: inch 25.4 mm, foot 304.8 mm, pound 0.45359237 kg, mile 1609.344 m; NIST SP 811, appendix B.
constexpr Unit small_lengths[] = {
    {"mm", "mm", "", UnitShape::linear, 1000000, 1, 0, 1000000, false, false, 2},
    {"in", "in", "", UnitShape::linear, 25400000, 1, 0, 1587500, true, true, 3},
};
constexpr Unit long_lengths[] = {
    {"m", "m", "", UnitShape::linear, 1000000000, 1, 0, 100000000, false, false, 2},
    {"ft", "ft", "", UnitShape::linear, 304800000, 1, 0, 304800000, true, false, 2},
};
constexpr Unit masses[] = {
    {"kg", "kg", "", UnitShape::linear, 1000, 1, 0, 1000, false, false, 1},
    {"lb", "lb", "", UnitShape::linear, 45359237, 100000, 0, 454, true, false, 1},
};
constexpr Unit temperatures[] = {
    {"degC", "°C", "", UnitShape::linear, 1000, 1, 273150, 1000, false, false, 1},
    {"degF", "°F", "", UnitShape::linear, 5000, 9, 2298350, 556, true, false, 1},
};
constexpr Unit slopes[] = {
    {"%", "%", "", UnitShape::linear, 10000, 1, 0, 10000, false, false, 2},
    {"1:", "1:", "", UnitShape::one_to, 1, 1, 0, 0, false, false, 1},
    {"deg", "°", "", UnitShape::degrees, 1, 1, 0, 0, false, false, 1},
};
constexpr Unit shares[] = {
    {"%", "%", "", UnitShape::linear, 10000, 1, 0, 10000, false, false, 1},
};
constexpr Unit strengths[] = {
    {"%", "%", "", UnitShape::linear, 10000, 1, 0, 1000, false, false, 4},
    {"ppm", "ppm", "", UnitShape::linear, 1, 1, 0, 10, false, false, 0},
};
constexpr Unit minutes[] = {
    {"min", "min", "", UnitShape::linear, 60000, 1, 0, 60000, false, false, 1},
    {"h", "h", "", UnitShape::linear, 3600000, 1, 0, 1800000, false, false, 2},
};
constexpr Unit days[] = {
    {"d", "", "unit.days", UnitShape::linear, 86400000, 1, 0, 86400000, false, false, 2},
    {"h", "h", "", UnitShape::linear, 3600000, 1, 0, 3600000, false, false, 1},
};
constexpr Unit speeds[] = {
    {"m/s", "m/s", "", UnitShape::linear, 1000000, 1, 0, 100000, false, false, 2},
    {"km/h", "km/h", "", UnitShape::linear, 2500000, 9, 0, 27778, false, false, 1},
    {"mph", "mph", "", UnitShape::linear, 447040, 1, 0, 44704, true, false, 1},
};
constexpr Unit washes[] = {
    {"per day", "", "unit.per_day", UnitShape::linear, 1000000, 1, 0, 1000000, false, false, 2},
    {"per week", "", "unit.per_week", UnitShape::linear, 1000000, 7, 0, 142857, false, false, 2},
};
constexpr Unit pushes[] = {
    {"per hour", "", "unit.per_hour", UnitShape::linear, 24000000, 1, 0, 24000000, false, false, 1},
    {"per min", "", "unit.per_minute", UnitShape::linear, 1440000000, 1, 0, 144000000, false, false, 2},
};
constexpr Unit counts[] = {
    {"", "", "", UnitShape::linear, 1000, 1, 0, 1000, false, false, 2},
};

constexpr double radians_per_degree = 3.14159265358979323846 / 180.0;

std::string plain(double value, int decimals) {
    std::string text = engine::fixed_text(value, decimals);
    if (text.find('.') != std::string::npos) {
        while (text.back() == '0') text.pop_back();
        if (text.back() == '.') text.pop_back();
    }
    if (text == "-0") text = "0";
    if (!text.empty() && text.front() == '-') text = "\u2212" + text.substr(1);
    return text;
}

std::string inches(std::int64_t nm) {
    std::string text = engine::length_text_in(nm);
    const auto space = text.rfind(" in");
    if (space != std::string::npos) text.resize(space);
    if (!text.empty() && text.front() == '-') text = "\u2212" + text.substr(1);
    return text;
}

}  // namespace

std::string_view quantity_name(QuantityKind kind) {
    return names[static_cast<std::size_t>(kind)];
}
std::optional<QuantityKind> quantity_of_name(std::string_view name) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == name) return static_cast<QuantityKind>(i);
    }
    return std::nullopt;
}

std::span<const Unit> units_of(QuantityKind kind) {
    switch (kind) {
        case QuantityKind::small_length:
            return small_lengths;
        case QuantityKind::long_length:
            return long_lengths;
        case QuantityKind::mass:
            return masses;
        case QuantityKind::temperature:
            return temperatures;
        case QuantityKind::slope:
            return slopes;
        case QuantityKind::share:
            return shares;
        case QuantityKind::strength:
            return strengths;
        case QuantityKind::minutes:
            return minutes;
        case QuantityKind::days:
            return days;
        case QuantityKind::speed:
            return speeds;
        case QuantityKind::washes:
            return washes;
        case QuantityKind::pushes:
            return pushes;
        case QuantityKind::count:
            break;
    }
    return counts;
}

std::optional<QuantityKind> quantity_of(Field field) {
    switch (field) {
        case Field::room_air:
        case Field::washing_temperature:
            return QuantityKind::temperature;
        case Field::room_humidity:
            return QuantityKind::share;
        case Field::crossing_rise:
        case Field::crossing_lip_height:
        case Field::crossing_gap:
        case Field::crossing_slot:
        case Field::cart_cg_forward_loaded:
        case Field::cart_cg_forward_empty:
        case Field::cart_cg_height_loaded:
        case Field::cart_cg_height_empty:
        case Field::cart_handle_height:
        case Field::cart_fork_width:
        case Field::cart_axle_diameter:
        case Field::cart_overall_height_limit:
        case Field::cart_damage_size:
            return QuantityKind::small_length;
        case Field::crossing_lip_slope:
        case Field::crossing_slope:
            return QuantityKind::slope;
        case Field::crossing_slope_length:
        case Field::cart_push_distance:
            return QuantityKind::long_length;
        case Field::washing_strength:
            return QuantityKind::strength;
        case Field::washing_contact:
        case Field::cart_stay:
            return QuantityKind::minutes;
        case Field::washing_frequency:
            return QuantityKind::washes;
        case Field::cart_tare:
        case Field::cart_payload:
            return QuantityKind::mass;
        case Field::cart_people:
        case Field::cart_trips_per_day:
        case Field::cart_load_factor:
            return QuantityKind::count;
        case Field::cart_speed:
            return QuantityKind::speed;
        case Field::cart_push_rate:
            return QuantityKind::pushes;
        case Field::cart_parked_loaded:
            return QuantityKind::days;
        default:
            return std::nullopt;
    }
}

double canonical_per_si(QuantityKind kind) {
    switch (kind) {
        case QuantityKind::small_length:
        case QuantityKind::long_length:
            return 1e9;
        case QuantityKind::slope:
        case QuantityKind::share:
        case QuantityKind::strength:
        case QuantityKind::speed:
            return 1e6;
        case QuantityKind::washes:
        case QuantityKind::pushes:
            return 86400e6;
        default:
            return 1e3;
    }
}

std::int64_t to_canonical(double si, QuantityKind kind) {
    return std::llround(si * canonical_per_si(kind));
}
double to_si(std::int64_t canonical, QuantityKind kind) {
    return static_cast<double>(canonical) / canonical_per_si(kind);
}

double in_unit(std::int64_t canonical, const Unit& unit) {
    const auto value = static_cast<double>(canonical);
    switch (unit.shape) {
        case UnitShape::one_to:
            return canonical == 0 ? 0.0 : 1e6 / value;
        case UnitShape::degrees:
            return std::atan(value / 1e6) / radians_per_degree;
        case UnitShape::linear:
            break;
    }
    return (value * static_cast<double>(unit.divisor) - static_cast<double>(unit.offset)) /
           static_cast<double>(unit.factor);
}

std::string shown_number(std::int64_t canonical, const Unit& unit) {
    if (unit.sixteenths && canonical % engine::nanometres_per_64th_inch == 0) return inches(canonical);
    return plain(in_unit(canonical, unit), unit.decimals);
}

std::string shown_difference(std::int64_t canonical, const Unit& unit) {
    Unit step = unit;
    step.offset = 0;
    if (step.shape != UnitShape::linear) step = units_of(QuantityKind::slope)[0];
    const double value = in_unit(canonical, step);
    return plain(value, value < 1 ? 2 : 1);
}

}  // namespace sillwalk::app
