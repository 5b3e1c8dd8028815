#include "app/sync/sealed_visit.hpp"

#include "app/bundle/bundle_advice.hpp"
#include "app/bundle/canonical.hpp"
#include "app/bundle/envelope.hpp"
#include "app/bundle/photos.hpp"
#include "app/bundle/survey_entries.hpp"
#include "engine/select/assess.hpp"

#include <utility>

namespace sillwalk::app {

using engine::Result;

namespace {

/// What the photos show travels as items of the kind "photo"; the pictures travel apart.
Result<void> add_photo_items(const Entries& entries, Json& items) {
    Entries own;
    for (const auto& [path, text] : entries) {
        if (is_photo_entry(path)) own[path] = text;
    }
    if (own.empty()) return {};
    const auto text = put_together(own);
    if (!text) return tl::make_unexpected(text.error());
    JsonErrors errors;
    auto document = parse_json(*text, errors);
    if (!document) return tl::make_unexpected(errors.front());
    std::int64_t order = 0;
    for (Json& photo : (*document)["photos"]) {
        std::string id = photo["id"].get<std::string>();
        items[std::move(id)] = {{"kind", "photo"}, {"order", order++}, {"v", std::move(photo)}};
    }
    return {};
}

std::vector<Digest> digests_of(const std::vector<BlobRef>& blobs) {
    std::vector<Digest> out;
    for (const BlobRef& blob : blobs) out.push_back(blob.digest);
    return out;
}

Result<Json> revision_of(const StoredVisit& visit, const VisitHead& head, const SealContext& context,
                         std::vector<BlobRef>& blobs) {
    const auto survey = survey_of(visit.entries);
    if (!survey) return tl::make_unexpected(survey.error());
    const auto mistakes = engine::validate(*survey, context.catalogue, context.tables);
    if (!mistakes.empty()) return tl::make_unexpected(mistakes.front());
    const auto photos = photos_of(visit.entries);
    if (!photos) return tl::make_unexpected(photos.error());
    blobs = blobs_of(survey->id, *photos);
    const BundleAdvice made = make_bundle_advice(*survey, context.catalogue, context.tables);
    Json revision = make_revision({.survey = *survey,
                                   .parents = head.base ? std::vector<Digest>{*head.base} : std::vector<Digest>{},
                                   .author = {context.device.device_id, "field", context.author},
                                   .captured_ms = context.at_ms,
                                   .advice = made.advice,
                                   .engine_version = made.engine_version,
                                   .catalogue_edition = made.catalogue_edition,
                                   .tables_edition = made.tables_edition,
                                   .blobs = blobs});
    if (auto done = add_photo_items(visit.entries, revision["items"]); !done) return tl::make_unexpected(done.error());
    return revision;
}

}  // namespace

Result<SealOrder> make_seal_order(const std::string& survey_id, const StoredVisit& visit, const VisitHead& head,
                                  const SealContext& context) {
    if (head.state != "draft" && head.base) return engine::no_answer("nothing has changed since the visit was sealed");
    std::vector<BlobRef> blobs;
    const auto revision = revision_of(visit, head, context, blobs);
    if (!revision) return tl::make_unexpected(revision.error());
    // What the office's reader would refuse is told here, where a person can still put it right.
    const auto read = read_envelope(make_envelope(*revision));
    if (!read) {
        const engine::Error& first = read.error().errors.front();
        return engine::bad_input("the office would refuse it: " + first.message, first.where);
    }
    const SigningKey key = context.device.key();
    return SealOrder{survey_id,
                     head.last_edit,
                     read->canonical,
                     read->digest,
                     read->parents,
                     digests_of(blobs),
                     sign(key, revision_format, read->digest),
                     context.at_ms};
}

}  // namespace sillwalk::app
