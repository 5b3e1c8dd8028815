#pragma once
/// One cart, one candidate and just the table rows that the checks of parts and rooms look at. Invented, except that
/// the figures named in a test stand in the source that the test names.

#include "engine/checks/checks.hpp"

#include <string>
#include <vector>

namespace sillwalk::engine::test {

template <class T>
Figure<T> figure(T value, CitationId citation = 1) {
    Figure<T> made;
    made.value = value;
    made.citation = citation;
    return made;
}

template <class T>
Input<T> read(T value, Field field, std::uint16_t index = 0) {
    return {true, value, value, value, {field, index}, Known::measured};
}
template <class T>
Input<T> read_between(T low, T nominal, T high, Field field, std::uint16_t index = 0) {
    return {true, low, nominal, high, {field, index}, Known::measured};
}
template <class T>
Input<T> unread(Field field, std::uint16_t index = 0) {
    return {false, T{}, T{}, T{}, {field, index}, Known::not_yet_read};
}
template <class E>
ChoiceInput<E> choose(E value, Field field, std::uint16_t index = 0) {
    return {true, value, {field, index}, Known::measured};
}
template <class E>
ChoiceInput<E> unchosen(Field field, std::uint16_t index = 0) {
    return {false, E{}, {field, index}, Known::not_yet_read};
}

inline StopDemand stop_in(std::uint16_t room, Temperature air, const Floor* floor) {
    StopDemand stop;
    stop.room = room;
    stop.air = read(air, Field::room_air, room);
    stop.humidity = read(0.5, Field::room_humidity, room);
    stop.stay = read(10.0 * minute, Field::cart_stay, room);
    stop.air_movement = choose(AirMovement::natural, Field::room_air_movement, room);
    stop.wetness = choose(Wetness::dry, Field::room_wetness, room);
    stop.floor = choose(floor, Field::room_floor, room);
    stop.hygiene = choose(HygieneZone::none, Field::room_hygiene, room);
    stop.cleanroom_class = choose(0, Field::room_cleanroom, room);
    return stop;
}

inline WashingDemand washing_with(std::string agent, double strength, Temperature temperature,
                                  std::uint16_t index = 0) {
    WashingDemand washing;
    washing.washing = index;
    washing.agent = choose(std::move(agent), Field::washing_agent, index);
    washing.strength = read(strength, Field::washing_strength, index);
    washing.temperature = read(temperature, Field::washing_temperature, index);
    washing.contact = read(10.0 * minute, Field::washing_contact, index);
    washing.frequency = read(Frequency::from_si(1.0 / 86400.0), Field::washing_frequency, index);
    washing.rinsed = choose(true, Field::washing_rinsed, index);
    return washing;
}

/// A crossing without any obstacle, read as such.
inline CrossingDemand flat_crossing(std::uint16_t index, std::uint16_t after_stop) {
    CrossingDemand crossing;
    crossing.crossing = index;
    crossing.after_stop = after_stop;
    crossing.kind = choose(CrossingKind::doorway, Field::crossing_kind, index);
    crossing.rise = read(Length{}, Field::crossing_rise, index);
    crossing.lip_height = read(Length{}, Field::crossing_lip_height, index);
    crossing.gap = read(Length{}, Field::crossing_gap, index);
    crossing.slot = read(Length{}, Field::crossing_slot, index);
    crossing.slope = read(Slope{}, Field::crossing_slope, index);
    crossing.slope_length = read(Length{}, Field::crossing_slope_length, index);
    crossing.run_up = choose(Wetness::dry, Field::crossing_wetness, index);
    return crossing;
}

struct RuleCase {
    Tables tables;
    Floor floor;
    Material tread, core, bearing_material, rig_material;
    Wheel wheel;
    Bearing bearing;
    Rig rig;
    Preparation preparation = Preparation::as_supplied;
    CartDemand cart;
    Corner corner = Corner::worst;

    RuleCase();
    RuleCase(const RuleCase&) = delete;
    RuleCase& operator=(const RuleCase&) = delete;

    [[nodiscard]] CheckContext context() const;
    [[nodiscard]] Finding run(CheckFunction check) const { return check(context()); }
};

/// True where `a` is no better than `b`.
[[nodiscard]] inline bool no_better(const Finding& a, const Finding& b) {
    if (a.outcome != b.outcome) return a.outcome > b.outcome;
    return !a.has_use || !b.has_use || a.use >= b.use;
}
[[nodiscard]] inline bool misses(const Finding& finding, Field field) {
    for (const ReadingRef& ref : finding.missing) {
        if (ref.field == field) return true;
    }
    return false;
}
[[nodiscard]] inline bool assumes(const Finding& finding, Assumption assumption) {
    for (const Assumption made : finding.assumptions) {
        if (made == assumption) return true;
    }
    return false;
}

}  // namespace sillwalk::engine::test
