#pragma once
/// What people can be asked to push or pull, and what their feet hold.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"
#include "engine/model/tables.hpp"

#include <optional>

namespace sillwalk::engine {

struct PushTask {
    PushAction action = PushAction::push;
    PushPhase phase = PushPhase::start;
    Sex sex = Sex::female;
    Length hand_height, distance;
    Frequency rate;
};
struct PushLimit {
    Force force;  ///< acceptable to `share` of that sex
    Force median;
    double height_factor = 0, distance_factor = 0, rate_factor = 0;
    bool caution = false;  ///< distance x rate above the published caution
};
/// MAL(1 - CV z(p)). no_answer outside the published ranges (the message names the range). 0 < share < 1.
/// A distance below the least published one counts as that one; so does a rate (our rule, not the paper's).
/// Source: [potvin-2021], section 3.2, p. 963, second-hand.
[[nodiscard]] Result<PushLimit> push_limit(const PushTask& task, double share, const PeopleLimits& limits);
/// The share of that sex to whom `force` is acceptable.
[[nodiscard]] Result<double> push_share(const PushTask& task, Force force, const PeopleLimits& limits);

/// Biomechanical guideline at a hand height, interpolated; no_answer outside 0.81 to 1.22 m.
[[nodiscard]] Result<Force> biomechanical_limit(PushAction action, Length hand_height, const PeopleLimits& limits);

/// Greatest hand force before the feet slip, times `reserve`. `hand_angle` below the horizontal, level floor only.
/// no_answer where nobody can stand and push (force <= 0).
[[nodiscard]] Result<Force> traction_force(Mass person, double friction, Slope slope = {}, Slope hand_angle = {},
                                           double reserve = 1.0);

}  // namespace sillwalk::engine
