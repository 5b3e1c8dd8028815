#pragma once
/// The quantities and units the trade uses. Exact factors: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665
/// m/s2. A temperature is a point (Temperature); a difference is a TemperatureChange; two points do not add.

#include "engine/base/quantity.hpp"

namespace sillwalk::engine {

using Length = Quantity<Dim{1, 0, 0, 0}>;
using Area = Quantity<Dim{2, 0, 0, 0}>;
using Mass = Quantity<Dim{0, 1, 0, 0}>;
using Duration = Quantity<Dim{0, 0, 1, 0}>;
using Frequency = Quantity<Dim{0, 0, -1, 0}>;
using Speed = Quantity<Dim{1, 0, -1, 0}>;
using Acceleration = Quantity<Dim{1, 0, -2, 0}>;
using Force = Quantity<Dim{1, 1, -2, 0}>;
using Impulse = Quantity<Dim{1, 1, -1, 0}>;
using Energy = Quantity<Dim{2, 1, -2, 0}>;
using Torque = Energy;  ///< same dimension; the name says what is meant
using Power = Quantity<Dim{2, 1, -3, 0}>;
using Pressure = Quantity<Dim{-1, 1, -2, 0}>;
using PressureVelocity = Quantity<Dim{0, 1, -3, 0}>;  ///< PV of a plain bearing, Pa m/s
using Density = Quantity<Dim{-3, 1, 0, 0}>;
using TemperatureChange = Quantity<Dim{0, 0, 0, 1}>;
using Conductivity = Quantity<Dim{1, 1, -3, -1}>;     ///< W/(m K)
using FilmCoefficient = Quantity<Dim{0, 1, -3, -1}>;  ///< W/(m2 K)
using SpecificHeat = Quantity<Dim{2, 0, -2, -1}>;     ///< J/(kg K)
using Diffusivity = Quantity<Dim{2, 0, -1, 0}>;       ///< m2/s

inline constexpr Length metre = Length::from_si(1), millimetre = Length::from_si(1e-3),
                        nanometre = Length::from_si(1e-9), inch = Length::from_si(0.0254),
                        foot = Length::from_si(0.3048), kilometre = Length::from_si(1e3);
inline constexpr Mass kilogram = Mass::from_si(1), gram = Mass::from_si(1e-3), pound = Mass::from_si(0.45359237);
inline constexpr Duration second = Duration::from_si(1), minute = Duration::from_si(60), hour = Duration::from_si(3600),
                          day = Duration::from_si(86400);
inline constexpr Frequency per_minute = Frequency::from_si(1.0 / 60.0);
inline constexpr Speed metre_per_second = Speed::from_si(1), kilometre_per_hour = Speed::from_si(1.0 / 3.6),
                       mile_per_hour = Speed::from_si(0.44704), foot_per_minute = Speed::from_si(0.00508);
inline constexpr Acceleration standard_gravity = Acceleration::from_si(9.80665);
inline constexpr Force newton = Force::from_si(1), kilonewton = Force::from_si(1e3),
                       kilogram_force = Force::from_si(9.80665), pound_force = Force::from_si(0.45359237 * 9.80665);
inline constexpr Pressure pascal = Pressure::from_si(1), megapascal = Pressure::from_si(1e6),
                          pound_per_square_inch = pound_force / (inch * inch);
inline constexpr TemperatureChange kelvin_step = TemperatureChange::from_si(1);
inline constexpr Conductivity watt_per_metre_kelvin = Conductivity::from_si(1);
inline constexpr FilmCoefficient watt_per_square_metre_kelvin = FilmCoefficient::from_si(1);
inline constexpr SpecificHeat joule_per_kilogram_kelvin = SpecificHeat::from_si(1);
inline constexpr Density kilogram_per_cubic_metre = Density::from_si(1);

/// A temperature point. Kelvin inside.
class Temperature {
public:
    constexpr Temperature() = default;
    [[nodiscard]] static constexpr Temperature from_kelvin(double k) { return Temperature(k); }
    [[nodiscard]] constexpr double kelvin() const { return kelvin_; }
    [[nodiscard]] constexpr double celsius() const { return kelvin_ - 273.15; }
    [[nodiscard]] constexpr double fahrenheit() const { return celsius() * 1.8 + 32.0; }

    friend constexpr TemperatureChange operator-(Temperature a, Temperature b) {
        return TemperatureChange::from_si(a.kelvin_ - b.kelvin_);
    }
    friend constexpr Temperature operator+(Temperature a, TemperatureChange d) {
        return Temperature(a.kelvin_ + d.si());
    }
    friend constexpr Temperature operator-(Temperature a, TemperatureChange d) {
        return Temperature(a.kelvin_ - d.si());
    }
    friend constexpr auto operator<=>(Temperature, Temperature) = default;

private:
    explicit constexpr Temperature(double k) : kelvin_(k) {}
    double kelvin_{273.15};
};
[[nodiscard]] constexpr Temperature celsius(double value) {
    return Temperature::from_kelvin(value + 273.15);
}
[[nodiscard]] constexpr Temperature fahrenheit(double value) {
    return celsius((value - 32.0) / 1.8);
}

/// A gradient as rise over run: tangent 1/12 for "1:12", 0.08 for "8 %". Positive means up in the direction of travel.
class Slope {
public:
    constexpr Slope() = default;
    [[nodiscard]] static constexpr Slope from_tangent(double tangent) { return Slope(tangent); }
    [[nodiscard]] static Slope from_degrees(double degrees) {
        return Slope(std::tan(degrees * 3.14159265358979323846 / 180.0));
    }
    [[nodiscard]] constexpr double tangent() const { return tangent_; }
    [[nodiscard]] double sine() const { return tangent_ / std::sqrt(1.0 + tangent_ * tangent_); }
    [[nodiscard]] double cosine() const { return 1.0 / std::sqrt(1.0 + tangent_ * tangent_); }
    [[nodiscard]] double degrees() const { return std::atan(tangent_) * 180.0 / 3.14159265358979323846; }

    friend constexpr Slope operator+(Slope a, Slope b) { return Slope(a.tangent_ + b.tangent_); }
    friend constexpr Slope operator-(Slope a, Slope b) { return Slope(a.tangent_ - b.tangent_); }
    friend constexpr Slope operator-(Slope a) { return Slope(-a.tangent_); }
    friend constexpr auto operator<=>(Slope, Slope) = default;

private:
    explicit constexpr Slope(double tangent) : tangent_(tangent) {}
    double tangent_{};
};

/// Weight of a mass. Pass another g only where a textbook case used one.
[[nodiscard]] constexpr Force weight_of(Mass mass, Acceleration g = standard_gravity) {
    return mass * g;
}

}  // namespace sillwalk::engine
