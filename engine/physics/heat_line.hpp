#pragma once
/// A wheel cut into finite volumes along one direction (radius, or half width), for one film coefficient.
/// Space is discrete, time is exact: the line's modes decay as exp(-rate t).
///
/// The coordinate is squared (r^2, x^2): a temperature that is even about the centre is then straight near it, and both
/// conduction and read-out are exact for a parabola. All temperatures are relative to the air.

#include "engine/base/units.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace sillwalk::engine {

struct HeatLayer {
    Length inner, outer;                       ///< from the axis (radial) or the mid-plane (axial); 0 <= inner < outer
    std::optional<Conductivity> conductivity;  ///< absent: conducts without resistance, one lumped cell
    Density density;
    SpecificHeat specific_heat;
    int cells = 1;
};

enum class LineShape { radial, axial };

struct HeatLineInput {
    LineShape shape = LineShape::radial;
    std::vector<HeatLayer> layers;  ///< from inside out, touching
    FilmCoefficient film;           ///< on the outer surface
    /// Radial only: the side faces lose heat all along the radius; half the width of the wheel.
    std::optional<Length> half_width_losing{};
};

class HeatLine {
public:
    explicit HeatLine(const HeatLineInput& input);

    [[nodiscard]] std::size_t size() const { return rates_.size(); }
    [[nodiscard]] const std::vector<double>& rates() const { return rates_; }            ///< 1/s, rising, >= 0
    [[nodiscard]] const std::vector<double>& to_modes() const { return to_modes_; }      ///< n x n, row = mode
    [[nodiscard]] const std::vector<double>& from_modes() const { return from_modes_; }  ///< n x n, row = cell

    /// Weights on the cells whose sum is the temperature at a position; the outer surface lies in the film's series.
    [[nodiscard]] std::vector<double> weights_at(Length position) const;
    /// Weights of the volume mean.
    [[nodiscard]] std::vector<double> mean_weights() const;
    /// Same weights as seen by the modes: modal value k counts result[k] times.
    [[nodiscard]] std::vector<double> on_modes(const std::vector<double>& cell_weights) const;

private:
    struct Cell {
        double inner = 0, outer = 0;      // m
        double square = 0;                // mean of the squared coordinate, m2
        double volume = 0, capacity = 0;  // per unit of the other directions
        double resistivity = 0;           // 1/k; 0 for a lumped cell
    };
    void cut(const HeatLayer& layer);
    void solve(const HeatLineInput& input);
    [[nodiscard]] double resistance_out(const Cell& cell) const;  // from the cell's mean to its outer face, m2 K/W
    [[nodiscard]] double resistance_in(const Cell& cell) const;

    LineShape shape_;
    std::vector<Cell> cells_;
    double surface_share_ = 1;  // surface over air, as a share of the last cell over air
    std::vector<double> rates_, to_modes_, from_modes_;
};

}  // namespace sillwalk::engine
