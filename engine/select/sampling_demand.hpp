#pragma once
/// A cart's demand whose readings can be set to sampled values.

#include "engine/checks/demand.hpp"
#include "engine/select/sampling.hpp"

#include <span>
#include <vector>

namespace sillwalk::engine {

struct SampledReading {
    ReadingRef reading;
    bool missing = false;
    double low_si = 0, high_si = 0;
};

/// Every number of the demand with an open range, then those of `ranges` that the demand asks for and does not have.
[[nodiscard]] std::vector<SampledReading> sampled_readings(const CartDemand& demand,
                                                           std::span<const PlausibleRange> ranges);

class SampledDemand {
public:
    SampledDemand(const CartDemand& demand, const std::vector<SampledReading>& readings);
    /// Sets each reading to its exact value, SI, in the order of the readings. The other inputs keep theirs.
    void set(std::span<const double> values_si);
    [[nodiscard]] const CartDemand& demand() const { return demand_; }

private:
    struct Slot {
        int reading = -1;     ///< index, or -1: not sampled
        bool turned = false;  ///< a slope that is met the other way round
    };
    CartDemand demand_;
    std::vector<Slot> slots_;  // in the order of for_each_input
};

}  // namespace sillwalk::engine
