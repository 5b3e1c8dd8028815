#include "engine/physics/monotone_curve.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <cstddef>

namespace sillwalk::engine {

namespace {

double inner_slope(double left_width, double left_chord, double right_width, double right_chord) {
    if (left_chord * right_chord <= 0) {
        return 0;
    }
    const double left_weight = 2 * right_width + left_width;
    const double right_weight = right_width + 2 * left_width;
    return (left_weight + right_weight) / (left_weight / left_chord + right_weight / right_chord);
}

}  // namespace

std::vector<double> monotone_slopes(const std::vector<double>& x, const std::vector<double>& y) {
    EXPECT_CONTRACT(x.size() == y.size() && x.size() >= 2);
    const std::size_t last = x.size() - 1;
    std::vector<double> chords(last);
    for (std::size_t i = 0; i < last; ++i) {
        chords[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }
    std::vector<double> slopes(x.size());
    slopes.front() = chords.front();
    slopes.back() = chords.back();
    for (std::size_t i = 1; i < last; ++i) {
        slopes[i] = inner_slope(x[i] - x[i - 1], chords[i - 1], x[i + 1] - x[i], chords[i]);
    }
    return slopes;
}

double monotone_value(const std::vector<double>& x, const std::vector<double>& y, const std::vector<double>& slopes,
                      double at) {
    EXPECT_CONTRACT(x.size() == y.size() && x.size() == slopes.size() && x.size() >= 2);
    EXPECT_CONTRACT(at >= x.front() && at <= x.back());
    const auto above = std::upper_bound(x.begin() + 1, x.end() - 1, at);
    const auto i = static_cast<std::size_t>(above - x.begin()) - 1;
    const double width = x[i + 1] - x[i];
    const double t = (at - x[i]) / width;
    const double u = 1 - t;
    return y[i] * u * u * (1 + 2 * t) + y[i + 1] * t * t * (1 + 2 * u) +
           width * t * u * (slopes[i] * u - slopes[i + 1] * t);
}

}  // namespace sillwalk::engine
