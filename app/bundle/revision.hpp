#pragma once
/// A revision: one immutable state of a visit with its advice, as the office gets it. Format "sillwalk-revision/1";
/// described in docs/reference/bundle.md. Its name is the SHA-256 of its canonical text.

#include "app/bundle/digest.hpp"
#include "app/bundle/survey_json.hpp"
#include "app/data/json_reader.hpp"
#include "engine/model/advice.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

inline constexpr std::string_view revision_format = "sillwalk-revision/1";
inline constexpr std::string_view envelope_format = "sillwalk-envelope/1";

struct Author {
    std::string device_id;       ///< UUID
    std::string role = "field";  ///< "field" or "office"
    std::string name;
};

/// A photo or another file that belongs to the revision; its bytes travel apart, named by their digest.
struct BlobRef {
    Digest digest{};
    std::int64_t bytes = 0;
    std::string media;  ///< "image/jpeg"
    std::int64_t width_px = 0, height_px = 0;
    std::string item;  ///< UUID of the item it shows; empty = loose
};

struct RevisionInput {
    const engine::Survey& survey;
    std::vector<Digest> parents;  ///< empty = the first; two = a merge
    Author author;
    std::int64_t captured_ms = 0;  ///< the device's clock, UTC; evidence, never used for ordering
    std::optional<Json> advice;    ///< advice_to_json(…, NumberForm::decimal_text)
    std::string engine_version, catalogue_edition, tables_edition;
    std::vector<BlobRef> blobs;
};

/// The survey split into items keyed by UUID: site, rooms, crossings, washings, carts, damage, notes.
[[nodiscard]] Json make_revision(const RevisionInput& input);

/// UUID under which a thing of the survey stands in `items`: its own id where that is a UUID, else one derived from it.
[[nodiscard]] std::string item_uuid(std::string_view survey_id, std::string_view kind, std::string_view id);
[[nodiscard]] std::string survey_uuid(const engine::SurveyId& id);

/// The items put together again. Precondition: the structure was checked (read_envelope). Errors name paths in the
/// revision's survey, not in the items.
[[nodiscard]] SurveyRead survey_of_revision(const Json& revision);

[[nodiscard]] Digest revision_digest(const Json& revision);

/// The envelope's canonical text, signed where a key is given. `key_id` names the device's key at the office.
[[nodiscard]] std::string make_envelope(const Json& revision, const SigningKey* key = nullptr,
                                        std::string_view key_id = {});

}  // namespace sillwalk::app
