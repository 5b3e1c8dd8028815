#include "engine/checks/push_limits.hpp"

#include "engine/physics/people.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

constexpr double design_share = 0.75;             ///< of women: the authors' own design criterion (2021, p. 964)
constexpr Temperature cold_work = celsius(10.0);  ///< "cold" work: air below 10 degrees C (EN ISO 11079, second-hand)
constexpr Temperature freezer = celsius(0.0);

void take_least(PersonLimit& limit, Force force, Governs governs) {
    if (force < limit.force) {
        limit.force = force;
        limit.governs = governs;
    }
}

}  // namespace

PersonLimits::PersonLimits(Judge& judge, const CheckContext& context)
    : judge_(&judge), limits_(&context.tables->people) {
    hand_low_ = judge.low(context.cart->handle_height);
    hand_high_ = judge.high(context.cart->handle_height);
    distance_ = judge.high(context.cart->push_distance);
    rate_ = judge.high(context.cart->push_rate);
    if (!hand_low_ || !distance_ || !rate_) return;
    women_start_ = women(PushAction::push, PushPhase::start, *distance_);
    women_sustained_ = women(PushAction::push, PushPhase::sustain, *distance_);
    const auto guideline = biomechanical_limit(PushAction::push, *hand_low_, *limits_);
    if (guideline) biomechanical_ = *guideline;
}

std::optional<Force> PersonLimits::women(PushAction action, PushPhase phase, Length distance) const {
    if (!hand_low_ || !rate_) return std::nullopt;
    PushTask task;
    task.action = action;
    task.phase = phase;
    task.sex = Sex::female;
    task.distance = distance;
    task.rate = *rate_;
    // The height factor rises and falls once, so the least limit lies at an end of the handle's range.
    task.hand_height = *hand_low_;
    const auto at_low = push_limit(task, design_share, *limits_);
    task.hand_height = *hand_high_;
    const auto at_high = push_limit(task, design_share, *limits_);
    if (!at_low || !at_high) return std::nullopt;
    return std::min(at_low->force, at_high->force);
}

std::optional<PersonLimit> PersonLimits::peak(double cold_factor) const {
    if (!hand_low_ || !distance_ || !rate_) return std::nullopt;
    if (!women_start_ || !biomechanical_) {
        judge_->missing_figure();
        return std::nullopt;
    }
    PersonLimit limit;
    limit.women = limit.force = cold_factor * *women_start_;
    limit.biomechanical = *biomechanical_;
    limit.upper = limits_->upper.value;
    limit.guide = limits_->guide_start_female.value;
    take_least(limit, limit.biomechanical, Governs::biomechanical);
    take_least(limit, limit.upper, Governs::upper);
    judge_->cite(limits_->ranges.citation);
    judge_->cite(limits_->biomechanical_citation);
    judge_->cite(limits_->upper.citation);
    judge_->cite(limits_->guide_start_female.citation);
    return limit;
}

std::optional<PersonLimit> PersonLimits::sustained(double cold_factor, std::optional<Length> length,
                                                   PushAction action) const {
    if (!hand_low_ || !distance_ || !rate_) return std::nullopt;
    const bool level = !length && action == PushAction::push;
    const auto force = level ? women_sustained_ : women(action, PushPhase::sustain, length.value_or(*distance_));
    if (!force) {
        judge_->missing_figure();
        return std::nullopt;
    }
    PersonLimit limit;
    limit.women = limit.force = cold_factor * *force;
    limit.upper = limits_->upper.value;
    limit.guide = limits_->guide_keep_female.value;
    take_least(limit, limit.upper, Governs::upper);
    judge_->cite(limits_->ranges.citation);
    judge_->cite(limits_->upper.citation);
    judge_->cite(limits_->guide_keep_female.citation);
    return limit;
}

std::optional<double> cold_factor(Judge& judge, const CheckContext& context, const Input<Temperature>& air) {
    const auto coldest = judge.low(air);
    if (!coldest) return std::nullopt;
    if (*coldest >= cold_work) return 1.0;
    const PeopleLimits& people = context.tables->people;
    const auto& factor = *coldest < freezer ? people.cold_freezer : people.cold_chill;
    judge.assume(Assumption::cold_factor);
    judge.cite(factor.citation);
    return factor.value;
}

}  // namespace sillwalk::engine
