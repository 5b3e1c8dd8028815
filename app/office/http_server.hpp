#pragma once
/// The HTTP/1.1 server: strict about what it takes, bounded in what it keeps. Only http_server.cpp knows the library.

#include "app/office/http.hpp"
#include "engine/base/result.hpp"

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>

namespace sillwalk::office {

struct HttpOptions {
    std::string address = "127.0.0.1";
    std::uint16_t port = 0;  ///< 0 = any free one
    std::size_t handler_threads = 64;
    std::size_t connections = 256;                  ///< more are answered 503
    std::size_t header_bytes = 16u << 10;           ///< more: 431
    std::size_t header_count = 64;                  ///< more: 431
    std::size_t body_bytes = 1u << 20;              ///< more: 413
    std::chrono::milliseconds header_time{10'000};  ///< from the first byte to the end of the headers; else 408
    std::chrono::milliseconds body_time{60'000};    ///< for the body, and again for the answer
    std::chrono::milliseconds idle_time{60'000};    ///< between requests; then the connection is closed
};

using HttpHandler = std::function<HttpResponse(const HttpRequest&)>;

class HttpServer {
public:
    /// Listens at once; requests are answered on threads of its own.
    [[nodiscard]] static engine::Result<std::unique_ptr<HttpServer>> start(const HttpOptions& options,
                                                                           HttpHandler handler);
    /// Finishes the requests that are being handled.
    ~HttpServer();
    [[nodiscard]] std::uint16_t port() const;
    /// Returns after SIGINT or SIGTERM.
    void wait_for_signal();

    struct Inside;

private:
    explicit HttpServer(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

/// One request to a server on this machine: how the commands reach an office that is being served.
[[nodiscard]] engine::Result<HttpResponse> http_request_here(std::uint16_t port, const HttpRequest& request);

/// What the raw text of a header tells, or the refusal. The text ends with its empty line.
struct HeaderCheck {
    int refuse_status = 0;  ///< 0 = fine
    std::string why;
    bool expects_continue = false;
};
[[nodiscard]] HeaderCheck check_header(std::string_view text, const HttpOptions& options);

}  // namespace sillwalk::office
