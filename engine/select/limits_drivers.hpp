#pragma once
/// The drivers of one cart's checks, and how another value of one is put into a survey or a wheel.

#include "engine/model/advice.hpp"

#include <cstddef>
#include <vector>

namespace sillwalk::engine {

struct DriverRange {
    Driver driver = Driver::payload;
    Bound bound = Bound::at_most;
    ReadingRef reading;
    Place place;
    Kind kind = Kind::length;
    double present = 0;   ///< as it is
    double start = 0;     ///< as it is, or as bad as that
    double furthest = 0;  ///< mildest end of the physical range
    bool one_way = true;  ///< the further, the milder: what does not help at the furthest end does not help at all
};

/// Every driver of the cart that was read and could give way, in a fixed order. Stays are there only where the walk
/// matters to the check, the diameter only where it does not: a larger wheel as a cure for cold or heat is no advice.
[[nodiscard]] std::vector<DriverRange> drivers_of(const Survey& survey, std::size_t cart, const Wheel& wheel,
                                                  const Tables& tables, bool uses_walk);

/// Puts a value in place of the reading. `cart` is the cart in this survey; the diameter is not the survey's business.
void put(Survey& survey, std::size_t cart, const DriverRange& driver, double value);

/// What stands beside the value: the length of a slope, the height of a bevel.
[[nodiscard]] std::optional<Amount> beside(const Survey& survey, const DriverRange& driver, double value);

}  // namespace sillwalk::engine
