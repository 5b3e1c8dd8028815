#pragma once
/// A request and an answer as values. What reads and writes them on a socket is http_server.hpp.

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::office {

struct HttpRequest {
    std::string method;                          ///< "GET"
    std::string path;                            ///< as sent, never decoded: what is not plain is not found
    std::string query;                           ///< behind the question mark, as sent
    std::map<std::string, std::string> headers;  ///< names in lower case
    std::string body;

    /// The header's value; empty where there is none.
    [[nodiscard]] std::string_view header(const std::string& name) const {
        const auto found = headers.find(name);
        return found == headers.end() ? std::string_view() : std::string_view(found->second);
    }
};

struct HttpResponse {
    int status = 200;
    std::vector<std::pair<std::string, std::string>> headers;
    std::string body;
    std::string file;  ///< sent from the disk in place of `body` where it is not empty
};

/// An answer of RFC 9457. `retry`: "never", "later" or "after-auth".
[[nodiscard]] HttpResponse problem(int status, std::string_view type, std::string_view title, std::string_view detail,
                                   std::string_view retry = "never");

}  // namespace sillwalk::office
