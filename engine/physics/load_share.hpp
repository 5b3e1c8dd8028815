#pragma once
/// Load on one castor, and on the axles of a cart on a slope.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"
#include "engine/model/survey.hpp"

namespace sillwalk::engine {

/// Mass carried by the hardest loaded castor: factor * gross/n (all), /(n-1) (all but one), /2 (diagonal, four castors
/// only). castors >= 1 (all), >= 2 (all but one), = 4 (diagonal); factor > 0; masses >= 0, gross > 0. Else bad_input.
/// Source: T = S(E+Z)/n [castor-maker-pages], second-hand; diagonal derived: statics of a rigid frame, central load.
[[nodiscard]] Result<Mass> wheel_load(Mass tare, Mass payload, int castors, FloorSharing sharing, double factor = 1.0);

struct AxleLoads {
    Force front, rear;
};
/// Axle loads normal to the floor, front axle downhill by `slope` (tangent >= 0; negative = front uphill).
///   front = m g (r cos t + h sin t)/L,  rear = m g cos t - front,  r from the rear axle to the centre of gravity.
/// no_answer where an axle would lift (the cart tips). Source: moments about the axles (derived).
[[nodiscard]] Result<AxleLoads> axle_loads(Mass mass, Length wheelbase, Length cg_from_rear, Length cg_height = {},
                                           Slope slope = {}, Acceleration g = standard_gravity);

}  // namespace sillwalk::engine
