// The list of visits, and who, where and why of the one that is open.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"
#include "app/ui/screens/sending_parts.hpp"

#include <algorithm>

namespace sillwalk::ui {

using app::Screen;
using app::TextField;

namespace {

std::string lower(std::string text) {
    for (char& c : text) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    return text;
}

bool matches(const app::VisitLine& visit, const std::string& search) {
    return search.empty() || lower(visit.title + " " + visit.customer).find(lower(search)) != std::string::npos;
}

void visit_row(ScreenContext& context, const app::VisitLine& visit, std::size_t number) {
    Ui& ui = context.ui;
    const std::string id = "visit." + std::to_string(number);
    const bool compact = ui.metrics().compact();
    const std::string follow_up = context.say("visits.follow_up");
    const float whole = ui.remaining().width() - ui.metrics().gap;
    const float word = ui.text_width(follow_up, TextRole::smallest, Weight::medium) + 2 * ui.metrics().pad;
    const float share = std::clamp(word / whole, compact ? 0.34F : 0.22F, 0.45F);
    const auto cells = ui.cells({1 - share, share});
    RowOptions row;
    row.detail = context.say("visits.changed", {clock_text(context, visit.changed_ms)});
    if (!visit.customer.empty()) row.detail = visit.customer + " \u00B7 " + row.detail;
    const std::string state = delivery_text(context, visit.delivery);
    // Beside a badge a narrow row would leave too little for the name: shape and word stand below it.
    const bool narrow = ui.metrics().width_class != WidthClass::expanded;
    if (narrow) {
        row.mark = delivery_badge(visit.delivery);
        row.detail = state + " \u00B7 " + row.detail;
    } else {
        row.badge = delivery_badge(visit.delivery);
        row.badge_word = state;
    }
    if (!narrow) row.icon = Icon::route;
    row.chevron = !compact;
    const std::string title = visit.title.empty() ? context.say("visits.unnamed") : visit.title;
    if (ui.row(id, title, row)) context.act(app::OpenVisit{visit.id});
    if (ui.button(id + ".copy", follow_up, {.role = compact ? TextRole::caption : TextRole::body})) {
        do_build(context, app::CopyVisit{visit.id});
    }
}

}  // namespace

void draw_visits(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    Rect rest = area;
    Rect head = rest.cut_top(m.target_size(TargetClass::row), m.gap);
    const Rect add = head.cut_right(head.width() * 0.42F, m.gap);
    TextFieldOptions options;
    options.hint = context.say("visits.search");
    options.rect = head;
    (void)ui.text_field("visits.search", context.scratch.search, options);
    if (ui.button("visits.new", context.say("visits.new"),
                  {.style = ButtonStyle::primary, .icon = Icon::plus, .rect = add})) {
        do_build(context, app::NewVisit{});
    }
    const auto list = ui.scroll("visits.list", rest);
    office_row(context, "visits.office");
    std::size_t number = 0;
    for (const app::VisitLine& visit : context.model.visits) {
        if (!matches(visit, context.scratch.search)) continue;
        ++number;
        ui.block([&] { visit_row(context, visit, number); });
    }
    if (number == 0) ui.text(context.say(context.model.visits.empty() ? "visits.none" : "visits.none_found"));
}

void draw_about(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const auto list = ui.scroll("about", area);
    for (const TextField field : {TextField::site, TextField::customer, TextField::complaint, TextField::surveyor}) {
        text_row(context, {field, 0});
    }
    if (ui.button("about.places", context.say("places.title"),
                  {.style = ButtonStyle::primary, .icon = Icon::route, .detail = context.say("about.next")})) {
        context.act(app::GoTo{{Screen::places, 0}});
    }
    text_row(context, {TextField::notes, 0});
    if (app::may_be_erased(delivery_in_hand(context)) &&
        ui.button("about.erase", context.say("erase.title"), {.style = ButtonStyle::danger, .icon = Icon::erase})) {
        do_send(context, app::OpenErase{});
    }
}

}  // namespace sillwalk::ui
