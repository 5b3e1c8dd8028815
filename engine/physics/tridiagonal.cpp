#include "engine/physics/tridiagonal.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace sillwalk::engine {
namespace {

/// The entries are rates of one body, far from overflow: std::hypot would cost more than all the rest.
double length_of(double a, double b) {
    return std::sqrt(a * a + b * b);
}

/// Turns columns k and k+1 of the vectors by the rotation (c, s).
void rotate_columns(std::vector<double>& vectors, std::size_t n, std::size_t k, double c, double s) {
    for (std::size_t row = 0; row < n; ++row) {
        double& left = vectors[row * n + k];
        double& right = vectors[row * n + k + 1];
        const double old = right;
        right = s * left + c * old;
        left = c * left - s * old;
    }
}

/// One sweep from `bottom` up to `top`; `e[k]` couples k and k+1.
void ql_sweep(std::vector<double>& d, std::vector<double>& e, std::vector<double>& vectors, std::size_t top,
              std::size_t bottom) {
    const double half_gap = (d[top + 1] - d[top]) / (2.0 * e[top]);
    double g = d[bottom] - d[top] + e[top] / (half_gap + std::copysign(length_of(half_gap, 1.0), half_gap));
    double s = 1.0, c = 1.0, p = 0.0;
    for (std::size_t k = bottom; k-- > top;) {
        const double f = s * e[k];
        const double b = c * e[k];
        const double r = length_of(f, g);
        e[k + 1] = r;
        if (r == 0.0) {  // the matrix splits here; the next sweep goes on with the parts
            d[k + 1] -= p;
            e[bottom] = 0.0;
            return;
        }
        s = f / r;
        c = g / r;
        g = d[k + 1] - p;
        const double turned = (d[k] - g) * s + 2.0 * c * b;
        p = s * turned;
        d[k + 1] = g + p;
        g = c * turned - b;
        rotate_columns(vectors, d.size(), k, c, s);
    }
    d[top] -= p;
    e[top] = g;
    e[bottom] = 0.0;
}

/// First index at or after `top` whose coupling to the next is negligible.
std::size_t split_after(const std::vector<double>& d, const std::vector<double>& e, std::size_t top) {
    std::size_t k = top;
    while (k + 1 < d.size() &&
           std::abs(e[k]) > std::numeric_limits<double>::epsilon() * (std::abs(d[k]) + std::abs(d[k + 1]))) {
        ++k;
    }
    return k;
}

void sort_modes(TridiagonalModes& modes) {
    const std::size_t n = modes.values.size();
    for (std::size_t k = 0; k < n; ++k) {
        const auto least = static_cast<std::size_t>(
            std::min_element(modes.values.begin() + static_cast<std::ptrdiff_t>(k), modes.values.end()) -
            modes.values.begin());
        std::swap(modes.values[k], modes.values[least]);
        for (std::size_t row = 0; row < n; ++row) {
            std::swap(modes.vectors[row * n + k], modes.vectors[row * n + least]);
        }
    }
}

}  // namespace

TridiagonalModes tridiagonal_modes(std::vector<double> diagonal, std::vector<double> beside) {
    const std::size_t n = diagonal.size();
    EXPECT_CONTRACT(n >= 1 && beside.size() + 1 == n);
    std::vector<double> vectors(n * n, 0.0);
    for (std::size_t k = 0; k < n; ++k) vectors[k * n + k] = 1.0;
    beside.push_back(0.0);
    for (std::size_t top = 0; top < n; ++top) {
        int sweeps = 0;
        for (std::size_t bottom = split_after(diagonal, beside, top); bottom != top;
             bottom = split_after(diagonal, beside, top)) {
            EXPECT_CONTRACT(++sweeps <= 60);  // converges in two or three for any finite matrix
            ql_sweep(diagonal, beside, vectors, top, bottom);
        }
    }
    TridiagonalModes modes{std::move(diagonal), std::move(vectors)};
    sort_modes(modes);
    return modes;
}

}  // namespace sillwalk::engine
