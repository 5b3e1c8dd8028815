#pragma once
/// An office in memory that keeps to docs/reference/office.md, and a network that can be told to misbehave.

#include "app/bundle/canonical.hpp"
#include "app/bundle/envelope.hpp"
#include "app/sync/delivery.hpp"
#include "app/sync/receipt.hpp"
#include "app/sync/transport.hpp"

#include <algorithm>
#include <deque>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace sillwalk::test {

using app::Json;
using app::WireFault;
using app::WireRequest;
using app::WireResponse;
using app::WireResult;

inline app::SigningKey seeded_key(std::uint8_t seed) {
    std::array<std::uint8_t, 32> bytes{};
    bytes.fill(seed);
    return app::signing_key_from_seed(bytes);
}

class FakeOffice : public app::Transport {
public:
    /// What the network does with one exchange.
    enum class Way { pass, lose_request, lose_answer };

    std::function<Way(const WireRequest&)> network = [](const WireRequest&) { return Way::pass; };
    /// Answers that come in place of the office's own, one an exchange.
    std::deque<WireResult> instead;
    std::size_t greatest_append = std::size_t{1} << 20;
    std::string token = "token";
    app::SigningKey key = seeded_key(7);
    std::string key_id = "office-key";
    std::string code = "code";  ///< of the next enrolment; used up by it
    bool forked = false;        ///< another version of each visit stands beside the one that comes

    std::map<std::string, std::string> revisions;  ///< digest -> envelope as it came first
    std::map<std::string, std::string> blobs;
    std::vector<WireRequest> seen;
    std::size_t blob_bytes_received = 0;
    std::string device_name;  ///< of the last enrolment

    WireResult send(const WireRequest& request) override {
        seen.push_back(request);
        const Way way = network(request);
        if (way == Way::lose_request) return tl::make_unexpected(WireFault::broken);
        if (!instead.empty()) {
            WireResult answer = instead.front();
            instead.pop_front();
            return answer;
        }
        WireResponse answer = handle(request);
        if (way == Way::lose_answer) return tl::make_unexpected(WireFault::broken);
        return answer;
    }

    [[nodiscard]] std::string receipt(const std::string& digest) const {
        Json missing = Json::array();
        const auto envelope = app::read_envelope(revisions.at(digest));
        for (const auto& blob : envelope->blobs) {
            if (blobs.count(app::to_hex(blob.digest)) == 0) missing.push_back(app::to_hex(blob.digest));
        }
        const bool complete = missing.empty();
        Json heads = {digest};
        if (forked) heads.push_back(std::string(64, 'f'));
        const Json body{{"format", app::receipt_format},
                        {"digest", digest},
                        {"survey_id", envelope->survey_id},
                        {"stored_at_ms", 1},
                        {"seq", 1},
                        {"missing_blobs", missing},
                        {"complete", complete},
                        {"heads", heads},
                        {"fork", forked}};
        const auto signature = app::sign(key, app::receipt_format, app::sha256(app::canonical_json(body)));
        return app::canonical_json(
            {{"receipt", body},
             {"sig",
              {{{"alg", "Ed25519"}, {"kid", key_id}, {"value", app::to_base64url(app::byte_view(signature))}}}}});
    }

private:
    struct Upload {
        std::string digest, bytes;
        std::size_t length = 0;
    };

    static std::string header(const WireRequest& request, const std::string& name) {
        for (const auto& [key_name, value] : request.headers) {
            if (key_name == name) return value;
        }
        return {};
    }
    static WireResponse stored(int status, const std::string& digest) {
        return {status, {}, app::canonical_json({{"sha256", digest}, {"stored", true}})};
    }

    WireResponse enrolment(const WireRequest& request) {
        const Json asked = Json::parse(request.body);
        if (code.empty() || asked.at("code") != code) return {401, {}, "{}"};
        code.clear();
        device_name = asked.at("device_name");
        return {201,
                {},
                app::canonical_json({{"device_id", "018f3c1a-0000-7000-8000-00000000eeee"},
                                     {"token", token},
                                     {"expires_ms", std::int64_t{1} << 52}})};
    }

    WireResponse handle(const WireRequest& request) {
        if (request.path == "/v1/service") {
            const std::string public_key = app::to_hex(app::byte_view(key.public_key));
            return {200, {}, app::canonical_json({{"key", {{"kid", key_id}, {"public_key", public_key}}}})};
        }
        if (request.path == "/v1/enrolments") return enrolment(request);
        if (header(request, "Authorization") != "Bearer " + token) return {401, {}, "{}"};
        const std::string& path = request.path;
        const auto last = path.substr(path.rfind('/') + 1);
        if (path == "/v1/tokens") return {503, {}, "{}"};
        if (path.starts_with("/v1/revisions/")) return put_revision(request, last);
        if (path.starts_with("/v1/receipts/"))
            return revisions.count(last) != 0 ? WireResponse{200, {}, receipt(last)} : WireResponse{404, {}, "{}"};
        if (path.starts_with("/v1/uploads/")) return upload(request, last);
        if (request.method == "POST") return begin(request, path.substr(10, 64));
        return put_blob(request, last);
    }

    WireResponse put_revision(const WireRequest& request, const std::string& digest) {
        const auto envelope = app::read_envelope(request.body);
        if (!envelope) return {422, {}, R"({"type":"urn:sillwalk:problem:schema","retry":"never"})"};
        if (app::to_hex(envelope->digest) != digest) return {422, {}, R"({"retry":"never"})"};
        const bool fresh = revisions.emplace(digest, request.body).second;
        return {fresh ? 201 : 412, {}, receipt(digest)};
    }

    WireResponse put_blob(const WireRequest& request, const std::string& digest) {
        blob_bytes_received += request.body.size();
        if (request.body.size() > greatest_append) return {413, {}, "{}"};
        if (app::to_hex(app::sha256(request.body)) != digest) return {422, {}, R"({"retry":"never"})"};
        return stored(blobs.emplace(digest, request.body).second ? 201 : 412, digest);
    }

    WireResponse begin(const WireRequest& request, const std::string& digest) {
        if (blobs.count(digest) != 0) return stored(412, digest);
        const std::string id = "u" + std::to_string(uploads_.size() + 1);
        uploads_[id] = {digest, {}, std::stoul(header(request, "Upload-Length"))};
        return {201, {{"Location", "/v1/uploads/" + id}}, {}};
    }

    WireResponse upload(const WireRequest& request, const std::string& id) {
        const auto found = uploads_.find(id);
        if (found == uploads_.end()) return {404, {}, "{}"};
        Upload& one = found->second;
        const auto at = [&] { return std::to_string(one.bytes.size()); };
        if (request.method == "HEAD") return {204, {{"upload-offset", at()}}, {}};
        blob_bytes_received += request.body.size();
        if (request.body.size() > greatest_append) return {413, {}, "{}"};
        if (header(request, "Upload-Offset") != at()) return {409, {{"Upload-Offset", at()}}, "{}"};
        one.bytes += request.body;
        if (header(request, "Upload-Complete") != "?1") return {204, {{"Upload-Offset", at()}}, {}};
        const std::string digest = one.digest;
        if (app::to_hex(app::sha256(one.bytes)) != digest) return {422, {}, R"({"retry":"never"})"};
        blobs[digest] = one.bytes;
        uploads_.erase(found);
        return stored(201, digest);
    }

    std::map<std::string, Upload> uploads_;
};

}  // namespace sillwalk::test
