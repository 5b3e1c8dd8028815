#pragma once
/// Lengths at their true size on the glass: the ruler of the measuring sheet, and the check of the scale that it needs.

#include "app/core/quantity.hpp"
#include "app/ui/screens/screen.hpp"

#include <cstdint>
#include <optional>

namespace sillwalk::ui {

/// The sheet in hand is of a length that a ruler can show, and the scale of the glass was checked.
[[nodiscard]] bool has_ruler(const ScreenContext& context);
/// A tape from 0 as far as the box reaches; the finger sets the mark on it.
void draw_ruler(ScreenContext& context, const app::Unit& unit, std::optional<std::int64_t> value, const Rect& box);
/// A bar to hold a tape to, and keys that make it shorter or longer.
void draw_scale_check(ScreenContext& context);

}  // namespace sillwalk::ui
