#pragma once
/// The parts of the Answer screen.

#include "app/ui/screens/facts.hpp"

namespace sillwalk::ui {

/// The best candidate with another wheel than the first choice; null where there is none.
[[nodiscard]] const engine::RankedCandidate* runner_up_of(const engine::CartAdvice& advice);

/// All checks on one scale, or as a table. `rect` empty: in the flow, as high as it needs.
void draw_reasons(ScreenContext& context, const Rect& rect, const engine::CartAdvice& advice,
                  const engine::RankedCandidate& first);
/// The checks as rows, for narrow screens.
void draw_reason_rows(ScreenContext& context, const engine::RankedCandidate& first);

/// Everything behind the reasons, one card each, in the current layout.
void draw_answer_sections(ScreenContext& context, const engine::CartAdvice& advice,
                          const engine::RankedCandidate& first);
/// Over the present wheels: the part of the cart being chosen, where one is.
void draw_present_sheet(ScreenContext& context);

}  // namespace sillwalk::ui
