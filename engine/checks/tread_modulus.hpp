#pragma once
/// Small-strain modulus of a wheel's tread, by the relation that its material asks for.

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

struct TreadModulus {
    Pressure value;                          ///< the asked end of its band at the worst corner, else the figure itself
    std::optional<Temperature> temperature;  ///< where the relation knows one
};

/// Urethane from its hardness by [urethane-hardness-fit] at the coldest air of the route (80 A to 76 D);
/// rubber and softer urethane by Gent [gent-1958]; all others by the material's own figure at 23 C. Empty where a
/// reading or figure is missing, which is noted. A higher modulus means a higher pressure, so the high end and the
/// coldest air are the careful ones.
[[nodiscard]] std::optional<TreadModulus> stiffest_tread(Judge& judge, const CheckContext& context);

/// The same at the soft end: the low end of the band and the warmest air. A softer tread flattens more.
[[nodiscard]] std::optional<TreadModulus> softest_tread(Judge& judge, const CheckContext& context);

}  // namespace sillwalk::engine
