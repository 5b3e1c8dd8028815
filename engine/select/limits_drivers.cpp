#include "engine/select/limits_drivers.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {
namespace {

constexpr double least_payload_share = 0.01;
constexpr Speed slowest = 0.3 * metre_per_second;
constexpr Duration shortest_parking = 1.0 * hour, shortest_stay = 1.0 * minute, longest_stay = 12.0 * hour;
constexpr Temperature coolest_wash = celsius(20.0);
constexpr Length largest_wheel = 500.0 * millimetre;
constexpr double gentlest_bevel = 1.0 / 20.0;

using Ranges = std::vector<DriverRange>;

template <class T>
bool above(const Reading<T>& reading, T least) {
    return reading.value && *reading.value > least;
}

void add(Ranges& ranges, Driver driver, ReadingRef reading, Place place, Kind kind, double present, double furthest) {
    DriverRange range;
    range.driver = driver;
    range.reading = reading;
    range.place = place;
    range.kind = kind;
    range.present = range.start = present;
    range.furthest = furthest;
    range.bound = furthest < present ? Bound::at_most : Bound::at_least;
    ranges.push_back(range);
}

void add_cart(Ranges& ranges, const Cart& cart, std::uint16_t index) {
    if (above(cart.payload, Mass{})) {
        const double payload = cart.payload.value->si();
        add(ranges, Driver::payload, {Field::cart_payload, index}, {}, Kind::mass, payload,
            least_payload_share * payload);
    }
    if (above(cart.speed, slowest)) {
        add(ranges, Driver::speed, {Field::cart_speed, index}, {}, Kind::speed, cart.speed.value->si(), slowest.si());
    }
    if (above(cart.parked_loaded, shortest_parking)) {
        add(ranges, Driver::parked_loaded, {Field::cart_parked_loaded, index}, {}, Kind::duration,
            cart.parked_loaded.value->si(), shortest_parking.si());
    }
}

void add_bevel(Ranges& ranges, const Crossing& crossing, std::uint16_t index, const Tables& tables) {
    const double steepest = tables.practice.bevel_counts_as_slope.value.tangent();
    add(ranges, Driver::lip_bevel, {Field::crossing_lip_slope, index}, {PlaceKind::crossing, index}, Kind::slope,
        steepest, gentlest_bevel);
    ranges.back().present = crossing.lip_slope.value.value_or(Slope{}).tangent();
    ranges.back().start = 1.001 * steepest;  // counts as an edge, as it does now
}

void add_crossing(Ranges& ranges, const Crossing& crossing, std::uint16_t index, const Tables& tables) {
    const Place place{PlaceKind::crossing, index};
    const auto length = [&](Driver driver, Field field, const Reading<Length>& reading) {
        if (!above(reading, Length{})) return;
        add(ranges, driver, {field, index}, place, Kind::length, reading.value->si(), 0.0);
    };
    length(Driver::rise, Field::crossing_rise, crossing.rise);
    if (above(crossing.rise, Length{})) add_bevel(ranges, crossing, index, tables);
    length(Driver::gap, Field::crossing_gap, crossing.gap);
    length(Driver::slot, Field::crossing_slot, crossing.slot);
    if (crossing.slope.value && *crossing.slope.value != Slope{}) {
        add(ranges, Driver::slope, {Field::crossing_slope, index}, place, Kind::slope,
            std::fabs(crossing.slope.value->tangent()), 0.0);
        ranges.back().one_way = false;  // a gentler slope is a longer one
    }
}

template <class Rows, class IdType>
std::uint16_t index_of(const Rows& rows, const IdType& id) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.id == id; });
    return static_cast<std::uint16_t>(found - rows.begin());
}

void add_crossings(Ranges& ranges, const Survey& survey, const Cart& cart, const Tables& tables) {
    std::vector<std::uint16_t> done;
    for (const Stop& stop : cart.route) {
        if (!stop.leaves_by) continue;
        const std::uint16_t index = index_of(survey.crossings, *stop.leaves_by);
        if (std::find(done.begin(), done.end(), index) != done.end()) continue;
        done.push_back(index);
        add_crossing(ranges, survey.crossings[index], index, tables);
    }
}

/// As much as the day still has room for, so often as the route is walked.
Duration longest_of(const Cart& cart, const Stop& stop) {
    if (!cart.trips_per_day.value || !(*cart.trips_per_day.value > 0.0)) return longest_stay;
    Duration taken{};
    for (const Stop& other : cart.route) taken += other.stay.value.value_or(Duration{});
    const Duration room = 1.0 * day / *cart.trips_per_day.value - taken;
    return std::min(longest_stay, *stop.stay.value + std::max(Duration{}, room));
}

void add_stays(Ranges& ranges, const Survey& survey, const Cart& cart, std::uint16_t cart_index) {
    for (std::uint16_t i = 0; i < cart.route.size(); ++i) {
        const Stop& stop = cart.route[i];
        if (!stop.stay.value) continue;
        const Place place{PlaceKind::room, index_of(survey.rooms, stop.room)};
        const ReadingRef reading{Field::cart_stay, cart_index, i};
        const double present = stop.stay.value->si();
        const auto add_end = [&](Duration end) {
            add(ranges, Driver::stay, reading, place, Kind::duration, present, end.si());
            ranges.back().one_way = false;
        };
        if (*stop.stay.value > shortest_stay) add_end(shortest_stay);
        const Duration longest = longest_of(cart, stop);
        if (longest > *stop.stay.value) add_end(longest);
    }
}

void add_washings(Ranges& ranges, const Survey& survey, const Cart& cart) {
    for (std::uint16_t i = 0; i < survey.washings.size(); ++i) {
        const Washing& washing = survey.washings[i];
        const bool met = std::any_of(cart.route.begin(), cart.route.end(), [&](const Stop& stop) {
            return std::find(washing.rooms.begin(), washing.rooms.end(), stop.room) != washing.rooms.end();
        });
        if (!met || !above(washing.temperature, coolest_wash)) continue;
        add(ranges, Driver::wash_temperature, {Field::washing_temperature, i}, {PlaceKind::washing, i},
            Kind::temperature, washing.temperature.value->kelvin(), coolest_wash.kelvin());
    }
}

/// The vertical rise becomes a bevel of its height, on top of the bevel that is there.
void put_bevel(Crossing& crossing, double tangent) {
    const Length height = *crossing.rise.value + crossing.lip_height.value.value_or(Length{});
    crossing.lip_height.tolerance += crossing.rise.tolerance;
    crossing.lip_height.value = height;
    crossing.lip_height.known = crossing.rise.known;
    crossing.rise.value = Length{};
    crossing.rise.tolerance = {};
    crossing.lip_slope = measured(Slope::from_tangent(tangent));
}

std::optional<Length> length_at(const Crossing& crossing, double tangent) {
    if (!crossing.slope_length.value || !(tangent > 0.0)) return std::nullopt;
    return std::fabs(crossing.slope.value->tangent()) / tangent * *crossing.slope_length.value;
}

void put_slope(Crossing& crossing, double tangent) {
    if (const auto longer = length_at(crossing, tangent)) crossing.slope_length.value = longer;
    const bool down = *crossing.slope.value < Slope{};
    crossing.slope.value = Slope::from_tangent(down ? -tangent : tangent);
}

}  // namespace

std::vector<DriverRange> drivers_of(const Survey& survey, std::size_t cart, const Wheel& wheel, const Tables& tables,
                                    bool uses_walk) {
    const auto index = static_cast<std::uint16_t>(cart);
    Ranges ranges;
    add_crossings(ranges, survey, survey.carts[cart], tables);
    add_cart(ranges, survey.carts[cart], index);
    if (uses_walk) add_stays(ranges, survey, survey.carts[cart], index);
    add_washings(ranges, survey, survey.carts[cart]);
    if (!uses_walk && wheel.diameter < largest_wheel) {
        add(ranges, Driver::diameter, {}, {}, Kind::length, wheel.diameter.si(), largest_wheel.si());
        ranges.back().one_way = false;
    }
    return ranges;
}

void put(Survey& survey, std::size_t cart_index, const DriverRange& driver, double value) {
    Cart& cart = survey.carts[cart_index];
    const auto crossing = [&]() -> Crossing& { return survey.crossings[driver.reading.index]; };
    switch (driver.driver) {
        case Driver::payload:
            cart.payload.value = Mass::from_si(value);
            return;
        case Driver::speed:
            cart.speed.value = Speed::from_si(value);
            return;
        case Driver::parked_loaded:
            cart.parked_loaded.value = Duration::from_si(value);
            return;
        case Driver::rise:
            crossing().rise.value = Length::from_si(value);
            return;
        case Driver::lip_bevel:
            put_bevel(crossing(), value);
            return;
        case Driver::gap:
            crossing().gap.value = Length::from_si(value);
            return;
        case Driver::slot:
            crossing().slot.value = Length::from_si(value);
            return;
        case Driver::slope:
            put_slope(crossing(), value);
            return;
        case Driver::stay:
            cart.route[driver.reading.stop].stay.value = Duration::from_si(value);
            return;
        case Driver::wash_temperature:
            survey.washings[driver.reading.index].temperature.value = Temperature::from_kelvin(value);
            return;
        case Driver::diameter:
            return;
    }
}

std::optional<Amount> beside(const Survey& survey, const DriverRange& driver, double value) {
    if (driver.driver != Driver::lip_bevel && driver.driver != Driver::slope) return std::nullopt;
    const Crossing& crossing = survey.crossings[driver.reading.index];
    if (driver.driver == Driver::lip_bevel) return Amount{crossing.rise.value->si(), Kind::length};
    const auto length = length_at(crossing, value);
    return length ? std::optional(Amount{length->si(), Kind::length}) : std::nullopt;
}

}  // namespace sillwalk::engine
