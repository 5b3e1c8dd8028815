#include "engine/physics/heat_line.hpp"

#include "engine/base/contract.hpp"
#include "engine/physics/tridiagonal.hpp"

#include <cmath>

namespace sillwalk::engine {
namespace {

/// Face number `index` of `count` cells: fine towards the outer surface, where the temperature bends most.
double face_share(int index, int count) {
    const double even = static_cast<double>(index) / count;
    const double rest = 1.0 - even;
    return 0.1 * even + 0.9 * (1.0 - rest * rest * rest);
}

}  // namespace

HeatLine::HeatLine(const HeatLineInput& input) : shape_(input.shape) {
    EXPECT_CONTRACT(!input.layers.empty() && input.film.si() >= 0);
    for (const HeatLayer& layer : input.layers) cut(layer);
    solve(input);
}

void HeatLine::cut(const HeatLayer& layer) {
    EXPECT_CONTRACT(layer.inner.si() >= 0 && layer.outer > layer.inner && layer.cells >= 1);
    const double from = layer.inner.si(), depth = layer.outer.si() - from;
    const double heat_per_volume = layer.density.si() * layer.specific_heat.si();
    const int count = layer.conductivity ? layer.cells : 1;
    for (int k = 0; k < count; ++k) {
        Cell cell;
        cell.inner = from + depth * face_share(k, count);
        cell.outer = k + 1 == count ? layer.outer.si() : from + depth * face_share(k + 1, count);
        const double a = cell.inner, b = cell.outer;
        cell.square = shape_ == LineShape::radial ? (a * a + b * b) / 2.0 : (a * a + a * b + b * b) / 3.0;
        cell.volume = shape_ == LineShape::radial ? (b * b - a * a) / 2.0 : b - a;
        cell.capacity = heat_per_volume * cell.volume;
        cell.resistivity = layer.conductivity ? 1.0 / layer.conductivity->si() : 0.0;
        cells_.push_back(cell);
    }
}

double HeatLine::resistance_out(const Cell& cell) const {
    return (cell.outer * cell.outer - cell.square) / (2.0 * cell.outer) * cell.resistivity;
}

double HeatLine::resistance_in(const Cell& cell) const {
    return (cell.square - cell.inner * cell.inner) / (2.0 * cell.inner) * cell.resistivity;
}

void HeatLine::solve(const HeatLineInput& input) {
    const std::size_t n = cells_.size();
    const auto face_area = [this](double at) { return shape_ == LineShape::radial ? at : 1.0; };
    std::vector<double> loss(n, 0.0), beside(n - 1, 0.0), root(n);
    for (std::size_t k = 0; k < n; ++k) root[k] = std::sqrt(cells_[k].capacity);
    for (std::size_t k = 0; k + 1 < n; ++k) {
        const double between = face_area(cells_[k].outer) / (resistance_out(cells_[k]) + resistance_in(cells_[k + 1]));
        loss[k] += between;
        loss[k + 1] += between;
        beside[k] = -between / (root[k] * root[k + 1]);
    }
    const double film = input.film.si();
    const double through = 1.0 + film * resistance_out(cells_.back());
    loss[n - 1] += face_area(cells_.back().outer) * film / through;
    surface_share_ = 1.0 / through;
    if (input.half_width_losing) {
        EXPECT_CONTRACT(shape_ == LineShape::radial);
        const double half_width = input.half_width_losing->si();
        for (std::size_t k = 0; k < n; ++k) {
            // A parabola across the width: its mean lies half_width/3k inside the face.
            const double side = film / (1.0 + film * half_width * cells_[k].resistivity / 3.0);
            loss[k] += cells_[k].volume * side / half_width;
        }
    }
    for (std::size_t k = 0; k < n; ++k) loss[k] /= cells_[k].capacity;
    TridiagonalModes modes = tridiagonal_modes(std::move(loss), std::move(beside));
    rates_ = std::move(modes.values);
    to_modes_.resize(n * n);
    from_modes_.resize(n * n);
    for (std::size_t cell = 0; cell < n; ++cell) {
        for (std::size_t mode = 0; mode < n; ++mode) {
            const double value = modes.vectors[cell * n + mode];
            to_modes_[mode * n + cell] = value * root[cell];
            from_modes_[cell * n + mode] = value / root[cell];
        }
    }
    for (double& rate : rates_) rate = rate < 0.0 ? 0.0 : rate;  // rounding of an insulated line's zero
}

std::vector<double> HeatLine::weights_at(Length position) const {
    const std::size_t n = cells_.size();
    const double at = position.si(), square = at * at;
    EXPECT_CONTRACT(at >= 0 && at <= cells_.back().outer * (1.0 + 1e-12));
    if (n == 1) return {1.0};
    std::vector<double> weights(n, 0.0);
    const Cell& last = cells_.back();
    if (square >= last.square) {
        const double reach = (square - last.square) / (last.outer * last.outer - last.square);
        weights[n - 1] = 1.0 + reach * (surface_share_ - 1.0);
        return weights;
    }
    std::size_t k = 0;  // the pair of cells around the position, or the first pair within the first cell
    while (k + 2 < n && square > cells_[k + 1].square) ++k;
    const Cell &left = cells_[k], &right = cells_[k + 1];
    const double face = left.outer;
    const double out = resistance_out(left), in = resistance_in(right);
    const double at_face = out / (out + in);  // share of the right cell at the face between them
    double share = 0;                         // of the right cell at the position
    if (at <= face) {
        share = left.resistivity == 0.0 ? 0.0 : at_face * (square - left.square) / (face * face - left.square);
    } else {
        share = at_face + (1.0 - at_face) * (square - face * face) / (right.square - face * face);
    }
    const bool insulated_bore = k == 0 && cells_[0].inner > 0.0 && square < left.square;
    if (insulated_bore) share = 0.0;
    weights[k] = 1.0 - share;
    weights[k + 1] = share;
    return weights;
}

std::vector<double> HeatLine::mean_weights() const {
    double whole = 0.0;
    for (const Cell& cell : cells_) whole += cell.volume;
    std::vector<double> weights;
    for (const Cell& cell : cells_) weights.push_back(cell.volume / whole);
    return weights;
}

std::vector<double> HeatLine::on_modes(const std::vector<double>& cell_weights) const {
    const std::size_t n = size();
    EXPECT_CONTRACT(cell_weights.size() == n);
    std::vector<double> result(n, 0.0);
    for (std::size_t cell = 0; cell < n; ++cell) {
        for (std::size_t mode = 0; mode < n; ++mode) {
            result[mode] += cell_weights[cell] * from_modes_[cell * n + mode];
        }
    }
    return result;
}

}  // namespace sillwalk::engine
