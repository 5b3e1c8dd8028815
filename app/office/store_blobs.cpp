#include "app/office/secret.hpp"
#include "app/office/store.hpp"

namespace sillwalk::office {

namespace {

tl::unexpected<engine::Error> wrong_digest() {
    return engine::fail(engine::ErrorCode::disagreement, "the content does not match its digest", "digest");
}

constexpr const char* insert_blob =
    "INSERT INTO blob(digest, bytes, stored_ms) VALUES(?1, ?2, ?3) ON CONFLICT DO NOTHING RETURNING digest";

}  // namespace

Result<std::vector<std::string>> Store::missing(const std::vector<std::string>& digests) {
    std::vector<std::string> out;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        for (const std::string& digest : digests) {
            auto rows = session.run("SELECT 1 FROM blob WHERE digest = ?1", {digest});
            if (!rows) return tl::make_unexpected(rows.error());
            if (rows->empty()) out.push_back(digest);
        }
        return {};
    });
    if (!done) return tl::make_unexpected(done.error());
    return out;
}

Result<bool> Store::put_blob(const Digest& digest, std::string_view bytes) {
    if (app::sha256(bytes) != digest) return wrong_digest();
    if (auto stored = blobs_.store(digest, bytes); !stored) return tl::make_unexpected(stored.error());
    auto fresh = query(insert_blob, {app::to_hex(digest), static_cast<std::int64_t>(bytes.size()), now_ms()});
    if (!fresh) return tl::make_unexpected(fresh.error());
    return !fresh->empty();
}

Result<std::vector<BlobRow>> Store::blobs_of(const std::string& revision_digest) {
    auto rows = query(
        "SELECT rb.blob, rb.media, rb.bytes, b.digest FROM revision_blob rb LEFT JOIN blob b ON b.digest = "
        "rb.blob WHERE rb.digest = ?1 ORDER BY rb.blob",
        {revision_digest});
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<BlobRow> out;
    for (const SqlRow& row : *rows)
        out.push_back({to_text(row[0]), to_text(row[1]), to_integer(row[2]), row[3].has_value()});
    return out;
}

Result<BlobRow> Store::blob(const std::string& digest) {
    auto row =
        only_row(query("SELECT rb.blob, rb.media, b.bytes FROM revision_blob rb JOIN blob b ON b.digest = rb.blob "
                       "WHERE rb.blob = ?1 ORDER BY rb.media LIMIT 1",
                       {digest}),
                 "photo");
    if (!row) return tl::make_unexpected(row.error());
    return BlobRow{to_text(row->at(0)), to_text(row->at(1)), to_integer(row->at(2)), true};
}

Result<Upload> Store::new_upload(const Digest& digest, std::int64_t length, const std::string& device_id) {
    const std::int64_t now = now_ms();
    Upload out{new_id(now), app::to_hex(digest), length, 0, now + upload_lifetime_ms};
    auto put = query(
        "INSERT INTO upload(id, digest, device_id, length, received, expires_ms) VALUES(?1, ?2, ?3, ?4, 0, "
        "?5)",
        {out.id, out.digest, device_id, length, out.expires_ms});
    if (!put) return tl::make_unexpected(put.error());
    return out;
}

Result<Upload> Store::upload(const std::string& id, const std::string& device_id) {
    auto row =
        only_row(query("SELECT id, digest, length, received, expires_ms FROM upload WHERE id = ?1 AND device_id = "
                       "?2 AND expires_ms >= ?3",
                       {id, device_id, now_ms()}),
                 "upload");
    if (!row) return tl::make_unexpected(row.error());
    return Upload{to_text(row->at(0)), to_text(row->at(1)), to_integer(row->at(2)), to_integer(row->at(3)),
                  to_integer(row->at(4))};
}

Result<Upload> Store::append(const std::string& id, const std::string& device_id, std::int64_t offset,
                             std::string_view bytes) {
    const auto elsewhere = [] {
        return engine::fail(engine::ErrorCode::disagreement, "the office has another number of bytes", "offset");
    };
    const std::lock_guard lock(append_mutex_);  // two appends to one file must not mix
    auto found = upload(id, device_id);
    if (!found) return found;
    if (found->received != offset) return elsewhere();
    if (auto written = blobs_.append(id, offset, bytes); !written) return tl::make_unexpected(written.error());
    const std::int64_t received = offset + static_cast<std::int64_t>(bytes.size());
    // Another program on the same database may have been faster; then what counts is what it wrote down.
    auto moved =
        query("UPDATE upload SET received = ?3 WHERE id = ?1 AND received = ?2 RETURNING id", {id, offset, received});
    if (!moved) return tl::make_unexpected(moved.error());
    if (moved->empty()) return elsewhere();
    found->received = received;
    return found;
}

Result<bool> Store::finish(const Upload& upload) {
    const auto digest = app::digest_from_hex(upload.digest);
    if (!digest) return wrong_digest();
    // After a stop between the move and its row the file is in its place already.
    const auto in_place = [&] {
        const auto computed = blobs_.computed(*digest);
        return computed && *computed == *digest;
    };
    if (auto moved = blobs_.finish(upload.id, *digest); !moved && !in_place()) {
        if (moved.error().code == engine::ErrorCode::disagreement) (void)drop_upload(upload.id);
        return tl::make_unexpected(moved.error());
    }
    bool fresh = false;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        auto put = session.run(insert_blob, {upload.digest, upload.length, now_ms()});
        if (!put) return tl::make_unexpected(put.error());
        fresh = !put->empty();
        auto gone = session.run("DELETE FROM upload WHERE id = ?1", {upload.id});
        if (!gone) return tl::make_unexpected(gone.error());
        return {};
    });
    if (!done) return tl::make_unexpected(done.error());
    return fresh;
}

Result<void> Store::drop_upload(const std::string& id) {
    blobs_.drop(id);
    auto gone = query("DELETE FROM upload WHERE id = ?1", {id});
    if (!gone) return tl::make_unexpected(gone.error());
    return {};
}

Result<void> Store::drop_old_uploads() {
    auto rows = query("SELECT id FROM upload WHERE expires_ms < ?1", {now_ms()});
    if (!rows) return tl::make_unexpected(rows.error());
    for (const SqlRow& row : *rows) {
        if (auto dropped = drop_upload(to_text(row[0])); !dropped) return dropped;
    }
    return {};
}

}  // namespace sillwalk::office
