#pragma once
/// Judge gathers the parts of one check into a finding. It notes each reading that was used and each that was missing.
///   Judge judge(CheckId::gap, context);
///   auto gap = judge.high(crossing.gap);          // careful end; the reading is noted as a driver
///   if (gap) judge.part({.demand = …, .capacity = …, .use = …, .statement = Statement::gap_sag, .place = …});
///   return judge.finish();
/// Rules: a part over 1 decides (fails); else any missing reading makes it not known, all named; else the worst part
/// decides: holds up to 0.85, tight up to 1. No part and nothing missing: does not apply.

#include "engine/checks/check.hpp"

#include <initializer_list>
#include <optional>

namespace sillwalk::engine {

struct Part {
    Amount demand = {}, capacity = {};
    double use = 0;
    Statement statement = Statement::none;
    Place place = {};
    const char* formula = "";
    std::initializer_list<Amount> numbers = {};
    std::initializer_list<CitationId> citations = {};
    std::optional<Outcome> outcome = {};  ///< where the scale is not demand/capacity, or the outcome is capped at tight
    bool conflict = false, needs_rolling = false, needs_team = false;
};

class Judge {
public:
    Judge(CheckId check, const CheckContext& context);

    /// The value at the careful end: high() where more is worse, low() where less is worse. Empty and noted if missing.
    template <class T>
    [[nodiscard]] std::optional<T> high(const Input<T>& input) {
        if (!note(input.given, input.ref, input.known)) return std::nullopt;
        return worst_ ? input.high : input.nominal;
    }
    template <class T>
    [[nodiscard]] std::optional<T> low(const Input<T>& input) {
        if (!note(input.given, input.ref, input.known)) return std::nullopt;
        return worst_ ? input.low : input.nominal;
    }
    template <class T>
    [[nodiscard]] std::optional<T> nominal(const Input<T>& input) {
        if (!note(input.given, input.ref, input.known)) return std::nullopt;
        return input.nominal;
    }
    template <class E>
    [[nodiscard]] std::optional<E> value(const ChoiceInput<E>& input) {
        if (!note(input.given, input.ref, input.known)) return std::nullopt;
        return input.value;
    }
    /// As value(), without a copy: null and noted if missing.
    template <class E>
    [[nodiscard]] const E* choice(const ChoiceInput<E>& input) {
        return note(input.given, input.ref, input.known) ? &input.value : nullptr;
    }

    void missing(ReadingRef ref);  ///< a reading that is needed and not there
    void missing_figure();         ///< a maker's or material figure that is needed and not there
    void missing_walk();           ///< everything the walk lacks
    void assume(Assumption assumption);
    void cite(CitationId citation);
    void part(const Part& part);
    [[nodiscard]] Finding finish() const;

private:
    bool note(bool given, const ReadingRef& ref, Known known);
    void replace_worst(const Part& part, Outcome outcome);

    Finding finding_;
    const CheckContext* context_;
    bool worst_, brief_;
    bool any_part_ = false;
    bool figure_missing_ = false;
};

/// Use that stands for "no capacity at all": nobody can stand there, nothing climbs, the wheel falls in.
inline constexpr double beyond_measure = 1000.0;

/// The outcome on the common scale.
[[nodiscard]] Outcome outcome_of(double use, const Practice& practice);

}  // namespace sillwalk::engine
