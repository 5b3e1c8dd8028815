#include "app/sync/fresh_identity.hpp"

#include "app/bundle/uuid.hpp"
#include "engine/base/contract.hpp"

#include <sodium.h>

namespace sillwalk::app {

DeviceIdentity fresh_identity(std::int64_t utc_ms) {
    EXPECT_CONTRACT(sodium_init() >= 0);
    std::array<std::uint8_t, 10> bytes{};
    randombytes_buf(bytes.data(), bytes.size());
    DeviceIdentity device;
    device.device_id = uuid_v7(utc_ms, bytes);
    randombytes_buf(device.seed.data(), device.seed.size());
    return device;
}

double random_share() {
    EXPECT_CONTRACT(sodium_init() >= 0);
    return static_cast<double>(randombytes_random()) * 0x1.0p-32;
}

}  // namespace sillwalk::app
