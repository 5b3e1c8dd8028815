#pragma once
/// Settings of the app by name, for scripts and the command line.

#include "app/core/action.hpp"
#include "engine/base/result.hpp"

#include <string_view>

namespace sillwalk::platforms {

/// theme light|sun|dark, glove on|off, hand left|right, text 100|115|130, units metric|us, language CODE.
[[nodiscard]] engine::Result<app::Action> setting_action(std::string_view name, std::string_view value);

}  // namespace sillwalk::platforms
