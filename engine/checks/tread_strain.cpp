#include "engine/checks/tread_strain.hpp"

#include "engine/physics/elastic.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {
namespace {

constexpr Temperature made_at = celsius(23.0);
constexpr double coldest_fit_C = -40.0, hottest_fit_C = 80.0;
constexpr int slices = 12;  // within 1 % of many

/// The tread's Shore D where the fit of hard urethane holds for it.
std::optional<double> fitted_shore_d(const CheckContext& context) {
    if (context.tread->family != MaterialFamily::urethane || !context.wheel->hardness) return std::nullopt;
    const Hardness& hardness = *context.wheel->hardness;
    const Result<double> shore_d =
        hardness.scale == HardnessScale::shore_d ? Result<double>(hardness.value) : shore_d_from_a(hardness.value);
    if (!shore_d || !modulus_urethane(*shore_d)) return std::nullopt;
    return *shore_d;
}

std::optional<Pressure> modulus_at(const CheckContext& context, std::optional<double> shore_d, Temperature at) {
    if (shore_d) {
        const Temperature inside = celsius(std::clamp(at.celsius(), coldest_fit_C, hottest_fit_C));
        const auto modulus = modulus_urethane(*shore_d, inside, context.tread->soft_segment);
        return modulus ? std::optional<Pressure>(modulus->value) : std::nullopt;
    }
    if (!context.tread->modulus) return std::nullopt;
    return context.tread->modulus->value;
}

double expansion(const Figure<double>& figure, Corner corner, bool high) {
    if (corner == Corner::nominal) return figure.value;
    return (high ? figure.high : figure.low).value_or(figure.value);
}

}  // namespace

std::optional<Mismatch> mismatch_at(Judge& judge, const CheckContext& context, Temperature at) {
    const auto& tread = context.tread->expansion_per_kelvin;
    const auto& core = context.core->expansion_per_kelvin;
    const auto shore_d = fitted_shore_d(context);
    const auto modulus = modulus_at(context, shore_d, at);
    if (!tread || !core || !modulus) {
        judge.missing_figure();
        return std::nullopt;
    }
    const double apart = std::abs(expansion(*tread, context.corner, true) - expansion(*core, context.corner, false));
    const TemperatureChange slice = (at - made_at) / slices;
    Mismatch result;
    for (int k = 0; k < slices; ++k) {  // midpoints
        const auto here = modulus_at(context, shore_d, made_at + slice * (k + 0.5));
        result.stress += *here * (apart * std::abs(slice.in(kelvin_step)));
    }
    result.modulus = *modulus;
    result.strain = apart * std::abs((at - made_at).in(kelvin_step));
    result.citation_tread = tread->citation;
    result.citation_core = core->citation;
    return result;
}

}  // namespace sillwalk::engine
