#pragma once
/// How a device is taken in by an office: a one-time code and the device's public key against a token.

#include "app/storage/identity.hpp"
#include "app/sync/transport.hpp"

#include <string>

namespace sillwalk::app {

struct EnrolOrder {
    std::string url;   ///< of the office
    std::string code;  ///< as the person typed it
    std::string device_name;
    std::string pin;
    std::string office_key{};  ///< 64 hex digits that the office's key must be; empty: whatever it says
};

/// Asks the office for its key, then for a token. transport where no answer came or it wants us to wait, bad_input
/// where the code does not work or the answer makes no sense; `where` is a language key of "sync.why".
[[nodiscard]] engine::Result<OfficeAccess> enrol(Transport& transport, const EnrolOrder& order,
                                                 const DeviceIdentity& device);

/// Language key of what a person is told, with the address as its argument; empty where it is none of enrol()'s errors.
[[nodiscard]] std::string enrolment_reason(const engine::Error& error);

/// A fresh token against the present one, which the office takes until the fresh one was used. Errors as those of
/// enrol().
[[nodiscard]] engine::Result<OfficeAccess> renew_token(Transport& transport, const OfficeAccess& office);

/// https, or http to this machine itself; no path, no user, no slash at the end.
[[nodiscard]] bool is_office_address(std::string_view url);

}  // namespace sillwalk::app
