#include "app/text/show.hpp"

#include "engine/base/numeric_text.hpp"

#include <fmt/format.h>

#include <cmath>

namespace sillwalk::app {

using engine::Amount;
using engine::Kind;

namespace {

constexpr const char* no_break = "\u00a0";
constexpr const char* thin = "\u202f";
constexpr const char* minus = "\u2212";

/// Three significant digits for small numbers, whole numbers from 100 on, thin spaces between thousands.
std::string digits(double value) {
    const double size = std::fabs(value);
    const int decimals = size >= 99.95 || size == 0.0 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3;
    std::string text = fmt::format("{:.{}f}", size, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    const std::size_t point = std::min(text.find('.'), text.size());
    for (std::size_t i = point; i > 3;) {
        i -= 3;
        text.insert(i, thin);
    }
    const bool is_zero = text.find_first_of("123456789") == std::string::npos;
    return value < 0 && !is_zero ? minus + text : text;
}

std::string with_unit(double value, const char* unit) {
    return digits(value) + no_break + unit;
}

std::string length(double metres, UnitSystem units) {
    if (units == UnitSystem::us) {
        if (std::fabs(metres) >= 3.0) return with_unit(metres / 0.3048, "ft");
        return engine::length_text_in(std::llround(metres * 1e9));
    }
    if (std::fabs(metres) >= 3.0) return with_unit(metres, "m");
    return with_unit(metres * 1e3, "mm");
}

std::string duration(double seconds) {
    if (seconds >= 2 * 86400.0) return with_unit(seconds / 86400.0, "d");
    if (seconds >= 2 * 3600.0) return with_unit(seconds / 3600.0, "h");
    if (seconds >= 60.0) return with_unit(seconds / 60.0, "min");
    return with_unit(seconds, "s");
}

std::string temperature(double celsius, UnitSystem units) {
    const bool us = units == UnitSystem::us;
    std::string text = fmt::format("{:.1f}", std::fabs(us ? celsius * 1.8 + 32.0 : celsius));
    if (text.ends_with(".0")) text.erase(text.size() - 2);
    const bool negative = (us ? celsius * 1.8 + 32.0 : celsius) < 0 && text != "0";
    return (negative ? minus : "") + text + no_break + (us ? "°F" : "°C");
}

std::string resistance(double ohm) {
    if (ohm >= 1e9) return with_unit(ohm / 1e9, "GΩ");
    if (ohm >= 1e6) return with_unit(ohm / 1e6, "MΩ");
    if (ohm >= 1e3) return with_unit(ohm / 1e3, "kΩ");
    return with_unit(ohm, "Ω");
}

std::string slope(double tangent) {
    return fmt::format("{}{}%", digits(std::round(tangent * 1000.0) / 10.0), no_break);
}

}  // namespace

std::string show(const Amount& amount, UnitSystem units) {
    const bool us = units == UnitSystem::us;
    const double si = amount.si;
    switch (amount.kind) {
        case Kind::number:
            return digits(si);
        case Kind::share:
            return digits(std::round(si * 1000.0) / 10.0) + no_break + "%";
        case Kind::length:
            return length(si, units);
        case Kind::mass:
            return us ? with_unit(si / 0.45359237, "lb") : with_unit(si, "kg");
        case Kind::force:
            return us ? with_unit(si / 4.4482216152605, "lbf") : with_unit(si, "N");
        case Kind::speed:
            return us ? with_unit(si / 0.44704, "mph") : with_unit(si, "m/s");
        case Kind::temperature:
            return temperature(si - 273.15, units);
        case Kind::temperature_change:
            return us ? with_unit(si * 1.8, "°F") : with_unit(si, "K");
        case Kind::pressure:
            return us ? with_unit(si / 6894.757293168, "psi") : with_unit(si / 1e6, "MPa");
        case Kind::energy:
            return with_unit(si, "J");
        case Kind::impulse:
            return with_unit(si, "N·s");
        case Kind::power:
            return with_unit(si, "W");
        case Kind::duration:
            return duration(si);
        case Kind::distance_km:
            return us ? with_unit(si / 1609.344, "mi") : with_unit(si / 1e3, "km");
        case Kind::pressure_velocity:
            return with_unit(si / 1e6, "MPa·m/s");
        case Kind::resistance:
            return resistance(si);
        case Kind::angle:
            return with_unit(si * 180.0 / 3.14159265358979323846, "°");
        case Kind::slope:
            return slope(si);
        case Kind::level:
            return digits(si);
    }
    return {};
}

const char* amount_key(Kind kind) {
    switch (kind) {
        case Kind::number:
            return "number";
        case Kind::share:
            return "share";
        case Kind::length:
            return "length_m";
        case Kind::mass:
            return "mass_kg";
        case Kind::force:
            return "force_N";
        case Kind::speed:
            return "speed_m_per_s";
        case Kind::temperature:
            return "temperature_C";
        case Kind::temperature_change:
            return "difference_K";
        case Kind::pressure:
            return "pressure_Pa";
        case Kind::energy:
            return "energy_J";
        case Kind::impulse:
            return "impulse_Ns";
        case Kind::power:
            return "power_W";
        case Kind::duration:
            return "time_s";
        case Kind::distance_km:
            return "distance_m";
        case Kind::pressure_velocity:
            return "pv_Pa_m_per_s";
        case Kind::resistance:
            return "resistance_ohm";
        case Kind::angle:
            return "angle_rad";
        case Kind::slope:
            return "slope_tangent";
        case Kind::level:
            return "level";
    }
    return "number";
}

double amount_in_key_unit(const Amount& amount) {
    return amount.kind == Kind::temperature ? amount.si - 273.15 : amount.si;
}

}  // namespace sillwalk::app
