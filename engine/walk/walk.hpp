#pragma once
/// The temperatures of one wheel along a cart's route, repeated day after day until they repeat.

#include "engine/base/result.hpp"
#include "engine/checks/demand.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/tables.hpp"

#include <optional>
#include <vector>

namespace sillwalk::engine {

/// Which end of the readings' ranges the walk takes. `cold` takes the low end of every air temperature. Longer stays
/// are not always colder, so it takes the long end of stays in rooms colder than the day's mean air and the short end
/// elsewhere; in those rooms it also takes the high end of the film coefficient, elsewhere the table's value. `hot`
/// mirrors all three.
enum class WalkEnd { nominal, cold, hot };

struct WalkPoint {
    std::uint16_t stop = 0;  ///< index into CartDemand::stops
    Duration since_start{};  ///< within the repeated day
    /// core: centre of the body at mid-width; rim: running surface; bond: tread joint. A one-piece wheel is a solid
    /// disc without a hub: its bore and bond are its core. A bonded wheel's core is its innermost part, and so is its
    /// bore.
    Temperature air, core, rim, mean, bore, bond;
};

struct Walk {
    std::vector<WalkPoint> at_crossing;  ///< one per CartDemand::crossings, same order: as the wheel arrives there
    std::vector<WalkPoint> trace;        ///< for the plot: several points per stay, in order
    Temperature coldest, hottest;        ///< of rim and core over the day
    std::uint16_t coldest_stop = 0, hottest_stop = 0;  ///< index into CartDemand::stops
    int days = 0;                                      ///< walked until change x r/(1-r) < 0.1 K: our rule
    bool repeats = false;                              ///< that rule was met
};

struct WalkMissing {  ///< readings or figures without which there is no walk
    SmallList<ReadingRef, 10> readings;
    bool material_figures =
        false;  ///< density, conductivity or specific heat of the wheel's materials, or its tread's thickness
    [[nodiscard]] bool empty() const { return readings.empty() && !material_figures; }
};

/// What of a wheel the walk depends on; equal keys give equal walks.
struct WalkKey {
    double diameter = 0, width = 0, tread_thickness = 0, bore = 0;
    const Material* tread = nullptr;
    const Material* core = nullptr;
    friend bool operator==(const WalkKey&, const WalkKey&) = default;
};
/// A one-piece wheel has no tread thickness and its bore does not matter: both are 0 in its key.
[[nodiscard]] WalkKey walk_key(const Wheel& wheel, const Tables& tables);

/// The readings a walk needs and does not have.
[[nodiscard]] WalkMissing walk_missing(const CartDemand& demand, const WalkKey& key, const Tables& tables);

class ThermalWheel;

/// Precondition: walk_missing() is empty. `with_trace` fills Walk::trace.
/// The route is walked again and again from its first stop; "day" means one time round.
[[nodiscard]] Walk walk_route(const CartDemand& demand, const WalkKey& key, const Tables& tables, WalkEnd end,
                              bool with_trace = false);
/// The same with a wheel prepared once for many carts and ends (engine/walk/thermal_wheel.hpp).
[[nodiscard]] Walk walk_route(const CartDemand& demand, ThermalWheel& wheel, const Tables& tables, WalkEnd end,
                              bool with_trace = false);

}  // namespace sillwalk::engine
