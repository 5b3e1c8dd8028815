// What is decided and what is still open, cart by cart.

#include "app/core/open_readings.hpp"
#include "app/core/reading_access.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"
#include "app/ui/screens/sending_parts.hpp"

#include <array>

namespace sillwalk::ui {

using app::Screen;

namespace {

constexpr std::size_t shown_at_first = 3;

const engine::CartAdvice* advice_of(const ScreenContext& context, std::uint16_t cart) {
    if (!context.model.answer) return nullptr;
    for (const engine::CartAdvice& advice : context.model.answer->advice.carts) {
        if (advice.cart == cart) return &advice;
    }
    return nullptr;
}

void ways(ScreenContext& context) {
    Ui& ui = context.ui;
    const engine::Survey& survey = context.survey();
    RowOptions about;
    about.chevron = true;
    about.detail = survey.complaint.empty() ? survey.customer : survey.complaint;
    if (about.detail.empty()) about.detail = context.say("overview.about_open");
    const std::string site = survey.site.empty() ? context.say("visits.unnamed") : survey.site;
    if (ui.row("overview.about", site, about)) context.act(app::GoTo{{Screen::about, 0}});
    RowOptions places;
    places.chevron = true;
    places.detail = counted(context, "overview.rooms", survey.rooms.size()) + ", " +
                    counted(context, "overview.crossings", survey.crossings.size());
    if (ui.row("overview.places", context.say("places.title"), places)) context.act(app::GoTo{{Screen::places, 0}});
    RowOptions photos;
    photos.chevron = true;
    photos.icon = Icon::evidence;
    photos.detail = counted(context, "overview.photos", context.model.visit->photos.size());
    if (ui.row("overview.evidence", context.say("evidence.title"), photos)) {
        context.act(app::GoTo{{Screen::evidence, 0}});
    }
    office_row(context, "overview.office");
    if (!ui.metrics().compact()) return;
    const std::array<std::pair<Screen, const char*>, 3> others = {
        {{Screen::washing, "nav.washing"}, {Screen::setup, "nav.setup"}, {Screen::visits, "visits.title"}}};
    for (const auto& [screen, word] : others) {
        if (ui.row(std::string("overview.") + app::screen_name(screen), context.say(word), {.chevron = true})) {
            context.act(app::GoTo{{screen, 0}});
        }
    }
}

void verdict_row(ScreenContext& context, std::uint16_t index, const engine::CartAdvice* advice) {
    const engine::Cart& cart = context.survey().carts[index];
    const engine::RankedCandidate* first = app::headline(advice);
    RowOptions options;
    options.chevron = true;
    const bool compact = context.ui.metrics().compact();
    if (!compact) options.icon = Icon::loads;
    options.detail = context.say(advice ? "overview.no_wheel" : "answer.working");
    if (first) {
        const engine::Wheel& wheel = context.model.data->catalogue.wheels[first->candidate.wheel];
        options.badge = badge_of(first->verdict);
        // A narrow row has room for the wheel or for the long word of the verdict.
        if (!compact) options.badge_word = verdict_text(context, first->verdict);
        options.detail = advice->nothing_holds ? context.say("answer.nothing_holds") : wheel_text(context, wheel);
    }
    if (context.ui.row("overview.cart." + cart.id.text(), cart.name, options)) {
        context.act(app::SelectCart{index});
        context.act(app::GoTo{{Screen::answer, 0}});
    }
}

void open_row(ScreenContext& context, std::uint16_t cart, const app::OpenReading& open, std::size_t number) {
    RowOptions options;
    options.framed = false;
    options.chevron = true;
    options.mark = Badge::not_known;
    for (const engine::CheckId check : open.checks) {
        options.detail +=
            (options.detail.empty() ? "" : ", ") + context.say(std::string("check.") + engine::check_name(check));
    }
    if (!options.detail.empty()) options.detail = context.say("overview.decides", {options.detail});
    const std::string id = "overview.open." + std::to_string(cart + 1) + "." + std::to_string(number);
    if (!context.ui.row(id, capitalised(app::reading_name(open.ref, context.text())), options)) return;
    context.act(app::SelectCart{cart});
    context.act(app::action_for(open.ref));
}

void open_rows(ScreenContext& context, std::uint16_t cart, const engine::CartAdvice& advice) {
    const auto& open = context.recall_of(Remembered::open_readings, advice, [&] { return app::open_readings(advice); });
    const bool all = context.scratch.open_cart == static_cast<int>(cart);
    std::size_t number = 0;
    for (const app::OpenReading& reading : open) {
        if (!all && number == shown_at_first) break;
        open_row(context, cart, reading, ++number);
    }
    if (open.size() <= shown_at_first) return;
    const std::string word = all ? context.say("overview.fewer")
                                 : context.say("overview.more", {std::to_string(open.size() - shown_at_first)});
    if (context.ui.button("overview.more." + std::to_string(cart + 1), word,
                          {.style = ButtonStyle::quiet, .icon = all ? Icon::up : Icon::down})) {
        context.scratch.open_cart = all ? -1 : static_cast<int>(cart);
    }
}

}  // namespace

void draw_overview(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const engine::Survey& survey = context.survey();
    const auto list = ui.scroll("overview", area);
    if (survey.invented) ui.caption(context.say("overview.invented"));
    // What is decided comes first; while there is nothing to decide, the way on does.
    if (survey.carts.empty()) ways(context);
    ui.title(context.say("overview.decisions"));
    for (std::uint16_t i = 0; i < survey.carts.size(); ++i) {
        ui.block([&] {
            const engine::CartAdvice* advice = advice_of(context, i);
            verdict_row(context, i, advice);
            if (advice) open_rows(context, i, *advice);
        });
    }
    if (!survey.carts.empty()) {
        ui.space(ui.metrics().gap);
        ui.block([&] { ways(context); });
        return;
    }
    ui.text(context.say("overview.no_carts"));
    if (ui.button("overview.add_cart", context.say("loads.add"), {.icon = Icon::plus})) {
        do_build(context, app::OpenPick{{app::PickKind::new_cart, 0, 0}});
    }
}

}  // namespace sillwalk::ui
