#include "engine/checks/demand.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

template <class Vector, class IdType>
std::uint16_t index_of(const Vector& rows, const IdType& id) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.id == id; });
    EXPECT_CONTRACT(found != rows.end());
    return static_cast<std::uint16_t>(found - rows.begin());
}

/// Quantities that are never negative: the range of a small reading ends at zero.
enum class Sign { any, positive };

template <class T>
Input<T> input_of(const Reading<T>& reading, ReadingRef ref, Sign sign = Sign::positive) {
    Input<T> input;
    input.ref = ref;
    input.known = reading.known;
    input.given = reading.value.has_value();
    if (!input.given) return input;
    input.nominal = *reading.value;
    input.low = *reading.value - reading.tolerance;
    input.high = *reading.value + reading.tolerance;
    if (sign == Sign::positive) input.low = std::max(input.low, std::min(T{}, input.nominal));
    return input;
}

Input<Temperature> input_of(const Reading<Temperature>& reading, ReadingRef ref) {
    Input<Temperature> input;
    input.ref = ref;
    input.known = reading.known;
    input.given = reading.value.has_value();
    if (!input.given) return input;
    input.nominal = *reading.value;
    input.low = *reading.value - reading.tolerance;
    input.high = *reading.value + reading.tolerance;
    return input;
}

template <class E>
ChoiceInput<E> choice_of(const Choice<E>& choice, ReadingRef ref) {
    return ChoiceInput<E>{choice.value.has_value(), choice.value.value_or(E{}), ref, choice.known};
}

ChoiceInput<const Floor*> floor_of(const Room& room, std::uint16_t index, const Tables& tables) {
    ChoiceInput<const Floor*> input;
    input.ref = {Field::room_floor, index};
    input.known = room.floor.known;
    if (!room.floor.value) return input;
    input.value = tables.floor(*room.floor.value);
    EXPECT_CONTRACT(input.value != nullptr);
    input.given = true;
    return input;
}

StopDemand stop_of(const Survey& survey, std::uint16_t cart, std::uint16_t stop, const Tables& tables) {
    const Stop& visit = survey.carts[cart].route[stop];
    const std::uint16_t index = index_of(survey.rooms, visit.room);
    const Room& room = survey.rooms[index];
    StopDemand demand;
    demand.room = index;
    demand.air = input_of(room.air, {Field::room_air, index});
    demand.humidity = input_of(room.humidity, {Field::room_humidity, index});
    demand.humidity.high = std::min(demand.humidity.high, std::max(1.0, demand.humidity.nominal));
    demand.stay = input_of(visit.stay, {Field::cart_stay, cart, stop});
    demand.air_movement = choice_of(room.air_movement, {Field::room_air_movement, index});
    demand.wetness = choice_of(room.wetness, {Field::room_wetness, index});
    demand.floor = floor_of(room, index, tables);
    demand.hygiene = choice_of(room.hygiene, {Field::room_hygiene, index});
    demand.cleanroom_class = choice_of(room.cleanroom_class, {Field::room_cleanroom, index});
    demand.loaded = visit.loaded;
    return demand;
}

/// The crossing's own wetness; where it was not read, that of the wetter room (the order of Wetness), if both are
/// known.
ChoiceInput<Wetness> run_up_of(const Survey& survey, std::uint16_t crossing_index) {
    const Crossing& crossing = survey.crossings[crossing_index];
    const auto own = choice_of(crossing.wetness, {Field::crossing_wetness, crossing_index});
    if (own.given) return own;
    const std::uint16_t from = index_of(survey.rooms, crossing.from), to = index_of(survey.rooms, crossing.to);
    const auto wet_from = choice_of(survey.rooms[from].wetness, {Field::room_wetness, from});
    const auto wet_to = choice_of(survey.rooms[to].wetness, {Field::room_wetness, to});
    if (!wet_from.given || !wet_to.given) return own;
    return wet_to.value > wet_from.value ? wet_to : wet_from;
}

template <class T>
Input<T> reversed(const Input<T>& input) {
    Input<T> turned = input;
    turned.nominal = T{} - input.nominal;
    turned.low = T{} - input.high;
    turned.high = T{} - input.low;
    return turned;
}

CrossingDemand crossing_of(const Survey& survey, const Stop& visit, std::uint16_t stop, const Tables& tables) {
    const std::uint16_t index = index_of(survey.crossings, *visit.leaves_by);
    const Crossing& crossing = survey.crossings[index];
    CrossingDemand demand;
    demand.crossing = index;
    demand.after_stop = stop;
    demand.loaded = visit.loaded;
    demand.reversed = crossing.from != visit.room;
    EXPECT_CONTRACT(!demand.reversed || crossing.to == visit.room);
    demand.kind = choice_of(crossing.kind, {Field::crossing_kind, index});
    demand.rise = input_of(crossing.rise, {Field::crossing_rise, index});
    demand.lip_height = input_of(crossing.lip_height, {Field::crossing_lip_height, index});
    demand.gap = input_of(crossing.gap, {Field::crossing_gap, index});
    demand.slot = input_of(crossing.slot, {Field::crossing_slot, index});
    demand.slope_length = input_of(crossing.slope_length, {Field::crossing_slope_length, index});
    demand.lip_slope = input_of(crossing.lip_slope, {Field::crossing_lip_slope, index});
    demand.slope = input_of(crossing.slope, {Field::crossing_slope, index}, Sign::any);
    if (demand.reversed) demand.slope = reversed(demand.slope);
    demand.run_up = run_up_of(survey, index);
    const std::uint16_t room = index_of(survey.rooms, visit.room);
    demand.floor = floor_of(survey.rooms[room], room, tables);
    demand.heated = crossing.heated;
    return demand;
}

WashingDemand washing_of(const Washing& washing, std::uint16_t index) {
    WashingDemand demand;
    demand.washing = index;
    demand.agent = choice_of(washing.agent, {Field::washing_agent, index});
    demand.strength = input_of(washing.strength, {Field::washing_strength, index});
    demand.temperature = input_of(washing.temperature, {Field::washing_temperature, index});
    demand.contact = input_of(washing.contact, {Field::washing_contact, index});
    demand.frequency = input_of(washing.frequency, {Field::washing_frequency, index});
    demand.rinsed = choice_of(washing.rinsed, {Field::washing_rinsed, index});
    return demand;
}

bool visits_any(const Cart& cart, const std::vector<RoomId>& rooms) {
    return std::any_of(cart.route.begin(), cart.route.end(), [&](const Stop& stop) {
        return std::find(rooms.begin(), rooms.end(), stop.room) != rooms.end();
    });
}

void add_masses_and_geometry(CartDemand& demand, const Cart& cart, std::uint16_t index) {
    demand.tare = input_of(cart.tare, {Field::cart_tare, index});
    demand.payload = input_of(cart.payload, {Field::cart_payload, index});
    demand.castors = cart.castors;
    demand.castors_ref = {Field::cart_castors, index};
    demand.sharing = choice_of(cart.sharing, {Field::cart_sharing, index});
    demand.load_factor = input_of(cart.load_factor, {Field::cart_load_factor, index});
    demand.cg_forward_loaded = input_of(cart.cg_forward_loaded, {Field::cart_cg_forward_loaded, index}, Sign::any);
    demand.cg_forward_empty = input_of(cart.cg_forward_empty, {Field::cart_cg_forward_empty, index}, Sign::any);
    demand.cg_height_loaded = input_of(cart.cg_height_loaded, {Field::cart_cg_height_loaded, index});
    demand.cg_height_empty = input_of(cart.cg_height_empty, {Field::cart_cg_height_empty, index});
    demand.fork_width = input_of(cart.fork_width, {Field::cart_fork_width, index});
    demand.axle_diameter = input_of(cart.axle_diameter, {Field::cart_axle_diameter, index});
    demand.overall_height_limit = input_of(cart.overall_height_limit, {Field::cart_overall_height_limit, index});
}

void add_use(CartDemand& demand, const Cart& cart, std::uint16_t index) {
    demand.moved_by = choice_of(cart.moved_by, {Field::cart_moved_by, index});
    demand.people = input_of(cart.people, {Field::cart_people, index});
    demand.trips_per_day = input_of(cart.trips_per_day, {Field::cart_trips_per_day, index});
    demand.handle_height = input_of(cart.handle_height, {Field::cart_handle_height, index});
    demand.push_distance = input_of(cart.push_distance, {Field::cart_push_distance, index});
    demand.speed = input_of(cart.speed, {Field::cart_speed, index});
    demand.push_rate = input_of(cart.push_rate, {Field::cart_push_rate, index});
    demand.parked_loaded = input_of(cart.parked_loaded, {Field::cart_parked_loaded, index});
    demand.plate_pattern = choice_of(cart.plate_pattern, {Field::cart_plate_pattern, index});
    demand.static_ask = choice_of(cart.static_ask, {Field::cart_static_ask, index});
    demand.non_marking = choice_of(cart.non_marking, {Field::cart_non_marking, index});
}

}  // namespace

CartDemand resolve(const Survey& survey, std::size_t cart_index, const Tables& tables) {
    EXPECT_CONTRACT(cart_index < survey.carts.size());
    const auto index = static_cast<std::uint16_t>(cart_index);
    const Cart& cart = survey.carts[cart_index];
    CartDemand demand;
    demand.cart = index;
    add_masses_and_geometry(demand, cart, index);
    add_use(demand, cart, index);
    for (std::size_t i = 0; i < cart.route.size(); ++i) {
        const auto stop = static_cast<std::uint16_t>(i);
        demand.stops.push_back(stop_of(survey, index, stop, tables));
        if (cart.route[i].leaves_by) demand.crossings.push_back(crossing_of(survey, cart.route[i], stop, tables));
    }
    for (std::size_t i = 0; i < survey.washings.size(); ++i) {
        if (visits_any(cart, survey.washings[i].rooms)) {
            demand.washings.push_back(washing_of(survey.washings[i], static_cast<std::uint16_t>(i)));
        }
    }
    return demand;
}

CartDemand collapse(CartDemand demand, std::optional<ReadingRef> keep) {
    for_each_input(demand, [&](auto& input) {
        if (keep && input.ref == *keep) return;
        input.low = input.high = input.nominal;
    });
    return demand;
}

}  // namespace sillwalk::engine
