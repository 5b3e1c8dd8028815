#include "engine/checks/moisture.hpp"

#include "engine/physics/heat.hpp"

namespace sillwalk::engine {
namespace {

Moisture moisture_of(Wetness wetness) {
    switch (wetness) {
        case Wetness::dry:
            return Moisture::dry;
        case Wetness::damp:
        case Wetness::frost:
        case Wetness::ice:
            return Moisture::damp;
        case Wetness::wet:
        case Wetness::greasy:
        case Wetness::melting_ice:
            break;
    }
    return Moisture::wet;
}

/// The stop that follows, or none where the route ends there.
std::optional<std::size_t> next_stop(const CartDemand& cart, std::size_t stop) {
    if (stop + 1 < cart.stops.size()) return stop + 1;
    const bool loops = !cart.crossings.empty() && cart.crossings.back().after_stop == stop && stop > 0;
    if (loops) return 0;
    return std::nullopt;
}

/// False where a reading is missing.
bool condenses(Judge& judge, const StopDemand& from, const StopDemand& into, std::optional<Condensation>& found) {
    const auto cold = judge.low(from.air);
    const auto warm = judge.high(into.air);
    if (!cold || !warm) return false;
    if (*cold >= *warm) return true;
    const auto humidity = judge.high(into.humidity);
    if (!humidity) return false;
    const auto dew = dew_point(*warm, *humidity);
    if (dew && *cold < *dew) found = Condensation{into.room, *cold, *dew};
    return true;
}

}  // namespace

CondensationAnswer condensation(Judge& judge, const CartDemand& cart) {
    CondensationAnswer answer;
    for (std::size_t i = 0; i < cart.stops.size() && !answer.first; ++i) {
        const auto next = next_stop(cart, i);
        if (next) answer.known &= condenses(judge, cart.stops[i], cart.stops[*next], answer.first);
    }
    return answer;
}

RouteMoisture route_moisture(Judge& judge, const CartDemand& cart) {
    if (!cart.washings.empty()) return {Moisture::wet, {PlaceKind::washing, cart.washings.front().washing}, true};
    RouteMoisture route;
    for (const StopDemand& stop : cart.stops) {
        const Moisture here = stop.wetness.given ? moisture_of(stop.wetness.value) : Moisture::dry;
        if (here > route.moisture) route = {here, {PlaceKind::room, stop.room}, true};
    }
    if (route.moisture == Moisture::wet) return route;
    for (const StopDemand& stop : cart.stops) route.known &= judge.choice(stop.wetness) != nullptr;
    if (route.moisture == Moisture::damp) return route;
    const CondensationAnswer dew = condensation(judge, cart);
    if (dew.first) return {Moisture::damp, {PlaceKind::room, dew.first->room}, route.known};
    route.known &= dew.known;
    return route;
}

}  // namespace sillwalk::engine
