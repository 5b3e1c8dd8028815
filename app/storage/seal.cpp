#include "app/storage/seal.hpp"

#include "app/storage/rows.hpp"

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr const char* origin_names[] = {"local", "office", "file"};

RevisionOrigin origin_from(const std::string& name) {
    if (name == "office") return RevisionOrigin::office;
    return name == "file" ? RevisionOrigin::file : RevisionOrigin::local;
}

Result<void> check_order(Database& database, const SealOrder& order) {
    const auto head = load_head(database, order.survey_id);
    if (!head) return tl::make_unexpected(head.error());
    if (head->last_edit != order.last_edit) {
        return engine::fail(ErrorCode::disagreement, "the visit was changed meanwhile; seal it again", order.survey_id);
    }
    const std::vector<Digest> base = head->base ? std::vector<Digest>{*head->base} : std::vector<Digest>{};
    if (base != order.parents) {
        return engine::fail(ErrorCode::disagreement, "the visit was sealed meanwhile; seal it again", order.survey_id);
    }
    for (const Digest& photo : order.photos) {
        const auto there = has_row(database, "SELECT 1 FROM blob_body WHERE digest=?1", photo);
        if (!there) return tl::make_unexpected(there.error());
        if (!*there)
            return engine::fail(ErrorCode::not_found, "a photo of the visit is not in the file", to_hex(photo));
    }
    return {};
}

Result<void> insert_revision(Database& database, const Digest& digest, const StoredRevision& revision,
                             const std::vector<Digest>& parents) {
    auto row = database.prepare(
        "INSERT INTO revision(digest, survey_id, origin, body, signature, sealed_ms) VALUES(?1, ?2, ?3, ?4, ?5, ?6)");
    if (!row) return tl::make_unexpected(row.error());
    row->bind_bytes(1, byte_view(digest)).bind(2, revision.survey_id);
    row->bind(3, origin_names[static_cast<int>(revision.origin)]).bind_bytes(4, revision.body);
    if (auto done = row->bind_bytes(5, revision.signature).bind(6, revision.sealed_ms).run(); !done) return done;
    for (const Digest& parent : parents) {
        auto done = run_with(database, "INSERT INTO revision_parent(digest, parent) VALUES(?1, ?2)", digest, parent);
        if (!done) return done;
    }
    return {};
}

Result<void> into_outbox(Database& database, const SealOrder& order) {
    auto done =
        run_with(database, "INSERT INTO outbox(kind, digest, state) VALUES('revision', ?1, 'queued')", order.digest);
    if (!done) return done;
    for (const Digest& photo : order.photos) {
        if (done = name_photo(database, order.digest, photo); !done) return done;
        done = run_with(database,
                        "INSERT INTO outbox(kind, digest, state) VALUES('blob', ?1, 'queued') ON CONFLICT DO NOTHING",
                        photo);
        if (!done) return done;
    }
    return {};
}

}  // namespace

Result<void> seal(Database& database, const SealOrder& order) {
    auto transaction = database.begin();
    if (!transaction) return tl::make_unexpected(transaction.error());
    const auto known = has_row(database, "SELECT 1 FROM revision WHERE digest=?1", order.digest);
    if (!known) return tl::make_unexpected(known.error());
    if (*known) return {};
    if (auto done = check_order(database, order); !done) return done;
    const std::string signature(byte_view(order.signature));
    const StoredRevision revision{order.survey_id, RevisionOrigin::local, order.body, signature, order.at_ms};
    if (auto done = insert_revision(database, order.digest, revision, order.parents); !done) return done;
    if (auto done = into_outbox(database, order); !done) return done;
    if (auto done = adopt_revision(database, order.survey_id, order.digest); !done) return done;
    return transaction->commit();
}

Result<void> adopt_revision(Database& database, const std::string& survey_id, const Digest& digest) {
    auto visit = database.prepare("UPDATE survey SET base_digest=?2, state='sealed' WHERE survey_id=?1");
    if (!visit) return tl::make_unexpected(visit.error());
    return visit->bind(1, survey_id).bind_bytes(2, byte_view(digest)).run();
}

Result<void> name_photo(Database& database, const Digest& revision, const Digest& photo) {
    return run_with(database, "INSERT INTO revision_blob(digest, blob) VALUES(?1, ?2) ON CONFLICT DO NOTHING", revision,
                    photo);
}

Result<VisitHead> load_head(Database& database, const std::string& survey_id) {
    auto row = database.prepare(
        "SELECT state, (SELECT coalesce(max(seq), 0) FROM edit WHERE survey_id=?1), base_digest FROM survey "
        "WHERE survey_id=?1");
    if (!row) return tl::make_unexpected(row.error());
    row->bind(1, survey_id);
    const auto found = row->step();
    if (!found) return tl::make_unexpected(found.error());
    if (!*found) return engine::fail(ErrorCode::not_found, "no such visit", survey_id);
    return VisitHead{row->text(0), row->integer(1), digest_at(*row, 2)};
}

Result<StoredRevision> load_revision(Database& database, const Digest& digest) {
    auto row = database.prepare("SELECT survey_id, origin, body, signature, sealed_ms FROM revision WHERE digest=?1");
    if (!row) return tl::make_unexpected(row.error());
    row->bind_bytes(1, byte_view(digest));
    const auto found = row->step();
    if (!found) return tl::make_unexpected(found.error());
    if (!*found) return engine::fail(ErrorCode::not_found, "no such revision in this file", to_hex(digest));
    StoredRevision revision{row->text(0), origin_from(row->text(1)), row->bytes(2), row->bytes(3), row->integer(4)};
    if (sha256(revision.body) == digest) return revision;
    return engine::fail(ErrorCode::disagreement, "the revision is damaged on the disk", to_hex(digest));
}

Result<bool> store_foreign_revision(Database& database, const Digest& digest, const StoredRevision& revision,
                                    const std::vector<Digest>& parents) {
    auto transaction = database.begin();
    if (!transaction) return tl::make_unexpected(transaction.error());
    const auto known = has_row(database, "SELECT 1 FROM revision WHERE digest=?1", digest);
    if (!known) return tl::make_unexpected(known.error());
    if (*known) return false;
    if (auto done = insert_revision(database, digest, revision, parents); !done)
        return tl::make_unexpected(done.error());
    if (auto done = transaction->commit(); !done) return tl::make_unexpected(done.error());
    return true;
}

Result<std::vector<Digest>> list_revisions(Database& database, const std::string& survey_id) {
    auto rows = database.prepare("SELECT digest FROM revision WHERE ?1='' OR survey_id=?1 ORDER BY sealed_ms, rowid");
    if (!rows) return tl::make_unexpected(rows.error());
    return read_digests(rows->bind(1, survey_id));
}

Result<std::vector<Digest>> photos_of_revision(Database& database, const Digest& digest) {
    auto rows = database.prepare("SELECT blob FROM revision_blob WHERE digest=?1 ORDER BY blob");
    if (!rows) return tl::make_unexpected(rows.error());
    return read_digests(rows->bind_bytes(1, byte_view(digest)));
}

}  // namespace sillwalk::app
