#pragma once
/// A wheel against a step, over a gap, and rolling into a step. Rigid wheel and edge, no slip.
/// Source: Young & Freedman [young-freedman], 11th ed., problem 11.72, second-hand, for the force at the axle; the rest
/// by moments about the edge (derived).

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"

#include <optional>

namespace sillwalk::engine {

struct StepForces {
    Force at_axle;          ///< horizontal push at axle height
    Force least_at_axle;    ///< along the best direction at the axle
    Force least_anywhere;   ///< at the rim opposite the edge
    Force at_top;           ///< horizontal at the top of the rim
    double ratio = 0;       ///< at_axle / load
    double rise_share = 0;  ///< rise / diameter
};
/// load > 0, diameter > 0, rise >= 0. `lip_slope` (tangent > 0) is a bevel of that rise: the smaller of tangent and
/// edge contact. no_answer at rise >= radius without a bevel.
[[nodiscard]] Result<StepForces> step_forces(Force load, Length diameter, Length rise,
                                             std::optional<Slope> lip_slope = std::nullopt);

struct StepSpeed {
    Speed least;                 ///< to coast over
    double speed_ratio = 0;      ///< v2/v1 across the blow
    std::optional<Speed> after;  ///< with the speed given
    std::optional<Energy> lost;  ///< with speed and mass
    std::optional<Impulse> impulse;
};
struct StepSpeedInput {
    Length diameter, rise;
    double inertia = 0;           ///< k in I = k m R^2, >= 0
    double lift_share = 1;        ///< a_f in (0, 1]
    double pitch_mass_ratio = 1;  ///< m_z/M in (0, 1]
    std::optional<Speed> speed;
    std::optional<Mass> mass;
    Acceleration g = standard_gravity;
};
/// Least coasting speed over a step and what the blow takes. Derived: docs/reference/methods.md "step-coasting"
/// and "step-least-speed".
[[nodiscard]] Result<StepSpeed> step_speed(const StepSpeedInput& input);

struct GapCrossing {
    Length sag;                     ///< how far a wheel standing in the gap sinks
    double ratio = 0;               ///< force to leave it / load
    std::optional<Force> force;     ///< with load
    std::optional<bool> full_drop;  ///< with speed: falls the whole sag while crossing (careful, free fall)
    std::optional<Length> drop;     ///< with speed: how far it really falls, at most the sag and the depth
};
/// diameter > 0, gap >= 0. no_answer at gap >= diameter (swallowed).
[[nodiscard]] Result<GapCrossing> gap_crossing(Length diameter, Length gap, std::optional<Force> load = std::nullopt,
                                               std::optional<Speed> speed = std::nullopt,
                                               std::optional<Length> depth = std::nullopt,
                                               Acceleration g = standard_gravity);

/// The rise that a gap in front of a rise amounts to (docs/reference/methods.md "rise-with-gap"); equals `rise`
/// while the gap is short.
/// no_answer where the wheel cannot climb: equivalent rise >= radius.
[[nodiscard]] Result<Length> rise_with_gap(Length diameter, Length rise, Length gap);

}  // namespace sillwalk::engine
