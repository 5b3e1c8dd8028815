#pragma once
/// The members of a survey file, named once for both reading and writing: visit_*(visitor, item) calls one visitor
/// function per member. Docs: docs/reference/survey.md; schema: docs/reference/survey.schema.json.

#include "engine/model/survey.hpp"

#include <cstdint>
#include <string_view>

namespace sillwalk::app {

/// How a quantity is written as a whole number: the unit at the end of the key, and how many of it make one SI unit.
struct IntegerUnit {
    std::string_view suffix;
    double per_si = 1;
    std::int64_t low = 0, high = 0;  ///< what a file may hold; wide, for plausibility is judged later
};
inline constexpr std::int64_t greatest_exact = 9007199254740991;  // 2^53 - 1: exact in every JSON reader
inline constexpr IntegerUnit unit_nanometre{"nm", 1e9, -greatest_exact, greatest_exact};
inline constexpr IntegerUnit unit_gram{"g", 1e3, 0, greatest_exact};
inline constexpr IntegerUnit unit_millikelvin{"millikelvin", 1e3, 0, greatest_exact};
inline constexpr IntegerUnit unit_millisecond{"ms", 1e3, 0, greatest_exact};
inline constexpr IntegerUnit unit_ppm{"ppm", 1e6, -greatest_exact, greatest_exact};
inline constexpr IntegerUnit unit_share_ppm{"ppm", 1e6, 0, 1000000};
inline constexpr IntegerUnit unit_micrometre_per_second{"um_per_s", 1e6, 0, greatest_exact};
inline constexpr IntegerUnit unit_per_day_millionth{"per_day_millionths", 86400e6, 0, greatest_exact};
inline constexpr IntegerUnit unit_thousandth{"thousandths", 1e3, 0, greatest_exact};

template <class Visitor, class Room>
void visit_room(Visitor& v, Room& room) {
    v.id("id", room.id);
    v.name("name", room.name);
    v.reading("air", room.air, unit_millikelvin);
    v.reading("humidity", room.humidity, unit_share_ppm);
    v.choice("air_movement", room.air_movement);
    v.choice("wetness", room.wetness);
    v.choice("floor", room.floor);
    v.choice("hygiene", room.hygiene);
    v.choice("cleanroom_class", room.cleanroom_class);
    v.note("notes", room.notes);
}

template <class Visitor, class Crossing>
void visit_crossing(Visitor& v, Crossing& crossing) {
    v.id("id", crossing.id);
    v.name("name", crossing.name);
    v.id("from", crossing.from);
    v.id("to", crossing.to);
    v.choice("kind", crossing.kind);
    v.reading("rise", crossing.rise, unit_nanometre);
    v.reading("lip_slope", crossing.lip_slope, unit_ppm);
    v.reading("lip_height", crossing.lip_height, unit_nanometre);
    v.reading("gap", crossing.gap, unit_nanometre);
    v.reading("slot", crossing.slot, unit_nanometre);
    v.reading("slope", crossing.slope, unit_ppm);
    v.reading("slope_length", crossing.slope_length, unit_nanometre);
    v.choice("wetness", crossing.wetness);
    v.flag("heated", crossing.heated, false);
    v.note("notes", crossing.notes);
}

template <class Visitor, class Washing>
void visit_washing(Visitor& v, Washing& washing) {
    v.id("id", washing.id);
    v.name("name", washing.name);
    v.choice("agent", washing.agent);
    v.reading("strength", washing.strength, unit_share_ppm);
    v.reading("temperature", washing.temperature, unit_millikelvin);
    v.reading("contact", washing.contact, unit_millisecond);
    v.reading("frequency", washing.frequency, unit_per_day_millionth);
    v.choice("rinsed", washing.rinsed);
    v.ids("rooms", washing.rooms);
}

template <class Visitor, class Castor>
void visit_castor(Visitor& v, Castor& castor) {
    v.length("forward_nm", castor.forward);
    v.length("across_nm", castor.across);
    v.word("function", castor.function);
}

template <class Visitor, class Damage>
void visit_damage(Visitor& v, Damage& damage) {
    v.word("kind", damage.kind);
    v.reading("size", damage.size, unit_nanometre);
    v.note("note", damage.note);
}

template <class Visitor, class Stop>
void visit_stop(Visitor& v, Stop& stop) {
    v.id("room", stop.room);
    v.reading("stay", stop.stay, unit_millisecond);
    v.flag("loaded", stop.loaded, true);
    v.optional_id("leaves_by", stop.leaves_by);
}

template <class Visitor, class Cart>
void visit_cart_load(Visitor& v, Cart& cart) {
    v.reading("tare", cart.tare, unit_gram);
    v.reading("payload", cart.payload, unit_gram);
    v.list("castors", cart.castors, [](auto& inner, auto& castor) { visit_castor(inner, castor); });
    v.choice("sharing", cart.sharing);
    v.reading("length", cart.length, unit_nanometre);
    v.reading("width", cart.width, unit_nanometre);
    v.reading("cg_forward_loaded", cart.cg_forward_loaded, unit_nanometre);
    v.reading("cg_forward_empty", cart.cg_forward_empty, unit_nanometre);
    v.reading("cg_height_loaded", cart.cg_height_loaded, unit_nanometre);
    v.reading("cg_height_empty", cart.cg_height_empty, unit_nanometre);
    v.reading("load_factor", cart.load_factor, unit_thousandth);
}

template <class Visitor, class Cart>
void visit_cart_use(Visitor& v, Cart& cart) {
    v.choice("moved_by", cart.moved_by);
    v.reading("people", cart.people, unit_thousandth);
    v.reading("handle_height", cart.handle_height, unit_nanometre);
    v.reading("speed", cart.speed, unit_micrometre_per_second);
    v.reading("push_distance", cart.push_distance, unit_nanometre);
    v.reading("push_rate", cart.push_rate, unit_per_day_millionth);
    v.reading("parked_loaded", cart.parked_loaded, unit_millisecond);
    v.reading("trips_per_day", cart.trips_per_day, unit_thousandth);
    v.list("route", cart.route, [](auto& inner, auto& stop) { visit_stop(inner, stop); });
}

template <class Visitor, class Cart>
void visit_cart_wheels(Visitor& v, Cart& cart) {
    v.reading("fork_width", cart.fork_width, unit_nanometre);
    v.reading("axle_diameter", cart.axle_diameter, unit_nanometre);
    v.reading("overall_height_limit", cart.overall_height_limit, unit_nanometre);
    v.choice("plate_pattern", cart.plate_pattern);
    v.choice("static_ask", cart.static_ask);
    v.choice("non_marking", cart.non_marking);
    v.choice("present_wheel", cart.present_wheel);
    v.choice("present_bearing", cart.present_bearing);
    v.choice("present_rig", cart.present_rig);
    v.list("damage", cart.damage, [](auto& inner, auto& damage) { visit_damage(inner, damage); });
}

template <class Visitor, class Cart>
void visit_cart(Visitor& v, Cart& cart) {
    v.id("id", cart.id);
    v.name("name", cart.name);
    visit_cart_load(v, cart);
    visit_cart_use(v, cart);
    visit_cart_wheels(v, cart);
    v.note("notes", cart.notes);
}

template <class Visitor, class Survey>
void visit_survey(Visitor& v, Survey& survey) {
    v.id("id", survey.id);
    v.integer("revision", survey.revision, 0);
    v.name("site", survey.site);
    v.note("customer", survey.customer);
    v.note("complaint", survey.complaint);
    v.note("surveyor", survey.surveyor);
    v.flag("invented", survey.invented, false);
    v.integer("made_ms", survey.made_ms, 0);
    v.needed_list("rooms", survey.rooms, [](auto& inner, auto& room) { visit_room(inner, room); });
    v.needed_list("crossings", survey.crossings, [](auto& inner, auto& crossing) { visit_crossing(inner, crossing); });
    v.needed_list("washings", survey.washings, [](auto& inner, auto& washing) { visit_washing(inner, washing); });
    v.needed_list("carts", survey.carts, [](auto& inner, auto& cart) { visit_cart(inner, cart); });
    v.note("notes", survey.notes);
}

}  // namespace sillwalk::app
