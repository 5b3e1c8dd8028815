#include "app/office/api.hpp"

#include "app/bundle/uuid.hpp"

#include <algorithm>
#include <charconv>

namespace sillwalk::office {

namespace {

constexpr int tries_a_minute = 20;
constexpr std::size_t longest_name = 100;

/// Parts of "/v1/a/b"; nothing where a character stands in it that no path of ours has.
std::optional<std::vector<std::string>> parts_of(std::string_view path) {
    const bool plain = std::all_of(path.begin(), path.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '/' || c == '-';
    });
    if (!plain || !path.starts_with("/v1/")) return std::nullopt;
    std::vector<std::string> out;
    path.remove_prefix(4);
    for (;;) {
        const auto slash = path.find('/');
        out.emplace_back(path.substr(0, slash));
        if (out.back().empty()) return std::nullopt;
        if (slash == std::string_view::npos) return out;
        path.remove_prefix(slash + 1);
    }
}

bool sensible_name(const std::string& name) {
    return !name.empty() && name.size() <= longest_name &&
           std::none_of(name.begin(), name.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; });
}

}  // namespace

HttpResponse with_header(HttpResponse response, std::string name, std::string value) {
    response.headers.emplace_back(std::move(name), std::move(value));
    return response;
}

HttpResponse json_response(int status, const Json& body) {
    return {
        status,
        {{"Content-Type", "application/json"}, {"Cache-Control", "no-store"}, {"X-Content-Type-Options", "nosniff"}},
        app::canonical_json(body),
        {}};
}

HttpResponse unreadable(const app::JsonErrors& errors) {
    const auto& [code, message, where] = errors.front();
    return problem(400, "schema", "The request cannot be read", where.empty() ? message : where + ": " + message);
}
HttpResponse not_found() {
    return problem(404, "not-found", "Not found", "There is nothing under this address");
}
HttpResponse not_allowed(std::string_view allowed) {
    return with_header(problem(405, "method", "Not possible here", "Another method is needed"), "Allow",
                       std::string(allowed));
}

HttpResponse failed(const engine::Error& error) {
    if (error.code == engine::ErrorCode::not_found) return not_found();
    if (error.code == engine::ErrorCode::disagreement)
        return problem(422, "digest-mismatch", "Content does not match its digest", error.message);
    if (error.where == "full")
        return problem(507, "storage-full", "The office's storage is full", "Nothing was stored", "later");
    return with_header(problem(503, "busy", "The office cannot store now", "Nothing was stored", "later"),
                       "Retry-After", "5");
}

std::optional<Digest> digest_field(std::string_view value) {
    constexpr std::string_view start = "sha-256=:";
    if (!value.starts_with(start) || !value.ends_with(":") || value.size() <= start.size()) return std::nullopt;
    const auto bytes = app::from_base64(value.substr(start.size(), value.size() - start.size() - 1));
    Digest digest{};
    if (!bytes || bytes->size() != digest.size()) return std::nullopt;
    std::copy(bytes->begin(), bytes->end(), digest.begin());
    return digest;
}

std::optional<HttpResponse> wrong_content(const HttpRequest& request) {
    const std::string_view field = request.header("content-digest");
    if (field.empty()) return std::nullopt;
    const auto digest = digest_field(field);
    if (!digest) return problem(400, "malformed", "The header cannot be read", "content-digest is no sha-256=:…:");
    if (*digest == app::sha256(request.body)) return std::nullopt;
    return problem(422, "digest-mismatch", "Content does not match its digest", "The body has another digest", "later");
}

std::optional<std::int64_t> whole_number(std::string_view text) {
    std::int64_t out = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), out);
    if (text.empty() || end.ptr != text.data() + text.size() || end.ec != std::errc() || out < 0) return std::nullopt;
    return out;
}

std::string query_value(const std::string& query, std::string_view name) {
    std::string_view rest = query;
    while (!rest.empty()) {
        const auto end = std::min(rest.find('&'), rest.size());
        const std::string_view pair = rest.substr(0, end);
        if (pair.size() > name.size() && pair.starts_with(name) && pair[name.size()] == '=')
            return std::string(pair.substr(name.size() + 1));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return "";
}

HttpResponse Api::handle(const HttpRequest& request) {
    const auto parts = parts_of(request.path);
    if (!parts) return not_found();
    if (*parts == Parts{"service"}) return request.method == "GET" ? service() : not_allowed("GET");
    if (*parts == Parts{"enrolments"}) return request.method == "POST" ? enrol(request) : not_allowed("POST");
    return with_device(request, *parts);
}

HttpResponse Api::service() const {
    return json_response(200,
                         {{"formats", {app::envelope_format, app::revision_format}},
                          {"key", {{"kid", store_.key_id()}, {"public_key", app::to_hex(store_.key().public_key)}}},
                          {"limits",
                           {{"envelope_bytes", std::int64_t{1} << 20},
                            {"append_bytes", greatest_append},
                            {"blob_bytes", app::greatest_blob_bytes},
                            {"blobs", static_cast<std::int64_t>(app::greatest_blobs)}}},
                          {"now_ms", store_.now_ms()}});
}

HttpResponse Api::enrol(const HttpRequest& request) {
    const std::int64_t minute = store_.now_ms() / minute_ms;
    {
        const std::lock_guard lock(tries_mutex_);
        if (tries_minute_ != minute) failed_tries_ = 0;
        tries_minute_ = minute;
        if (failed_tries_ >= tries_a_minute)
            return with_header(problem(429, "busy", "Too many wrong codes", "Wait a minute", "later"), "Retry-After",
                               "60");
    }
    app::JsonErrors errors;
    const auto document = app::parse_strict(request.body, errors, {4096, 2, 8, 64, 1024});
    std::string code, key, name;
    if (document) {
        app::JsonObject object(*document, "", errors);
        code = object.text("code").value_or("");
        key = object.text("public_key").value_or("");
        name = object.text("device_name").value_or("");
        if (object.has("public_key") && !app::digest_from_hex(key)) object.error("public_key", "no 64 hex digits");
        if (object.has("device_name") && !sensible_name(name)) object.error("device_name", "1 to 100 bytes of text");
    }
    if (!errors.empty()) return unreadable(errors);
    auto enrolled = store_.enrol(code, key, name);
    if (!enrolled && enrolled.error().code == engine::ErrorCode::not_found) {
        const std::lock_guard lock(tries_mutex_);
        ++failed_tries_;
        return problem(401, "enrolment-code", "This code does not work", "It is wrong, used or older than 15 minutes");
    }
    if (!enrolled) return failed(enrolled.error());
    return json_response(
        201, {{"device_id", enrolled->device_id}, {"token", enrolled->token}, {"expires_ms", enrolled->expires_ms}});
}

HttpResponse Api::rotate(const Device& device) {
    auto fresh = store_.rotate(device);
    if (!fresh) return failed(fresh.error());
    return json_response(201,
                         {{"device_id", fresh->device_id}, {"token", fresh->token}, {"expires_ms", fresh->expires_ms}});
}

HttpResponse Api::with_device(const HttpRequest& request, const Parts& parts) {
    constexpr std::string_view scheme = "Bearer ";
    const std::string_view authorization = request.header("authorization");
    const auto ask = [](std::string_view type, std::string_view detail) {
        return with_header(problem(401, type, "This device is not let in", detail, "after-auth"), "WWW-Authenticate",
                           "Bearer");
    };
    if (!authorization.starts_with(scheme)) return ask("unknown-device", "A token is needed");
    auto caller = store_.caller(std::string(authorization.substr(scheme.size())));
    if (!caller) return failed(caller.error());
    if (caller->access == Access::revoked) return ask("revoked-device", "The office has withdrawn this device");
    if (caller->access == Access::expired) return ask("unknown-device", "The token is too old; enrol again");
    if (caller->access != Access::granted) return ask("unknown-device", "The token is not known");

    const Device& device = caller->device;
    const std::string& first = parts[0];
    if (parts == Parts{"tokens"}) return request.method == "POST" ? rotate(device) : not_allowed("POST");
    if (parts == Parts{"changes"}) return request.method == "GET" ? changes(request) : not_allowed("GET");
    if (first == "blobs" && (parts.size() == 2 || parts.size() == 3)) return blobs(request, parts, device);
    if (first == "revisions" && parts.size() == 2) return revisions(request, parts[1], device);
    if (first == "uploads" && parts.size() == 2) return uploads(request, parts[1], device);
    if (first == "receipts" && parts.size() == 2)
        return request.method == "GET" ? receipt(parts[1]) : not_allowed("GET");
    if (first == "surveys" && parts.size() == 3 && parts[2] == "heads" && app::is_uuid(parts[1]))
        return request.method == "GET" ? heads(parts[1]) : not_allowed("GET");
    return not_found();
}

}  // namespace sillwalk::office
