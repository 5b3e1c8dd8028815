#include "engine/physics/elastic.hpp"
#include "engine/physics/guard.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {

namespace {

constexpr double lowest_shore_d = 30;
constexpr double highest_shore_d = 76;

/// log10 of the modulus in MPa at 23 C.
double log_modulus_23(double s) {
    return 0.90578 + 0.0057559 * s + 3.18779e-4 * s * s;
}

/// Glass transition, C.
double glass_transition(double s, bool ester) {
    return -27.6 + 1.373 * (s - 50) + (ester ? 11.9 : 0.0);
}

/// log10 of the modulus in MPa at a temperature.
double log_modulus(double s, double t, bool ester) {
    const double midpoint = glass_transition(s, ester) - 4.38;
    const double width = std::max(6 + 1.0757 * (s - 50), 6.0);
    const double softening = std::max(0.00451 + 0.00036 * (s - 50), 0.0005);
    const auto rubbery = [&](double at) { return 1 / (1 + std::exp(-(at - midpoint) / width)); };
    const auto glassy = [](double at) { return std::log10(2500.0) - 0.0012 * (at + 30); };
    const double drop = (glassy(23) - log_modulus_23(s)) / rubbery(23);
    return std::min(glassy(t) - (drop + softening * (t - 23)) * rubbery(t), std::log10(2900.0));
}

/// Judged band of the fit; between its ranges the wider neighbour holds.
double band(double s, double t) {
    if (t >= 10 && t <= 35) {
        return 1.6;
    }
    if (t > 35) {
        return 2.0;
    }
    return s >= 58 && t >= -30 ? 1.8 : 3.0;
}

}  // namespace

Result<Modulus> modulus_urethane(double shore_d, Temperature temperature, SoftSegment soft) {
    Guard guard;
    guard.over_zero(shore_d, "value").finite(temperature.kelvin(), "temperature");
    if (guard.failed()) {
        return guard.failure();
    }
    if (shore_d < lowest_shore_d || shore_d > highest_shore_d) {
        return no_answer("The fit for hard urethane holds for 30 to 76 Shore D.");
    }
    const double t = temperature.celsius();
    if (t < -40 - 1e-9 || t > 80 + 1e-9) {
        return no_answer("The fit for hard urethane holds from -40 to 80 C.");
    }
    const double ether = log_modulus(shore_d, t, false);
    const double ester = log_modulus(shore_d, t, true);
    const double least = soft == SoftSegment::ester   ? ester
                         : soft == SoftSegment::ether ? ether
                                                      : std::min(ether, ester);
    const double most = soft == SoftSegment::ester   ? ester
                        : soft == SoftSegment::ether ? ether
                                                     : std::max(ether, ester);
    const double wide = band(shore_d, t);
    return Modulus{std::pow(10.0, 0.5 * (least + most)) * megapascal, std::pow(10.0, least) / wide * megapascal,
                   std::pow(10.0, most) * wide * megapascal};
}

Result<UrethaneCold> urethane_cold(double shore_d, SoftSegment soft) {
    if (!(shore_d >= lowest_shore_d && shore_d <= highest_shore_d)) {
        return no_answer("The cold limits of urethane hold for 30 to 76 Shore D.");
    }
    const bool ester = soft != SoftSegment::ether;  // not known: the stricter limits
    const Temperature transition = celsius(glass_transition(shore_d, ester));
    UrethaneCold out{transition, std::nullopt, std::nullopt, transition + 5 * kelvin_step};
    if (shore_d >= 50) {
        out.brittle_struck = transition - 15 * kelvin_step;
        out.brittle_unstruck = transition - 35 * kelvin_step;
    }
    return out;
}

}  // namespace sillwalk::engine
