#pragma once
/// What would make it hold: for each failing check, how far each driver has to give way. Solved on the checks
/// themselves, at the worst corner of the tolerances, where they cease to hold (use 0.85).

#include "engine/model/advice.hpp"

#include <cstddef>
#include <vector>

namespace sillwalk::engine {

/// For the best-ranked candidate of every construction, or its nearest where none holds: each failing check with its
/// solved limits. The headline's construction comes first; constructions without a failing check are left out.
///
/// Every value on the mild side of a limit holds too, except beyond a diameter: a large wheel leaves the handle a
/// shorter arm over the axle, so that the next size is judged by itself. A driver that cannot help within its physical
/// range is left out. The ranges: payload down to 1 % of what it is; speed down to 0.3 m/s; parked loaded down to an
/// hour; rise, gap, slot and slope down to none; a bevel from 1:2 to 1:20 (flatter, it is floor and no longer a lip); a
/// stay down to a minute, or up to 12 hours as far as the day has room; a wash down to 20 C; diameters up to 500 mm. A
/// gentler slope is as much longer as keeps its height. A larger wheel keeps its rating, width and hardness, and its
/// rig is of its size. A second person is never solved for: where several push, the limit is for one. Ranges: common
/// practice, no published source; 1:2: ADA 2010, 303.3; 1:20: ADA 2010, 106.5 "ramp", from memory. Precondition:
/// validate() is empty.
[[nodiscard]] std::vector<FamilyLimits> solve_limits(const Survey& survey, const Catalogue& catalogue,
                                                     const Tables& tables, std::size_t cart);

/// Fills would_hold and conditions of every cart of an advice on this survey.
void complete_advice(Advice& advice, const Survey& survey, const Catalogue& catalogue, const Tables& tables);

}  // namespace sillwalk::engine
