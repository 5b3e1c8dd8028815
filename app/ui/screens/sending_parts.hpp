#pragma once
/// How sending stands, in words and shapes. Shared by the screens that tell it.

#include "app/ui/screens/screen.hpp"

#include <cstdint>
#include <string>

namespace sillwalk::ui {

void do_send(const ScreenContext& context, app::SendAction action);

[[nodiscard]] std::string delivery_text(const ScreenContext& context, app::DeliveryState state);
[[nodiscard]] Badge delivery_badge(app::DeliveryState state);
/// Of the visit in hand; not_sent where the list does not have it yet.
[[nodiscard]] app::DeliveryState delivery_in_hand(const ScreenContext& context);

/// "0.4 MB", rounded up.
[[nodiscard]] std::string megabytes(std::int64_t bytes);
[[nodiscard]] std::string fault_text(const ScreenContext& context, const app::SendingFault& fault);
/// A sentence: what is going on, or what stands in the way.
[[nodiscard]] std::string phase_text(const ScreenContext& context);
/// The row that leads to the office. Where a visit is in hand its state comes first.
void office_row(ScreenContext& context, const std::string& id);

/// Cart in hand and Send, apart from everything else that a finger may mean. Takes its place off the top of `area`.
void send_head(ScreenContext& context, Rect& area);
/// State of the visit in hand, and what went wrong with it.
void delivery_row(ScreenContext& context);

}  // namespace sillwalk::ui
