// What is asked before a visit leaves, or is taken off this tablet: the only two questions of the app.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/sending_parts.hpp"

namespace sillwalk::ui {

namespace {

/// The visit in hand with its photos and its size.
void visit_row(ScreenContext& context, const std::string& id) {
    const app::Visit& visit = *context.model.visit;
    std::int64_t bytes = 0;
    for (const app::VisitPhoto& photo : visit.photos) bytes += photo.bytes;
    for (const auto& [path, text] : visit.entries) bytes += static_cast<std::int64_t>(path.size() + text.size());
    const std::string site = visit.survey.site.empty() ? context.say("visits.unnamed") : visit.survey.site;
    RowOptions what;
    what.touchable = false;
    what.detail =
        counted(context, "overview.photos", visit.photos.size()) + ", " + context.say("send.size", {megabytes(bytes)});
    context.ui.row(id, context.say("send.what", {site}), what);
}

void rows(ScreenContext& context) {
    Ui& ui = context.ui;
    const app::SendingDesk& desk = context.model.sending;
    visit_row(context, "send.what");
    const std::string& office = desk.status.office;
    RowOptions where;
    where.touchable = false;
    where.dashed = office.empty();
    where.detail = office.empty() ? context.say("send.enrol_first") : office;
    ui.row("send.where", context.say("send.to"), where);
    std::string author = desk.author;
    TextFieldOptions from;
    from.label = context.say("send.from");
    from.hint = context.say("text.hint");
    from.max_bytes = 200;
    if (ui.text_field("send.author", author, from).changed) do_send(context, app::SetAuthor{author});
    ui.text(context.say("send.note"), TextRole::caption);
    if (ui.button("send.file", context.say("send.file"), {.enabled = !desk.writing})) {
        do_send(context, app::SendVisit{true});
    }
}

struct Question {
    const char *id, *title;  ///< of the sheet
    const char *deed, *word;
    ButtonStyle style = ButtonStyle::primary;
};
enum class Reply : std::uint8_t { none, not_now, deed };

/// A sheet with `body` and, at its foot, "Not now" and the deed: apart from everything else and from each other.
template <class Body>
Reply ask(ScreenContext& context, const Question& question, Body&& body) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const float apart = m.gap_irreversible;
    bool closed = false;
    const std::string id = question.id;
    const auto sheet = ui.sheet(id, context.say(question.title), closed);
    Rect rest = ui.remaining();
    Rect keys = rest.cut_bottom(m.target_size(TargetClass::irreversible), apart);
    {
        const auto list = ui.scroll(id + ".list", rest);
        body();
    }
    ButtonOptions options;
    options.target_class = TargetClass::irreversible;
    const Rect go = keys.cut_right((keys.width() - apart) / 2, apart);
    options.rect = keys;
    closed = ui.button(id + ".not_now", context.say("send.not_now"), options) || closed;
    options.rect = go;
    options.style = question.style;
    if (ui.button(question.deed, context.say(question.word), options)) return Reply::deed;
    return closed ? Reply::not_now : Reply::none;
}

}  // namespace

void draw_send_sheet(ScreenContext& context) {
    const app::SendingDesk& desk = context.model.sending;
    if (!desk.asks_to_send || !context.model.visit) return;
    const bool enrolled = !desk.status.office.empty();
    const char* deed = enrolled ? "send.send" : "send.enrol";
    const Reply reply = ask(context, {"send", "send.title", deed, deed}, [&] { rows(context); });
    if (reply == Reply::not_now) do_send(context, app::CloseSend{});
    if (reply == Reply::deed && enrolled) do_send(context, app::SendVisit{});
    if (reply == Reply::deed && !enrolled) context.act(app::GoTo{{app::Screen::office, 0}});
}

void draw_erase_sheet(ScreenContext& context) {
    if (!context.model.sending.asks_to_erase || !context.model.visit) return;
    const Reply reply = ask(context, {"erase", "erase.title", "erase.erase", "erase.erase", ButtonStyle::danger}, [&] {
        visit_row(context, "erase.what");
        context.ui.text(context.say("erase.note"));
    });
    if (reply == Reply::not_now) do_send(context, app::CloseErase{});
    if (reply == Reply::deed) do_send(context, app::EraseVisit{});
}

}  // namespace sillwalk::ui
