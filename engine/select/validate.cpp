#include "engine/select/assess.hpp"
#include "engine/select/validate_readings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace sillwalk::engine {

namespace {

constexpr std::size_t least_castors = 3, most_castors = 24;

/// The ids of one list of the survey, and whether references to them can be judged.
template <class Item>
class Ids {
public:
    Ids(const std::vector<Item>& items, const char* list, std::vector<Error>& errors) : items_(items), list_(list) {
        std::set<std::string> seen;
        for (std::size_t i = 0; i < items.size(); ++i) {
            const std::string path = fmt::format("/{}/{}/id", list, i);
            if (items[i].id.empty()) {
                errors.push_back({ErrorCode::bad_input, "the id is missing", path});
                complete_ = false;
            } else if (!seen.insert(items[i].id.text()).second) {
                errors.push_back(
                    {ErrorCode::bad_input,
                     fmt::format("'{}' is used twice; each id of {} stands once", items[i].id.text(), list), path});
                complete_ = false;
            }
        }
    }
    /// False where an id is missing or stands twice: then it is not known which item a reference means.
    [[nodiscard]] bool complete() const { return complete_; }
    template <class Id>
    [[nodiscard]] const Item* find(const Id& id) const {
        const auto found = std::find_if(items_.begin(), items_.end(), [&](const Item& item) { return item.id == id; });
        return found == items_.end() ? nullptr : &*found;
    }
    /// Names a reference to nothing, where that can be told.
    template <class Id>
    void refer(const Id& id, std::string path, std::vector<Error>& errors) const {
        if (!complete_ || id.empty() || find(id) != nullptr) return;
        errors.push_back(
            {ErrorCode::not_found, fmt::format("there is no '{}' among the {}", id.text(), list_), std::move(path)});
    }

private:
    const std::vector<Item>& items_;
    const char* list_;
    bool complete_ = true;
};

struct Context {
    const Survey& survey;
    const Tables& tables;
    Ids<Room> rooms;
    Ids<Crossing> crossings;
    std::vector<Error>& errors;

    void error(std::string path, std::string message, ErrorCode code = ErrorCode::bad_input) const {
        errors.push_back({code, std::move(message), std::move(path)});
    }
};

void check_floors(const Context& context) {
    for (std::size_t i = 0; i < context.survey.rooms.size(); ++i) {
        const Choice<std::string>& floor = context.survey.rooms[i].floor;
        if (floor.value && context.tables.floor(*floor.value) == nullptr) {
            context.error(fmt::format("/rooms/{}/floor", i),
                          fmt::format("there is no floor '{}' in the tables", *floor.value), ErrorCode::not_found);
        }
    }
}

void check_washings(const Context& context) {
    const std::vector<ChemicalRow>& rows = context.tables.chemicals.rows;
    for (std::size_t i = 0; i < context.survey.washings.size(); ++i) {
        const Washing& washing = context.survey.washings[i];
        const std::string path = fmt::format("/washings/{}", i);
        if (washing.agent.value && std::none_of(rows.begin(), rows.end(), [&](const ChemicalRow& row) {
                return row.agent == *washing.agent.value;
            })) {
            context.error(path + "/agent", fmt::format("there is no agent '{}' in the tables", *washing.agent.value),
                          ErrorCode::not_found);
        }
        if (washing.rooms.empty()) context.error(path + "/rooms", "no room is washed; name at least one");
        std::set<RoomId> seen;
        for (std::size_t k = 0; k < washing.rooms.size(); ++k) {
            const std::string room_path = fmt::format("{}/rooms/{}", path, k);
            context.rooms.refer(washing.rooms[k], room_path, context.errors);
            if (!washing.rooms[k].empty() && !seen.insert(washing.rooms[k]).second) {
                context.error(room_path, fmt::format("'{}' is named twice", washing.rooms[k].text()));
            }
        }
    }
}

void check_crossings(const Context& context) {
    for (std::size_t i = 0; i < context.survey.crossings.size(); ++i) {
        const Crossing& crossing = context.survey.crossings[i];
        context.rooms.refer(crossing.from, fmt::format("/crossings/{}/from", i), context.errors);
        context.rooms.refer(crossing.to, fmt::format("/crossings/{}/to", i), context.errors);
    }
}

bool joins(const Crossing& crossing, const RoomId& a, const RoomId& b) {
    return (crossing.from == a && crossing.to == b) || (crossing.from == b && crossing.to == a);
}

/// Each crossing must join the room it leaves with the next one; after the last stop the next is the first.
void check_route(const Context& context, const Cart& cart, const std::string& path) {
    for (std::size_t i = 0; i < cart.route.size(); ++i) {
        const Stop& stop = cart.route[i];
        const std::string stop_path = fmt::format("{}/route/{}", path, i);
        context.rooms.refer(stop.room, stop_path + "/room", context.errors);
        if (!stop.leaves_by || !context.crossings.complete()) continue;
        context.crossings.refer(*stop.leaves_by, stop_path + "/leaves_by", context.errors);
        const Crossing* crossing = context.crossings.find(*stop.leaves_by);
        const Stop& next = cart.route[(i + 1) % cart.route.size()];
        const bool rooms_known = context.rooms.find(stop.room) != nullptr && context.rooms.find(next.room) != nullptr;
        if (crossing == nullptr || !rooms_known || joins(*crossing, stop.room, next.room)) continue;
        if (context.rooms.find(crossing->from) == nullptr || context.rooms.find(crossing->to) == nullptr) continue;
        context.error(stop_path + "/leaves_by",
                      fmt::format("'{}' joins '{}' and '{}', but the route goes from '{}' to '{}'", crossing->id.text(),
                                  crossing->from.text(), crossing->to.text(), stop.room.text(), next.room.text()));
    }
}

void check_castors(const Context& context, const Cart& cart, const std::string& path) {
    if (cart.castors.empty()) return;
    if (cart.castors.size() < least_castors || cart.castors.size() > most_castors) {
        context.error(path + "/castors", fmt::format("{} castors; {} to {} would be right", cart.castors.size(),
                                                     least_castors, most_castors));
        return;
    }
    for (std::size_t i = 0; i < cart.castors.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (cart.castors[i].forward == cart.castors[k].forward &&
                cart.castors[i].across == cart.castors[k].across) {
                context.error(fmt::format("{}/castors/{}", path, i), fmt::format("stands where castor {} stands", k));
            }
        }
    }
    if (cart.sharing.value == FloorSharing::diagonal && cart.castors.size() != 4) {
        context.error(path + "/sharing", "the diagonal case is for four castors");
    }
}

/// A centre of gravity that lies outside the castors for its whole range would tip the standing cart.
void check_centre(const Context& context, const Cart& cart, const Reading<Length>& centre, const std::string& path) {
    if (!centre.value || cart.castors.size() < least_castors) return;
    const auto [rear, front] =
        std::minmax_element(cart.castors.begin(), cart.castors.end(),
                            [](const CastorPosition& a, const CastorPosition& b) { return a.forward < b.forward; });
    const Length tolerance = abs(centre.tolerance);
    if (*centre.value + tolerance < rear->forward || *centre.value - tolerance > front->forward) {
        context.error(
            path,
            "the centre of gravity lies outside the castors, so the cart would fall over; measure from the rear axle");
    }
}

/// The stays of one trip, times the trips, cannot fill more than a day.
void check_day(const Context& context, const Cart& cart, const std::string& path) {
    if (!cart.trips_per_day.value) return;
    Duration least{};
    for (const Stop& stop : cart.route) {
        if (stop.stay.value && *stop.stay.value > stop.stay.tolerance) least += *stop.stay.value - stop.stay.tolerance;
    }
    const double trips = std::max(0.0, *cart.trips_per_day.value - cart.trips_per_day.tolerance);
    if (trips * least > 1.001 * day) {
        context.error(
            path + "/trips_per_day",
            fmt::format("{:.0f} trips of at least {:.0f} minutes do not go into a day", trips, least.in(minute)));
    }
}

void check_carts(const Context& context) {
    for (std::size_t i = 0; i < context.survey.carts.size(); ++i) {
        const Cart& cart = context.survey.carts[i];
        const std::string path = fmt::format("/carts/{}", i);
        check_castors(context, cart, path);
        check_centre(context, cart, cart.cg_forward_loaded, path + "/cg_forward_loaded");
        check_centre(context, cart, cart.cg_forward_empty, path + "/cg_forward_empty");
        check_route(context, cart, path);
        check_day(context, cart, path);
    }
}

}  // namespace

std::vector<Error> validate(const Survey& survey, const Catalogue&, const Tables& tables) {
    std::vector<Error> errors;
    if (survey.id.empty()) errors.push_back({ErrorCode::bad_input, "the survey has no id", "/id"});
    if (survey.revision < 0) errors.push_back({ErrorCode::bad_input, "a revision counts up from 0", "/revision"});
    const Context context{survey, tables, Ids<Room>(survey.rooms, "rooms", errors),
                          Ids<Crossing>(survey.crossings, "crossings", errors), errors};
    const Ids<Washing> washings(survey.washings, "washings", errors);
    const Ids<Cart> carts(survey.carts, "carts", errors);
    check_floors(context);
    check_crossings(context);
    check_washings(context);
    check_carts(context);
    validate_readings(survey, errors);
    return errors;
}

}  // namespace sillwalk::engine
