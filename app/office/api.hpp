#pragma once
/// The protocol between tablets and the office, version 1: docs/reference/office.md. A request in, an answer out; what
/// changed is on the disk when the answer is returned. Any thread.

#include "app/office/http.hpp"
#include "app/office/store.hpp"

#include <mutex>

namespace sillwalk::office {

class Api {
public:
    explicit Api(Store& store) : store_(store) {}
    /// Paths that start with "/v1/".
    [[nodiscard]] HttpResponse handle(const HttpRequest& request);

private:
    using Parts = std::vector<std::string>;  ///< of the path, behind "/v1"

    [[nodiscard]] HttpResponse service() const;
    [[nodiscard]] HttpResponse enrol(const HttpRequest& request);
    [[nodiscard]] HttpResponse with_device(const HttpRequest& request, const Parts& parts);
    [[nodiscard]] HttpResponse rotate(const Device& device);

    // api_revisions.cpp
    [[nodiscard]] HttpResponse revisions(const HttpRequest& request, const std::string& digest, const Device& device);
    [[nodiscard]] HttpResponse put_revision(const HttpRequest& request, const std::string& digest,
                                            const Device& device);
    [[nodiscard]] HttpResponse heads(const std::string& survey_id);
    [[nodiscard]] HttpResponse changes(const HttpRequest& request);
    [[nodiscard]] HttpResponse receipt(const std::string& digest);

    // api_blobs.cpp
    [[nodiscard]] HttpResponse blobs(const HttpRequest& request, const Parts& parts, const Device& device);
    [[nodiscard]] HttpResponse query_blobs(const HttpRequest& request);
    [[nodiscard]] HttpResponse put_blob(const HttpRequest& request, const Digest& digest);
    [[nodiscard]] HttpResponse get_blob(const std::string& digest);
    [[nodiscard]] HttpResponse new_upload(const HttpRequest& request, const Digest& digest, const Device& device);
    [[nodiscard]] HttpResponse uploads(const HttpRequest& request, const std::string& id, const Device& device);
    [[nodiscard]] HttpResponse append(const HttpRequest& request, const Upload& upload, const Device& device);

    Store& store_;
    std::mutex tries_mutex_;
    std::int64_t tries_minute_ = 0;
    int failed_tries_ = 0;
};

// What the parts of the protocol share.
[[nodiscard]] HttpResponse json_response(int status, const Json& body);
[[nodiscard]] HttpResponse failed(const engine::Error& error);
/// 400, with the first mistake and its place.
[[nodiscard]] HttpResponse unreadable(const app::JsonErrors& errors);
[[nodiscard]] HttpResponse not_found();
[[nodiscard]] HttpResponse not_allowed(std::string_view allowed);
[[nodiscard]] HttpResponse with_header(HttpResponse response, std::string name, std::string value);
/// "sha-256=:<base64>:" as bytes; nothing where it is another text.
[[nodiscard]] std::optional<Digest> digest_field(std::string_view value);
/// A refusal where Content-Digest is there and the body has another digest.
[[nodiscard]] std::optional<HttpResponse> wrong_content(const HttpRequest& request);
/// A whole number that a header holds, 0 or more; nothing where it holds something else.
[[nodiscard]] std::optional<std::int64_t> whole_number(std::string_view text);
/// The value of `name` in "a=1&b=2"; only plain characters, nothing is decoded.
[[nodiscard]] std::string query_value(const std::string& query, std::string_view name);

}  // namespace sillwalk::office
