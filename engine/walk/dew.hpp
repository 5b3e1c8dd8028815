#pragma once
/// Frost and dew on a wheel on its way out of the cold: the tread collects water while it is colder than the dew point
/// of the room it stands in. That water enters bearings and freezes on the way back, so the time until it stops
/// matters. Latent heat is left out. Derived; dew point by the Magnus formula [magnus], from memory.

#include "engine/walk/walk.hpp"

#include <optional>
#include <vector>

namespace sillwalk::engine {

struct DewOnStay {
    std::uint16_t stop = 0;  ///< index into CartDemand::stops
    Temperature dew_point;   ///< of the room's air
    Temperature rim_on_entry;
    bool frost_on_entry = false;  ///< the rim is below 0 C and below the dew point
    /// From entry until the rim passes 0 C and until it passes the dew point; absent where it does not during the stay.
    std::optional<Duration> frost_until, wet_until;
    bool returns_wet = false;  ///< still below the dew point when it leaves: the water goes back with it
};

/// Every stay that the wheel enters colder than the dew point. Stays without a humidity are left out: `unread` names
/// them.
struct DewOnRoute {
    std::vector<DewOnStay> stays;
    std::vector<ReadingRef> unread;
};
/// Precondition: the walk was made with its trace, nominal end, of the same demand. Times are read between trace
/// points.
[[nodiscard]] DewOnRoute dew_on_route(const CartDemand& demand, const Walk& walk);

}  // namespace sillwalk::engine
