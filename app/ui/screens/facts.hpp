#pragma once
/// Readings, outcomes and wheels in the words of the screen. Shared by all screens.

#include "app/ui/screens/screen.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sillwalk::ui {

/// One reading as a row shows it.
struct ReadingLine {
    std::string name;    ///< "Rise"
    std::string value;   ///< "19"; empty where there is none
    std::string unit;    ///< "mm"
    std::string detail;  ///< "± 1 mm, tape"
    engine::Known known = engine::Known::not_yet_read;
};
[[nodiscard]] const ReadingLine& reading_line(const ScreenContext& context, const engine::ReadingRef& ref);
/// The same for a value that is not kept yet.
[[nodiscard]] ReadingLine pending_line(const ScreenContext& context, const engine::ReadingRef& ref,
                                       std::int64_t canonical);
/// Row of the reading; tapping it opens the measuring sheet or the choice. `needed`: the answer waits for it.
void reading_row(ScreenContext& context, const engine::ReadingRef& ref, bool needed = false, bool framed = true);
/// Id of its target: "reading.crossing_rise", with the index of the owner where `indexed`.
[[nodiscard]] std::string reading_id(const engine::ReadingRef& ref, bool indexed = false);

/// True where the advice for the cart in hand says that it needs this reading.
[[nodiscard]] bool is_needed(const ScreenContext& context, const engine::ReadingRef& ref);

[[nodiscard]] std::string unit_text(const ScreenContext& context, const app::Unit& unit);
/// "19 mm"; empty where there is no value.
[[nodiscard]] std::string value_text(const ScreenContext& context, const engine::ReadingRef& ref);
[[nodiscard]] std::string capitalised(std::string text);
/// "3 rooms", and "1 room" where the words have a line for it.
[[nodiscard]] std::string counted(const ScreenContext& context, const char* key, std::size_t count);
/// Word of a choice in the person's language; ids of tables by their names there.
[[nodiscard]] std::string choice_text(const ScreenContext& context, engine::Field field, const std::string& word);

[[nodiscard]] std::optional<Badge> badge_of(engine::Outcome outcome);
/// "Step, fails": what a target with a badge says.
[[nodiscard]] std::string labelled(const ScreenContext& context, const std::string& name, engine::Outcome outcome);
[[nodiscard]] Badge badge_of(engine::Verdict verdict);
[[nodiscard]] std::string verdict_text(const ScreenContext& context, engine::Verdict verdict);

/// "200 mm one-piece urethane".
[[nodiscard]] std::string wheel_text(const ScreenContext& context, const engine::Wheel& wheel);
/// The wheel that is on the cart in hand, where the catalogue has it.
[[nodiscard]] const engine::Wheel* present_wheel(const ScreenContext& context);
/// The wheel of the first choice or, where nothing holds, of the nearest.
[[nodiscard]] const engine::Wheel* headline_wheel(const ScreenContext& context);

/// The findings that decide first: fails, not known, tight, holds; within them the greatest use first.
/// app::sentence and app::compared of a finding that the model holds.
[[nodiscard]] const std::string& sentence_of(const ScreenContext& context, const engine::Finding& finding);
[[nodiscard]] const std::string& compared_of(const ScreenContext& context, const engine::Finding& finding);
[[nodiscard]] std::vector<const engine::Finding*> by_urgency(const std::vector<engine::Finding>& findings);
/// What happens at one crossing to the wheel that is shown there; null while nothing is known of it.
[[nodiscard]] const engine::CrossingOutcome* crossing_outcome(const ScreenContext& context, std::uint16_t crossing,
                                                              bool present);
/// The text where it fits, if only at the smallest size, in which Ui::text_at then draws it; else as many of its words
/// as fit with an ellipsis. The whole stands on the thing's own screen.
[[nodiscard]] std::string fitted(const Ui& ui, const std::string& text, float width, TextRole role, Weight weight);
/// "14:03" of a moment.
[[nodiscard]] std::string clock_text(const ScreenContext& context, std::int64_t utc_ms);

}  // namespace sillwalk::ui
