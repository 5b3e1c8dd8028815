// The office: enrolling this tablet, what waits and what needs a person, and the file for when there is no network.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/sending_parts.hpp"

namespace sillwalk::ui {

using app::DeliveryState;
using app::EnrolmentText;
using app::SendingPhase;

namespace {

void field(ScreenContext& context, EnrolmentText which, const char* id, const std::string& kept, const char* hint) {
    std::string shown = kept;
    TextFieldOptions options;
    options.label = context.say(id);
    options.hint = hint;
    options.max_bytes = which == EnrolmentText::name ? 100 : 600;  // the whole text of a QR code
    if (context.ui.text_field(id, shown, options).changed) do_send(context, app::SetEnrolmentText{which, shown});
}

void fault_lines(ScreenContext& context, const std::string& id, const app::SendingFault& fault) {
    context.ui.badge(Badge::tight, context.say("office.failed"));
    context.ui.text(fault_text(context, fault), TextRole::body, Weight::medium, {}, id);
}

void form(ScreenContext& context) {
    Ui& ui = context.ui;
    const app::EnrolmentForm& typed = context.model.sending.form;
    ui.text(context.say("office.how"));
    if (context.model.sending.can_paste && ui.button("office.paste", context.say("office.paste"))) {
        do_send(context, app::PasteEnrolment{});
    }
    field(context, EnrolmentText::address, "office.address", typed.address, "https://");
    field(context, EnrolmentText::code, "office.code", typed.code, "");
    field(context, EnrolmentText::name, "office.name", typed.name, "");
    if (typed.fault) fault_lines(context, "office.fault", *typed.fault);
    if (ui.button("office.enrol", context.say(typed.busy ? "office.enrolling" : "office.enrol"),
                  {.style = ButtonStyle::primary, .enabled = !typed.busy})) {
        do_send(context, app::Enrol{});
    }
    if (typed.open && ui.button("office.keep", context.say("office.keep"), {.style = ButtonStyle::quiet})) {
        do_send(context, app::OpenEnrolment{false});
    }
}

/// Visits that were sealed and of which the office does not have everything, or two versions.
void visit_rows(ScreenContext& context) {
    std::size_t number = 0;
    for (const app::VisitLine& visit : context.model.visits) {
        const DeliveryState state = visit.delivery;
        ++number;
        if (state == DeliveryState::not_sent || state == DeliveryState::at_office || state == DeliveryState::from_file)
            continue;
        RowOptions options;
        options.chevron = true;
        options.mark = delivery_badge(state);
        options.detail = delivery_text(context, state);
        if (!visit.why.empty()) options.detail += ". " + context.say(visit.why);
        const std::string title = visit.title.empty() ? context.say("visits.unnamed") : visit.title;
        if (context.ui.row("office.visit." + std::to_string(number), title, options)) {
            context.act(app::OpenVisit{visit.id});
        }
    }
}

void state_part(ScreenContext& context) {
    Ui& ui = context.ui;
    const app::SendingStatus& status = context.model.sending.status;
    ui.finding(phase_text(context), "office.phase");
    if (!status.office.empty()) ui.caption(status.office, "office.where");
    std::size_t unsealed = 0;
    for (const app::VisitLine& visit : context.model.visits)
        unsealed += visit.delivery == DeliveryState::not_sent ? 1 : 0;
    if (unsealed > 0)
        ui.text(counted(context, "sending.unsent", unsealed), TextRole::body, Weight::regular, {}, "office.unsent");
    visit_rows(context);
}

void hand_off_part(ScreenContext& context) {
    Ui& ui = context.ui;
    const app::SendingDesk& desk = context.model.sending;
    if (ui.button("office.hand_off", context.say(desk.writing ? "office.writing" : "office.hand_off"),
                  {.icon = Icon::share, .enabled = !desk.writing})) {
        do_send(context, app::WriteHandOff{});
    }
    ui.text(context.say("office.hand_off_what"), TextRole::caption);
    if (desk.hand_off_fault) fault_lines(context, "office.hand_off_fault", *desk.hand_off_fault);
    if (!desk.hand_off) return;
    const app::HandOffTold& told = *desk.hand_off;
    ui.text(context.say("office.written", {told.path, megabytes(told.bytes), std::to_string(told.revisions),
                                           std::to_string(told.photos)}),
            TextRole::body, Weight::regular, {}, "office.written");
    if (told.damaged > 0) ui.text(context.say("office.left_out", {std::to_string(told.damaged)}));
}

void deeds_part(ScreenContext& context) {
    Ui& ui = context.ui;
    const app::SendingDesk& desk = context.model.sending;
    const bool enrolled = !desk.status.office.empty();
    const bool anew = desk.status.phase == SendingPhase::enrol_again || desk.form.open;
    if (enrolled && !desk.form.open) {
        const bool something = desk.status.waiting + desk.status.parked > 0 || desk.status.phase != SendingPhase::idle;
        if (ui.button("office.try", context.say("office.try"),
                      {.style = anew ? ButtonStyle::plain : ButtonStyle::primary,
                       .enabled = something && desk.status.phase != SendingPhase::sending})) {
            do_send(context, app::TryNow{});
        }
    }
    if (desk.status.possible && (!enrolled || anew)) {
        form(context);
        ui.space(ui.metrics().gap);
    }
    if (!desk.status.possible) ui.text(context.say("office.no_network"));
    hand_off_part(context);
    if (desk.status.possible && enrolled && !anew &&
        ui.button("office.other", context.say("office.other"), {.style = ButtonStyle::quiet})) {
        do_send(context, app::OpenEnrolment{true});
    }
}

}  // namespace

void draw_office(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    if (ui.metrics().width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {1, 1}, true);
        {
            const auto list = ui.scroll("office.state", columns[0]);
            state_part(context);
        }
        const auto list = ui.scroll("office.deeds", columns[1]);
        return deeds_part(context);
    }
    const auto list = ui.scroll("office", area);
    state_part(context);
    ui.space(ui.metrics().gap);
    deeds_part(context);
}

}  // namespace sillwalk::ui
