#include "app/ui/draw/strokes.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"
#include "app/ui/screens/pictures.hpp"

#include <array>
#include <cmath>
#include <map>

namespace sillwalk::ui {

using engine::Crossing;
using engine::Field;
using engine::Room;

namespace {

/// One leg of the cart's route: a stay and, if there is one, the crossing by which it leaves.
struct Leg {
    std::size_t stop = 0;
    std::optional<std::uint16_t> room, crossing;
    std::string room_id, crossing_id;  ///< of the targets; a place met again gets a number
};

std::string numbered(std::map<std::string, int>& seen, std::string id) {
    const int count = ++seen[id];
    return count == 1 ? id : id + "." + std::to_string(count);
}

std::vector<Leg> legs_of(const ScreenContext& context) {
    std::vector<Leg> legs;
    const engine::Survey& survey = context.survey();
    if (context.model.cart >= survey.carts.size()) return legs;
    std::map<std::string, int> seen;
    const auto& route = survey.carts[context.model.cart].route;
    for (std::size_t i = 0; i < route.size(); ++i) {
        Leg leg{i, {}, {}, {}, {}};
        for (std::uint16_t k = 0; k < survey.rooms.size(); ++k) {
            if (survey.rooms[k].id == route[i].room) leg.room = k;
        }
        leg.room_id = numbered(seen, "route.room." + route[i].room.text());
        if (route[i].leaves_by) {
            for (std::uint16_t k = 0; k < survey.crossings.size(); ++k) {
                if (survey.crossings[k].id == *route[i].leaves_by) leg.crossing = k;
            }
            leg.crossing_id = numbered(seen, "route.crossing." + route[i].leaves_by->text());
        }
        legs.push_back(std::move(leg));
    }
    return legs;
}

RoomTemperature temperature_of(const Room& room) {
    return room.air.value ? room_temperature(room.air.value->celsius()) : RoomTemperature::not_known;
}

struct GateText {
    std::string head, detail;
};
/// What a crossing asks of a wheel, the greatest first: "19 mm rise", "32 mm gap".
GateText gate_text(const ScreenContext& context, std::uint16_t index) {
    const Crossing& crossing = context.survey().crossings[index];
    std::vector<std::string> parts;
    const auto add = [&](Field field, const engine::Reading<engine::Length>& reading, const char* key) {
        if (reading.value && reading.value->si() > 0) {
            parts.push_back(context.say(key, {value_text(context, {field, index, 0})}));
        } else if (!reading.value && reading.known == engine::Known::not_yet_read) {
            parts.push_back(context.say(std::string(key) + "_not_read"));
        }
    };
    if (crossing.slot.value && crossing.slot.value->si() > 0) add(Field::crossing_slot, crossing.slot, "gate.slot");
    if (crossing.slope.value && std::fabs(crossing.slope.value->tangent()) > 0.004) {
        parts.push_back(context.say("gate.slope", {value_text(context, {Field::crossing_slope, index, 0})}));
    }
    add(Field::crossing_rise, crossing.rise, "gate.rise");
    if (crossing.lip_height.value && crossing.lip_height.value->si() > 0) {
        parts.push_back(context.say("gate.lip", {value_text(context, {Field::crossing_lip_height, index, 0})}));
    }
    add(Field::crossing_gap, crossing.gap, "gate.gap");
    if (parts.empty()) return {context.say("gate.level"), context.say("gate.nothing")};
    return {parts[0], parts.size() > 1 ? parts[1] : std::string()};
}

std::optional<Badge> badge_at(const ScreenContext& context, std::uint16_t crossing) {
    const engine::CrossingOutcome* outcome = crossing_outcome(context, crossing, true);
    return outcome ? badge_of(outcome->outcome) : std::nullopt;
}

std::string gate_label(const ScreenContext& context, std::uint16_t crossing) {
    const engine::CrossingOutcome* outcome = crossing_outcome(context, crossing, true);
    const std::string& name = context.survey().crossings[crossing].name;
    return outcome ? labelled(context, name, outcome->outcome) : name;
}

std::string room_detail(const ScreenContext& context, const Room& room) {
    std::string text =
        room.wetness.value
            ? choice_text(context, Field::room_wetness,
                          app::read_word(context.survey(),
                                         {Field::room_wetness,
                                          static_cast<std::uint16_t>(&room - context.survey().rooms.data()), 0})
                              ->word.value_or(""))
            : context.say("room.wetness_not_read");
    if (room.air_movement.value && *room.air_movement.value >= engine::AirMovement::fans) {
        text += ", " + context.say("room.fans");
    }
    return capitalised(std::move(text));
}

// ---------------------------------------------------------------- strip (wide screens)

struct StripSizes {
    float room, gate, height, lane;
};

RoomBox room_box(const ScreenContext& context, const Leg& leg) {
    const Room& room = context.survey().rooms[*leg.room];
    const ReadingLine& air = reading_line(context, {Field::room_air, *leg.room, 0});
    RoomBox picture;
    picture.name = room.name;
    picture.temperature = air.value;
    picture.unit = air.unit;
    picture.stay = value_text(context, {Field::cart_stay, context.model.cart, static_cast<std::uint16_t>(leg.stop)});
    if (picture.stay.empty()) picture.stay = context.say("route.stay_not_read");
    picture.note = room_detail(context, room);
    picture.kind = temperature_of(room);
    picture.wetness = floor_wetness(room.wetness);
    return picture;
}

/// All that its picture says.
std::string room_label(const RoomBox& picture) {
    const std::string air = picture.temperature.empty() ? "" : ", " + picture.temperature + "\u2009" + picture.unit;
    return picture.name + air + ", " + picture.stay + ", " + picture.note;
}

void draw_gate(ScreenContext& context, const Rect& box, const Leg& leg) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const float u = design_unit(context);
    const Crossing& crossing = context.survey().crossings[*leg.crossing];
    const GateText text = gate_text(context, *leg.crossing);
    const std::optional<Badge> badge = badge_at(context, *leg.crossing);
    const float middle = box.center().x;
    const float width = box.width() - 8 * u;
    ui.text_at({middle, box.y0 + 20 * u}, text.head, {TextRole::body, Weight::medium, theme.text, Align::center},
               width);
    if (!text.detail.empty()) {
        ui.text_at({middle, box.y0 + 46 * u}, text.detail,
                   {TextRole::caption, Weight::regular, theme.text2, Align::center}, width);
    }
    CrossingSection section = section_of(crossing, present_wheel(context));
    section.edge = section.gap_edge = badge;
    const float depth = 22 * u;
    const Rect picture{box.x0, box.y0 + 54 * u, box.x1, box.y1 + depth};
    const float scale = std::min(0.60F * u, (box.y1 - picture.y0) / (section.wheel_mm + section.rise_mm + 6));
    draw_crossing_section(ui.canvas(), theme, picture, box.y1, scale, section);
    const bool one_line = ui.text_width(crossing.name, TextRole::caption, Weight::medium) <= width;
    const float line = m.line_height(TextRole::smallest);
    const float top = box.y1 + depth + 4 * u;
    const Rect name{middle - width / 2, top, middle + width / 2, top + (one_line ? 1 : 2) * line};
    ui.text_in(name, crossing.name, {TextRole::caption, Weight::medium, theme.text, Align::center});
    if (badge) ui.badge_at({middle, name.y1 + 26 * u}, *badge, Align::center);
}

/// The way from the end of one lane to the start of the next.
void draw_lane_turn(Canvas& canvas, const Theme& theme, const Rect& area, float from_y, float to_y, float turn_y) {
    const float u = design_unit(canvas);
    const float right = area.x1 + 12 * u;
    const float left = area.x0 - 12 * u;
    const float r = 10 * u;
    const float stroke = 2.5F * u * theme.line_scale;
    const std::array<Point, 10> way = {{{area.x1, from_y},
                                        {right - r, from_y},
                                        {right, from_y + r},
                                        {right, turn_y - r},
                                        {right - r, turn_y},
                                        {left + r, turn_y},
                                        {left, turn_y + r},
                                        {left, to_y - r},
                                        {left + r, to_y},
                                        {area.x0, to_y}}};
    canvas.polyline(way, theme.text2, stroke);
    const float x = area.center().x;
    const std::array<Point, 3> head = {
        {{x - 10 * u, turn_y}, {x + 8 * u, turn_y - 9 * u}, {x + 8 * u, turn_y + 9 * u}}};
    canvas.fill_polygon(head, theme.text2);
}

void draw_strip(ScreenContext& context, const Rect& area, const std::vector<Leg>& legs) {
    Ui& ui = context.ui;
    constexpr std::size_t per_lane = 3;
    const float unit = area.width() / per_lane;
    const float u = design_unit(context);
    const float apart = std::ceil(ui.metrics().gap / 2);  // drawn as one strip, touched apart
    const StripSizes sizes{unit * 0.564F, unit * 0.436F, 150 * u, 292 * u};
    // The way between two lanes runs a little outside the rooms.
    const auto scope = ui.scroll("route.strip", {area.x0 - 18 * u, area.y0, area.x1 + 18 * u, area.y1});
    float last_floor = 0;
    for (std::size_t first = 0; first < legs.size(); first += per_lane) {
        const float floor = ui.remaining().y0 + sizes.height;
        const float turn = last_floor;
        last_floor = floor;
        ui.block([&] {
            const Rect lane = ui.place(first + per_lane < legs.size() ? sizes.lane : sizes.lane - 16 * u);
            if (first > 0) draw_lane_turn(ui.canvas(), ui.theme(), area, turn, floor, lane.y0 - 16 * u);
            float x = area.x0;
            for (std::size_t i = first; i < std::min(first + per_lane, legs.size()); ++i) {
                const Rect room{x, lane.y0, x + sizes.room, floor};
                const Rect room_target{room.x0 + apart, room.y0, room.x1 - apart, lane.y0 + sizes.lane - 28 * u};
                if (legs[i].room) {
                    const RoomBox picture = room_box(context, legs[i]);
                    if (ui.area(legs[i].room_id, room_label(picture), room_target).tapped) {
                        context.act(app::GoTo{{app::Screen::room, *legs[i].room}});
                    }
                    draw_room_box(ui.canvas(), ui.theme(), room, picture);
                }
                x += sizes.room;
                if (!legs[i].crossing) continue;
                const Rect gate{x, lane.y0, x + sizes.gate, floor};
                const Rect gate_target{gate.x0 + apart, gate.y0, gate.x1 - apart, lane.y0 + sizes.lane - 28 * u};
                const Interaction did =
                    ui.area(legs[i].crossing_id, gate_label(context, *legs[i].crossing), gate_target);
                if (did.tapped) context.act(app::GoTo{{app::Screen::crossing, *legs[i].crossing}});
                draw_gate(context, gate, legs[i]);
                x += sizes.gate;
            }
        });
    }
}

// ---------------------------------------------------------------- list (narrow screens)

/// Rows are drawn edge to edge; what a finger hits keeps a gap to the next.
float apart_in_list(const Metrics& m) {
    return std::ceil(m.gap / 2);
}

void draw_room_row(ScreenContext& context, const Leg& leg) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const float u = design_unit(context);
    const Room& room = context.survey().rooms[*leg.room];
    const Rect row = ui.place(std::max(m.target_size(TargetClass::row) + 2 * apart_in_list(m), 100 * u));
    if (ui.area(leg.room_id, room.name, row.inset(0, apart_in_list(m))).tapped)
        context.act(app::GoTo{{app::Screen::room, *leg.room}});
    Canvas& canvas = ui.canvas();
    const RoomTemperature kind = temperature_of(room);
    canvas.fill_rect(row, room_fill(theme, kind));
    const Rect strip{row.x0, row.y0, row.x0 + 12 * u, row.y1};
    if (kind == RoomTemperature::freezing) {
        hatch(canvas, strip, theme.route, 9 * u, 1.8F * u * theme.line_scale);
    } else {
        canvas.fill_rect(strip, kind == RoomTemperature::warm ? theme.warm_strip : theme.hairline);
    }
    const float column = row.x0 + 124 * u;
    const ReadingLine& air = reading_line(context, {Field::room_air, *leg.room, 0});
    ui.text_at({column - 16 * u, row.center().y + m.cap_height(TextRole::value) / 2},
               air.value.empty() ? "?" : air.value + "\u00B0",
               {TextRole::value, Weight::medium, theme.text, Align::right});
    const float marks = 64 * u;
    const float width = row.x1 - column - marks - 16 * u;
    ui.text_at({column, row.center().y - 7 * u}, room.name, {TextRole::row, Weight::medium, theme.text, Align::left},
               width);
    std::string detail = room_detail(context, room);
    const std::string stay =
        value_text(context, {Field::cart_stay, context.model.cart, static_cast<std::uint16_t>(leg.stop)});
    if (!stay.empty()) detail += " \u00B7 " + stay;
    ui.text_at({column, row.center().y + m.cap_height(TextRole::caption) + 13 * u}, detail,
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, width + marks);
    draw_wetness(canvas, theme, row.x1 - marks, row.x1 - 14 * u, row.center().y - 12 * u, floor_wetness(room.wetness));
}

void draw_gate_row(ScreenContext& context, const Leg& leg) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const float u = design_unit(context);
    const Crossing& crossing = context.survey().crossings[*leg.crossing];
    const std::optional<Badge> badge = badge_at(context, *leg.crossing);
    const bool wide = !m.compact();
    const float height = badge && !wide ? 150 * u : 112 * u;
    const Rect row = ui.place(std::max(m.target_size(TargetClass::row) + 2 * apart_in_list(m), height));
    if (ui.area(leg.crossing_id, gate_label(context, *leg.crossing), row.inset(0, apart_in_list(m))).tapped) {
        context.act(app::GoTo{{app::Screen::crossing, *leg.crossing}});
    }
    ui.canvas().fill_rect(row, theme.surface);
    const float column = row.x0 + (wide ? 190 : 124) * u;
    CrossingSection section = section_of(crossing, present_wheel(context));
    section.edge = section.gap_edge = badge;
    const float depth = 22 * u;
    const float scale = std::min(0.55F * u, (row.height() - depth - 12 * u) / (section.wheel_mm + section.rise_mm));
    draw_crossing_section(ui.canvas(), theme, {row.x0, row.y0, column - 16 * u, row.y1}, row.y1 - depth, scale,
                          section);
    const GateText text = gate_text(context, *leg.crossing);
    const float badge_room = badge && wide ? ui.badge_width(*badge) + 28 * u : 0;
    const float width = row.x1 - column - 12 * u - badge_room;
    const float top = badge && !wide ? row.y0 + 36 * u : row.center().y - 7 * u;
    ui.text_at({column, top}, fitted(ui, crossing.name, width, TextRole::row, Weight::medium),
               {TextRole::row, Weight::medium, theme.text, Align::left}, width);
    const std::string detail = text.detail.empty() ? text.head : text.head + " \u00B7 " + text.detail;
    const float detail_y = top + 13 * u + m.cap_height(TextRole::caption);
    ui.text_at({column, detail_y}, fitted(ui, detail, width, TextRole::caption, Weight::regular),
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, width);
    if (!badge) return;
    if (wide) {
        ui.badge_at({row.x1 - 14 * u, row.center().y}, *badge, Align::right);
    } else {
        ui.badge_at({column, detail_y + 34 * u}, *badge);
    }
}

void draw_list(ScreenContext& context, const Rect& area, const std::vector<Leg>& legs) {
    Ui& ui = context.ui;
    Rect view = area;
    if (ui.metrics().compact()) {
        view.x0 = ui.metrics().screen.x0;
        view.x1 = ui.metrics().screen.x1;
    }
    const auto scope = ui.scroll("route.list", view);
    for (const Leg& leg : legs) {
        if (leg.room) draw_room_row(context, leg);
        if (leg.room) ui.space(-ui.metrics().gap);
        if (leg.crossing) draw_gate_row(context, leg);
        if (leg.crossing) ui.space(-ui.metrics().gap);
    }
}

/// The ways on while there is nothing to show: rooms, then a cart, then its route.
void draw_no_route(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const engine::Survey& survey = context.survey();
    const auto scope = ui.column(area);
    ui.text(context.say(survey.carts.empty() ? "plan.no_carts" : "route.empty"));
    const auto style = [](bool next) { return next ? ButtonStyle::primary : ButtonStyle::plain; };
    const bool rooms = !survey.rooms.empty();
    const bool carts = !survey.carts.empty();
    if (ui.button("route.places", context.say("places.title"), {.style = style(!rooms), .icon = Icon::route})) {
        context.act(app::GoTo{{app::Screen::places, 0}});
    }
    if (!carts && ui.button("route.add_cart", context.say("loads.add"), {.style = style(rooms), .icon = Icon::loads})) {
        do_build(context, app::OpenPick{{app::PickKind::new_cart, 0, 0}});
    }
    if (carts && ui.button("route.plan", context.say("plan.title"), {.style = style(rooms), .icon = Icon::plus})) {
        context.act(app::GoTo{{app::Screen::plan, 0}});
    }
}

}  // namespace

void draw_route(ScreenContext& context, const Rect& area) {
    const std::vector<Leg> legs = legs_of(context);
    Ui& ui = context.ui;
    if (legs.empty()) {
        draw_no_route(context, area);
        return;
    }
    const Metrics& m = ui.metrics();
    Rect rest = area;
    // Which cart's route it is, and the way to the temperatures along it.
    if (m.width_class != WidthClass::expanded) {
        Rect bar = rest.cut_top(m.target_size(TargetClass::row), m.gap);
        const float half = (bar.width() - m.gap) / 2;
        const Rect left = bar.cut_left(half, m.gap);
        const auto next = static_cast<std::uint16_t>((context.model.cart + 1u) % context.survey().carts.size());
        if (ui.button("route.next_cart", context.say("route.next_cart"),
                      {.detail = context.survey().carts[next].name, .rect = left})) {
            context.act(app::SelectCart{next});
        }
        if (ui.button("route.temperature", context.say("route.temperature"), {.rect = bar})) {
            context.act(app::GoTo{{app::Screen::temperature, 0}});
        }
        draw_list(context, rest, legs);
        return;
    }
    draw_strip(context, rest, legs);
}

}  // namespace sillwalk::ui
