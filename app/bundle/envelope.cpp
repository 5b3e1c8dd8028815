#include "app/bundle/envelope.hpp"

#include "app/bundle/uuid.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace sillwalk::app {

namespace {

constexpr std::int64_t greatest_integer = (std::int64_t{1} << 53) - 1;
constexpr std::int64_t greatest_order = 1'000'000;
constexpr std::size_t greatest_signatures = 4;
constexpr std::size_t greatest_requires = 32;
constexpr std::size_t longest_name = 200;  // code points
constexpr std::size_t longest_word = 64;

void refuse(JsonErrors& errors, std::string path, std::string message) {
    errors.push_back({engine::ErrorCode::bad_input, std::move(message), std::move(path)});
}

std::size_t code_points(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xc0u) != 0x80u; }));
}

bool is_small_or_digit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}
/// ^[a-z0-9][a-z0-9._-]{0,63}$
bool is_feature(std::string_view text) {
    return !text.empty() && text.size() <= longest_word && is_small_or_digit(text.front()) &&
           std::all_of(text.begin(), text.end(),
                       [](char c) { return is_small_or_digit(c) || c == '.' || c == '_' || c == '-'; });
}
/// ^[a-z][a-z0-9_]{0,31}$
bool is_kind(std::string_view text) {
    return !text.empty() && text.size() <= 32 && text.front() >= 'a' && text.front() <= 'z' &&
           std::all_of(text.begin(), text.end(), [](char c) { return is_small_or_digit(c) || c == '_'; });
}
/// ^[0-9A-Za-z._-]{1,64}$
bool is_key_id(std::string_view text) {
    return !text.empty() && text.size() <= longest_word && std::all_of(text.begin(), text.end(), [](char c) {
        return is_small_or_digit(c) || (c >= 'A' && c <= 'Z') || c == '.' || c == '_' || c == '-';
    });
}

std::string uuid_at(JsonObject& object, std::string_view key, Need need = Need::required) {
    const auto text = object.text(key, need);
    if (text && !is_uuid(*text)) object.error(key, "no UUID in lower-case hex");
    return text.value_or("");
}

std::string name_at(JsonObject& object, std::string_view key) {
    const auto text = object.text(key);
    if (text && code_points(*text) > longest_name)
        object.error(key, fmt::format("longer than {} characters", longest_name));
    return text.value_or("");
}

Digest digest_of(std::string_view hex, const std::string& path, JsonErrors& errors) {
    const auto digest = digest_from_hex(hex);
    if (!digest) refuse(errors, path, "no SHA-256 in 64 lower-case hex digits");
    return digest.value_or(Digest{});
}

/// The elements of a list of texts with their paths; too long a list is an error.
void each_text(JsonObject& object, std::string_view key, std::size_t most, JsonErrors& errors,
               const std::function<void(const std::string&, const std::string&)>& f) {
    std::size_t count = 0;
    object.each(key, [&](const Json& element, const std::string& path) {
        ++count;
        if (!element.is_string()) return refuse(errors, path, "text is needed");
        f(element.get_ref<const std::string&>(), path);
    });
    if (count > most) object.error(key, fmt::format("more than {}", most));
}

class Reader {
public:
    explicit Reader(JsonErrors& errors) : errors_(errors) {}

    void envelope(const Json& document, Envelope& out) {
        JsonObject object(document, "", errors_);
        format(object, envelope_format);
        std::size_t count = 0;
        object.each("sig", [&](const Json& element, const std::string& path) {
            ++count;
            signature(element, path, out);
        });
        if (count > greatest_signatures) object.error("sig", fmt::format("more than {}", greatest_signatures));
        if (auto revision_object = object.object("rev")) revision(*revision_object, out);
    }

    [[nodiscard]] bool other_major() const { return other_major_; }

private:
    void format(JsonObject& object, std::string_view known) {
        const auto text = object.text("format");
        if (!text || *text == known) return;
        const std::string_view family = known.substr(0, known.find('/') + 1);
        const std::string_view rest = std::string_view(*text).substr(std::min(text->size(), family.size()));
        other_major_ =
            other_major_ || (text->starts_with(family) && !rest.empty() && rest.size() <= 4 &&
                             std::all_of(rest.begin(), rest.end(), [](char c) { return c >= '0' && c <= '9'; }));
        object.error("format", fmt::format("this version reads {}", known));
    }

    void signature(const Json& element, const std::string& path, Envelope& out) {
        JsonObject object(element, path, errors_);
        EnvelopeSignature signature;
        const auto algorithm = object.text("alg");
        if (algorithm && *algorithm != "Ed25519") object.error("alg", "only Ed25519 is known");
        const auto key_id = object.text("kid");
        if (key_id && !is_key_id(*key_id)) object.error("kid", "1 to 64 of the characters 0-9 A-Z a-z . _ -");
        signature.key_id = key_id.value_or("");
        const auto value = object.text("value");
        if (value) {
            const auto bytes = from_base64url(*value);
            if (!bytes || bytes->size() != signature.value.size()) {
                object.error("value", "no 64 bytes in base64url without padding");
            } else {
                std::copy(bytes->begin(), bytes->end(), signature.value.begin());
            }
        }
        out.signatures.push_back(std::move(signature));
    }

    void revision(JsonObject& object, Envelope& out) {
        format(object, revision_format);
        each_text(object, "requires", greatest_requires, errors_,
                  [&](const std::string& text, const std::string& path) {
                      if (!is_feature(text)) return refuse(errors_, path, "no name of a feature");
                      const auto& known = understood_features();
                      if (std::find(known.begin(), known.end(), text) == known.end())
                          out.not_understood.push_back(text);
                  });
        out.survey_id = uuid_at(object, "survey_id");
        std::set<Digest> seen;
        each_text(object, "parents", greatest_parents, errors_, [&](const std::string& text, const std::string& path) {
            out.parents.push_back(digest_of(text, path, errors_));
            if (!seen.insert(out.parents.back()).second) refuse(errors_, path, "this parent is named already");
        });
        if (auto author = object.object("author")) {
            out.author.device_id = uuid_at(*author, "device_id");
            out.author.role = author->text("role").value_or("");
            if (author->has("role") && out.author.role != "field" && out.author.role != "office")
                author->error("role", "field or office");
            out.author.name = name_at(*author, "name");
        }
        if (auto captured = object.object("captured")) {
            out.captured_ms = captured->integer("device_ms", 0, greatest_integer).value_or(0);
            if (captured->has("tz")) (void)name_at(*captured, "tz");
        }
        if (auto editions = object.object("editions")) {
            out.engine_version = name_at(*editions, "engine");
            out.catalogue_edition = name_at(*editions, "catalogue");
            out.tables_edition = name_at(*editions, "tables");
        }
        if (auto items = object.object("items")) each_item(*object.member("items"), items->path());
        (void)object.object("advice", Need::optional);
        (void)object.object("x", Need::optional);
        blobs(object, out);
    }

    void each_item(const Json& items, const std::string& path) {
        for (const auto& [uuid, value] : items.items()) {
            const std::string item_path = json_path(path, uuid);
            if (!is_uuid(uuid)) refuse(errors_, item_path, "an item's name is a UUID in lower-case hex");
            JsonObject item(value, item_path, errors_);
            const auto kind = item.text("kind");
            if (kind && !is_kind(*kind)) item.error("kind", "no name of a kind of item");
            (void)item.integer("order", 0, greatest_order);
            (void)item.object("v");
            (void)item.boolean("deleted", Need::optional);
        }
    }

    void blobs(JsonObject& object, Envelope& out) {
        std::size_t count = 0;
        object.each("blobs", [&](const Json& element, const std::string& path) {
            ++count;
            JsonObject blob(element, path, errors_);
            BlobRef ref;
            if (const auto hex = blob.text("sha256")) ref.digest = digest_of(*hex, blob.path_of("sha256"), errors_);
            ref.bytes = blob.integer("bytes", 1, greatest_blob_bytes).value_or(0);
            ref.media = blob.text("media").value_or("");
            if (blob.has("media") && ref.media != "image/jpeg" && ref.media != "image/png" &&
                ref.media != "application/pdf")
                blob.error("media", "image/jpeg, image/png or application/pdf");
            ref.width_px = blob.integer("width_px", 0, greatest_blob_side_px).value_or(0);
            ref.height_px = blob.integer("height_px", 0, greatest_blob_side_px).value_or(0);
            ref.item = uuid_at(blob, "item", Need::optional);
            out.blobs.push_back(std::move(ref));
        });
        if (count > greatest_blobs) object.error("blobs", fmt::format("more than {}", greatest_blobs));
    }

    JsonErrors& errors_;
    bool other_major_ = false;
};

}  // namespace

const std::vector<std::string_view>& understood_features() {
    static const std::vector<std::string_view> none;
    return none;
}

EnvelopeResult read_envelope(std::string_view text, const StrictLimits& limits) {
    EnvelopeFault fault;
    if (text.size() > limits.bytes) {
        fault.refusal = EnvelopeRefusal::too_large;
        refuse(fault.errors, "", fmt::format("larger than {} bytes", limits.bytes));
        return tl::make_unexpected(std::move(fault));
    }
    std::optional<Json> document = parse_strict(text, fault.errors, limits);
    if (!document) {
        fault.refusal = EnvelopeRefusal::not_strict;
        return tl::make_unexpected(std::move(fault));
    }
    Envelope out;
    Reader reader(fault.errors);
    reader.envelope(*document, out);
    if (reader.other_major()) fault.refusal = EnvelopeRefusal::unsupported_format;
    if (!fault.errors.empty()) return tl::make_unexpected(std::move(fault));
    out.revision = std::move((*document)["rev"]);
    out.canonical = canonical_json(out.revision);
    out.digest = sha256(out.canonical);
    return out;
}

SignatureState check_signatures(const Envelope& envelope, const KeyLookup& lookup) {
    SignatureState state = envelope.signatures.empty() ? SignatureState::none : SignatureState::unknown_key;
    for (const EnvelopeSignature& signature : envelope.signatures) {
        const auto key = lookup(signature.key_id);
        if (!key) continue;
        if (!verify(*key, revision_format, envelope.digest, signature.value)) return SignatureState::bad;
        state = SignatureState::good;
    }
    return state;
}

std::string envelope_text(const Envelope& envelope) {
    Json signatures = Json::array();
    for (const EnvelopeSignature& signature : envelope.signatures) {
        signatures.push_back(
            {{"alg", "Ed25519"}, {"kid", signature.key_id}, {"value", to_base64url(byte_view(signature.value))}});
    }
    return canonical_json({{"format", envelope_format}, {"rev", envelope.revision}, {"sig", std::move(signatures)}});
}

}  // namespace sillwalk::app
