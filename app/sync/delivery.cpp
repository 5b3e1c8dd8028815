#include "app/sync/delivery.hpp"

#include "app/bundle/canonical.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace sillwalk::app {

namespace {

constexpr std::string_view uploads = "/v1/uploads/";

bool is_upload_path(const std::string& path) {
    return path.size() > uploads.size() && path.size() <= 200 && path.starts_with(uploads) &&
           std::all_of(path.begin() + static_cast<std::ptrdiff_t>(uploads.size()), path.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

/// Where the office says it stands; nothing where that cannot be.
std::optional<std::int64_t> offset_told(const Delivery& delivery, const WireResponse& response) {
    const auto offset = retry_after_s(response.header("Upload-Offset"));  // a whole number as well
    if (!offset || *offset > delivery.size) return std::nullopt;
    return offset;
}

bool names_the_blob(const WireResponse& response, const Digest& digest) {
    JsonErrors errors;
    const auto body = parse_strict(response.body, errors, {4096, 4, 64, 64, 1024});
    if (!body || !body->is_object()) return false;
    const auto name = body->find("sha256");
    return name != body->end() && name->is_string() && name->get_ref<const std::string&>() == to_hex(digest);
}

void forget_upload(Delivery& delivery) {
    delivery.upload_path.clear();
    delivery.offset = 0;
    delivery.offset_known = true;
}

Fate smaller(Delivery& delivery) {
    if (delivery.part_bytes <= least_part_bytes) return Fate::park;
    delivery.part_bytes = std::max(least_part_bytes, delivery.part_bytes / 2);
    return Fate::smaller;
}

Fate begun(Delivery& delivery, const WireResponse& response) {
    const std::string path = response.header("Location");
    if (!is_upload_path(path)) return Fate::back_off;
    delivery.upload_path = path;
    delivery.offset = 0;
    delivery.offset_known = true;
    return Fate::go_on;
}

/// After an append that was taken, or the answer to where the office stands.
Fate moved(Delivery& delivery, const WireResponse& response, Fate fate) {
    const auto offset = offset_told(delivery, response);
    const bool stands_still = delivery.offset_known && offset == delivery.offset;
    if (!offset || stands_still) {
        forget_upload(delivery);
        return Fate::back_off;
    }
    delivery.offset = *offset;
    delivery.offset_known = true;
    if (*offset == delivery.size)
        forget_upload(delivery);  // all of it, but it was not closed: the office sorts that out
    return fate;
}

WireRequest revision_request(const Delivery& delivery, std::string_view bytes) {
    return {
        "PUT",
        "/v1/revisions/" + to_hex(delivery.digest),
        {{"Content-Type", "application/json"}, {"Content-Digest", digest_field(sha256(bytes))}, {"If-None-Match", "*"}},
        std::string(bytes)};
}

WireRequest append_request(const Delivery& delivery, std::string_view bytes) {
    const auto start = static_cast<std::size_t>(delivery.offset);
    const std::string_view part = bytes.substr(start, static_cast<std::size_t>(delivery.part_bytes));
    const bool last = start + part.size() == bytes.size();
    return {"PATCH",
            delivery.upload_path,
            {{"Content-Type", "application/partial-upload"},
             {"Upload-Offset", std::to_string(start)},
             {"Upload-Complete", last ? "?1" : "?0"},
             {"Upload-Draft-Interop-Version", "8"},
             {"Content-Digest", digest_field(sha256(part))}},
            std::string(part)};
}

WireRequest blob_request(const Delivery& delivery, std::string_view bytes, Asked asked) {
    const std::string path = "/v1/blobs/" + to_hex(delivery.digest);
    if (asked == Asked::whole_blob) {
        return {"PUT",
                path,
                {{"Content-Type", "application/octet-stream"},
                 {"Content-Digest", digest_field(delivery.digest)},
                 {"If-None-Match", "*"}},
                std::string(bytes)};
    }
    if (asked == Asked::begin_upload) {
        return {"POST",
                path + "/uploads",
                {{"Upload-Complete", "?0"},
                 {"Upload-Length", std::to_string(bytes.size())},
                 {"Upload-Draft-Interop-Version", "8"},
                 {"Repr-Digest", digest_field(delivery.digest)}},
                {}};
    }
    if (asked == Asked::upload_state) return {"HEAD", delivery.upload_path, {}, {}};
    return append_request(delivery, bytes);
}

}  // namespace

std::string digest_field(const Digest& digest) {
    return fmt::format("sha-256=:{}:", to_base64(byte_view(digest)));
}

Asked next_question(const Delivery& delivery) {
    if (delivery.kind == OutboxKind::revision) return Asked::revision;
    if (delivery.upload_path.empty())
        return delivery.size <= delivery.part_bytes ? Asked::whole_blob : Asked::begin_upload;
    return delivery.offset_known ? Asked::append : Asked::upload_state;
}

WireRequest next_request(const Delivery& delivery, std::string_view bytes, const std::string& token) {
    const Asked asked = next_question(delivery);
    WireRequest request =
        asked == Asked::revision ? revision_request(delivery, bytes) : blob_request(delivery, bytes, asked);
    request.headers.emplace_back("Authorization", "Bearer " + token);
    return request;
}

Fate take_answer(Delivery& delivery, Asked asked, const WireResult& result) {
    const Fate fate = fate_of(asked, result);
    if (fate == Fate::begin_anew) forget_upload(delivery);
    if (fate == Fate::smaller) return smaller(delivery);
    if (fate == Fate::back_off && asked == Asked::append) delivery.offset_known = false;
    if (!result) return fate;
    if (fate == Fate::go_on && asked == Asked::begin_upload) return begun(delivery, *result);
    if (fate == Fate::seek || fate == Fate::go_on) return moved(delivery, *result, fate);
    // A revision's word is its receipt, which the sender checks.
    if (fate == Fate::stored && asked != Asked::revision && !names_the_blob(*result, delivery.digest))
        return Fate::back_off;
    return fate;
}

}  // namespace sillwalk::app
