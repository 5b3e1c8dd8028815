#pragma once
/// From a sealed revision to the envelope that travels.

#include "app/storage/identity.hpp"
#include "app/storage/seal.hpp"

#include <optional>
#include <string>

namespace sillwalk::app {

/// The canonical text. A revision of this device carries its signature, under the id by which the office knows the
/// device where it does; one that came from elsewhere carries what came with it.
[[nodiscard]] std::string envelope_of(const Digest& digest, const StoredRevision& revision,
                                      const DeviceIdentity& device, const std::optional<OfficeAccess>& office);

}  // namespace sillwalk::app
