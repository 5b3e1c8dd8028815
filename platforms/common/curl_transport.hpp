#pragma once
/// The network by libcurl: TLS 1.2 or newer with the certificate checked, no redirect followed, deadlines, answers of
/// limited size.

#include "app/sync/transport.hpp"

#include <memory>
#include <string>

namespace sillwalk::platforms {

struct CurlOptions {
    std::string url;          ///< of the office, no slash at the end
    std::string pin;          ///< "sha256//<base64>"; empty: none
    std::string certificate;  ///< a file of certificates to trust in place of the system's; empty: the system's
    long connect_seconds = 15;
    long idle_seconds = 30;  ///< without a byte either way
    long whole_seconds = 300;
};

class CurlTransport : public app::Transport {
public:
    explicit CurlTransport(CurlOptions options);
    ~CurlTransport() override;
    CurlTransport(const CurlTransport&) = delete;
    CurlTransport& operator=(const CurlTransport&) = delete;

    [[nodiscard]] app::WireResult send(const app::WireRequest& request) override;
    void stop() override;

private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

}  // namespace sillwalk::platforms
