#include "engine/physics/guard.hpp"
#include "engine/physics/heat.hpp"

#include <cmath>

namespace sillwalk::engine {

Result<Temperature> dew_point(Temperature air, double humidity) {
    Guard guard;
    guard.finite(air.kelvin(), "temperature")
        .require(humidity > 0 && humidity <= 1, "humidity", "must be over 0 % and at most 100 %");
    if (guard.failed()) {
        return guard.failure();
    }
    constexpr double magnus_a = 17.62;
    constexpr double magnus_b = 243.12;  // C; both fitted over water from -45 to 60 C
    const double t = air.celsius();
    if (t < -45 || t > 60) {
        return no_answer("The dew point formula holds for air from -45 to 60 C.");
    }
    const double gamma = std::log(humidity) + magnus_a * t / (magnus_b + t);
    return celsius(magnus_b * gamma / (magnus_a - gamma));
}

}  // namespace sillwalk::engine
