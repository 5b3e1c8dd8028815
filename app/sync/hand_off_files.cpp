#include "app/sync/hand_off_files.hpp"

#include "app/bundle/canonical.hpp"
#include "app/bundle/photos.hpp"
#include "app/bundle/survey_entries.hpp"
#include "app/storage/quarantine.hpp"
#include "app/storage/survey_store.hpp"
#include "app/sync/sealed_envelope.hpp"

#include <algorithm>
#include <istream>
#include <map>
#include <memory>
#include <ostream>
#include <set>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr const char* why_unknown = "sync.why.unknown_signer";
constexpr const char* why_signature = "sync.why.bad_signature";
constexpr const char* why_unnamed = "sync.why.unnamed_photo";

class Writing {
public:
    Writing(Database& database, std::ostream& out) : database_(database), out_(out) {}

    Result<HandedOff> all(const std::string& survey_id) {
        const auto device = load_device(database_);
        if (!device) return tl::make_unexpected(device.error());
        const auto office = load_office(database_);
        if (!office) return tl::make_unexpected(office.error());
        device_ = device->value_or(DeviceIdentity{});
        office_ = *office;
        const auto digests = list_revisions(database_, survey_id);
        if (!digests) return tl::make_unexpected(digests.error());
        for (const Digest& digest : *digests) {
            if (auto done = revision(digest); !done) return tl::make_unexpected(done.error());
        }
        return told_;
    }

private:
    Result<void> revision(const Digest& digest) {
        const auto stored = load_revision(database_, digest);
        if (!stored) return left_out(digest, stored.error());
        out_ << envelope_of(digest, *stored, device_, office_) << '\n';
        ++told_.revisions;
        const auto photos = photos_of_revision(database_, digest);
        if (!photos) return tl::make_unexpected(photos.error());
        for (const Digest& photo : *photos) {
            if (!written_.insert(photo).second) continue;
            const auto bytes = load_photo(database_, photo);
            if (!bytes) {
                if (auto done = left_out(photo, bytes.error()); !done) return done;
                continue;
            }
            out_ << hand_off_blob_line(*bytes);
            ++told_.photos;
        }
        return {};
    }

    Result<void> left_out(const Digest& digest, const engine::Error& error) {
        if (error.code == ErrorCode::storage && !is_damage(error)) return tl::make_unexpected(error);
        told_.damaged.push_back(digest);
        return {};
    }

    Database& database_;
    std::ostream& out_;
    DeviceIdentity device_;
    std::optional<OfficeAccess> office_;
    std::set<Digest> written_;
    HandedOff told_;
};

/// The photos' entries as they were when it was sealed.
Entries photo_entries_of(const Json& revision) {
    std::map<std::int64_t, Json> in_order;
    for (const auto& [uuid, item] : revision.at("items").items()) {
        if (item.at("kind") == "photo") in_order.emplace(item.at("order").get<std::int64_t>(), item.at("v"));
    }
    if (in_order.empty()) return {};
    Json list = Json::array();
    for (auto& [order, photo] : in_order) list.push_back(std::move(photo));
    const auto entries = take_apart(canonical_json({{"photos", std::move(list)}}));
    // A photo's item that this version cannot read is still in the revision; the visit is shown without it.
    return entries && photos_of(*entries) ? *entries : Entries{};
}

class TakingIn {
public:
    TakingIn(Database& database, const TakeInOptions& options) : database_(database), options_(options) {}

    Result<TakenIn> all(std::istream& in) {
        const auto device = load_device(database_);
        if (!device) return tl::make_unexpected(device.error());
        device_ = *device;
        const auto office = load_office(database_);
        if (!office) return tl::make_unexpected(office.error());
        office_ = *office;
        HandOffReader reader(in);
        while (const auto line = reader.next()) {
            auto done = std::visit([this](const auto& one) { return take(one); }, *line);
            if (!done) return tl::make_unexpected(done.error());
        }
        if (!reader.at_end()) {
            told_.fault = reader.fault();
            told_.stopped_at = reader.line_number();
        }
        return told_;
    }

private:
    [[nodiscard]] std::optional<PublicKey> key_of(std::string_view key_id) const {
        if (!device_) return std::nullopt;
        const bool own = key_id == device_->device_id || (office_ && key_id == office_->device_id);
        return own ? std::optional<PublicKey>(device_->key().public_key) : std::nullopt;
    }

    Result<void> aside(const char* why, const Digest& digest, std::string_view bytes) {
        ++told_.put_aside;
        return put_aside(database_, why, digest, bytes, options_.at_ms);
    }

    Result<void> take(const Envelope& envelope) {
        const auto state = check_signatures(envelope, [this](std::string_view id) { return key_of(id); });
        if (state == SignatureState::bad) return aside(why_signature, envelope.digest, envelope_text(envelope));
        if (state != SignatureState::good && !options_.accept_unknown)
            return aside(why_unknown, envelope.digest, envelope_text(envelope));
        const std::string id = visit_id(envelope);
        const auto fresh = store_foreign_revision(
            database_, envelope.digest,
            {id, RevisionOrigin::file, envelope.canonical, signatures_of(envelope), options_.at_ms}, envelope.parents);
        if (!fresh) return tl::make_unexpected(fresh.error());
        ++(*fresh ? told_.revisions : told_.known);
        for (const BlobRef& blob : envelope.blobs) named_.emplace(blob.digest, std::pair(envelope.digest, blob));
        return make_visit(envelope, id);
    }

    static std::string signatures_of(const Envelope& envelope) {
        Json list = Json::array();
        for (const EnvelopeSignature& one : envelope.signatures) {
            list.push_back({{"alg", "Ed25519"}, {"kid", one.key_id}, {"value", to_base64url(byte_view(one.value))}});
        }
        return canonical_json(list);
    }

    /// The id under which the visit stands on this device: that of its survey.
    static std::string visit_id(const Envelope& envelope) {
        const SurveyRead read = survey_of_revision(envelope.revision);
        return read.errors.empty() && !read.survey.id.text().empty() ? read.survey.id.text() : envelope.survey_id;
    }

    /// The newest revision of a visit that is not here yet makes the visit.
    Result<void> make_visit(const Envelope& envelope, const std::string& id) {
        const auto head = load_head(database_, id);
        const bool made_here = made_.count(id) != 0;
        if (head && !made_here) return {};
        if (!head && head.error().code != ErrorCode::not_found) return tl::make_unexpected(head.error());
        const bool follows =
            head && head->base &&
            std::find(envelope.parents.begin(), envelope.parents.end(), *head->base) != envelope.parents.end();
        if (head && !follows) return {};
        const SurveyRead read = survey_of_revision(envelope.revision);
        if (!read.errors.empty() || !envelope.not_understood.empty()) return {};  // kept, not shown
        Entries entries = entries_of(read.survey);
        entries.merge(photo_entries_of(envelope.revision));
        auto done = head ? change(id, entries) : create(id, read.survey.site, entries);
        if (!done) return done;
        if (made_.insert(id).second) ++told_.visits;
        return adopt_revision(database_, id, envelope.digest);
    }

    Result<void> create(const std::string& id, const std::string& title, const Entries& entries) {
        return apply_all(database_, {StoreVisit{id, title, entries, options_.at_ms}});
    }

    Result<void> change(const std::string& id, const Entries& entries) {
        const auto before = load_visit(database_, id);
        if (!before) return tl::make_unexpected(before.error());
        const auto step = static_cast<std::int64_t>(before->edits.size()) + 1;
        return apply_all(database_, {StoreStep{id, step, EditKind::edit, "edit.taken_in",
                                               difference(before->entries, entries), options_.at_ms}});
    }

    Result<void> take(const HandOffBlob& blob) {
        const auto named = named_.find(blob.digest);
        if (named == named_.end()) return aside(why_unnamed, blob.digest, blob.bytes);
        const auto& [revision, ref] = named->second;
        const StorePhoto photo{blob.digest, std::make_shared<const std::string>(blob.bytes), ref.width_px,
                               ref.height_px};
        if (auto done = apply_all(database_, {photo}); !done) return done;
        ++told_.photos;
        return name_photo(database_, revision, blob.digest);
    }

    Database& database_;
    TakeInOptions options_;
    std::optional<DeviceIdentity> device_;
    std::optional<OfficeAccess> office_;
    std::map<Digest, std::pair<Digest, BlobRef>> named_;
    std::set<std::string> made_;
    TakenIn told_;
};

}  // namespace

Result<HandedOff> write_hand_off(Database& database, const std::string& survey_id, std::ostream& out) {
    return Writing(database, out).all(survey_id);
}

Result<TakenIn> take_in_hand_off(Database& database, std::istream& in, const TakeInOptions& options) {
    return TakingIn(database, options).all(in);
}

}  // namespace sillwalk::app
