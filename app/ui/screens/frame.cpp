#include "app/core/reading_access.hpp"
#include "app/ui/screens/answer_parts.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/pictures.hpp"
#include "app/ui/screens/screen.hpp"

#include <array>

namespace sillwalk::ui {

using app::Screen;

namespace {

struct Tab {
    Screen screen;
    const char* word;
    Icon icon;
};
constexpr std::array<Tab, 7> rail_tabs = {{
    {Screen::overview, "nav.overview", Icon::overview},
    {Screen::route, "nav.route", Icon::route},
    {Screen::loads, "nav.loads", Icon::loads},
    {Screen::washing, "nav.washing", Icon::washing},
    {Screen::answer, "nav.answer", Icon::answer},
    {Screen::hand_over, "nav.hand_over", Icon::hand_over},
    {Screen::setup, "nav.setup", Icon::setup},
}};
constexpr std::array<Tab, 4> bottom_tabs = {{
    {Screen::route, "nav.route", Icon::route},
    {Screen::loads, "nav.loads", Icon::loads},
    {Screen::answer, "nav.answer", Icon::answer},
    {Screen::overview, "nav.more", Icon::more},
}};

/// The tab under which a screen lies.
Screen tab_of(Screen screen) {
    switch (screen) {
        case Screen::room:
        case Screen::crossing:
        case Screen::temperature:
        case Screen::places:
        case Screen::plan:
            return Screen::route;
        case Screen::about:
        case Screen::evidence:
        case Screen::photo:
        case Screen::office:
            return Screen::overview;
        case Screen::cart:
            return Screen::loads;
        case Screen::washing_step:
            return Screen::washing;
        case Screen::push:
        case Screen::what_if:
        case Screen::damage:
            return Screen::answer;
        default:
            return screen;
    }
}

template <std::size_t N>
const std::vector<RailItem>& items_of(const ScreenContext& context, const std::array<Tab, N>& tabs) {
    return context.recall_of(Remembered::navigation, tabs, [&] {
        std::vector<RailItem> items;
        items.reserve(N);
        for (const Tab& tab : tabs) {
            items.push_back({app::screen_name(tab.screen), context.say(tab.word), tab.icon, false});
        }
        return items;
    });
}

template <std::size_t N>
int selected_of(const std::array<Tab, N>& tabs, Screen screen) {
    for (std::size_t i = 0; i < N; ++i) {
        if (tabs[i].screen == screen) return static_cast<int>(i);
    }
    return -1;
}

void draw_navigation(ScreenContext& context) {
    const Screen tab = tab_of(context.model.spot.screen);
    if (context.ui.metrics().compact()) {
        // Washing, hand-over, setup and the list of visits lie behind "More".
        const bool more = tab == Screen::washing || tab == Screen::hand_over || tab == Screen::setup;
        const int selected = selected_of(bottom_tabs, more ? Screen::overview : tab);
        const auto hit = context.ui.bottom_bar("nav", items_of(context, bottom_tabs), selected);
        if (hit) context.act(app::GoTo{{bottom_tabs[*hit].screen, 0}});
        return;
    }
    const auto& items = items_of(context, rail_tabs);
    const auto hit = context.ui.rail("nav", items, selected_of(rail_tabs, tab), context.say("app.name"));
    if (!hit) return;
    const bool home = *hit >= rail_tabs.size();
    context.act(app::GoTo{{home ? Screen::visits : rail_tabs[*hit].screen, 0}});
}

std::string cart_name(const ScreenContext& context) {
    const auto& carts = context.survey().carts;
    return context.model.cart < carts.size() ? carts[context.model.cart].name : "";
}

/// The check that decides, short: "Step: 20 mm of 10.2 mm", or what it waits for.
std::string closest_text(const ScreenContext& context, const engine::Finding& finding) {
    const std::string check = context.say(std::string("check.") + engine::check_name(finding.check));
    const std::string& compared = compared_of(context, finding);
    if (!compared.empty()) return context.say("answer.closest", {check, compared});
    if (finding.outcome != engine::Outcome::not_known || finding.missing.empty()) {
        return sentence_of(context, finding);
    }
    // The cart is named before it.
    const engine::ReadingRef& first = finding.missing[0];
    const bool of_cart = app::owner_of(first.field) == app::Owner::cart;
    const std::string name =
        of_cart ? context.say(app::field_key(first.field)) : app::reading_name(first, context.text());
    if (finding.missing.size() == 1) return context.say("answer.waits_for_one", {name});
    return context.say("answer.waits_for", {std::to_string(finding.missing.size()), name});
}

/// Whether the headline stays whole on two lines beside the badge with that word.
bool leaves_room_for_head(const ScreenContext& context, const std::string& headline, Badge badge,
                          const std::string& word) {
    const Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const float picture = m.answer_height + m.gutter;
    const float room = m.screen.width() - m.rail_width - 2 * m.gutter - picture - m.icon - 2 * m.gap -
                       ui.badge_width(badge, word, TextRole::body);
    return ui.word_width(headline, TextRole::smallest, Weight::medium) <= room &&
           ui.text_height(headline, TextRole::smallest, Weight::medium, room) <
               2.5F * m.line_height(TextRole::smallest);
}

AnswerBarOptions answer_texts(const ScreenContext& context) {
    AnswerBarOptions options;
    const engine::CartAdvice* advice = app::cart_advice(context.model);
    const engine::RankedCandidate* first = app::headline(advice);
    if (context.model.answer && !context.model.answer->refused.empty()) {
        options.headline = context.say("answer.contradiction");
        options.reason = context.model.answer->refused.front().message;
        return options;
    }
    if (!advice || !first) {
        options.headline = context.say(context.model.answer ? "answer.none" : "answer.working");
        if (context.survey().carts.empty()) options.reason = context.say("overview.no_carts");
        return options;
    }
    const engine::Wheel& wheel = context.model.data->catalogue.wheels[first->candidate.wheel];
    const auto reasons = by_urgency(first->findings);
    const std::string reason = reasons.empty() ? std::string() : closest_text(context, *reasons.front());
    if (advice->nothing_holds) {
        options.headline = context.say("answer.nothing_holds");
        options.reason = context.say("answer.nearest", {wheel_text(context, wheel), reason});
    } else {
        options.headline = wheel_text(context, wheel);
        options.reason = cart_name(context) + ". " + reason;
    }
    options.badge = badge_of(first->verdict);
    // A narrow bar has room for the wheel or for the long word of the verdict: the wheel matters more.
    const Metrics& m = context.ui.metrics();
    if (!m.compact()) {
        const std::string verdict = verdict_text(context, first->verdict);
        if (leaves_room_for_head(context, options.headline, *options.badge, verdict)) options.badge_word = verdict;
    } else {
        const float taken = 2 * m.edge + m.icon + 1.5F * m.gap + m.dp(8);  // margins, arrow and the gap to the badge
        const float room = m.screen.width() - context.ui.badge_width(*options.badge) - taken;
        options.headline = fitted(context.ui, options.headline, room, TextRole::row, Weight::medium);
    }
    return options;
}

void draw_answer_bar(ScreenContext& context) {
    Ui& ui = context.ui;
    AnswerBarOptions options = context.recall(Remembered::answer_bar, 0, [&] { return answer_texts(context); });
    const std::string shown = options.headline + options.badge_word;
    if (shown != context.scratch.headline) {
        if (!context.scratch.headline.empty()) context.scratch.headline_since = ui.now();
        context.scratch.headline = shown;
    }
    const double since = ui.now() - context.scratch.headline_since;
    options.flash = context.scratch.headline_since >= 0 && since < 0.6;
    if (options.flash) ui.wake_in(0.6 - since);
    const engine::CartAdvice* advice = app::cart_advice(context.model);
    const engine::RankedCandidate* first = app::headline(advice);
    if (first) {
        const bool chosen = !advice->nothing_holds;
        options.left = [&context, chosen](Canvas& canvas, const Rect& box) {
            const float r = std::min(box.width(), box.height()) / 2;
            draw_wheel(canvas, context.ui.theme(), box.center(), r,
                       chosen ? WheelStyle::first_choice : WheelStyle::runner_up);
        };
        options.right = [&context, first](Canvas& canvas, const Rect& box) {
            draw_margin_strip(canvas, context.ui.theme(), box, *first);
        };
    }
    if (ui.answer_bar("answer_bar", options)) context.act(app::GoTo{{Screen::answer, 0}});
}

std::string saved_text(const ScreenContext& context) {
    const app::Storage& storage = context.model.storage;
    if (storage.refused) {
        return context.say(storage.why == "full" ? "storage.full" : "storage.refused",
                           {std::to_string(storage.waiting)});
    }
    if (storage.saved_ms == 0) return "";
    return context.say("storage.saved", {clock_text(context, storage.saved_ms)});
}

struct Title {
    std::string title, subtitle;
};
Title title_of(const ScreenContext& context) {
    const engine::Survey* survey = context.model.visit ? &context.model.visit->survey : nullptr;
    const std::uint16_t index = context.model.spot.index;
    switch (context.model.spot.screen) {
        case Screen::visits:
            return {context.say("visits.title"), context.say("visits.subtitle")};
        case Screen::overview:
            return {survey->site.empty() ? context.say("visits.unnamed") : survey->site, survey->customer};
        case Screen::route: {
            const engine::Wheel* wheel = present_wheel(context);
            return {context.say("route.title"),
                    wheel ? context.say("route.subtitle", {cart_name(context), wheel_text(context, *wheel)})
                          : cart_name(context)};
        }
        case Screen::room:
            return {survey->rooms[index].name, context.say("room.subtitle")};
        case Screen::crossing: {
            const engine::Crossing& crossing = survey->crossings[index];
            std::string from, to;
            for (const engine::Room& room : survey->rooms) {
                if (room.id == crossing.from) from = room.name;
                if (room.id == crossing.to) to = room.name;
            }
            return {crossing.name, context.say("crossing.subtitle", {from, to})};
        }
        case Screen::loads:
            return {context.say("loads.title"), survey->site};
        case Screen::cart:
            return {survey->carts[index].name,
                    context.say("cart.subtitle", {std::to_string(index + 1), std::to_string(survey->carts.size())})};
        case Screen::washing:
            return {context.say("washing.title"), survey->site};
        case Screen::washing_step:
            return {survey->washings[index].name, context.say("washing.subtitle")};
        case Screen::answer:
            return {context.say("answer.title"), cart_name(context)};
        case Screen::temperature:
            return {context.say("temperature.title"), cart_name(context)};
        case Screen::push:
            return {context.say("push.title"), cart_name(context)};
        case Screen::what_if:
            return {context.say("what_if.title"), cart_name(context)};
        case Screen::damage:
            return {context.say("damage.title"), cart_name(context)};
        case Screen::hand_over:
            return {context.say("hand_over.title"), cart_name(context)};
        case Screen::setup:
            return {context.say("setup.title"), ""};
        case Screen::about:
            return {context.say("about.title"), survey->site};
        case Screen::places:
            return {context.say("places.title"), survey->site};
        case Screen::plan:
            return {context.say("plan.title"), cart_name(context)};
        case Screen::evidence:
            return {context.say("evidence.title"), survey->site};
        case Screen::photo:
            return {context.say("photo.title",
                                {std::to_string(index + 1), std::to_string(context.model.visit->photos.size())}),
                    survey->site};
        case Screen::office:
            return {context.say("office.title"), ""};
    }
    return {};
}

const char* next_theme(const std::string& theme) {
    if (theme == "light") return "sun";
    return theme == "sun" ? "dark" : "light";
}

void draw_top_bar(ScreenContext& context) {
    const Title& title = context.recall(Remembered::title, 0, [&] { return title_of(context); });
    const bool compact = context.ui.metrics().compact();
    const app::Visit* visit = context.model.visit ? &*context.model.visit : nullptr;
    TopBarOptions options;
    options.subtitle = title.subtitle;
    const bool roomy = context.ui.metrics().width_class == WidthClass::expanded;
    if (roomy) options.status = saved_text(context);
    options.back = !context.model.back.empty();
    std::vector<app::Action> does;
    const auto add = [&](const char* id, const char* word, Icon icon, bool enabled, app::Action action) {
        options.actions.push_back({id, context.say(word), icon, enabled});
        does.push_back(std::move(action));
    };
    if (visit && context.model.spot.screen == Screen::route) {
        add("plan", "plan.title", Icon::note, true, app::GoTo{{Screen::plan, 0}});
    }
    if (visit && !compact && context.model.spot.screen == Screen::plan) {
        add("places", "places.title", Icon::note, true, app::GoTo{{Screen::places, 0}});
    }
    if (visit && context.model.spot.screen == Screen::route && !visit->survey.carts.empty() &&
        context.ui.metrics().width_class == WidthClass::expanded) {
        const auto next = static_cast<std::uint16_t>((context.model.cart + 1U) % visit->survey.carts.size());
        add("next_cart", "route.next_cart", Icon::none, visit->survey.carts.size() > 1, app::SelectCart{next});
        add("temperature", "route.temperature", Icon::none, true, app::GoTo{{Screen::temperature, 0}});
    }
    if (visit) {
        add("undo", "action.undo", Icon::undo, visit->journal.can_undo(), app::Undo{});
        if (!compact) add("redo", "action.redo", Icon::redo, visit->journal.can_redo(), app::Redo{});
    }
    if (roomy) {
        add("theme", "action.theme", Icon::theme, true, app::SetTheme{next_theme(context.model.settings.theme)});
    }
    const auto hit = context.ui.top_bar(title.title, options);
    if (!hit) return;
    if (*hit < 0) {
        context.act(app::GoBack{});
    } else {
        context.act(does[static_cast<std::size_t>(*hit)]);
    }
}

void draw_screen(ScreenContext& context, const Rect& area) {
    switch (context.model.spot.screen) {
        case Screen::visits:
            return draw_visits(context, area);
        case Screen::overview:
            return draw_overview(context, area);
        case Screen::route:
            return draw_route(context, area);
        case Screen::room:
            return draw_room(context, area);
        case Screen::crossing:
            return draw_crossing(context, area);
        case Screen::loads:
            return draw_loads(context, area);
        case Screen::cart:
            return draw_cart(context, area);
        case Screen::washing:
            return draw_washing(context, area);
        case Screen::washing_step:
            return draw_washing_step(context, area);
        case Screen::answer:
            return draw_answer(context, area);
        case Screen::temperature:
            return draw_temperature(context, area);
        case Screen::push:
            return draw_push(context, area);
        case Screen::what_if:
            return draw_what_if(context, area);
        case Screen::damage:
            return draw_damage(context, area);
        case Screen::hand_over:
            return draw_hand_over(context, area);
        case Screen::setup:
            return draw_setup(context, area);
        case Screen::about:
            return draw_about(context, area);
        case Screen::places:
            return draw_places(context, area);
        case Screen::plan:
            return draw_plan(context, area);
        case Screen::evidence:
            return draw_evidence(context, area);
        case Screen::photo:
            return draw_photo(context, area);
        case Screen::office:
            return draw_office(context, area);
    }
}

void keyboard(ScreenContext& context) {
    if (context.ui.key_pressed(Key::undo)) context.act(app::Undo{});
    if (context.ui.key_pressed(Key::redo)) context.act(app::Redo{});
    if (context.ui.key_pressed(Key::escape)) context.act(app::GoBack{});
}

void draw_toast(ScreenContext& context) {
    if (!context.model.toast) return;
    const app::Toast& toast = *context.model.toast;
    if (context.ui.now() - toast.since > 8) return;
    std::vector<std::string> arguments;
    for (const std::string& argument : toast.arguments) {
        arguments.push_back(context.language.has(argument) ? context.say(argument) : argument);
    }
    ToastOptions options;
    if (toast.undo) options.action = context.say("action.undo");
    if (context.ui.toast("toast", context.say(toast.key, arguments), toast.since, options)) context.act(app::Undo{});
}

}  // namespace

void draw_app(ScreenContext& context) {
    Ui& ui = context.ui;
    ui.set_content(context.stamp);
    if (context.scratch.memory.begin(context.stamp, ui.metrics())) {
        ui.set_badge_words({context.say("outcome.holds"), context.say("outcome.tight"), context.say("outcome.fails"),
                            context.say("outcome.not_known"), context.say("known.by_eye_short"),
                            context.say("action.back"), context.say("action.close")});
    }
    keyboard(context);
    ui.set_rail_words(items_of(context, rail_tabs));
    const bool in_visit = context.model.visit.has_value();
    const bool compact = ui.metrics().compact();
    const Screen screen = context.model.spot.screen;
    if (in_visit && context.model.sheet) {
        const bool bars = !compact;
        const Regions regions = ui.regions(bars);
        if (bars) {
            ui.kept("nav", [&] { draw_navigation(context); });
            ui.kept("answer_bar", [&] { draw_answer_bar(context); });
        }
        const float bottom = bars ? regions.content.y1 : ui.metrics().screen.y1 - ui.metrics().edge;
        const Rect area{regions.content.x0, regions.top_bar.y0, regions.content.x1, bottom};
        ui.kept("sheet", [&] { draw_measure_sheet(context, area); });
        draw_toast(context);
        return;
    }
    const bool bar = in_visit && screen != Screen::answer && screen != Screen::hand_over && screen != Screen::visits &&
                     screen != Screen::setup && screen != Screen::office;
    const Regions regions = ui.regions(bar);
    if (in_visit) ui.kept("nav", [&] { draw_navigation(context); });
    ui.kept("top_bar", [&] { draw_top_bar(context); });
    ui.kept("screen", [&] { draw_screen(context, regions.content); });
    if (bar) ui.kept("answer_bar", [&] { draw_answer_bar(context); });
    if (in_visit) {
        // Where a what-if is shown, the working is that of the what-if.
        const bool tries = screen == Screen::crossing || screen == Screen::what_if;
        ScreenContext shown = tries ? context.trying() : context;
        draw_present_sheet(context);
        draw_reason_sheet(shown);
        draw_choice_sheet(context);
        draw_castor_sheet(context);
        draw_pick_sheet(context);
        draw_photo_files_sheet(context);
        draw_camera_sheet(context);
        draw_photo_binding_sheet(context);
        draw_send_sheet(context);
        draw_erase_sheet(context);
    }
    draw_toast(context);
}

}  // namespace sillwalk::ui
