#include "app/office/http.hpp"

#include "app/bundle/digest.hpp"
#include "app/data/json_reader.hpp"
#include "app/office/secret.hpp"

namespace sillwalk::office {

HttpResponse problem(int status, std::string_view type, std::string_view title, std::string_view detail,
                     std::string_view retry) {
    const app::Json body{{"type", "urn:sillwalk:problem:" + std::string(type)},
                         {"title", title},
                         {"status", status},
                         {"detail", detail},
                         {"instance", "urn:sillwalk:request:" + app::to_hex(random_bytes(8))},
                         {"retry", retry}};
    // Some of what is told came from outside: bad UTF-8 in it is replaced, not passed on.
    return {status,
            {{"Content-Type", "application/problem+json"},
             {"Cache-Control", "no-store"},
             {"X-Content-Type-Options", "nosniff"}},
            body.dump(-1, ' ', true, app::Json::error_handler_t::replace),
            {}};
}

}  // namespace sillwalk::office
