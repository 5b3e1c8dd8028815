// The route of the cart in hand, made by tapping rooms in the order of the walk.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"

#include <cmath>

namespace sillwalk::ui {

using app::PickKind;
using app::Screen;
using engine::Cart;
using engine::Field;

namespace {

constexpr float far_down = 1e6F;

const engine::Room* find_room(const ScreenContext& context, const engine::RoomId& id) {
    for (const engine::Room& room : context.survey().rooms) {
        if (room.id == id) return &room;
    }
    return nullptr;
}
std::string name_of(const ScreenContext& context, const engine::RoomId& id) {
    const engine::Room* room = find_room(context, id);
    return room ? room->name : "?";
}

/// Minutes there, and loaded or empty.
void stop_row(ScreenContext& context, const Cart& cart, std::uint16_t stop) {
    Ui& ui = context.ui;
    const std::string id = "plan.stop." + std::to_string(stop + 1);
    const engine::ReadingRef ref{Field::cart_stay, context.model.cart, stop};
    const ReadingLine& line = reading_line(context, ref);
    const auto cells = ui.cells({0.7F, 0.3F});
    RowOptions options;
    options.value = line.value;
    options.unit = line.unit;
    options.value_role = TextRole::row;
    options.dashed = line.value.empty();
    if (line.value.empty()) options.detail = context.say("plan.minutes_open");
    const std::string name = std::to_string(stop + 1) + ". " + name_of(context, cart.route[stop].room);
    if (ui.row(id, name, options)) context.act(app::OpenSheet{ref});
    const bool loaded = cart.route[stop].loaded;
    if (ui.button(id + ".loaded", context.say(loaded ? "plan.loaded" : "plan.empty"),
                  {.selected = loaded, .role = TextRole::body})) {
        do_build(context, app::SetStopLoaded{context.model.cart, stop, !loaded});
    }
}

/// The crossing by which the cart leaves the stop: chosen, to be chosen, or still to be made.
void way_row(ScreenContext& context, const Cart& cart, std::uint16_t stop) {
    Ui& ui = context.ui;
    const bool last = stop + 1U == cart.route.size();
    const engine::RoomId& here = cart.route[stop].room;
    const engine::RoomId& next = cart.route[last ? 0 : stop + 1U].room;
    const std::string id = last ? "plan.way.back" : "plan.way." + std::to_string(stop + 1);
    const auto ways = app::crossings_between(context.survey(), here, next);
    RowOptions options;
    options.icon = last ? Icon::up : Icon::down;
    options.framed = false;
    options.chevron = true;
    const app::Pick pick{PickKind::stop_crossing, context.model.cart, stop};
    const auto& chosen = cart.route[stop].leaves_by;
    for (const std::uint16_t way : ways) {
        const engine::Crossing& crossing = context.survey().crossings[way];
        if (!chosen || crossing.id != *chosen) continue;
        options.value = value_text(context, {Field::crossing_rise, way, 0});
        options.value_role = TextRole::row;
        if (last) options.detail = context.say("plan.way_back", {name_of(context, next)});
        if (ui.row(id, crossing.name, options)) {
            const bool only = ways.size() == 1 && !last;
            if (only) context.act(app::GoTo{{Screen::crossing, way}});
            if (!only) do_build(context, app::OpenPick{pick});
        }
        return;
    }
    if (last) {
        options.detail = context.say("plan.ends_here");
        if (ui.row(id, context.say("plan.back_to", {name_of(context, next)}), options)) {
            do_build(context, app::OpenPick{pick});
        }
        return;
    }
    options.badge = Badge::not_known;
    options.badge_word = context.say(ways.empty() ? "plan.create" : "plan.choose");
    options.chevron = false;
    if (!ui.row(id, context.say(ways.empty() ? "plan.no_way" : "plan.several_ways"), options)) return;
    if (ways.empty()) {
        do_build(context, app::CreateStopCrossing{context.model.cart, stop});
    } else {
        do_build(context, app::OpenPick{pick});
    }
}

void draw_stops(ScreenContext& context, const Rect& area, const Cart& cart) {
    Ui& ui = context.ui;
    if (context.scratch.plan_stops != cart.route.size()) {
        if (context.scratch.plan_stops < cart.route.size()) ui.scroll_to("plan.stops", far_down);
        context.scratch.plan_stops = cart.route.size();
    }
    const auto list = ui.scroll("plan.stops", area);
    if (cart.route.empty()) ui.text(context.say("plan.tap_rooms"), TextRole::body, Weight::regular, {}, "plan.hint");
    for (std::uint16_t stop = 0; stop < cart.route.size(); ++stop) {
        const bool last = stop + 1U == cart.route.size();
        const bool round = cart.route.back().room == cart.route.front().room;
        ui.block([&] {
            stop_row(context, cart, stop);
            if (!last || (cart.route.size() > 1 && !round)) way_row(context, cart, stop);
        });
    }
}

/// Numbers of the stops at which the cart stands there: "1, 4".
std::string stops_at(const Cart& cart, const engine::RoomId& room) {
    std::string text;
    for (std::size_t i = 0; i < cart.route.size(); ++i) {
        if (cart.route[i].room == room) text += (text.empty() ? "" : ", ") + std::to_string(i + 1);
    }
    return text;
}

void draw_tiles(ScreenContext& context, const Rect& area, const Cart& cart, std::size_t columns) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const auto& rooms = context.survey().rooms;
    Rect rest = area;
    Rect foot = rest.cut_bottom(m.target_size(TargetClass::row), m.gap);
    const Rect add = foot.cut_left((foot.width() - m.gap) / 2, m.gap);
    if (ui.button("plan.add_room", context.say("places.add_room"), {.icon = Icon::plus, .rect = add})) {
        do_build(context, app::OpenPick{{PickKind::new_room, 0, 0}});
    }
    if (ui.button("plan.step_back", context.say("plan.step_back"),
                  {.icon = Icon::backspace, .enabled = !cart.route.empty(), .rect = foot})) {
        const auto last = static_cast<std::uint16_t>(cart.route.size() - 1);
        do_build(context, app::RemoveStop{context.model.cart, last});
    }
    const auto list = ui.scroll("plan.rooms", rest);
    if (rooms.empty()) ui.text(context.say("plan.no_rooms"));
    for (std::size_t first = 0; first < rooms.size(); first += columns) {
        const auto cells = ui.cells(std::vector<float>(columns, 1.0F), m.dp(104));
        for (std::size_t i = first; i < std::min(first + columns, rooms.size()); ++i) {
            ButtonOptions options;
            options.detail = stops_at(cart, rooms[i].id);
            if (ui.button("plan.room." + std::to_string(i + 1), rooms[i].name, options)) {
                do_build(context, app::AppendStop{context.model.cart, static_cast<std::uint16_t>(i)});
            }
        }
    }
}

}  // namespace

void draw_plan(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    if (context.model.cart >= context.survey().carts.size()) {
        const auto column = ui.column(area);
        ui.text(context.say("plan.no_carts"));
        if (ui.button("plan.add_cart", context.say("loads.add"), {.style = ButtonStyle::primary, .icon = Icon::plus})) {
            do_build(context, app::OpenPick{{PickKind::new_cart, 0, 0}});
        }
        return;
    }
    const Cart& cart = context.survey().carts[context.model.cart];
    if (m.width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {1, 1}, true);
        draw_stops(context, columns[0], cart);
        draw_tiles(context, columns[1], cart, 2);
        return;
    }
    // The tiles lie below, in reach of the thumb.
    const std::size_t columns = m.compact() ? 2 : 3;
    const auto rows = static_cast<float>((context.survey().rooms.size() + columns - 1) / columns);
    const float wanted = rows * (m.dp(104) + m.gap) + m.target_size(TargetClass::row);
    Rect rest = area;
    const Rect tiles = rest.cut_bottom(std::min(std::max(wanted, m.mm(30)), area.height() * 0.52F), m.gap);
    draw_stops(context, rest, cart);
    draw_tiles(context, tiles, cart, columns);
}

}  // namespace sillwalk::ui
