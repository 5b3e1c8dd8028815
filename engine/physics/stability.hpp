#pragma once
/// A cart stopped at a sill: does it tip? And the estimate of a flat spot.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"

#include <optional>

namespace sillwalk::engine {

struct Tipping {
    Speed least;        ///< inelastic stop of the leading wheels, then energy to the balance point
    Speed energy_only;  ///< without the loss in the blow; always the lower
    double tilt_degrees = 0;
};
/// base_ahead: from the centre of gravity to the leading wheel. gyration_squared: I_G/m, default point mass.
[[nodiscard]] Result<Tipping> tipping(Length cg_height, Length base_ahead, Area gyration_squared = {},
                                      Acceleration g = standard_gravity);

struct FlatSpot {
    Length half_width_later, sagitta, left, chord;
};
/// J/J0 = 1 + c log10(t/1 min), no creep before one minute; an estimate (Lee & Radok 1960 form, memory).
[[nodiscard]] Result<FlatSpot> flat_spot(Length half_width, Length diameter, Duration time, double creep_per_decade,
                                         double set_share);

}  // namespace sillwalk::engine
