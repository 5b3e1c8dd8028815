#pragma once
/// Checks of arguments that every formula needs. Names are the keys a person typed, so that an error can point at one.

#include "engine/base/result.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <string_view>

namespace sillwalk::engine {

/// Collects the first thing that is wrong. NaN and infinity are always wrong.
class Guard {
public:
    Guard& over_zero(double value, std::string_view name) {
        return require(std::isfinite(value) && value > 0, name, "must be over 0");
    }
    Guard& at_least_zero(double value, std::string_view name) {
        return require(std::isfinite(value) && value >= 0, name, "must be 0 or more");
    }
    Guard& finite(double value, std::string_view name) {
        return require(std::isfinite(value), name, "must be a finite number");
    }
    Guard& require(bool holds, std::string_view name, std::string_view message) {
        if (!holds && !error_) {
            error_ = Error{ErrorCode::bad_input, std::string(message), std::string(name)};
        }
        return *this;
    }
    [[nodiscard]] bool failed() const { return error_.has_value(); }
    [[nodiscard]] tl::unexpected<Error> failure() const { return tl::make_unexpected(*error_); }

private:
    std::optional<Error> error_;
};

}  // namespace sillwalk::engine
