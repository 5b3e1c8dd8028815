#pragma once
/// What every room, crossing, washing and cart has: its texts, and buttons to move, copy and delete it.

#include "app/core/structure.hpp"
#include "app/core/survey_texts.hpp"
#include "app/ui/screens/screen.hpp"

namespace sillwalk::ui {

void do_build(const ScreenContext& context, app::BuildAction action);
/// Why there is no answer yet; where there is no cart, the way to the first one.
void no_wheel_judged(ScreenContext& context);
/// A field for this text. What is typed is kept as the finger leaves it; the keys outlive a dead battery.
void text_row(ScreenContext& context, const app::TextRef& ref);
/// Up, down, duplicate, delete.
void part_tools(ScreenContext& context, app::Part part, std::uint16_t index);
/// Name, notes where there are any, and the tools: the end of every part's own screen.
void part_end(ScreenContext& context, app::Part part, std::uint16_t index);

}  // namespace sillwalk::ui
