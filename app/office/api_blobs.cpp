// Photos: whole where they are small, else in appends with the field names of the IETF draft on resumable uploads
// (draft-ietf-httpbis-resumable-upload, interop version 8), without interim answers.

#include "app/bundle/uuid.hpp"
#include "app/office/api.hpp"

#include <fmt/format.h>

namespace sillwalk::office {

namespace {

std::string limits() {
    return fmt::format("max-size={}, max-append-size={}, max-age={}", app::greatest_blob_bytes, greatest_append,
                       upload_lifetime_ms / 1000);
}

HttpResponse state_of(int status, const Upload& upload) {
    return {status,
            {{"Upload-Offset", std::to_string(upload.received)},
             {"Upload-Complete", upload.received == upload.length ? "?1" : "?0"},
             {"Upload-Length", std::to_string(upload.length)},
             {"Upload-Limit", limits()},
             {"Cache-Control", "no-store"}},
            {},
            {}};
}

HttpResponse stored_response(int status, const std::string& digest) {
    return with_header(json_response(status, {{"sha256", digest}, {"stored", true}}), "Upload-Complete", "?1");
}

HttpResponse other_offset(const Upload& upload) {
    HttpResponse out = problem(409, "mismatching-upload-offset", "Another offset is needed",
                               fmt::format("{} bytes were received", upload.received), "later");
    out.headers.emplace_back("Upload-Offset", std::to_string(upload.received));
    out.headers.emplace_back("Upload-Complete", "?0");
    return out;
}

}  // namespace

HttpResponse Api::blobs(const HttpRequest& request, const Parts& parts, const Device& device) {
    if (parts.size() == 2 && parts[1] == "query")
        return request.method == "POST" ? query_blobs(request) : not_allowed("POST");
    const auto digest = app::digest_from_hex(parts[1]);
    if (!digest) return not_found();
    if (parts.size() == 3) {
        if (parts[2] != "uploads") return not_found();
        return request.method == "POST" ? new_upload(request, *digest, device) : not_allowed("POST");
    }
    if (request.method == "PUT") return put_blob(request, *digest);
    return request.method == "GET" ? get_blob(parts[1]) : not_allowed("GET, PUT");
}

HttpResponse Api::query_blobs(const HttpRequest& request) {
    app::JsonErrors errors;
    const auto document = app::parse_strict(request.body, errors);
    std::vector<std::string> digests;
    if (document) {
        app::JsonObject object(*document, "", errors);
        digests = object.texts("digests");
        if (digests.size() > app::greatest_blobs) object.error("digests", "more than 500");
        for (const std::string& digest : digests) {
            if (!app::digest_from_hex(digest)) object.error("digests", "no digest in it");
        }
    }
    if (!errors.empty()) return unreadable(errors);
    auto missing = store_.missing(digests);
    if (!missing) return failed(missing.error());
    return json_response(200, {{"missing", *missing}});
}

HttpResponse Api::put_blob(const HttpRequest& request, const Digest& digest) {
    if (request.body.empty()) return problem(400, "malformed", "The request cannot be read", "The body is empty");
    if (auto wrong = wrong_content(request)) return *wrong;
    auto fresh = store_.put_blob(digest, request.body);
    if (!fresh) return failed(fresh.error());
    return stored_response(*fresh ? 201 : request.header("if-none-match") == "*" ? 412 : 200, app::to_hex(digest));
}

HttpResponse Api::get_blob(const std::string& digest) {
    auto row = store_.blob(digest);
    if (!row) return failed(row.error());
    return {200,
            {{"Content-Type", row->media},
             {"ETag", "\"" + digest + "\""},
             {"Cache-Control", "private, max-age=31536000, immutable"},
             {"X-Content-Type-Options", "nosniff"},
             {"Content-Disposition", "attachment"}},
            {},
            store_.blobs().path(*app::digest_from_hex(digest))};
}

HttpResponse Api::new_upload(const HttpRequest& request, const Digest& digest, const Device& device) {
    const std::string hex = app::to_hex(digest);
    const auto length = whole_number(request.header("upload-length"));
    if (!length || *length == 0 || request.header("upload-complete") != "?0" || !request.body.empty())
        return problem(400, "malformed", "The request cannot be read",
                       "Needed: Upload-Complete: ?0, Upload-Length of 1 or more, and no body");
    if (*length > app::greatest_blob_bytes)
        return with_header(problem(413, "too-large", "The photo is too large", "8 MiB at most"), "Upload-Limit",
                           limits());
    const std::string_view whole = request.header("repr-digest");
    if (!whole.empty() && digest_field(whole) != digest)
        return problem(422, "digest-mismatch", "Content does not match its digest", "Repr-Digest is of another photo");
    auto missing = store_.missing({hex});
    if (!missing) return failed(missing.error());
    if (missing->empty()) return stored_response(412, hex);
    auto upload = store_.new_upload(digest, *length, device.id);
    if (!upload) return failed(upload.error());
    return with_header(state_of(201, *upload), "Location", "/v1/uploads/" + upload->id);
}

HttpResponse Api::uploads(const HttpRequest& request, const std::string& id, const Device& device) {
    if (!app::is_uuid(id)) return not_found();
    auto upload = store_.upload(id, device.id);
    if (!upload) return failed(upload.error());
    if (request.method == "HEAD") return state_of(204, *upload);
    if (request.method == "PATCH") return append(request, *upload, device);
    if (request.method != "DELETE") return not_allowed("HEAD, PATCH, DELETE");
    if (auto dropped = store_.drop_upload(id); !dropped) return failed(dropped.error());
    return {204, {}, {}, {}};
}

HttpResponse Api::append(const HttpRequest& request, const Upload& upload, const Device& device) {
    if (request.header("content-type") != "application/partial-upload")
        return problem(415, "media-type", "Another kind of content is needed", "Send application/partial-upload");
    const auto offset = whole_number(request.header("upload-offset"));
    const std::string_view last = request.header("upload-complete");
    if (!offset || (last != "?0" && last != "?1"))
        return problem(400, "malformed", "The request cannot be read",
                       "Needed: Upload-Offset, Upload-Complete ?0 or ?1");
    if (auto wrong = wrong_content(request)) return *wrong;
    if (*offset != upload.received) return other_offset(upload);
    const std::int64_t end = *offset + static_cast<std::int64_t>(request.body.size());
    if (end > upload.length || (last == "?1" && end != upload.length))
        return problem(400, "inconsistent-upload-length", "The lengths do not agree",
                       fmt::format("{} bytes were announced", upload.length));
    auto now = store_.append(upload.id, device.id, *offset, request.body);
    if (!now && now.error().where == "offset") {
        auto newer = store_.upload(upload.id, device.id);
        return newer ? other_offset(*newer) : failed(newer.error());
    }
    if (!now) return failed(now.error());
    if (last == "?0") return state_of(204, *now);
    auto fresh = store_.finish(*now);
    if (!fresh) return failed(fresh.error());
    return stored_response(201, upload.digest);
}

}  // namespace sillwalk::office
