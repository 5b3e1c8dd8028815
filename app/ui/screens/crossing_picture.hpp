#pragma once
/// The crossing in section with the wheel that is shown there, and the two handles by which rise and gap are tried.

#include "app/ui/screens/facts.hpp"

namespace sillwalk::ui {

/// The present wheel is shown there, not the first choice; the toggle means nothing where there is only one.
[[nodiscard]] bool shows_present(const ScreenContext& context);
/// Draws the section as tried, where something is tried, with the targets "crossing.move.rise" and "crossing.move.gap"
/// where both can be moved in it.
void draw_crossing_picture(ScreenContext& context, const Rect& box, std::uint16_t crossing);

/// What is being tried, its verdict, and the buttons to take it over or forget it, along the lower border of the area.
/// Returns what is left above; all of it where nothing is tried.
[[nodiscard]] Rect what_if_bar(ScreenContext& context, const Rect& area);

}  // namespace sillwalk::ui
