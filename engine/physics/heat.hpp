#pragma once
/// Temperature of a solid wheel through rooms: product of series while the film coefficient stays the same, finite
/// volumes where it changes. Source: short cylinder, Cengel [cengel-heat], product solution; Table 4-2 for the one-term
/// roots.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"

#include <optional>
#include <vector>

namespace sillwalk::engine {

struct Body {
    Length diameter, width;
    Conductivity conductivity;
    Density density;
    SpecificHeat specific_heat;
};
struct HeatStage {
    Temperature air;
    FilmCoefficient film;
    Duration time;
};
struct BodyPoint {
    Length radius_at{};        ///< from the axis
    Length depth_from_face{};  ///< from one side face
};
struct BodyTemperatures {
    Temperature core, rim, mean;  ///< centre; running surface at mid-width; volume mean
    std::optional<Temperature> point;
};

/// Exact series (>= 40 terms each way) for equal film coefficients in all stages (Duhamel superposition); bad_input
/// otherwise.
[[nodiscard]] Result<std::vector<BodyTemperatures>> temperatures_by_series(
    const Body& body, Temperature start, const std::vector<HeatStage>& stages,
    std::optional<BodyPoint> point = std::nullopt);
/// Finite volumes in space, exact in time; any film coefficients. `cells` along the radius and along the half width.
[[nodiscard]] Result<std::vector<BodyTemperatures>> temperatures_by_volumes(
    const Body& body, Temperature start, const std::vector<HeatStage>& stages,
    std::optional<BodyPoint> point = std::nullopt, int cells = 40);
/// Series where the film coefficient stays the same, volumes where it changes.
[[nodiscard]] Result<std::vector<BodyTemperatures>> wheel_temperatures(const Body& body, Temperature start,
                                                                       const std::vector<HeatStage>& stages,
                                                                       std::optional<BodyPoint> point = std::nullopt);

/// Magnus formula 17.62 / 243.12 (WMO guide, memory). humidity 0 < h <= 1.
[[nodiscard]] Result<Temperature> dew_point(Temperature air, double humidity);

}  // namespace sillwalk::engine
