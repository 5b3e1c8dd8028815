#pragma once
/// What both methods of heat.hpp refuse. Internal to physics.

#include "engine/physics/heat.hpp"

#include <optional>
#include <vector>

namespace sillwalk::engine {

/// The first thing wrong with the input, naming its key; empty where it can be used.
[[nodiscard]] std::optional<Error> heat_input_error(const Body& body, const std::vector<HeatStage>& stages,
                                                    const std::optional<BodyPoint>& point);

}  // namespace sillwalk::engine
