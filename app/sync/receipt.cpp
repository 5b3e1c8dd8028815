#include "app/sync/receipt.hpp"

#include "app/bundle/canonical.hpp"

#include <algorithm>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr std::int64_t greatest = (std::int64_t{1} << 53) - 1;

std::vector<Digest> digests_at(JsonObject& object, std::string_view key) {
    std::vector<Digest> out;
    for (const std::string& hex : object.texts(key)) {
        const auto digest = digest_from_hex(hex);
        if (!digest) {
            object.error(key, "no digest");
            return {};
        }
        out.push_back(*digest);
    }
    return out;
}

Receipt receipt_of(JsonObject& object) {
    Receipt receipt;
    const auto format = object.text("format");
    if (format && *format != receipt_format) object.error("format", "another format");
    const auto digest = digest_from_hex(object.text("digest").value_or(""));
    if (!digest) object.error("digest", "no digest");
    receipt.digest = digest.value_or(Digest{});
    receipt.survey_id = object.text("survey_id").value_or("");
    receipt.stored_at_ms = object.integer("stored_at_ms", 0, greatest).value_or(0);
    receipt.seq = object.integer("seq", 1, greatest).value_or(0);
    receipt.missing_blobs = digests_at(object, "missing_blobs");
    receipt.complete = object.boolean("complete").value_or(false);
    receipt.heads = digests_at(object, "heads");
    receipt.fork = object.boolean("fork").value_or(false);
    return receipt;
}

/// The member's text; empty where it is none.
std::string text_of(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

bool signed_by(const Json& document, const std::string& key_id, const PublicKey& key) {
    const Digest digest = sha256(canonical_json(document.at("receipt")));
    const auto list = document.find("sig");
    if (list == document.end() || !list->is_array()) return false;
    for (const Json& one : *list) {
        if (!one.is_object() || text_of(one, "alg") != "Ed25519" || text_of(one, "kid") != key_id) continue;
        const auto bytes = from_base64url(text_of(one, "value"));
        Signature signature{};
        if (!bytes || bytes->size() != signature.size()) continue;
        std::transform(bytes->begin(), bytes->end(), signature.begin(),
                       [](char c) { return static_cast<std::uint8_t>(c); });
        if (verify(key, receipt_format, digest, signature)) return true;
    }
    return false;
}

}  // namespace

Result<Receipt> read_receipt(std::string_view text, const Digest& expected, const std::string& key_id,
                             const PublicKey& key) {
    JsonErrors errors;
    const auto document = parse_strict(text, errors);
    if (!document) return engine::bad_input("no receipt: " + errors.front().message);
    JsonObject whole(*document, "", errors);
    Receipt receipt;
    if (auto object = whole.object("receipt")) receipt = receipt_of(*object);
    if (!errors.empty()) return engine::bad_input("no receipt: " + errors.front().message, errors.front().where);
    if (receipt.digest != expected)
        return engine::fail(ErrorCode::disagreement, "the receipt is of another revision", to_hex(receipt.digest));
    if (!signed_by(*document, key_id, key))
        return engine::fail(ErrorCode::disagreement, "the receipt is not signed by the office", key_id);
    return receipt;
}

}  // namespace sillwalk::app
