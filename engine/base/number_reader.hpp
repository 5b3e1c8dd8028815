#pragma once
/// Reads the number at the start of a text, without locale: "12.5", "-3e6", "1/4", "5 1/2", "5-1/2", "5½", "−20".

#include "engine/base/result.hpp"

#include <string_view>

namespace sillwalk::engine {

struct ReadNumber {
    double value = 0;
    std::string_view rest;  ///< what follows, without blanks at either end; points into the text
};

/// bad_input where the text does not start with a number, has a decimal comma or divides by zero.
[[nodiscard]] Result<ReadNumber> read_number(std::string_view text);

}  // namespace sillwalk::engine
