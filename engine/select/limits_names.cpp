#include "engine/model/advice.hpp"

#include <array>

namespace sillwalk::engine {
namespace {

constexpr std::array driver_names{"payload", "speed", "parked-loaded",    "rise",    "lip-bevel", "gap", "slot",
                                  "slope",   "stay",  "wash-temperature", "diameter"};
static_assert(driver_names.size() == static_cast<std::size_t>(Driver::diameter) + 1);

constexpr std::array condition_names{
    "payload",          "speed",        "parked",       "temperature_range", "temperature_max", "no_blows_below",
    "wash_temperature", "rinse_within", "watch_attack", "no_standing_hot",   "cross_rolling",   "assess_team",
    "degreased",        "h1_lubricant", "tight",        "figures_differ",    "read_again",      "assumed_readings"};
static_assert(condition_names.size() == static_cast<std::size_t>(ConditionKind::assumed_readings) + 1);

}  // namespace

const char* driver_name(Driver driver) {
    return driver_names[static_cast<std::size_t>(driver)];
}

const char* condition_key(ConditionKind kind) {
    return condition_names[static_cast<std::size_t>(kind)];
}

bool names_check(ConditionKind kind) {
    return kind >= ConditionKind::tight;
}

}  // namespace sillwalk::engine
