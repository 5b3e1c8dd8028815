#include "engine/walk/dew.hpp"

#include "engine/physics/heat.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

using Points = std::vector<WalkPoint>;

/// When the rim rises past `limit` for good, from the stay's first point on.
std::optional<Duration> rises_past(const Points& points, Temperature limit) {
    if (points.front().rim >= limit) return Duration{};
    if (points.back().rim < limit) return std::nullopt;
    std::size_t k = points.size() - 1;
    while (points[k - 1].rim >= limit) --k;
    const WalkPoint &before = points[k - 1], &after = points[k];
    const double share = (limit - before.rim) / (after.rim - before.rim);
    return before.since_start - points.front().since_start + (after.since_start - before.since_start) * share;
}

std::optional<DewOnStay> dew_on_stay(const StopDemand& stop, const Points& points) {
    const auto dew = dew_point(stop.air.nominal, stop.humidity.nominal);
    if (!dew || points.front().rim >= *dew) return std::nullopt;
    DewOnStay result;
    result.stop = points.front().stop;
    result.dew_point = *dew;
    result.rim_on_entry = points.front().rim;
    result.frost_on_entry = result.rim_on_entry < celsius(0.0);
    result.frost_until = rises_past(points, std::min(celsius(0.0), *dew));
    result.wet_until = rises_past(points, *dew);
    result.returns_wet = !result.wet_until.has_value();
    return result;
}

}  // namespace

DewOnRoute dew_on_route(const CartDemand& demand, const Walk& walk) {
    DewOnRoute result;
    for (std::size_t index = 0; index < demand.stops.size(); ++index) {
        const StopDemand& stop = demand.stops[index];
        if (!stop.humidity.given) {
            if (std::find(result.unread.begin(), result.unread.end(), stop.humidity.ref) == result.unread.end()) {
                result.unread.push_back(stop.humidity.ref);
            }
            continue;
        }
        Points points;
        for (const WalkPoint& point : walk.trace) {
            if (point.stop == index) points.push_back(point);
        }
        if (points.size() < 2) continue;
        if (const auto dew = dew_on_stay(stop, points)) result.stays.push_back(*dew);
    }
    return result;
}

}  // namespace sillwalk::engine
