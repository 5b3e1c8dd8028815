#pragma once
/// A wheel made ready to be walked: its finite volumes solved once for each film coefficient that a route asks for.
///
/// One-piece wheels are short cylinders (radius by half width). Bonded wheels are rings from the bore out: core and
/// tread along the radius, the side faces' loss spread over it; a metal core is one lumped ring.

#include "engine/physics/heat_line.hpp"
#include "engine/walk/walk.hpp"

#include <array>
#include <cstddef>
#include <deque>
#include <vector>

namespace sillwalk::engine {

/// Places whose temperature is told, in this order in FilmModel::radial_views.
enum class WheelPlace : std::size_t { core, rim, bore, bond, mean };
inline constexpr std::size_t wheel_places = 5;

/// The wheel under one film coefficient. A temperature over the air is radial weights * cells * axial weights.
struct FilmModel {
    FilmCoefficient film;
    HeatLine radial, axial;
    std::array<std::vector<double>, wheel_places> radial_views;
    std::vector<double> axial_middle, axial_mean;                     ///< mean is for WheelPlace::mean
    std::vector<double> core_on_modes, rim_on_modes, axial_on_modes;  ///< the same as seen by the modes
    std::vector<double> axial_to_modes_turned;                        ///< columns x columns, transposed

    FilmModel(FilmCoefficient film_value, HeatLine radial_line, HeatLine axial_line)
        : film(film_value), radial(std::move(radial_line)), axial(std::move(axial_line)) {}
};

class ThermalWheel {
public:
    static constexpr std::size_t max_rows = 14, max_columns = 8;

    /// Precondition: figures_known(key).
    explicit ThermalWheel(const WalkKey& key);
    /// Whether density, specific heat and conductivity are known, and a bonded tread's thickness is and can be.
    [[nodiscard]] static bool figures_known(const WalkKey& key);

    /// Solves it at the first time. What it refers to lives as long as the wheel.
    [[nodiscard]] const FilmModel& under(FilmCoefficient film);

private:
    WalkKey key_;
    std::deque<FilmModel> models_;
};

}  // namespace sillwalk::engine
