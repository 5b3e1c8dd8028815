// The plain lists: room, loads, washing, setup.

#include "app/core/reading_access.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"
#include "app/ui/screens/ruler.hpp"
#include "app/ui/screens/sending_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace sillwalk::ui {

using app::Screen;
using engine::Field;

namespace {

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

/// Two columns of rows on wide screens, one on narrow ones; `end` comes below the right one.
template <std::size_t A, std::size_t B, class End>
void two_columns(ScreenContext& context, const Rect& area, const char* id, const std::array<Field, A>& left,
                 const std::array<Field, B>& right, std::uint16_t index, End&& end) {
    Ui& ui = context.ui;
    if (ui.metrics().width_class != WidthClass::expanded) {
        const auto list = ui.scroll(id, area);
        reading_rows(context, left, index);
        reading_rows(context, right, index);
        end();
        return;
    }
    const auto columns = ui.columns(area, {1, 1}, true);
    {
        const auto list = ui.scroll(std::string(id) + ".left", columns[0]);
        reading_rows(context, left, index);
    }
    const auto list = ui.scroll(std::string(id) + ".right", columns[1]);
    reading_rows(context, right, index);
    end();
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

void washed_rooms(ScreenContext& context, std::uint16_t index) {
    const auto& rooms = context.survey().rooms;
    const auto& washed = context.survey().washings[index].rooms;
    std::vector<ChipItem> chips;
    for (std::size_t i = 0; i < rooms.size(); ++i) {
        const bool on = std::find(washed.begin(), washed.end(), rooms[i].id) != washed.end();
        // The last room stays: a washing of nothing would contradict itself.
        chips.push_back({std::to_string(i + 1), rooms[i].name, on, !on || washed.size() > 1});
    }
    context.ui.caption(context.say("washing.rooms"));
    if (const auto hit = context.ui.chips("washing.room", chips)) {
        do_build(context, app::ToggleWashedRoom{index, static_cast<std::uint16_t>(*hit)});
    }
}

void setting_choice(ScreenContext& context, const char* id, const char* title, std::span<const ChoiceItem> items,
                    int selected, const std::function<void(std::size_t)>& take) {
    context.ui.text(context.say(title), TextRole::body, Weight::medium);
    if (const auto hit = context.ui.choice(id, items, selected)) take(*hit);
    context.ui.space(context.ui.metrics().gap);
}

}  // namespace

void draw_room(ScreenContext& context, const Rect& area) {
    constexpr std::array<Field, 4> left = {Field::room_air, Field::room_air_movement, Field::room_humidity,
                                           Field::room_wetness};
    constexpr std::array<Field, 3> right = {Field::room_floor, Field::room_hygiene, Field::room_cleanroom};
    const std::uint16_t index = context.model.spot.index;
    two_columns(context, area, "room", left, right, index, [&] {
        if (context.ui.button("room.crossing", context.say("room.crossing"), {.icon = Icon::plus})) {
            do_build(context, app::OpenPick{{app::PickKind::crossing_to, index, 0}});
        }
        if (context.ui.button("room.washing", context.say("room.washing"), {.icon = Icon::washing})) {
            const std::string& name = context.survey().rooms[index].name;
            do_build(context, app::AddWashing{context.say("washing.of", {name}), index});
        }
        part_end(context, app::Part::room, index);
    });
}

void draw_loads(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const auto list = ui.scroll("loads", area);
    for (std::uint16_t i = 0; i < context.survey().carts.size(); ++i) {
        ui.block([&] {
            const engine::Cart& cart = context.survey().carts[i];
            const engine::CartAdvice* advice = advice_of(context, i);
            RowOptions options;
            options.icon = Icon::loads;
            options.chevron = true;
            options.detail = gross_text(context, i) + " \u00B7 " + counted(context, "loads.stops", cart.route.size());
            if (const engine::RankedCandidate* first = app::headline(advice)) {
                options.badge = badge_of(first->verdict);
                if (ui.metrics().width_class == WidthClass::expanded) {
                    options.badge_word = verdict_text(context, first->verdict);
                }
            }
            if (ui.row("cart." + cart.id.text(), cart.name, options)) context.act(app::GoTo{{Screen::cart, i}});
        });
    }
    const bool none = context.survey().carts.empty();
    if (none) ui.text(context.say("loads.none"));
    if (ui.button("loads.add", context.say("loads.add"),
                  {.style = none ? ButtonStyle::primary : ButtonStyle::plain, .icon = Icon::plus})) {
        do_build(context, app::OpenPick{{app::PickKind::new_cart, 0, 0}});
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
    const bool can = !context.survey().rooms.empty();
    if (ui.button("washing.add", context.say("washing.add"),
                  {.icon = Icon::plus, .detail = can ? "" : context.say("places.rooms_first"), .enabled = can})) {
        do_build(context, app::OpenPick{{app::PickKind::new_washing, 0, 0}});
    }
}

void draw_washing_step(ScreenContext& context, const Rect& area) {
    constexpr std::array<Field, 3> left = {Field::washing_agent, Field::washing_strength, Field::washing_temperature};
    constexpr std::array<Field, 3> right = {Field::washing_contact, Field::washing_frequency, Field::washing_rinsed};
    const std::uint16_t index = context.model.spot.index;
    two_columns(context, area, "washing_step", left, right, index, [&] {
        washed_rooms(context, index);
        part_end(context, app::Part::washing, index);
    });
}

void draw_setup(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const app::Settings& settings = context.model.settings;
    const auto list = ui.scroll("setup", area);
    office_row(context, "setup.office");
    ui.space(ui.metrics().gap);
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
    draw_scale_check(context);
    ui.space(ui.metrics().gap);
    const std::array<ChoiceItem, 2> languages = {{{"en", "English", {}, true}, {"es", "Espa\u00F1ol", {}, true}}};
    setting_choice(context, "setup.language", "setup.language", languages, settings.language == "es" ? 1 : 0,
                   [&](std::size_t i) { context.act(app::SetLanguage{languages[i].id}); });
    ui.caption(
        context.say("setup.catalogue", {context.model.data->catalogue.name, context.model.data->catalogue.edition,
                                        context.model.data->tables.edition}));
    ui.caption(context.say("setup.limits"));
}

}  // namespace sillwalk::ui
