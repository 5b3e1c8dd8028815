#pragma once
/// A smooth curve through a table that never overshoots it (cubic with Fritsch-Carlson slopes).

#include <vector>

namespace sillwalk::engine {

/// Slope at each knot: harmonic mean of the neighbouring chords where both have one sign, else 0.
[[nodiscard]] std::vector<double> monotone_slopes(const std::vector<double>& x, const std::vector<double>& y);

/// Value at `at`. Precondition: x rises, sizes equal, at least two knots, x.front() <= at <= x.back().
[[nodiscard]] double monotone_value(const std::vector<double>& x, const std::vector<double>& y,
                                    const std::vector<double>& slopes, double at);

}  // namespace sillwalk::engine
