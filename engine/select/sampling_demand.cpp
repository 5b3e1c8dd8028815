#include "engine/select/sampling_demand.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

double bare(double value) {
    return value;
}
double bare(Temperature value) {
    return value.kelvin();
}
double bare(Slope value) {
    return value.tangent();
}
template <Dim D>
double bare(Quantity<D> value) {
    return value.si();
}

double from_bare(double si, double) {
    return si;
}
Temperature from_bare(double si, Temperature) {
    return Temperature::from_kelvin(si);
}
Slope from_bare(double si, Slope) {
    return Slope::from_tangent(si);
}
template <Dim D>
Quantity<D> from_bare(double si, Quantity<D>) {
    return Quantity<D>::from_si(si);
}

/// A crossing that is travelled backwards has the survey's slope with its sign turned.
bool is_turned(const CartDemand& demand, const Input<Slope>* input) {
    return std::any_of(demand.crossings.begin(), demand.crossings.end(),
                       [&](const CrossingDemand& crossing) { return &crossing.slope == input && crossing.reversed; });
}
template <class T>
bool is_turned(const CartDemand&, const Input<T>*) {
    return false;
}

bool holds_reading(const std::vector<SampledReading>& readings, const ReadingRef& ref) {
    return std::any_of(readings.begin(), readings.end(), [&](const auto& row) { return row.reading == ref; });
}

}  // namespace

std::vector<SampledReading> sampled_readings(const CartDemand& demand, std::span<const PlausibleRange> ranges) {
    std::vector<SampledReading> open, missing;
    for_each_input(demand, [&](const auto& input) {
        if (!input.given) {
            for (const PlausibleRange& range : ranges) {
                if (range.reading != input.ref || holds_reading(missing, input.ref)) continue;
                missing.push_back({input.ref, true, range.low_si, range.high_si});
            }
            return;
        }
        if (!(input.low < input.high) || holds_reading(open, input.ref)) return;
        const double low = bare(input.low), high = bare(input.high);
        const bool turned = is_turned(demand, &input);
        open.push_back({input.ref, false, turned ? -high : low, turned ? -low : high});
    });
    open.insert(open.end(), missing.begin(), missing.end());
    return open;
}

SampledDemand::SampledDemand(const CartDemand& demand, const std::vector<SampledReading>& readings) : demand_(demand) {
    for_each_input(demand_, [&](const auto& input) {
        Slot slot;
        for (std::size_t i = 0; i < readings.size(); ++i) {
            if (readings[i].reading == input.ref) slot.reading = static_cast<int>(i);
        }
        slot.turned = is_turned(demand_, &input);
        slots_.push_back(slot);
    });
}

void SampledDemand::set(std::span<const double> values_si) {
    std::size_t at = 0;
    for_each_input(demand_, [&](auto& input) {
        const Slot& slot = slots_[at++];
        if (slot.reading < 0) return;
        const double value = values_si[static_cast<std::size_t>(slot.reading)];
        input.nominal = from_bare(slot.turned ? -value : value, input.nominal);
        input.low = input.high = input.nominal;
        if (!input.given) input.known = Known::measured;
        input.given = true;
    });
}

}  // namespace sillwalk::engine
