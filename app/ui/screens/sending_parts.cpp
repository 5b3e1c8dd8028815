#include "app/ui/screens/sending_parts.hpp"

#include "app/ui/screens/facts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace sillwalk::ui {

using app::DeliveryState;
using app::SendingPhase;

namespace {

std::size_t visits_that(const ScreenContext& context, bool (*matches)(DeliveryState)) {
    return static_cast<std::size_t>(std::count_if(context.model.visits.begin(), context.model.visits.end(),
                                                  [&](const app::VisitLine& one) { return matches(one.delivery); }));
}

bool goes_on_by_itself(DeliveryState state) {
    return state == DeliveryState::waits || state == DeliveryState::on_its_way ||
           state == DeliveryState::photos_to_come;
}

/// The most pressing thing of all visits, short.
std::string overall_text(const ScreenContext& context) {
    const app::SendingStatus& status = context.model.sending.status;
    const auto attention = visits_that(context, [](DeliveryState one) { return one == DeliveryState::attention; });
    if (attention > 0) return counted(context, "sending.attention", attention);
    if (status.phase == SendingPhase::enrol_again) return context.say("sending.enrol_again");
    if (status.office.empty()) return context.say("sending.not_enrolled");
    const auto waiting = visits_that(context, goes_on_by_itself);
    if (waiting > 0) return counted(context, "sending.waiting", waiting);
    const auto unsent = visits_that(context, app::is_unsent);
    return unsent > 0 ? counted(context, "sending.unsent", unsent) : context.say("sync.phase.all_sent");
}

/// Whose sheet it is; the next cart with a tap.
void cart_row(ScreenContext& context, const Rect& rect) {
    const auto& carts = context.survey().carts;
    if (carts.empty()) return;
    RowOptions options;
    options.rect = rect;
    options.detail =
        context.say("cart.subtitle", {std::to_string(context.model.cart + 1), std::to_string(carts.size())});
    options.chevron = carts.size() > 1;
    options.touchable = carts.size() > 1;
    const auto next = static_cast<std::uint16_t>((context.model.cart + 1U) % carts.size());
    if (context.ui.row("hand_over.cart", carts[context.model.cart].name, options)) context.act(app::SelectCart{next});
}

}  // namespace

void do_send(const ScreenContext& context, app::SendAction action) {
    context.act(app::Action(std::move(action)));
}

std::string delivery_text(const ScreenContext& context, DeliveryState state) {
    return context.say(std::string("sending.state.") + app::delivery_name(state));
}

Badge delivery_badge(DeliveryState state) {
    switch (state) {
        case DeliveryState::not_sent:
            return Badge::not_known;
        case DeliveryState::attention:
        case DeliveryState::forked:
            return Badge::tight;
        case DeliveryState::at_office:
        case DeliveryState::from_file:
            return Badge::holds;
        case DeliveryState::waits:
        case DeliveryState::on_its_way:
        case DeliveryState::photos_to_come:
            return Badge::by_eye;
    }
    return Badge::not_known;
}

DeliveryState delivery_in_hand(const ScreenContext& context) {
    const app::VisitLine* line = app::find_visit(context.model, context.model.visit->id.text());
    return line ? line->delivery : DeliveryState::not_sent;
}

std::string megabytes(std::int64_t bytes) {
    constexpr std::int64_t tenth = 100'000;
    const std::int64_t tenths = std::max<std::int64_t>(1, (bytes + tenth - 1) / tenth);
    return fmt::format("{}.{}\u00A0MB", tenths / 10, tenths % 10);
}

std::string fault_text(const ScreenContext& context, const app::SendingFault& fault) {
    return context.say(fault.key,
                       {context.language.has(fault.argument) ? context.say(fault.argument) : fault.argument});
}

std::string phase_text(const ScreenContext& context) {
    const app::SendingStatus& status = context.model.sending.status;
    switch (status.phase) {
        case SendingPhase::sending:
            return context.say("sync.phase.busy");
        case SendingPhase::waiting:
            return context.say("sync.phase.waiting", {context.say(status.why.empty() ? "sync.why.busy" : status.why)});
        case SendingPhase::not_enrolled:
            return context.say("sync.phase.not_enrolled");
        case SendingPhase::enrol_again:
            return context.say("sync.phase.enrol_again");
        case SendingPhase::storage_fault:
            return context.say("sync.phase.storage_fault", {status.why});
        case SendingPhase::idle:
            break;
    }
    if (status.parked > 0) return counted(context, "sync.phase.parked", static_cast<std::size_t>(status.parked));
    return context.say("sync.phase.all_sent");
}

void office_row(ScreenContext& context, const std::string& id) {
    RowOptions options;
    options.chevron = true;
    options.detail = overall_text(context);
    if (context.model.visit) {
        const DeliveryState state = delivery_in_hand(context);
        options.mark = delivery_badge(state);
        const std::string word = delivery_text(context, state);
        if (word != options.detail) options.detail = word + " \u00B7 " + options.detail;
    }
    if (context.ui.row(id, context.say("office.title"), options)) context.act(app::GoTo{{app::Screen::office, 0}});
}

void send_head(ScreenContext& context, Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    (void)area.cut_top(m.gap_irreversible - m.gap);  // the bar above lies a gap away
    const float size = m.target_size(TargetClass::irreversible);
    Rect head = area.cut_top(size, m.gap);
    const bool working = context.model.sending.sealing == context.model.visit->id.text();
    const std::string label = context.say(working ? "send.working" : "send.send");
    const float wide = ui.text_width(label, TextRole::row, Weight::medium) + 2 * m.pad + m.icon + m.dp(12);
    const Rect button = head.cut_right(std::clamp(wide, size, head.width() * 0.5F), m.gap_irreversible);
    cart_row(context, head);
    ButtonOptions options;
    options.style = ButtonStyle::primary;
    options.icon = working ? Icon::none : Icon::share;
    options.enabled = context.model.sending.sealing.empty();
    options.target_class = TargetClass::irreversible;
    options.rect = button;
    if (ui.button("hand_over.send", label, options)) do_send(context, app::OpenSend{});
}

void delivery_row(ScreenContext& context) {
    const app::SendingDesk& desk = context.model.sending;
    const std::string visit = context.model.visit->id.text();
    const app::VisitLine* line = app::find_visit(context.model, visit);
    const DeliveryState state = delivery_in_hand(context);
    RowOptions options;
    options.mark = delivery_badge(state);
    options.touchable = false;
    options.framed = false;
    std::string word = delivery_text(context, state);
    if (line && !line->why.empty()) word += ". " + context.say(line->why);
    if (desk.fault && desk.failed_visit == visit) word += ". " + fault_text(context, *desk.fault);
    if (desk.sealing == visit) word = context.say("send.sealing");
    context.ui.row("hand_over.delivery", word, options);
}

}  // namespace sillwalk::ui
