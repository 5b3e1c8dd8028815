#include "engine/base/numeric_text.hpp"

#include "engine/base/number_reader.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <span>

namespace sillwalk::engine {

namespace {

/// One spelling of a unit. value in SI = number * factor + offset.
struct UnitWord {
    std::string_view word;
    double factor = 1;
    double offset = 0;
    bool named = true;  ///< listed in errors; other spellings are only accepted
};

std::string unit_list(std::span<const UnitWord> units) {
    std::string out;
    std::size_t named = 0;
    for (const UnitWord& unit : units) {
        named += unit.named ? 1 : 0;
    }
    std::size_t written = 0;
    for (const UnitWord& unit : units) {
        if (unit.named) {
            ++written;
            out += written == 1 ? "" : written == named ? " or " : ", ";
            out += unit.word;
        }
    }
    return out;
}

struct Measured {
    double number = 0;
    const UnitWord* unit = nullptr;
};

Result<Measured> parse_measured(std::string_view text, std::span<const UnitWord> units) {
    const auto read = read_number(text);
    if (!read) {
        return tl::make_unexpected(read.error());
    }
    if (read->rest.empty()) {
        return bad_input(fmt::format("\"{}\" has no unit; write one of {}", text, unit_list(units)));
    }
    for (const UnitWord& unit : units) {
        if (unit.word == read->rest) {
            return Measured{read->value, &unit};
        }
    }
    return bad_input(
        fmt::format("\"{}\" has the unknown unit \"{}\"; write one of {}", text, read->rest, unit_list(units)));
}

template <class Q>
Result<Q> parse_quantity(std::string_view text, std::span<const UnitWord> units) {
    const auto read = parse_measured(text, units);
    if (!read) {
        return tl::make_unexpected(read.error());
    }
    const double si = read->number * read->unit->factor;
    if (!std::isfinite(si)) {
        return bad_input(fmt::format("\"{}\" is too large", text));
    }
    return Q::from_si(si);
}

constexpr double pounds = 0.45359237;
constexpr double gravity = 9.80665;

// Lengths in nanometres: every factor is a whole number, so that each 1/64 in comes out exact.
constexpr UnitWord length_units[] = {{"m", 1e9},
                                     {"cm", 1e7},
                                     {"mm", 1e6},
                                     {"um", 1e3},
                                     {"nm", 1},
                                     {"in", 254e5},
                                     {"ft", 3048e5},
                                     {"km", 1e12},
                                     {"\xC2\xB5m", 1e3, 0, false},
                                     {"\"", 254e5, 0, false},
                                     {"\xE2\x80\xB3", 254e5, 0, false},
                                     {"inch", 254e5, 0, false},
                                     {"'", 3048e5, 0, false},
                                     {"\xE2\x80\xB2", 3048e5, 0, false}};
constexpr UnitWord area_units[] = {{"m2"}, {"mm2", 1e-6}, {"in2", 0.0254 * 0.0254}, {"m\xC2\xB2", 1, 0, false}};
constexpr UnitWord mass_units[] = {{"kg"}, {"g", 1e-3}, {"t", 1e3}, {"lb", pounds}, {"lbs", pounds, 0, false}};
constexpr UnitWord force_units[] = {{"N"},
                                    {"kN", 1e3},
                                    {"lbf", pounds* gravity},
                                    {"kgf", gravity},
                                    {"kg", gravity},
                                    {"lb", pounds* gravity},
                                    {"g", 1e-3 * gravity},
                                    {"t", 1e3 * gravity},
                                    {"lbs", pounds* gravity, 0, false}};
constexpr UnitWord pressure_units[] = {{"Pa"},
                                       {"kPa", 1e3},
                                       {"MPa", 1e6},
                                       {"GPa", 1e9},
                                       {"psi", pounds* gravity / (0.0254 * 0.0254)},
                                       {"ksi", 1e3 * pounds* gravity / (0.0254 * 0.0254)},
                                       {"bar", 1e5}};
constexpr UnitWord temperature_units[] = {{"degC", 1, 273.15},
                                          {"degF", 1 / 1.8, 273.15 - 32 / 1.8},
                                          {"K"},
                                          {"\xC2\xB0"
                                           "C",
                                           1, 273.15, false},
                                          {"\xC2\xB0"
                                           "F",
                                           1 / 1.8, 273.15 - 32 / 1.8, false}};
constexpr UnitWord duration_units[] = {{"s"}, {"min", 60}, {"h", 3600}, {"d", 86400}};
constexpr UnitWord speed_units[] = {{"m/s"},          {"km/h", 1 / 3.6}, {"mph", 0.44704},   {"fpm", 0.00508},
                                    {"ft/s", 0.3048}, {"mm/s", 1e-3},    {"m/min", 1 / 60.0}};
constexpr UnitWord acceleration_units[] = {{"m/s2"}, {"m/s\xC2\xB2", 1, 0, false}};
constexpr UnitWord share_units[] = {{"%", 1e-2}, {"ppm", 1e-6}};
constexpr UnitWord conductivity_units[] = {{"W/mK"}, {"W/(mK)", 1, 0, false}};
constexpr UnitWord density_units[] = {{"kg/m3"}, {"g/cm3", 1e3}, {"kg/m\xC2\xB3", 1, 0, false}};
constexpr UnitWord specific_heat_units[] = {{"J/kgK"}, {"kJ/kgK", 1e3}, {"J/(kgK)", 1, 0, false}};
constexpr UnitWord film_units[] = {{"W/m2K"}, {"W/m\xC2\xB2K", 1, 0, false}, {"W/(m2K)", 1, 0, false}};
constexpr UnitWord slope_units[] = {{"%", 1e-2}, {"deg"}, {"\xC2\xB0", 1, 0, false}};

Result<double> length_in_nanometres(std::string_view text) {
    const auto read = parse_measured(text, length_units);
    if (!read) {
        return tl::make_unexpected(read.error());
    }
    const double nanometres = read->number * read->unit->factor;
    if (!std::isfinite(nanometres)) {
        return bad_input(fmt::format("\"{}\" is too large", text));
    }
    return nanometres;
}

}  // namespace

Result<double> parse_number(std::string_view text) {
    const auto read = read_number(text);
    if (!read) {
        return tl::make_unexpected(read.error());
    }
    if (!read->rest.empty()) {
        return bad_input(fmt::format("\"{}\" must be a bare number, without \"{}\"", text, read->rest));
    }
    return read->value;
}

Result<Length> parse_length(std::string_view text) {
    const auto nanometres = length_in_nanometres(text);
    if (!nanometres) {
        return tl::make_unexpected(nanometres.error());
    }
    return Length::from_si(*nanometres / 1e9);
}

Result<std::int64_t> parse_length_nm(std::string_view text) {
    const auto nanometres = length_in_nanometres(text);
    if (!nanometres) {
        return tl::make_unexpected(nanometres.error());
    }
    if (std::abs(*nanometres) > 9e15) {
        return bad_input(fmt::format("\"{}\" is longer than can be kept to the nanometre; the most is 9000 km", text));
    }
    return std::llround(*nanometres);
}

Result<Area> parse_area(std::string_view text) {
    return parse_quantity<Area>(text, area_units);
}
Result<Mass> parse_mass(std::string_view text) {
    return parse_quantity<Mass>(text, mass_units);
}
Result<Force> parse_force(std::string_view text) {
    return parse_quantity<Force>(text, force_units);
}
Result<Pressure> parse_pressure(std::string_view text) {
    return parse_quantity<Pressure>(text, pressure_units);
}
Result<Duration> parse_duration(std::string_view text) {
    return parse_quantity<Duration>(text, duration_units);
}
Result<Speed> parse_speed(std::string_view text) {
    return parse_quantity<Speed>(text, speed_units);
}
Result<Acceleration> parse_acceleration(std::string_view text) {
    return parse_quantity<Acceleration>(text, acceleration_units);
}
Result<Conductivity> parse_conductivity(std::string_view text) {
    return parse_quantity<Conductivity>(text, conductivity_units);
}
Result<Density> parse_density(std::string_view text) {
    return parse_quantity<Density>(text, density_units);
}
Result<SpecificHeat> parse_specific_heat(std::string_view text) {
    return parse_quantity<SpecificHeat>(text, specific_heat_units);
}
Result<FilmCoefficient> parse_film(std::string_view text) {
    return parse_quantity<FilmCoefficient>(text, film_units);
}

Result<Temperature> parse_temperature(std::string_view text) {
    const auto read = parse_measured(text, temperature_units);
    if (!read) {
        return tl::make_unexpected(read.error());
    }
    const double kelvin = read->number * read->unit->factor + read->unit->offset;
    if (kelvin < 0) {
        return bad_input(fmt::format("\"{}\" is below absolute zero, -273.15 degC", text));
    }
    return Temperature::from_kelvin(kelvin);
}

Result<Slope> parse_slope(std::string_view text) {
    const std::size_t colon = text.find(':');
    if (colon != std::string_view::npos) {
        const auto rise = parse_number(text.substr(0, colon));
        const auto run = parse_number(text.substr(colon + 1));
        if (!rise || !run || !(*run > 0)) {
            return bad_input(fmt::format("\"{}\" is not a slope; write it like 1:12, 8% or 5deg", text));
        }
        return Slope::from_tangent(*rise / *run);
    }
    const auto read = parse_measured(text, slope_units);
    if (!read) {
        return bad_input(fmt::format("\"{}\" is not a slope; write it like 1:12, 8% or 5deg", text));
    }
    if (read->unit->word == "%") {
        return Slope::from_tangent(read->number * read->unit->factor);
    }
    if (std::abs(read->number) >= 90) {
        return bad_input(fmt::format("\"{}\" must be under 90deg", text));
    }
    return Slope::from_degrees(read->number);
}

Result<double> parse_share(std::string_view text) {
    const auto read = read_number(text);
    if (read && read->rest.empty()) {
        return read->value;
    }
    const auto measured = parse_measured(text, share_units);
    if (!measured) {
        return bad_input(fmt::format("\"{}\" is not a share; write it like 0.75, 75% or 200ppm", text));
    }
    return measured->number * measured->unit->factor;
}

std::string length_text_mm(std::int64_t nm, int decimals) {
    std::string out = fixed_text(static_cast<double>(nm) / 1e6, decimals);
    if (out.find('.') != std::string::npos) {
        out.erase(out.find_last_not_of('0') + 1);
        if (out.back() == '.') {
            out.pop_back();
        }
    }
    return out + " mm";
}

std::string length_text_in(std::int64_t nm) {
    if (nm % nanometres_per_64th_inch != 0) {
        return fixed_text(static_cast<double>(nm) / 25.4e6, 3) + " in";
    }
    const std::int64_t signed_64ths = nm / nanometres_per_64th_inch;
    const std::int64_t all = signed_64ths < 0 ? -signed_64ths : signed_64ths;
    std::int64_t numerator = all % 64;
    std::int64_t denominator = 64;
    while (numerator != 0 && numerator % 2 == 0) {
        numerator /= 2;
        denominator /= 2;
    }
    const std::string sign = signed_64ths < 0 ? "-" : "";
    if (numerator == 0) {
        return fmt::format("{}{} in", sign, all / 64);
    }
    if (all < 64) {
        return fmt::format("{}{}/{} in", sign, numerator, denominator);
    }
    return fmt::format("{}{} {}/{} in", sign, all / 64, numerator, denominator);
}

std::string number_text(double value) {
    return fmt::format("{}", value);
}

std::string fixed_text(double value, int decimals) {
    std::string out = fmt::format("{:.{}f}", value, decimals);
    const bool zero = out.find_first_not_of("-0.") == std::string::npos;
    if (zero && out.front() == '-') {
        out.erase(0, 1);
    }
    return out;
}

}  // namespace sillwalk::engine
