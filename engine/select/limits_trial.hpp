#pragma once
/// One check of one candidate on one cart, run with another value of a driver.

#include "engine/select/limits_drivers.hpp"
#include "engine/select/score_catalogue.hpp"

#include <optional>

namespace sillwalk::engine {

class Trial {
public:
    /// `space` must outlive the object. With `one_person` the cart is pushed by one, whoever pushes it now.
    Trial(CandidateSpace& space, const Survey& survey, std::size_t cart, const Candidate& candidate,
          const CheckEntry& check, bool one_person);

    /// The outcome at the worst corner as it is, or with the driver's value; of the whole check, or of every pass of
    /// one crossing (index in the survey) alone.
    [[nodiscard]] Outcome outcome(std::optional<std::uint16_t> crossing) const;
    [[nodiscard]] Outcome outcome_with(const DriverRange& driver, double value,
                                       std::optional<std::uint16_t> crossing) const;

    /// As it is, with another candidate.
    [[nodiscard]] Outcome outcome_of(const Candidate& candidate, std::optional<std::uint16_t> crossing) const;
    /// Of the candidate over all checks, with the driver's value.
    [[nodiscard]] Verdict verdict_with(const DriverRange& driver, double value) const;

private:
    struct Changed {
        Survey survey;
        std::optional<Length> diameter;
    };
    [[nodiscard]] Changed changed(const DriverRange& driver, double value) const;
    [[nodiscard]] Outcome run(const Changed& changed, const Candidate& candidate,
                              std::optional<std::uint16_t> crossing) const;
    [[nodiscard]] ThermalWheel& thermal_wheel_of(const Candidate& candidate) const;
    template <class F>
    auto in_context(const Changed& changed, const Candidate& candidate, bool walk, F&& f) const;

    CandidateSpace* space_;
    const CheckEntry* check_;
    Candidate candidate_;
    Survey survey_;  // with this cart alone
};

}  // namespace sillwalk::engine
