#pragma once
/// The temperatures of one wheel along a cart's route, repeated day after day until they repeat.

#include <optional>
#include <vector>

#include "engine/base/result.hpp"
#include "engine/checks/demand.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/tables.hpp"

namespace sillwalk::engine {

/// Which end of the readings' ranges the walk takes.
enum class WalkEnd { nominal, cold, hot };

struct WalkPoint {
    std::uint16_t stop = 0;     ///< index into CartDemand::stops
    Duration since_start{};     ///< within the repeated day
    Temperature air, core, rim, mean, bore, bond;  ///< core: centre of the body; rim: running surface; bond: tread joint
};

struct Walk {
    std::vector<WalkPoint> at_crossing;  ///< one per CartDemand::crossings, same order: as the wheel arrives there
    std::vector<WalkPoint> trace;        ///< for the plot: several points per stay, in order
    Temperature coldest, hottest;        ///< of rim and core over the day
    int days = 0;                        ///< walked until the rule of method.md §3 was met
    bool repeats = false;
};

struct WalkMissing {                      ///< readings or figures without which there is no walk
    SmallList<ReadingRef, 10> readings;
    bool material_figures = false;        ///< density, conductivity or specific heat of the wheel's materials
};

/// What of a wheel the walk depends on; equal keys give equal walks.
struct WalkKey {
    double diameter = 0, width = 0, tread_thickness = 0, bore = 0;
    const Material* tread = nullptr;
    const Material* core = nullptr;
    friend bool operator==(const WalkKey&, const WalkKey&) = default;
};
[[nodiscard]] WalkKey walk_key(const Wheel& wheel, const Tables& tables);

/// The readings a walk needs and does not have.
[[nodiscard]] WalkMissing walk_missing(const CartDemand& demand, const WalkKey& key, const Tables& tables);

/// Precondition: walk_missing() is empty. `with_trace` fills Walk::trace.
[[nodiscard]] Walk walk_route(const CartDemand& demand, const WalkKey& key, const Tables& tables, WalkEnd end,
                              bool with_trace = false);

}  // namespace sillwalk::engine
