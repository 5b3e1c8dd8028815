// Rooms and crossings as lists: where a visit begins.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"

namespace sillwalk::ui {

using app::PickKind;
using app::Screen;
using engine::Field;

namespace {

std::string room_name(const ScreenContext& context, const engine::RoomId& id) {
    for (const engine::Room& room : context.survey().rooms) {
        if (room.id == id) return room.name;
    }
    return "?";
}

RowOptions room_row(const ScreenContext& context, std::uint16_t room) {
    RowOptions options;
    options.value = value_text(context, {Field::room_air, room, 0});
    options.value_role = TextRole::row;
    options.detail = capitalised(reading_line(context, {Field::room_wetness, room, 0}).value);
    options.chevron = true;
    return options;
}

RowOptions crossing_row(const ScreenContext& context, std::uint16_t index) {
    const engine::Crossing& crossing = context.survey().crossings[index];
    RowOptions options;
    options.value = value_text(context, {Field::crossing_rise, index, 0});
    options.value_role = TextRole::row;
    options.detail =
        context.say("crossing.subtitle", {room_name(context, crossing.from), room_name(context, crossing.to)});
    options.chevron = true;
    return options;
}

void rooms(ScreenContext& context) {
    Ui& ui = context.ui;
    ui.title(context.say("places.rooms"));
    const auto& rooms = context.survey().rooms;
    for (std::uint16_t i = 0; i < rooms.size(); ++i) {
        ui.block([&] {
            const auto& options = context.recall(Remembered::room_row, i, [&] { return room_row(context, i); });
            if (ui.row("places.room." + std::to_string(i + 1), rooms[i].name, options)) {
                context.act(app::GoTo{{Screen::room, i}});
            }
        });
    }
    const ButtonStyle style = rooms.size() < 2 ? ButtonStyle::primary : ButtonStyle::plain;
    if (ui.button("places.add_room", context.say("places.add_room"), {.style = style, .icon = Icon::plus})) {
        do_build(context, app::OpenPick{{PickKind::new_room, 0, 0}});
    }
}

void crossings(ScreenContext& context) {
    Ui& ui = context.ui;
    ui.title(context.say("places.crossings"));
    const auto& crossings = context.survey().crossings;
    for (std::uint16_t i = 0; i < crossings.size(); ++i) {
        ui.block([&] {
            const auto& options = context.recall(Remembered::crossing_row, i, [&] { return crossing_row(context, i); });
            if (ui.row("places.crossing." + std::to_string(i + 1), crossings[i].name, options)) {
                context.act(app::GoTo{{Screen::crossing, i}});
            }
        });
    }
    const bool can = !context.survey().rooms.empty();
    const bool next = context.survey().rooms.size() > 1 && crossings.empty();
    if (ui.button("places.add_crossing", context.say("places.add_crossing"),
                  {.style = next ? ButtonStyle::primary : ButtonStyle::plain,
                   .icon = Icon::plus,
                   .detail = can ? "" : context.say("places.rooms_first"),
                   .enabled = can})) {
        do_build(context, app::OpenPick{{PickKind::crossing_from, 0, 0}});
    }
}

}  // namespace

void draw_places(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    if (ui.metrics().width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {1, 1}, true);
        {
            const auto list = ui.scroll("places.rooms", columns[0]);
            rooms(context);
        }
        const auto list = ui.scroll("places.crossings", columns[1]);
        crossings(context);
        return;
    }
    const auto list = ui.scroll("places.list", area);
    rooms(context);
    ui.space(ui.metrics().gap);
    crossings(context);
}

}  // namespace sillwalk::ui
