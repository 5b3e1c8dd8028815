// The plain lists: visits, overview, room, loads, washing, setup.

#include "app/core/reading_access.hpp"
#include "app/ui/screens/facts.hpp"

#include <fmt/format.h>

#include <array>

namespace sillwalk::ui {

using app::Screen;
using engine::Field;

namespace {

std::string lower(std::string text) {
    for (char& c : text) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    return text;
}

bool matches(const app::VisitLine& visit, const std::string& search) {
    return search.empty() || lower(visit.title).find(lower(search)) != std::string::npos;
}

std::string gross_text(const ScreenContext& context, std::uint16_t index) {
    const engine::Cart& cart = context.survey().carts[index];
    if (!cart.tare.value || !cart.payload.value) return context.say("loads.weight_not_read");
    const double gross = (*cart.tare.value + *cart.payload.value).si();
    return context.say("loads.gross", {app::show({gross, engine::Kind::mass}, context.units())});
}

const engine::CartAdvice* advice_of(const ScreenContext& context, std::uint16_t cart) {
    if (!context.model.answer) return nullptr;
    for (const engine::CartAdvice& advice : context.model.answer->advice.carts) {
        if (advice.cart == cart) return &advice;
    }
    return nullptr;
}

template <std::size_t N>
void reading_rows(ScreenContext& context, const std::array<Field, N>& fields, std::uint16_t index) {
    for (const Field field : fields) {
        const engine::ReadingRef ref{field, index, 0};
        reading_row(context, ref, is_needed(context, ref));
    }
}

/// Two columns of rows on wide screens, one on narrow ones.
template <std::size_t A, std::size_t B>
void two_columns(ScreenContext& context, const Rect& area, const char* id, const std::array<Field, A>& left,
                 const std::array<Field, B>& right, std::uint16_t index) {
    Ui& ui = context.ui;
    if (ui.metrics().width_class != WidthClass::expanded) {
        const auto list = ui.scroll(id, area);
        reading_rows(context, left, index);
        reading_rows(context, right, index);
        return;
    }
    const auto columns = ui.columns(area, {1, 1}, true);
    {
        const auto list = ui.scroll(std::string(id) + ".left", columns[0]);
        reading_rows(context, left, index);
    }
    const auto list = ui.scroll(std::string(id) + ".right", columns[1]);
    reading_rows(context, right, index);
}

std::string washing_detail(const ScreenContext& context, std::uint16_t index) {
    const engine::Washing& washing = context.survey().washings[index];
    std::string rooms;
    for (const engine::RoomId& id : washing.rooms) {
        for (const engine::Room& room : context.survey().rooms) {
            if (room.id == id) rooms += (rooms.empty() ? "" : ", ") + room.name;
        }
    }
    const std::string how_often = value_text(context, {Field::washing_frequency, index, 0});
    if (how_often.empty()) return rooms;
    return rooms.empty() ? how_often : rooms + " \u00B7 " + how_often;
}

void setting_choice(ScreenContext& context, const char* id, const char* title, std::span<const ChoiceItem> items,
                    int selected, const std::function<void(std::size_t)>& take) {
    context.ui.text(context.say(title), TextRole::body, Weight::medium);
    if (const auto hit = context.ui.choice(id, items, selected)) take(*hit);
    context.ui.space(context.ui.metrics().gap);
}

}  // namespace

void draw_visits(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    Rect rest = area;
    if (context.model.visits.size() > 6) {
        const Rect box = rest.cut_top(m.target_size(TargetClass::row), m.gap);
        TextFieldOptions options;
        options.hint = context.say("visits.search");
        options.rect = box;
        (void)ui.text_field("visits.search", context.scratch.search, options);
    }
    std::vector<const app::VisitLine*> shown;
    for (const app::VisitLine& visit : context.model.visits) {
        if (matches(visit, context.scratch.search)) shown.push_back(&visit);
    }
    if (shown.empty()) {
        const auto column = ui.column(rest);
        ui.text(context.say("visits.none"));
        return;
    }
    ListOptions options;
    options.row_height = m.dp(104);
    options.top_label = context.say("list.top");
    options.end_label = context.say("list.end");
    ui.list(
        "visits.list", rest, shown.size(),
        [&](std::size_t i) {
            RowOptions row;
            row.detail = context.say("visits.changed", {clock_text(context, shown[i]->changed_ms)});
            row.badge = Badge::not_known;
            row.badge_word = context.say("visits.not_sent");
            if (shown[i]->sent) row.badge.reset();
            row.icon = Icon::route;
            row.chevron = true;
            if (ui.row("visit." + std::to_string(i + 1), shown[i]->title, row))
                context.act(app::OpenVisit{shown[i]->id});
        },
        options);
}

void draw_overview(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const engine::Survey& survey = context.survey();
    const auto list = ui.scroll("overview", area);
    if (survey.invented) ui.caption(context.say("overview.invented"));
    if (!survey.complaint.empty()) ui.text(survey.complaint, TextRole::body);
    if (ui.metrics().compact()) {
        const std::array<std::pair<Screen, const char*>, 3> ways = {
            {{Screen::washing, "nav.washing"}, {Screen::setup, "nav.setup"}, {Screen::visits, "visits.title"}}};
        for (const auto& [screen, word] : ways) {
            if (ui.row(std::string("overview.") + app::screen_name(screen), context.say(word), {.chevron = true})) {
                context.act(app::GoTo{{screen, 0}});
            }
        }
    }
    ui.space(ui.metrics().gap / 2);
    ui.title(context.say("overview.decisions"));
    for (std::uint16_t i = 0; i < survey.carts.size(); ++i) {
        const engine::CartAdvice* advice = advice_of(context, i);
        const engine::RankedCandidate* first = app::headline(advice);
        RowOptions options;
        options.chevron = true;
        options.detail = context.say(advice ? "overview.no_wheel" : "answer.working");
        if (first) {
            const engine::Wheel& wheel = context.model.data->catalogue.wheels[first->candidate.wheel];
            options.badge = badge_of(first->verdict);
            options.badge_word = verdict_text(context, first->verdict);
            options.detail = advice->nothing_holds ? context.say("answer.nothing_holds") : wheel_text(context, wheel);
            if (!advice->not_read.empty()) {
                options.detail +=
                    " \u00B7 " + context.say(advice->not_read.size() == 1 ? "overview.one_open" : "overview.open",
                                             {std::to_string(advice->not_read.size())});
            }
        }
        if (ui.row("overview.cart." + survey.carts[i].id.text(), survey.carts[i].name, options)) {
            context.act(app::SelectCart{i});
            context.act(app::GoTo{{Screen::answer, 0}});
        }
    }
}

void draw_room(ScreenContext& context, const Rect& area) {
    constexpr std::array<Field, 4> left = {Field::room_air, Field::room_air_movement, Field::room_humidity,
                                           Field::room_wetness};
    constexpr std::array<Field, 3> right = {Field::room_floor, Field::room_hygiene, Field::room_cleanroom};
    two_columns(context, area, "room", left, right, context.model.spot.index);
}

void draw_loads(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const auto list = ui.scroll("loads", area);
    for (std::uint16_t i = 0; i < context.survey().carts.size(); ++i) {
        const engine::Cart& cart = context.survey().carts[i];
        const engine::CartAdvice* advice = advice_of(context, i);
        RowOptions options;
        options.icon = Icon::loads;
        options.chevron = true;
        options.detail =
            gross_text(context, i) + " \u00B7 " + context.say("loads.stops", {std::to_string(cart.route.size())});
        if (const engine::RankedCandidate* first = app::headline(advice)) {
            options.badge = badge_of(first->verdict);
            if (ui.metrics().width_class == WidthClass::expanded) {
                options.badge_word = verdict_text(context, first->verdict);
            }
        }
        if (ui.row("cart." + cart.id.text(), cart.name, options)) context.act(app::GoTo{{Screen::cart, i}});
    }
}

void draw_washing(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const auto list = ui.scroll("washing", area);
    for (std::uint16_t i = 0; i < context.survey().washings.size(); ++i) {
        const engine::Washing& washing = context.survey().washings[i];
        RowOptions options;
        options.icon = Icon::washing;
        options.chevron = true;
        options.detail = washing_detail(context, i);
        options.value = value_text(context, {Field::washing_temperature, i, 0});
        options.value_role = TextRole::row;
        if (ui.row("washing." + washing.id.text(), washing.name, options)) {
            context.act(app::GoTo{{Screen::washing_step, i}});
        }
    }
    if (context.survey().washings.empty()) ui.text(context.say("washing.none"));
}

void draw_washing_step(ScreenContext& context, const Rect& area) {
    constexpr std::array<Field, 3> left = {Field::washing_agent, Field::washing_strength, Field::washing_temperature};
    constexpr std::array<Field, 3> right = {Field::washing_contact, Field::washing_frequency, Field::washing_rinsed};
    two_columns(context, area, "washing_step", left, right, context.model.spot.index);
}

void draw_setup(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const app::Settings& settings = context.model.settings;
    const auto list = ui.scroll("setup", area);
    const std::array<ChoiceItem, 2> units = {
        {{"si", context.say("setup.units_si"), {}, true}, {"us", context.say("setup.units_us"), {}, true}}};
    setting_choice(context, "setup.units", "setup.units", units, settings.us_units ? 1 : 0,
                   [&](std::size_t i) { context.act(app::SetUsUnits{i == 1}); });
    const std::array<ChoiceItem, 3> themes = {{{"light", context.say("setup.theme_light"), {}, true},
                                               {"sun", context.say("setup.theme_sun"), {}, true},
                                               {"dark", context.say("setup.theme_dark"), {}, true}}};
    const int theme = settings.theme == "sun" ? 1 : settings.theme == "dark" ? 2 : 0;
    setting_choice(context, "setup.theme", "setup.theme", themes, theme,
                   [&](std::size_t i) { context.act(app::SetTheme{themes[i].id}); });
    const std::array<ChoiceItem, 2> hands = {
        {{"glove", context.say("setup.glove"), {}, true}, {"bare", context.say("setup.bare"), {}, true}}};
    setting_choice(context, "setup.hands", "setup.hands", hands, settings.glove ? 0 : 1,
                   [&](std::size_t i) { context.act(app::SetGlove{i == 0}); });
    const std::array<ChoiceItem, 2> sides = {
        {{"right", context.say("setup.right_handed"), {}, true}, {"left", context.say("setup.left_handed"), {}, true}}};
    setting_choice(context, "setup.side", "setup.side", sides, settings.left_handed ? 1 : 0,
                   [&](std::size_t i) { context.act(app::SetLeftHanded{i == 1}); });
    const std::array<ChoiceItem, 3> sizes = {
        {{"100", "100 %", {}, true}, {"115", "115 %", {}, true}, {"130", "130 %", {}, true}}};
    setting_choice(context, "setup.text", "setup.text_size", sizes, (settings.text_percent - 100) / 15,
                   [&](std::size_t i) { context.act(app::SetTextPercent{100 + 15 * static_cast<int>(i)}); });
    const std::array<ChoiceItem, 2> languages = {{{"en", "English", {}, true}, {"es", "Espa\u00F1ol", {}, true}}};
    setting_choice(context, "setup.language", "setup.language", languages, settings.language == "es" ? 1 : 0,
                   [&](std::size_t i) { context.act(app::SetLanguage{languages[i].id}); });
    ui.caption(
        context.say("setup.catalogue", {context.model.data->catalogue.name, context.model.data->catalogue.edition,
                                        context.model.data->tables.edition}));
    ui.caption(context.say("setup.limits"));
}

}  // namespace sillwalk::ui
