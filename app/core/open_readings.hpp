#pragma once
/// What the answer for a cart still waits for, and where it is read.

#include "app/core/action.hpp"
#include "engine/model/advice.hpp"

#include <vector>

namespace sillwalk::app {

struct OpenReading {
    engine::ReadingRef ref;
    std::vector<engine::CheckId> checks;  ///< of the headline that wait for it
};
/// The most deciding first: the greatest share of the doubt where it was worked out, then the most checks that wait.
[[nodiscard]] std::vector<OpenReading> open_readings(const engine::CartAdvice& advice);

/// What opens the place where this reading is entered: a sheet, a choice, the route or the castors of the cart.
[[nodiscard]] Action action_for(const engine::ReadingRef& ref);

}  // namespace sillwalk::app
