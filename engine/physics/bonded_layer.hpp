#pragma once
/// Contact of a tread of finite thickness, bonded to a rigid core: the table of materials' factors and the approach.

#include "engine/base/result.hpp"
#include "engine/model/tables.hpp"

namespace sillwalk::engine {

/// Factors over the half-space at one a/t: load f and peak pressure g (both 1 for a thick tread).
struct LayerFactors {
    double load = 1, pressure = 1;
};

/// The half-width over the thickness that carries `load_number` = (W/L) 4R/(pi E* t^2), and the factors there.
struct LayerSolution {
    double contact_over_thickness = 0;
    LayerFactors factors;
};
/// Takes the curves that the table has prepared, else makes them: prepare those that are asked for again and again.
/// no_answer where Poisson's ratio or the load lies outside the table.
[[nodiscard]] Result<LayerSolution> solve_layer(double load_number, double poisson, const LayerTable& table);

/// Precondition: Poisson's ratio lies inside the table.
[[nodiscard]] LayerCurves layer_curves(const LayerTable& table, double poisson);

/// Approach in a^2/R. The pressure is taken as (1 - x^2/a^2)^n with n from g/f, the layer's own compliance as
/// L(s) = (2k sinh 2s - 4s)/(2k cosh 2s + 4s^2 + 1 + k^2), k = 3 - 4 nu (Bentall & Johnson 1968, memory).
[[nodiscard]] double layer_approach(const LayerSolution& solution, double poisson);

}  // namespace sillwalk::engine
