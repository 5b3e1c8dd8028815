#pragma once
/// The strict reader of an envelope with its revision: the trust boundary for what comes over the wire or from a file.
/// Format: docs/reference/bundle.md; schema: docs/reference/bundle.schema.json. Reader and schema refuse the same
/// documents (tests/bundle_corpus).

#include "app/bundle/canonical.hpp"
#include "app/bundle/revision.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

struct EnvelopeSignature {
    std::string key_id;
    Signature value{};
};

/// A revision that obeys every rule of the format. Members that this version does not know are kept in `revision`.
struct Envelope {
    Json revision;
    std::string canonical;  ///< the revision's one text; its SHA-256 is `digest`
    Digest digest{};
    std::string survey_id;
    std::vector<Digest> parents;
    Author author;
    std::int64_t captured_ms = 0;
    std::string engine_version, catalogue_edition, tables_edition;
    std::vector<BlobRef> blobs;
    /// Features that the writer says must be understood and this version does not know: show it, never edit it.
    std::vector<std::string> not_understood;
    std::vector<EnvelopeSignature> signatures;
};

enum class EnvelopeRefusal {
    too_large,           ///< over StrictLimits::bytes
    not_strict,          ///< no JSON, or JSON beyond the limits of parse_strict()
    unsupported_format,  ///< another major of the format: keep the bytes, do not read them
    schema,              ///< members are missing or wrong
};

struct EnvelopeFault {
    EnvelopeRefusal refusal = EnvelopeRefusal::schema;
    JsonErrors errors;  ///< all of them, each with its JSON pointer where it has one
};

using EnvelopeResult = tl::expected<Envelope, EnvelopeFault>;

/// Never throws, never stops at the first mistake of the schema.
[[nodiscard]] EnvelopeResult read_envelope(std::string_view text, const StrictLimits& limits = {});

/// Features a writer may require of a reader and that this version has. None so far.
[[nodiscard]] const std::vector<std::string_view>& understood_features();

using PublicKey = std::array<std::uint8_t, 32>;
/// The key of that id, or nothing where no such key is known.
using KeyLookup = std::function<std::optional<PublicKey>(std::string_view key_id)>;

enum class SignatureState {
    none,         ///< the envelope carries none
    good,         ///< at least one is of a known key, and all of known keys hold
    unknown_key,  ///< none is of a known key
    bad,          ///< one of a known key does not hold
};
[[nodiscard]] SignatureState check_signatures(const Envelope& envelope, const KeyLookup& lookup);

/// `{"format": …, "rev": …, "sig": [ … ]}` again, canonical.
[[nodiscard]] std::string envelope_text(const Envelope& envelope);

// Limits that both sides keep (docs/reference/bundle.md).
inline constexpr std::size_t greatest_parents = 8;
inline constexpr std::size_t greatest_blobs = 500;
inline constexpr std::int64_t greatest_blob_bytes = std::int64_t{8} << 20;
inline constexpr std::int64_t greatest_blob_side_px = 7000;  // 7000 x 7000 stays below 50 megapixels

}  // namespace sillwalk::app
