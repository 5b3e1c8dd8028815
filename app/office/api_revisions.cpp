#include "app/office/api.hpp"

#include <fmt/format.h>

namespace sillwalk::office {

namespace {

constexpr std::int64_t most_changes = 500;
constexpr std::size_t most_errors_told = 50;

HttpResponse receipt_response(int status, const std::string& receipt) {
    return {status, {{"Content-Type", "application/json"}, {"Cache-Control", "no-store"}}, receipt, {}};
}

HttpResponse refused(const app::EnvelopeFault& fault) {
    const std::string& where = fault.errors.front().where;
    const std::string detail = (where.empty() ? "" : where + ": ") + fault.errors.front().message;
    HttpResponse out = problem(422, "schema", "The envelope breaks the format's rules", detail);
    if (fault.refusal == app::EnvelopeRefusal::too_large)
        out = problem(413, "too-large", "The envelope is too large", detail);
    if (fault.refusal == app::EnvelopeRefusal::not_strict)
        out = problem(400, "not-strict", "The envelope is no strict JSON", detail);
    if (fault.refusal == app::EnvelopeRefusal::unsupported_format)
        out = problem(422, "unsupported-format", "This office does not know the format yet",
                      "The bytes are kept until it does", "later");
    Json body = Json::parse(out.body, nullptr, false);
    body["errors"] = Json::array();
    for (const auto& error : fault.errors) {
        if (body["errors"].size() == most_errors_told) break;
        body["errors"].push_back({{"pointer", error.where}, {"reason", error.message}});
    }
    out.body = body.dump(-1, ' ', true, Json::error_handler_t::replace);
    return out;
}

}  // namespace

HttpResponse Api::revisions(const HttpRequest& request, const std::string& digest, const Device& device) {
    if (!app::digest_from_hex(digest)) return not_found();
    if (request.method == "PUT") return put_revision(request, digest, device);
    if (request.method != "GET") return not_allowed("GET, PUT");
    auto row = store_.revision(digest);
    if (!row) return failed(row.error());
    HttpResponse out =
        json_response(200, {{"format", app::envelope_format}, {"rev", row->revision}, {"sig", row->signatures}});
    out.headers = {{"Content-Type", "application/json"},
                   {"ETag", "\"" + digest + "\""},
                   {"Cache-Control", "private, max-age=31536000, immutable"}};
    return out;
}

HttpResponse Api::put_revision(const HttpRequest& request, const std::string& digest, const Device& device) {
    if (request.header("content-type") != "application/json")
        return problem(415, "media-type", "Another kind of content is needed", "Send application/json");
    if (auto wrong = wrong_content(request)) return *wrong;
    auto envelope = app::read_envelope(request.body);
    if (!envelope) {
        if (envelope.error().refusal == app::EnvelopeRefusal::unsupported_format) {
            if (auto kept = store_.quarantine(request.body, "unsupported-format", device.id); !kept)
                return failed(kept.error());
        }
        return refused(envelope.error());
    }
    const std::string computed = app::to_hex(envelope->digest);
    if (computed != digest)
        return problem(422, "digest-mismatch", "Content does not match its digest",
                       fmt::format("computed {} expected {}", computed, digest));
    const auto signature = store_.signature_state(*envelope);
    if (signature == app::SignatureState::bad || signature == app::SignatureState::unknown_key)
        return problem(422, "signature", "The signature does not hold",
                       signature == app::SignatureState::bad ? "It is of another text or key" : "The key is not known");
    if (envelope->author.device_id != device.id && signature != app::SignatureState::good)
        return problem(403, "not-yours", "This revision is of another device",
                       "An unsigned revision comes from the device that made it");
    auto stored = store_.put(*envelope, device.id);
    if (!stored) return failed(stored.error());
    if (stored->fresh)
        return with_header(receipt_response(201, stored->receipt), "Location", "/v1/revisions/" + digest);
    return receipt_response(request.header("if-none-match") == "*" ? 412 : 200, stored->receipt);
}

HttpResponse Api::receipt(const std::string& digest) {
    if (!app::digest_from_hex(digest)) return not_found();
    auto text = store_.receipt(digest);
    if (!text) return failed(text.error());
    return receipt_response(200, *text);
}

HttpResponse Api::heads(const std::string& survey_id) {
    auto found = store_.heads(survey_id);
    if (!found) return failed(found.error());
    return json_response(200, {{"heads", *found}, {"fork", found->size() > 1}});
}

HttpResponse Api::changes(const HttpRequest& request) {
    const std::string wanted = query_value(request.query, "limit");
    const auto limit = wanted.empty() ? std::optional<std::int64_t>(100) : whole_number(wanted);
    if (!limit || *limit < 1 || *limit > most_changes)
        return problem(400, "malformed", "The request cannot be read", "limit is 1 to 500");
    auto list = store_.changes(query_value(request.query, "after"), *limit);
    if (!list) return failed(list.error());
    const std::string tag = "\"" + list->next + "\"";
    if (list->items.empty() && request.header("if-none-match") == tag)
        return HttpResponse{304, {{"ETag", tag}, {"Cache-Control", "no-cache"}}, {}, {}};
    Json items = Json::array();
    for (const Change& item : list->items)
        items.push_back({{"digest", item.digest}, {"survey_id", item.survey_id}, {"role", item.role}});
    HttpResponse out = json_response(200, {{"items", std::move(items)}, {"next", list->next}});
    out.headers = {{"Content-Type", "application/json"}, {"ETag", tag}, {"Cache-Control", "no-cache"}};
    return out;
}

}  // namespace sillwalk::office
