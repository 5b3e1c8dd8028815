#pragma once
/// "AIR@FILM:TIME,…", the rooms a wheel stands in one after the other: "-25degF@34W/m2K:60min,40degF@34W/m2K:30min".

#include "engine/base/result.hpp"
#include "engine/physics/heat.hpp"

#include <string_view>
#include <vector>

namespace sillwalk::engine {

/// bad_input names the stage that is wrong.
[[nodiscard]] Result<std::vector<HeatStage>> parse_stages(std::string_view text);

}  // namespace sillwalk::engine
