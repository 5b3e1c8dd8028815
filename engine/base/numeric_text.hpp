#pragma once
/// Quantities from and to text, without locale. Units as listed in docs/reference/units.md; fractions: "5 1/2in",
/// "1/4in". A bare number is refused where a unit is needed; the error says which units would be right.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace sillwalk::engine {

/// A plain number: "0.75", "-3", "1e3", "3/4". No unit, no locale.
[[nodiscard]] Result<double> parse_number(std::string_view text);
[[nodiscard]] Result<Length> parse_length(std::string_view text);  ///< m cm mm um nm in ft km
[[nodiscard]] Result<Area> parse_area(std::string_view text);      ///< m2 mm2 in2
[[nodiscard]] Result<Mass> parse_mass(std::string_view text);      ///< kg g t lb
[[nodiscard]] Result<Force> parse_force(std::string_view text);    ///< N kN lbf kgf, and masses as weights (kg lb g t)
[[nodiscard]] Result<Pressure> parse_pressure(std::string_view text);           ///< Pa kPa MPa GPa psi ksi bar
[[nodiscard]] Result<Temperature> parse_temperature(std::string_view text);     ///< degC degF K
[[nodiscard]] Result<Duration> parse_duration(std::string_view text);           ///< s min h d
[[nodiscard]] Result<Speed> parse_speed(std::string_view text);                 ///< m/s km/h mph fpm ft/s mm/s m/min
[[nodiscard]] Result<Acceleration> parse_acceleration(std::string_view text);   ///< m/s2
[[nodiscard]] Result<Slope> parse_slope(std::string_view text);                 ///< 1:12, 8%, 5deg
[[nodiscard]] Result<double> parse_share(std::string_view text);                ///< 0.75, 75%, 200ppm
[[nodiscard]] Result<Conductivity> parse_conductivity(std::string_view text);   ///< W/mK
[[nodiscard]] Result<Density> parse_density(std::string_view text);             ///< kg/m3 g/cm3
[[nodiscard]] Result<SpecificHeat> parse_specific_heat(std::string_view text);  ///< J/kgK kJ/kgK
[[nodiscard]] Result<FilmCoefficient> parse_film(std::string_view text);        ///< W/m2K

/// Exact lengths of the tape. 1/64 in = 396 875 nm.
inline constexpr std::int64_t nanometres_per_64th_inch = 396875;
/// Nearest whole nanometre of the text's value; exact for every k/64 in.
[[nodiscard]] Result<std::int64_t> parse_length_nm(std::string_view text);
/// "19.05 mm"; trailing zeros dropped, at most `decimals`.
[[nodiscard]] std::string length_text_mm(std::int64_t nm, int decimals = 2);
/// "5 1/2 in" where the value is a whole number of 64ths, else decimals: "5.507 in".
[[nodiscard]] std::string length_text_in(std::int64_t nm);
/// Shortest text that reads back as the same double.
[[nodiscard]] std::string number_text(double value);
/// Fixed decimals, a true ASCII minus, no locale.
[[nodiscard]] std::string fixed_text(double value, int decimals);

}  // namespace sillwalk::engine
