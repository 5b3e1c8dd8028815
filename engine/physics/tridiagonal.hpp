#pragma once
/// Eigenvalues and eigenvectors of a symmetric tridiagonal matrix: what a chain of heat capacities needs.

#include <cstddef>
#include <vector>

namespace sillwalk::engine {

struct TridiagonalModes {
    std::vector<double> values;   ///< rising
    std::vector<double> vectors;  ///< row-major n x n; column k belongs to values[k]; orthonormal
    [[nodiscard]] double vector(std::size_t row, std::size_t mode) const { return vectors[row * values.size() + mode]; }
};

/// `diagonal` holds n values, `beside` the n-1 values next to it. n >= 1.
/// Method: implicit QL with Wilkinson's shift (Bowdler, Martin, Reinsch, Wilkinson 1968, "tql2"; from memory).
[[nodiscard]] TridiagonalModes tridiagonal_modes(std::vector<double> diagonal, std::vector<double> beside);

}  // namespace sillwalk::engine
