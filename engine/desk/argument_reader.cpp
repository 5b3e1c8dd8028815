#include "engine/desk/argument_reader.hpp"

#include <cmath>

namespace sillwalk::engine {

void ArgumentReader::keep(std::string_view key, std::string message) {
    if (!error_) {
        error_ = Error{ErrorCode::bad_input, std::move(message), std::string(key)};
    }
}

Acceleration ArgumentReader::gravity() {
    return optional("g", parse_acceleration).value_or(standard_gravity);
}

std::optional<Force> ArgumentReader::optional_load(std::string_view key, Acceleration g) {
    const auto found = arguments_.find(key);
    if (found == arguments_.end()) {
        return std::nullopt;
    }
    const auto mass = parse_mass(found->second);
    return mass ? weight_of(*mass, g) : optional(key, parse_force);
}

Force ArgumentReader::load(std::string_view key, Acceleration g) {
    const auto mass = arguments_.contains(key) ? optional_load(key, g) : std::nullopt;
    return mass ? *mass : required(key, parse_force);
}

int ArgumentReader::count(std::string_view key) {
    const double value = required(key, parse_number);
    if (value != std::floor(value) || std::abs(value) > 1000) {
        keep(key, "must be a whole number up to 1000");
        return 0;
    }
    return static_cast<int>(value);
}

}  // namespace sillwalk::engine
