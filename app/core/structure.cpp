#include "app/core/structure.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

namespace sillwalk::app {

using engine::Cart;
using engine::Crossing;
using engine::CrossingId;
using engine::RoomId;
using engine::Stop;
using engine::Survey;
using engine::Washing;

namespace {

/// Calls f with the list of that part.
template <class S, class F>
auto with_list(S& survey, Part part, F&& f) {
    switch (part) {
        case Part::room:
            return f(survey.rooms);
        case Part::crossing:
            return f(survey.crossings);
        case Part::washing:
            return f(survey.washings);
        case Part::cart:
            break;
    }
    return f(survey.carts);
}

/// "Dock 2" without its number.
std::string stem(const std::string& name) {
    const auto end = name.find_last_not_of("0123456789");
    if (end == std::string::npos || end + 1 == name.size() || end == 0 || name[end] != ' ') return name;
    return name.substr(0, end);
}

bool joins(const Crossing& crossing, const RoomId& a, const RoomId& b) {
    return (crossing.from == a && crossing.to == b) || (crossing.from == b && crossing.to == a);
}

const Crossing* find_crossing(const Survey& survey, const CrossingId& id) {
    for (const Crossing& crossing : survey.crossings) {
        if (crossing.id == id) return &crossing;
    }
    return nullptr;
}

/// Crossings that no longer lead where the route goes are given up; the only one that does is taken.
void put_route_right(const Survey& survey, Cart& cart) {
    for (std::size_t i = 0; i < cart.route.size(); ++i) {
        Stop& stop = cart.route[i];
        const bool last = i + 1 == cart.route.size();
        const RoomId& next = cart.route[last ? 0 : i + 1].room;
        if (stop.leaves_by) {
            const Crossing* crossing = find_crossing(survey, *stop.leaves_by);
            if (!crossing || !joins(*crossing, stop.room, next)) stop.leaves_by.reset();
        }
        if (stop.leaves_by || last) continue;
        const auto ways = crossings_between(survey, stop.room, next);
        if (ways.size() == 1) stop.leaves_by = survey.crossings[ways.front()].id;
    }
}

void put_routes_right(Survey& survey) {
    for (Cart& cart : survey.carts) put_route_right(survey, cart);
}

void leave_room(Survey& survey, const RoomId& room) {
    std::erase_if(survey.crossings, [&](const Crossing& one) { return one.from == room || one.to == room; });
    for (Washing& washing : survey.washings) std::erase(washing.rooms, room);
    std::erase_if(survey.washings, [](const Washing& washing) { return washing.rooms.empty(); });
    for (Cart& cart : survey.carts) {
        const bool ended_there = !cart.route.empty() && cart.route.back().room == room;
        std::erase_if(cart.route, [&](const Stop& stop) { return stop.room == room; });
        // What led on to the stop that went is no way back to the first.
        if (ended_there && !cart.route.empty()) cart.route.back().leaves_by.reset();
    }
}

}  // namespace

std::size_t part_count(const Survey& survey, Part part) {
    return with_list(survey, part, [](const auto& list) { return list.size(); });
}

std::string part_name(const Survey& survey, Part part, std::size_t index) {
    return with_list(survey, part,
                     [&](const auto& list) { return index < list.size() ? list[index].name : std::string(); });
}

std::string unused_name(const Survey& survey, Part part, const std::string& wanted) {
    const auto used = [&](const std::string& name) {
        return with_list(survey, part, [&](const auto& list) {
            return std::any_of(list.begin(), list.end(), [&](const auto& one) { return one.name == name; });
        });
    };
    if (!used(wanted)) return wanted;
    for (int number = 2;; ++number) {
        std::string name = stem(wanted) + " " + std::to_string(number);
        if (!used(name)) return name;
    }
}

std::uint16_t add_room(Survey& survey, RoomId id, const std::string& name) {
    engine::Room room;
    room.id = std::move(id);
    room.name = unused_name(survey, Part::room, name);
    survey.rooms.push_back(std::move(room));
    return static_cast<std::uint16_t>(survey.rooms.size() - 1);
}

std::uint16_t add_cart(Survey& survey, engine::CartId id, const std::string& name) {
    Cart cart;
    cart.id = std::move(id);
    cart.name = unused_name(survey, Part::cart, name);
    survey.carts.push_back(std::move(cart));
    return static_cast<std::uint16_t>(survey.carts.size() - 1);
}

std::uint16_t add_crossing(Survey& survey, CrossingId id, const std::string& name, const RoomId& from,
                           const RoomId& to) {
    std::string wanted = name;
    if (wanted.empty()) {
        const auto name_of = [&](const RoomId& room) {
            for (const engine::Room& one : survey.rooms) {
                if (one.id == room) return one.name;
            }
            return std::string("?");
        };
        wanted = name_of(from) + " \u2013 " + name_of(to);
    }
    Crossing crossing;
    crossing.id = std::move(id);
    crossing.name = unused_name(survey, Part::crossing, wanted);
    crossing.from = from;
    crossing.to = to;
    survey.crossings.push_back(std::move(crossing));
    put_routes_right(survey);
    return static_cast<std::uint16_t>(survey.crossings.size() - 1);
}

std::uint16_t add_washing(Survey& survey, engine::WashingId id, const std::string& name, const RoomId& room) {
    Washing washing;
    washing.id = std::move(id);
    washing.name = unused_name(survey, Part::washing, name);
    washing.rooms = {room};
    survey.washings.push_back(std::move(washing));
    return static_cast<std::uint16_t>(survey.washings.size() - 1);
}

bool duplicate(Survey& survey, Part part, std::size_t index, const std::string& id) {
    const std::string name = unused_name(survey, part, part_name(survey, part, index));
    return with_list(survey, part, [&](auto& list) {
        if (index >= list.size()) return false;
        auto copy = list[index];
        copy.id = decltype(copy.id)(id);
        copy.name = name;
        list.insert(list.begin() + static_cast<std::ptrdiff_t>(index) + 1, std::move(copy));
        return true;
    });
}

bool remove(Survey& survey, Part part, std::size_t index) {
    if (index >= part_count(survey, part)) return false;
    if (part == Part::room) leave_room(survey, engine::RoomId(survey.rooms[index].id));
    with_list(survey, part, [&](auto& list) { list.erase(list.begin() + static_cast<std::ptrdiff_t>(index)); });
    if (part == Part::room || part == Part::crossing) put_routes_right(survey);
    return true;
}

bool move(Survey& survey, Part part, std::size_t index, int by) {
    const auto other = static_cast<std::ptrdiff_t>(index) + by;
    const auto count = static_cast<std::ptrdiff_t>(part_count(survey, part));
    if (static_cast<std::ptrdiff_t>(index) >= count || other < 0 || other >= count) return false;
    with_list(survey, part, [&](auto& list) { std::swap(list[index], list[static_cast<std::size_t>(other)]); });
    return true;
}

bool set_crossing_end(Survey& survey, std::size_t crossing, bool to, std::size_t room) {
    if (crossing >= survey.crossings.size() || room >= survey.rooms.size()) return false;
    (to ? survey.crossings[crossing].to : survey.crossings[crossing].from) = survey.rooms[room].id;
    put_routes_right(survey);
    return true;
}

bool turn_round(Survey& survey, std::size_t crossing) {
    if (crossing >= survey.crossings.size()) return false;
    Crossing& one = survey.crossings[crossing];
    std::swap(one.from, one.to);
    if (one.slope.value) {
        one.slope.value = engine::Slope::from_tangent(-one.slope.value->tangent());
        one.slope.as_entered.clear();
    }
    return true;
}

bool toggle_washed_room(Survey& survey, std::size_t washing, std::size_t room) {
    if (washing >= survey.washings.size() || room >= survey.rooms.size()) return false;
    std::vector<RoomId>& rooms = survey.washings[washing].rooms;
    const RoomId& id = survey.rooms[room].id;
    const auto found = std::find(rooms.begin(), rooms.end(), id);
    if (found == rooms.end()) {
        rooms.push_back(id);
    } else if (rooms.size() > 1) {
        rooms.erase(found);
    } else {
        return false;
    }
    return true;
}

std::vector<std::uint16_t> crossings_between(const Survey& survey, const RoomId& a, const RoomId& b) {
    std::vector<std::uint16_t> found;
    for (std::uint16_t i = 0; i < survey.crossings.size(); ++i) {
        if (joins(survey.crossings[i], a, b)) found.push_back(i);
    }
    return found;
}

std::optional<RoomId> room_after(const Cart& cart, std::size_t stop) {
    if (stop >= cart.route.size()) return std::nullopt;
    if (stop + 1 < cart.route.size()) return cart.route[stop + 1].room;
    if (cart.route[stop].leaves_by) return cart.route.front().room;
    return std::nullopt;
}

bool append_stop(Survey& survey, std::size_t cart, std::size_t room) {
    if (cart >= survey.carts.size() || room >= survey.rooms.size()) return false;
    std::vector<Stop>& route = survey.carts[cart].route;
    Stop stop;
    stop.room = survey.rooms[room].id;
    if (!route.empty()) stop.loaded = route.back().loaded;
    route.push_back(std::move(stop));
    put_route_right(survey, survey.carts[cart]);
    return true;
}

bool remove_stop(Survey& survey, std::size_t cart, std::size_t stop) {
    if (cart >= survey.carts.size() || stop >= survey.carts[cart].route.size()) return false;
    std::vector<Stop>& route = survey.carts[cart].route;
    const bool last = stop + 1 == route.size();
    route.erase(route.begin() + static_cast<std::ptrdiff_t>(stop));
    // What led on to the stop that went is no way back to the first.
    if (last && !route.empty()) route.back().leaves_by.reset();
    put_route_right(survey, survey.carts[cart]);
    return true;
}

bool set_leaves_by(Survey& survey, std::size_t cart, std::size_t stop, std::optional<std::size_t> crossing) {
    if (cart >= survey.carts.size() || stop >= survey.carts[cart].route.size()) return false;
    std::vector<Stop>& route = survey.carts[cart].route;
    if (!crossing) {
        route[stop].leaves_by.reset();
        return true;
    }
    const RoomId& next = route[(stop + 1) % route.size()].room;
    if (*crossing >= survey.crossings.size()) return false;
    if (!joins(survey.crossings[*crossing], route[stop].room, next)) return false;
    route[stop].leaves_by = survey.crossings[*crossing].id;
    return true;
}

}  // namespace sillwalk::app
