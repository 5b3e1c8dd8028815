#include "engine/physics/heat.hpp"
#include "engine/physics/heat_input.hpp"
#include "engine/physics/heat_line.hpp"

#include <cmath>
#include <vector>

namespace sillwalk::engine {
namespace {

HeatLine line(LineShape shape, const Body& body, FilmCoefficient film, int cells) {
    const Length reach = shape == LineShape::radial ? body.diameter / 2.0 : body.width / 2.0;
    return HeatLine({shape, {{Length{}, reach, body.conductivity, body.density, body.specific_heat, cells}}, film});
}

/// left (n x n) * middle (n x n) * right transposed (n x n).
std::vector<double> sandwich(const std::vector<double>& left, const std::vector<double>& middle,
                             const std::vector<double>& right, std::size_t n) {
    std::vector<double> half(n * n, 0.0), whole(n * n, 0.0);
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t k = 0; k < n; ++k) {
            for (std::size_t j = 0; j < n; ++j) half[i * n + j] += left[i * n + k] * middle[k * n + j];
        }
    }
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            for (std::size_t k = 0; k < n; ++k) whole[i * n + j] += half[i * n + k] * right[j * n + k];
        }
    }
    return whole;
}

/// Temperature over air seen through weights on both lines.
TemperatureChange seen(const std::vector<double>& over_air, const std::vector<double>& radial,
                       const std::vector<double>& axial) {
    double sum = 0.0;
    for (std::size_t i = 0; i < radial.size(); ++i) {
        for (std::size_t j = 0; j < axial.size(); ++j) sum += radial[i] * over_air[i * axial.size() + j] * axial[j];
    }
    return TemperatureChange::from_si(sum);
}

/// Lets the body stand in one room: `kelvin` holds the cells, radius by half width.
BodyTemperatures stand(std::vector<double>& kelvin, const Body& body, const HeatStage& stage,
                       const std::optional<BodyPoint>& point, int cells) {
    const HeatLine radial = line(LineShape::radial, body, stage.film, cells);
    const HeatLine axial = line(LineShape::axial, body, stage.film, cells);
    const std::size_t n = radial.size();
    std::vector<double> over_air = kelvin;
    for (double& value : over_air) value -= stage.air.kelvin();
    std::vector<double> modes = sandwich(radial.to_modes(), over_air, axial.to_modes(), n);
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            modes[i * n + j] *= std::exp(-(radial.rates()[i] + axial.rates()[j]) * stage.time.si());
        }
    }
    over_air = sandwich(radial.from_modes(), modes, axial.from_modes(), n);
    for (std::size_t k = 0; k < kelvin.size(); ++k) kelvin[k] = stage.air.kelvin() + over_air[k];

    const std::vector<double> middle = axial.weights_at(Length{});
    BodyTemperatures result;
    result.core = stage.air + seen(over_air, radial.weights_at(Length{}), middle);
    result.rim = stage.air + seen(over_air, radial.weights_at(body.diameter / 2.0), middle);
    result.mean = stage.air + seen(over_air, radial.mean_weights(), axial.mean_weights());
    if (point) {
        const Length across = abs(body.width / 2.0 - point->depth_from_face);
        result.point = stage.air + seen(over_air, radial.weights_at(point->radius_at), axial.weights_at(across));
    }
    return result;
}

}  // namespace

Result<std::vector<BodyTemperatures>> temperatures_by_volumes(const Body& body, Temperature start,
                                                              const std::vector<HeatStage>& stages,
                                                              std::optional<BodyPoint> point, int cells) {
    if (auto wrong = heat_input_error(body, stages, point)) return tl::make_unexpected(*wrong);
    if (cells < 2 || cells > 200) return bad_input("cells must be from 2 to 200", "cells");
    const auto count = static_cast<std::size_t>(cells);
    std::vector<double> kelvin(count * count, start.kelvin());
    std::vector<BodyTemperatures> results;
    for (const HeatStage& stage : stages) results.push_back(stand(kelvin, body, stage, point, cells));
    return results;
}

}  // namespace sillwalk::engine
