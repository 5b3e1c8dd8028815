#pragma once
/// Random things of the system's generator, for what is made once.

#include "app/storage/identity.hpp"

#include <cstdint>

namespace sillwalk::app {

/// A new device with a new key; device_identity() stores it where there is none yet.
[[nodiscard]] DeviceIdentity fresh_identity(std::int64_t utc_ms);

/// Uniform in [0, 1), for jitter.
[[nodiscard]] double random_share();

}  // namespace sillwalk::app
