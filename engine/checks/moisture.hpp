#pragma once
/// How wet a route is for what can rust or lose its grease.

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

enum class Moisture : std::uint8_t { dry, damp, wet };

struct RouteMoisture {
    Moisture moisture = Moisture::dry;
    Place place;        ///< the washing or room that makes it so
    bool known = true;  ///< false where a missing reading (noted) could make it wetter
};

/// Wet: any washing, or a wet, greasy or thawing room. Damp: a damp or frosted room, or dew or frost on a cart that
/// comes out of the cold. Practice, no published source; dew by the Magnus formula [magnus], from memory.
[[nodiscard]] RouteMoisture route_moisture(Judge& judge, const CartDemand& cart);

/// Water or frost on the wheel as the cart enters a warmer room: the colder room's air is below the warmer one's dew
/// point.
struct Condensation {
    std::uint16_t room = 0;  ///< index in the survey of the room that it enters
    Temperature cold_air, dew_point;
};
struct CondensationAnswer {
    std::optional<Condensation> first;  ///< in travel order
    bool known = true;                  ///< false where a missing reading (noted) could bring one
};
[[nodiscard]] CondensationAnswer condensation(Judge& judge, const CartDemand& cart);

}  // namespace sillwalk::engine
