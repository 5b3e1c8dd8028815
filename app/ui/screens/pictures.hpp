#pragma once
/// From the survey and the advice to what the drawings take.

#include "app/ui/draw/crossing_section.hpp"
#include "app/ui/draw/ground.hpp"
#include "app/ui/draw/margin_scale.hpp"
#include "app/ui/draw/room_box.hpp"
#include "app/ui/draw/wheel.hpp"
#include "app/ui/screens/drawings/plan.hpp"
#include "app/ui/screens/screen.hpp"

#include <optional>

namespace sillwalk::ui {

/// The crossing as a section with that wheel before it (none: a 125 mm wheel, so that the obstacle has a measure beside
/// it).
[[nodiscard]] CrossingSection section_of(const engine::Crossing& crossing, const engine::Wheel* wheel);
[[nodiscard]] FloorWetness floor_wetness(const engine::Choice<engine::Wetness>& wetness);

/// One scale for all checks of a screen.
[[nodiscard]] MarginScale margin_scale(float x0, float x1);
/// The small strip of the answer bar: the check that decides.
void draw_margin_strip(Canvas& canvas, const Theme& theme, const Rect& box, const engine::RankedCandidate& candidate);

/// Design unit of the screen: 1 on the 10-inch tablet, grows with the text and the glass.
[[nodiscard]] float design_unit(const ScreenContext& context);

/// The cart from above, as far as it is known.
[[nodiscard]] PlanShape plan_of(const ScreenContext& context, const engine::Cart& cart);

}  // namespace sillwalk::ui
