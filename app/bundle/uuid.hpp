#pragma once
/// UUIDs of RFC 9562: version 7 for new things, version 5 for things that already have a name of their own.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace sillwalk::app {

/// Canonical lower-case text. `random` must come from the system's generator.
[[nodiscard]] std::string uuid_v7(std::int64_t unix_ms, const std::array<std::uint8_t, 10>& random);
/// From a name space UUID and a name; SHA-1 by the standard's definition.
[[nodiscard]] std::string uuid_v5(std::string_view name_space, std::string_view name);
/// "xxxxxxxx-xxxx-xxxx-xxxx-xxxxxxxxxxxx" in lower-case hex.
[[nodiscard]] bool is_uuid(std::string_view text);

}  // namespace sillwalk::app
