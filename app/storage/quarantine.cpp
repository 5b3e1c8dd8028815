#include "app/storage/quarantine.hpp"

#include "app/storage/rows.hpp"

namespace sillwalk::app {

using engine::Result;

namespace {

constexpr const char* damaged = "sync.why.damaged";

Result<void> scrub_table(Database& database, std::string_view names, std::string_view body, std::int64_t at_ms,
                         std::vector<Digest>& found) {
    auto rows = database.prepare(names);
    if (!rows) return tl::make_unexpected(rows.error());
    const auto digests = read_digests(*rows);
    if (!digests) return tl::make_unexpected(digests.error());
    for (const Digest& digest : *digests) {
        auto row = database.prepare(body);
        if (!row) return tl::make_unexpected(row.error());
        const auto there = row->bind_bytes(1, byte_view(digest)).step();
        if (!there) return tl::make_unexpected(there.error());
        const std::string bytes = *there ? row->bytes(0) : std::string();
        if (sha256(bytes) == digest) continue;
        row->reset();
        if (auto done = put_aside(database, damaged, digest, bytes, at_ms); !done) return done;
        found.push_back(digest);
    }
    return {};
}

}  // namespace

Result<void> put_aside(Database& database, std::string_view why, const std::optional<Digest>& digest,
                       std::string_view bytes, std::int64_t at_ms) {
    auto row = database.prepare(
        "INSERT INTO quarantine(at_ms, why, body, digest) SELECT ?1, ?2, ?3, ?4 WHERE NOT EXISTS"
        "(SELECT 1 FROM quarantine WHERE why=?2 AND body=?3)");
    if (!row) return tl::make_unexpected(row.error());
    row->bind(1, at_ms).bind(2, why).bind_bytes(3, bytes);
    if (digest) {
        row->bind_bytes(4, byte_view(*digest));
    } else {
        row->bind_null(4);
    }
    return row->run();
}

Result<void> put_aside_damaged(Database& database, const Digest& digest, std::int64_t at_ms) {
    for (const char* table :
         {"SELECT body FROM revision WHERE digest=?1", "SELECT body FROM blob_body WHERE digest=?1"}) {
        std::string bytes;
        {
            auto row = database.prepare(table);
            if (!row) return tl::make_unexpected(row.error());
            const auto there = row->bind_bytes(1, byte_view(digest)).step();
            if (!there) return tl::make_unexpected(there.error());
            if (!*there) continue;
            bytes = row->bytes(0);
        }
        if (auto done = put_aside(database, damaged, digest, bytes, at_ms); !done) return done;
    }
    return {};
}

Result<std::vector<QuarantineRow>> list_quarantine(Database& database) {
    auto rows = database.prepare("SELECT id, at_ms, why, digest, length(body) FROM quarantine ORDER BY id");
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<QuarantineRow> out;
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return out;
        out.push_back({rows->integer(0), rows->integer(1), rows->text(2), digest_at(*rows, 3), rows->integer(4)});
    }
}

Result<std::vector<Digest>> scrub(Database& database, std::int64_t at_ms) {
    std::vector<Digest> found;
    auto done = scrub_table(database, "SELECT digest FROM revision ORDER BY rowid",
                            "SELECT body FROM revision WHERE digest=?1", at_ms, found);
    if (done) {
        done = scrub_table(database, "SELECT digest FROM blob_body ORDER BY id",
                           "SELECT body FROM blob_body WHERE digest=?1", at_ms, found);
    }
    if (!done) return tl::make_unexpected(done.error());
    return found;
}

}  // namespace sillwalk::app
