#pragma once
/// One exchange with the office. Implementations: platforms/common/curl_transport (the network), and a fake in the
/// tests.

#include "engine/base/result.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::app {

using WireHeaders = std::vector<std::pair<std::string, std::string>>;

struct WireRequest {
    std::string method, path;  ///< "PUT", "/v1/revisions/<digest>"
    WireHeaders headers;
    std::string body;
};

struct WireResponse {
    int status = 0;
    WireHeaders headers{};
    std::string body{};

    /// The first value of that name, whatever the case of its letters; empty where there is none.
    [[nodiscard]] std::string header(std::string_view name) const;
};

/// Why no answer came. They are all tried again; they differ in what a person is told.
enum class WireFault {
    unreachable,  ///< no network, no such host, nobody answers there
    broken,       ///< cut off or too slow on the way
    untrusted,    ///< the certificate or the pinned key is not the office's
};

using WireResult = tl::expected<WireResponse, WireFault>;

class Transport {
public:
    virtual ~Transport() = default;
    /// Follows no redirect, keeps to its own deadlines, never throws.
    [[nodiscard]] virtual WireResult send(const WireRequest& request) = 0;
    /// From any thread: what is being sent ends within about a second, and nothing more is sent. The program ends.
    virtual void stop() {}
};

}  // namespace sillwalk::app
