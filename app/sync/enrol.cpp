#include "app/sync/enrol.hpp"

#include "app/bundle/canonical.hpp"
#include "app/bundle/uuid.hpp"
#include "app/sync/retry.hpp"

#include <algorithm>
#include <array>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr std::int64_t greatest = (std::int64_t{1} << 53) - 1;

Result<WireResponse> ask(Transport& transport, const WireRequest& request) {
    auto answer = transport.send(request);
    if (!answer) {
        return engine::fail(ErrorCode::transport, "the office cannot be reached", reason_of(Asked::receipt, answer));
    }
    return std::move(*answer);
}

tl::unexpected<engine::Error> no_office(const std::string& detail) {
    return engine::bad_input("this is no office: " + detail, "sync.why.no_office");
}

Result<void> read_service(const WireResponse& response, OfficeAccess& office) {
    JsonErrors errors;
    const auto document = parse_strict(response.body, errors, {65536, 8, 500, 64, 1024});
    if (response.status != 200 || !document) return no_office("its service page cannot be read");
    JsonObject object(*document, "", errors);
    if (auto key = object.object("key")) {
        office.key_id = key->text("kid").value_or("");
        const auto public_key = digest_from_hex(key->text("public_key").value_or(""));
        if (!public_key) key->error("public_key", "no 64 hex digits");
        office.public_key = public_key.value_or(PublicKey{});
    }
    if (!errors.empty()) return no_office(errors.front().where + ": " + errors.front().message);
    return {};
}

Result<void> read_token(const WireResponse& response, OfficeAccess& office) {
    JsonErrors errors;
    const auto document = parse_strict(response.body, errors, {4096, 3, 16, 64, 1024});
    if (response.status != 201 || !document) return no_office("it gave no token");
    JsonObject object(*document, "", errors);
    office.device_id = object.text("device_id").value_or("");
    if (!is_uuid(office.device_id)) object.error("device_id", "no UUID");
    office.token = object.text("token").value_or("");
    const bool plain = !office.token.empty() && std::all_of(office.token.begin(), office.token.end(),
                                                            [](char c) { return c > 0x20 && c < 0x7f; });
    if (!plain) object.error("token", "no token");
    office.expires_ms = object.integer("expires_ms", 0, greatest).value_or(0);
    if (!errors.empty()) return no_office(errors.front().where + ": " + errors.front().message);
    return {};
}

}  // namespace

std::string enrolment_reason(const engine::Error& error) {
    constexpr std::string_view known = "sync.why.";
    const std::string_view where = error.where;
    return where.starts_with(known) ? "enrol.why." + std::string(where.substr(known.size())) : std::string();
}

bool is_office_address(std::string_view url) {
    constexpr std::array<std::string_view, 4> starts = {"https://", "http://127.0.0.1", "http://localhost",
                                                        "http://[::1]"};
    const auto start = std::find_if(starts.begin(), starts.end(), [&](auto one) { return url.starts_with(one); });
    if (start == starts.end() || url.size() > 200) return false;
    const std::string_view rest = url.substr(start->size());
    if (start == starts.begin() ? rest.empty() : !rest.empty() && rest.front() != ':') return false;
    return std::all_of(rest.begin(), rest.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' || c == '-' ||
               c == ':' || c == '[' || c == ']';
    });
}

Result<OfficeAccess> enrol(Transport& transport, const EnrolOrder& order, const DeviceIdentity& device) {
    OfficeAccess office;
    office.url = order.url;
    office.pin = order.pin;
    const auto service = ask(transport, {"GET", "/v1/service", {}, {}});
    if (!service) return tl::make_unexpected(service.error());
    if (auto done = read_service(*service, office); !done) return tl::make_unexpected(done.error());
    if (!order.office_key.empty() && order.office_key != to_hex(byte_view(office.public_key)))
        return engine::bad_input("this is another office than the one of the code", "sync.why.other_office");
    const Json body{{"code", order.code},
                    {"public_key", to_hex(byte_view(device.key().public_key))},
                    {"device_name", order.device_name}};
    const auto answer = ask(transport, {"POST",
                                        "/v1/enrolments",
                                        {{"Content-Type", "application/json"}},
                                        body.dump(-1, ' ', false, Json::error_handler_t::replace)});
    if (!answer) return tl::make_unexpected(answer.error());
    if (answer->status == 401)
        return engine::bad_input("the code does not work: it is wrong, used or older than 15 minutes", "sync.why.code");
    if (answer->status == 429)
        return engine::fail(ErrorCode::transport, "too many wrong codes; wait a minute", "sync.why.too_many");
    if (auto done = read_token(*answer, office); !done) return tl::make_unexpected(done.error());
    return office;
}

Result<OfficeAccess> renew_token(Transport& transport, const OfficeAccess& office) {
    const auto answer = ask(transport, {"POST", "/v1/tokens", {{"Authorization", "Bearer " + office.token}}, {}});
    if (!answer) return tl::make_unexpected(answer.error());
    OfficeAccess fresh = office;
    if (auto done = read_token(*answer, fresh); !done) return tl::make_unexpected(done.error());
    if (fresh.device_id != office.device_id) return no_office("its token is of another device");
    return fresh;
}

}  // namespace sillwalk::app
