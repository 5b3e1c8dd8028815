#include "engine/physics/people.hpp"

#include "engine/physics/guard.hpp"

#include <boost/math/distributions/normal.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {

namespace {

const PushEquation* find_equation(const PushTask& task, const PeopleLimits& limits) {
    for (const PushEquation& row : limits.equations) {
        if (row.action == task.action && row.phase == task.phase && row.sex == task.sex) {
            return &row;
        }
    }
    return nullptr;
}

Guard check_task(const PushTask& task) {
    return Guard()
        .over_zero(task.hand_height.si(), "hand-height")
        .over_zero(task.distance.si(), "distance")
        .over_zero(task.rate.si(), "rate");
}

/// A sentence where the task lies outside what was published. Short distances and rare pushes count as the least
/// published.
std::optional<std::string> outside(const PushTask& task, const PushRanges& ranges) {
    const auto& height = task.sex == Sex::female ? ranges.height_female : ranges.height_male;
    if (task.hand_height < height[0] || task.hand_height > height[1]) {
        return fmt::format("Hand height {:.2f} m is outside the published range {:.2f} to {:.2f} m.",
                           task.hand_height.in(metre), height[0].in(metre), height[1].in(metre));
    }
    if (task.distance > ranges.distance[1]) {
        return fmt::format("Distance {:.1f} m is outside the published range {:.1f} to {:.0f} m.",
                           task.distance.in(metre), ranges.distance[0].in(metre), ranges.distance[1].in(metre));
    }
    if (task.rate > ranges.rate[1]) {
        return fmt::format("{:.2f} pushes a minute is outside the published range, up to {:.0f} a minute.",
                           task.rate.in(per_minute), ranges.rate[1].in(per_minute));
    }
    const Speed carried = task.distance * task.rate;
    if (carried > ranges.distance_rate_max) {
        return fmt::format("Distance times rate is {:.0f} m a minute; the published limit of the equations is {:.0f}.",
                           carried.si() * 60, ranges.distance_rate_max.si() * 60);
    }
    return std::nullopt;
}

/// The published factors reach 1 at their best end; one of them passes it by rounding.
double capped(double factor) {
    return std::min(factor, 1.0);
}

struct Median {
    PushLimit limit;  ///< force not yet set
    double variation = 0;
};

Result<Median> median_limit(const PushTask& task, const PeopleLimits& limits) {
    const Guard guard = check_task(task);
    if (guard.failed()) {
        return guard.failure();
    }
    if (const auto sentence = outside(task, limits.ranges)) {
        return no_answer(*sentence);
    }
    const PushEquation* row = find_equation(task, limits);
    if (row == nullptr) {
        return no_answer("The tables have no push equation for this action, phase and sex.");
    }
    const double height = task.hand_height.in(metre);
    const double distance = std::max(task.distance, limits.ranges.distance[0]).in(metre);
    const double log_rate = std::log(std::max(task.rate, limits.ranges.rate[0]).in(per_minute));

    Median out;
    out.variation = row->variation;
    out.limit.height_factor =
        capped(row->height_constant + height * row->height_linear + height * height * row->height_square);
    out.limit.distance_factor =
        capped(row->distance_constant + distance * row->distance_linear + distance * distance * row->distance_square +
               std::log(distance) * row->distance_log);
    out.limit.rate_factor =
        capped(row->rate_constant + log_rate * row->rate_log + log_rate * log_rate * row->rate_log_square);
    out.limit.median =
        (row->reference_kgf * out.limit.height_factor * out.limit.distance_factor * out.limit.rate_factor) *
        kilogram_force;
    const Speed caution = task.sex == Sex::female ? limits.ranges.caution_female : limits.ranges.caution_male;
    out.limit.caution = task.distance * task.rate > caution;
    return out;
}

}  // namespace

Result<PushLimit> push_limit(const PushTask& task, double share, const PeopleLimits& limits) {
    if (!(share > 0 && share < 1)) {
        return bad_input("must be over 0 and under 1, like 0.75 or 75%", "share");
    }
    auto median = median_limit(task, limits);
    if (!median) {
        return tl::make_unexpected(median.error());
    }
    PushLimit out = median->limit;
    const double z = boost::math::quantile(boost::math::normal_distribution<double>(), share);
    out.force = out.median * (1 - median->variation * z);
    if (out.force <= Force{}) {
        return no_answer("No force is acceptable to that share of people by these equations.");
    }
    return out;
}

Result<double> push_share(const PushTask& task, Force force, const PeopleLimits& limits) {
    if (!(force.si() >= 0) || !std::isfinite(force.si())) {
        return bad_input("must be 0 or more", "force");
    }
    auto median = median_limit(task, limits);
    if (!median) {
        return tl::make_unexpected(median.error());
    }
    const double z = (1 - force / median->limit.median) / median->variation;
    return boost::math::cdf(boost::math::normal_distribution<double>(), z);
}

Result<Force> biomechanical_limit(PushAction action, Length hand_height, const PeopleLimits& limits) {
    const auto& rows = limits.biomechanical;
    if (rows.empty()) {
        return no_answer("The tables have no biomechanical guideline.");
    }
    if (!(hand_height >= rows.front().height && hand_height <= rows.back().height)) {
        return no_answer(fmt::format("Hand height {:.2f} m is outside the published range {:.2f} to {:.2f} m.",
                                     hand_height.in(metre), rows.front().height.in(metre),
                                     rows.back().height.in(metre)));
    }
    const auto force = [action](const PushHeightRow& row) { return action == PushAction::push ? row.push : row.pull; };
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (hand_height <= rows[i].height) {
            const double part = (hand_height - rows[i - 1].height) / (rows[i].height - rows[i - 1].height);
            return force(rows[i - 1]) + (force(rows[i]) - force(rows[i - 1])) * part;
        }
    }
    return force(rows.front());
}

Result<Force> traction_force(Mass person, double friction, Slope slope, Slope hand_angle, double reserve) {
    Guard guard;
    guard.over_zero(person.si(), "mass")
        .at_least_zero(friction, "friction")
        .finite(slope.tangent(), "slope")
        .finite(hand_angle.tangent(), "hand-angle")
        .require(slope.tangent() == 0 || hand_angle.tangent() == 0, "hand-angle",
                 "holds for a level floor only: leave it out with a slope")
        .require(reserve > 0 && reserve <= 1, "reserve", "must be over 0 and at most 1");
    if (guard.failed()) {
        return guard.failure();
    }
    const Force weight = weight_of(person);
    const double pressed_down = 1 + friction * hand_angle.tangent();
    if (pressed_down <= 0) {
        return no_answer("Pushing that steeply upward the feet never slip; the limit is strength, not traction.");
    }
    const double held = hand_angle.tangent() == 0 ? friction * slope.cosine() - slope.sine() : friction / pressed_down;
    if (held <= 0) {
        return no_answer("Nobody can stand and push here: the feet slip.");
    }
    return weight * (held * reserve);
}

}  // namespace sillwalk::engine
