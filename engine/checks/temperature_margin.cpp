#include "engine/checks/temperature_margin.hpp"

#include <algorithm>

namespace sillwalk::engine {

std::optional<RatedMaximum> rated_maximum(Judge& judge, const CheckContext& context) {
    const Wheel& wheel = *context.wheel;
    if (wheel.temperature_max) return RatedMaximum{*wheel.temperature_max, 0};
    if (wheel.construction == Construction::one_piece_urethane) {
        judge.assume(Assumption::practice_figure);
        const auto& figure = context.tables->practice.urethane_rated_max;
        return RatedMaximum{figure.value, figure.citation};
    }
    judge.missing_figure();
    return std::nullopt;
}

double use_of_margin(TemperatureChange margin, const Practice& practice) {
    return std::max(0.0, 1.0 - practice.cold_use_per_kelvin.value * margin.in(kelvin_step));
}

Part part_of_heat(const CheckContext& context, Temperature hot, const RatedMaximum& limit) {
    Part part;
    part.demand = amount(hot);
    part.capacity = amount(limit.value);
    part.use = use_of_margin(limit.value - hot, context.tables->practice);
    return part;
}

}  // namespace sillwalk::engine
