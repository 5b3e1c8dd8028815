#pragma once
/// Who this device is, and the office that took it in. Both stand in the database and nowhere else.

#include "app/bundle/digest.hpp"
#include "app/bundle/envelope.hpp"
#include "app/storage/database.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>

namespace sillwalk::app {

/// Made once, from the system's random bytes, and never changed: revisions name the device, signatures its key.
struct DeviceIdentity {
    std::string device_id;  ///< UUID
    std::array<std::uint8_t, 32> seed{};
    [[nodiscard]] SigningKey key() const { return signing_key_from_seed(seed); }
};

struct OfficeAccess {
    std::string url;        ///< "https://office.example", no slash at the end
    std::string device_id;  ///< by which the office knows this device and its key
    std::string token;
    std::int64_t expires_ms = 0;
    std::string key_id;      ///< of the office's key
    PublicKey public_key{};  ///< with which receipts are checked
    std::string pin;         ///< "sha256//<base64>" of the server's public key; empty: the system's trust alone
};

/// The stored one, or `fresh`, which is then stored.
[[nodiscard]] engine::Result<DeviceIdentity> device_identity(Database& database, const DeviceIdentity& fresh);

[[nodiscard]] engine::Result<std::optional<DeviceIdentity>> load_device(Database& database);

[[nodiscard]] engine::Result<std::optional<OfficeAccess>> load_office(Database& database);
[[nodiscard]] engine::Result<void> store_office(Database& database, const OfficeAccess& office);

}  // namespace sillwalk::app
