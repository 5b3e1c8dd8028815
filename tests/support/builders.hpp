#pragma once
/// A plain survey with one crossing, a cart and a candidate whose readings are all there, and just the tables that
/// loads, steps, pushing, traction and tipping need. A test changes what it is about and runs a check. The survey and
/// the parts are invented; each figure of the tables stands beside its source.

#include "engine/checks/check.hpp"

#include <string>
#include <utility>
#include <vector>

namespace sillwalk::engine::test {

template <class T>
Figure<T> sourced(T value, CitationId citation = 1) {
    Figure<T> made;
    made.value = value;
    made.citation = citation;
    return made;
}

template <class T, class Tolerance>
Reading<T> within(T value, Tolerance tolerance) {
    return measured(value, tolerance);
}

/// 2021 push equations for women, ISO and ANSI rating classes, traction and load factors: the rows that these tests
/// use.
[[nodiscard]] Tables plain_tables();

/// Two rooms at 15 C on dry concrete, a doorway without any obstacle, and a cart of 60 kg with 240 kg on it: four
/// castors on a wheelbase of 1 m, centre of gravity midway and 0.8 m up, handle at 1 m. It goes over loaded and comes
/// back loaded.
[[nodiscard]] Survey plain_survey();

/// 125 mm one-piece urethane wheel, precision ball bearing without friction, swivel rig with 40 mm lead.
[[nodiscard]] Wheel plain_wheel();
[[nodiscard]] Bearing plain_bearing();
[[nodiscard]] Rig plain_rig();
[[nodiscard]] Catalogue plain_catalogue();

/// Holds everything that a check looks at and runs it.
class CheckCase {
public:
    Survey survey = plain_survey();
    Tables tables = plain_tables();
    Wheel wheel = plain_wheel();
    Bearing bearing = plain_bearing();
    Rig rig = plain_rig();

    [[nodiscard]] Cart& cart() { return survey.carts.front(); }
    [[nodiscard]] Crossing& crossing() { return survey.crossings.front(); }
    [[nodiscard]] Finding run(CheckId check, Corner corner = Corner::worst) const;
    [[nodiscard]] Finding run_in_detail(CheckId check) const;
    [[nodiscard]] Finding run_at(CheckId check, std::uint16_t pass) const;

private:
    template <class F>
    Finding with_context(F&& f) const;
};

/// Every driver, missing reading and number as one line, for INFO().
[[nodiscard]] std::string describe(const Finding& finding);

}  // namespace sillwalk::engine::test
