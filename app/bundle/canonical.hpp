#pragma once
/// Canonical JSON of a revision (RFC 8785, with the narrower rules of docs/reference/bundle.md) and its strict reader.
/// The format has no floating-point numbers and only ASCII member names, so a plain byte sort is the RFC's order.

#include "app/data/json_reader.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace sillwalk::app {

/// What a document from outside may cost, checked before any tree is built.
struct StrictLimits {
    std::size_t bytes = 1u << 20;
    int depth = 32;
    std::size_t nodes = 100'000;
    std::size_t key_bytes = 64;
    std::size_t string_bytes = 64u << 10;
};

/// Parses text that may come from anyone. One error, with a reason, on: too large, too deep, too many nodes, duplicate
/// or non-ASCII names, long names or strings, a floating-point number, an integer beyond 2^53 - 1, bad UTF-8, trailing
/// text.
[[nodiscard]] std::optional<Json> parse_strict(std::string_view text, JsonErrors& errors,
                                               const StrictLimits& limits = {});

/// The one text of the value. Contract: the value obeys the rules that parse_strict() enforces.
[[nodiscard]] std::string canonical_json(const Json& value);

}  // namespace sillwalk::app
