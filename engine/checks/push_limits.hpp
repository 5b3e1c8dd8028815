#pragma once
/// What one person can be asked for: the least of the force acceptable to 75 % of women by the equations of 2021
/// (lowered in the cold by judgement), the biomechanical guideline at the hand height (peaks only), and the upper limit
/// for the whole body.

#include "engine/checks/judge.hpp"

namespace sillwalk::engine {

enum class Governs { women, biomechanical, upper };

struct PersonLimit {
    Force force{}, women{}, biomechanical{}, upper{};  ///< biomechanical is 0 where it does not apply
    Force guide{};                                     ///< women's figure of the national guide, for comparison only
    Governs governs = Governs::women;
};

/// The limits of one cart, its readings taken once.
class PersonLimits {
public:
    PersonLimits(Judge& judge, const CheckContext& context);

    /// A peak: starting, starting on a ramp, crossing.
    [[nodiscard]] std::optional<PersonLimit> peak(double cold_factor) const;
    /// Kept up over a distance: rolling, on a ramp. `length` takes the place of the distance of a push where it is
    /// given.
    [[nodiscard]] std::optional<PersonLimit> sustained(double cold_factor, std::optional<Length> length = {},
                                                       PushAction action = PushAction::push) const;

private:
    [[nodiscard]] std::optional<Force> women(PushAction action, PushPhase phase, Length distance) const;

    Judge* judge_;
    const PeopleLimits* limits_;
    std::optional<Length> hand_low_, hand_high_, distance_;
    std::optional<Frequency> rate_;
    std::optional<Force> women_start_, women_sustained_, biomechanical_;
};

/// Share of the psychophysical limits that cold leaves (judgement): 1 from 10 degrees C of air, less below it and below
/// 0.
[[nodiscard]] std::optional<double> cold_factor(Judge& judge, const CheckContext& context,
                                                const Input<Temperature>& air);

}  // namespace sillwalk::engine
