#pragma once
/// The groups that make up the registry of desk calculations.

#include "engine/desk/desk.hpp"

#include <span>

namespace sillwalk::engine {

[[nodiscard]] std::span<const DeskCalculation> load_calculations();       ///< wheel-load, axle-load
[[nodiscard]] std::span<const DeskCalculation> obstacle_calculations();   ///< step, step-speed, gap
[[nodiscard]] std::span<const DeskCalculation> rolling_calculations();    ///< rolling, swivel, rolling-loss
[[nodiscard]] std::span<const DeskCalculation> people_calculations();     ///< push-limit, push-share, traction
[[nodiscard]] std::span<const DeskCalculation> contact_calculations();    ///< hardness, contact
[[nodiscard]] std::span<const DeskCalculation> heat_calculations();       ///< wheel-temperature, dew-point
[[nodiscard]] std::span<const DeskCalculation> bearing_calculations();    ///< bearing-life, bearing-pv
[[nodiscard]] std::span<const DeskCalculation> stability_calculations();  ///< tip, flat-spot
[[nodiscard]] std::span<const DeskCalculation> chemical_calculations();   ///< chemical

}  // namespace sillwalk::engine
