#include "app/storage/schema.hpp"

#include <string>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

// A visit is a map of entries: the JSON path of a reading and that reading's JSON. `edit` is append-only: undo, audit,
// salvage. A draft is the keypad's buffer, so that a dead battery costs one key at most.
// No CHECK(json_valid(value)): the distribution's SQLite holds json_valid for unsafe under trusted_schema=OFF. The
// reader refuses what is not JSON.
constexpr const char* version_1 = R"sql(
CREATE TABLE meta(key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE revision(digest BLOB PRIMARY KEY CHECK(length(digest)=32), survey_id TEXT NOT NULL,
  origin TEXT NOT NULL CHECK(origin IN('local','office','file')), body BLOB NOT NULL, signature BLOB,
  sealed_ms INTEGER NOT NULL) STRICT;
CREATE TABLE survey(survey_id TEXT PRIMARY KEY CHECK(length(survey_id)>0), title TEXT NOT NULL,
  base_digest BLOB REFERENCES revision(digest), state TEXT NOT NULL CHECK(state IN('draft','sealed','forked')),
  created_ms INTEGER NOT NULL, updated_ms INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE entry(survey_id TEXT NOT NULL REFERENCES survey, path TEXT NOT NULL,
  value TEXT NOT NULL CHECK(length(value)>0), updated_ms INTEGER NOT NULL,
  PRIMARY KEY(survey_id, path)) STRICT, WITHOUT ROWID;
CREATE TABLE edit(seq INTEGER PRIMARY KEY, survey_id TEXT NOT NULL REFERENCES survey, step INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK(kind IN('do','undo','redo')), label TEXT NOT NULL, path TEXT NOT NULL, old TEXT, new TEXT,
  at_ms INTEGER NOT NULL) STRICT;
CREATE INDEX edit_survey ON edit(survey_id, seq);
CREATE TABLE draft(survey_id TEXT PRIMARY KEY REFERENCES survey, path TEXT NOT NULL, text TEXT NOT NULL,
  at_ms INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE revision_parent(digest BLOB NOT NULL REFERENCES revision, parent BLOB NOT NULL,
  PRIMARY KEY(digest, parent)) STRICT, WITHOUT ROWID;
CREATE INDEX revision_parent_parent ON revision_parent(parent);
CREATE TABLE blob(digest BLOB PRIMARY KEY CHECK(length(digest)=32), bytes INTEGER NOT NULL, media TEXT NOT NULL,
  width INTEGER, height INTEGER, thumbnail BLOB, verified_ms INTEGER) STRICT, WITHOUT ROWID;
CREATE TABLE revision_blob(digest BLOB NOT NULL REFERENCES revision, blob BLOB NOT NULL REFERENCES blob,
  PRIMARY KEY(digest, blob)) STRICT, WITHOUT ROWID;
CREATE TABLE outbox(id INTEGER PRIMARY KEY, kind TEXT NOT NULL CHECK(kind IN('revision','blob')), digest BLOB NOT NULL,
  state TEXT NOT NULL CHECK(state IN('queued','sending','parked','done')), attempts INTEGER NOT NULL DEFAULT 0,
  upload_url TEXT, upload_offset INTEGER, last_status INTEGER, last_error TEXT, UNIQUE(kind, digest)) STRICT;
CREATE TABLE receipt(digest BLOB PRIMARY KEY, server TEXT NOT NULL, seq INTEGER NOT NULL, complete INTEGER NOT NULL,
  body BLOB NOT NULL, signature BLOB) STRICT, WITHOUT ROWID;
CREATE TABLE quarantine(id INTEGER PRIMARY KEY, at_ms INTEGER NOT NULL, why TEXT NOT NULL, body BLOB NOT NULL) STRICT;
)sql";

// Photos lie in the file itself: one transaction holds a photo and the visit's entry that names it, and one file is the
// whole visit. They are small (sixty of 0.3 MB), and a table of its own keeps them out of every other page.
constexpr const char* version_2 = R"sql(
CREATE TABLE blob_body(id INTEGER PRIMARY KEY, digest BLOB NOT NULL UNIQUE REFERENCES blob(digest),
  body BLOB NOT NULL CHECK(length(body)>0)) STRICT;
)sql";

// What sending needs. The device's key and the office's token stand apart from `meta`, which screens read whole.
// `upkeep` is about the file itself: whether it was closed, when it was copied.
constexpr const char* version_3 = R"sql(
CREATE TABLE device(id INTEGER PRIMARY KEY CHECK(id=1), device_id TEXT NOT NULL,
  seed BLOB NOT NULL CHECK(length(seed)=32)) STRICT;
CREATE TABLE office(id INTEGER PRIMARY KEY CHECK(id=1), url TEXT NOT NULL, device_id TEXT NOT NULL, token TEXT NOT NULL,
  expires_ms INTEGER NOT NULL, key_id TEXT NOT NULL, public_key BLOB NOT NULL CHECK(length(public_key)=32),
  pin TEXT NOT NULL) STRICT;
CREATE TABLE upkeep(name TEXT PRIMARY KEY, value INTEGER NOT NULL) STRICT, WITHOUT ROWID;
ALTER TABLE quarantine ADD COLUMN digest BLOB;
CREATE INDEX outbox_state ON outbox(state, id);
CREATE INDEX revision_survey ON revision(survey_id);
)sql";

constexpr Migration all_migrations[] = {
    {1, version_1},
    {2, version_2},
    {3, version_3},
};

Result<void> apply(Database& database, const Migration& migration) {
    auto transaction = database.begin();
    if (!transaction) return tl::make_unexpected(transaction.error());
    if (auto done = database.execute(migration.sql); !done) return done;
    const std::string bump = "PRAGMA user_version=" + std::to_string(migration.to_version) +
                             "; PRAGMA application_id=" + std::to_string(application_id);
    if (auto done = database.execute(bump.c_str()); !done) return done;
    auto broken = database.prepare("PRAGMA foreign_key_check");
    if (!broken) return tl::make_unexpected(broken.error());
    const auto row = broken->step();
    if (!row) return tl::make_unexpected(row.error());
    if (*row) return engine::fail(ErrorCode::storage, "a migration left a dangling reference", broken->text(0));
    broken->reset();
    return transaction->commit();
}

}  // namespace

std::span<const Migration> migrations() {
    return all_migrations;
}
std::int64_t schema_version() {
    return migrations().back().to_version;
}

Result<void> migrate(Database& database) {
    const auto version = database.number("PRAGMA user_version");
    const auto owner = database.number("PRAGMA application_id");
    const auto tables = database.number("SELECT count(*) FROM sqlite_schema");
    if (!version) return tl::make_unexpected(version.error());
    if (!owner) return tl::make_unexpected(owner.error());
    if (!tables) return tl::make_unexpected(tables.error());
    if (*tables > 0 && *owner != application_id) {
        return engine::fail(ErrorCode::storage, "this file belongs to another program");
    }
    if (*version > schema_version()) {
        return engine::fail(ErrorCode::too_new, "a newer program wrote this file; it is left as it is");
    }
    for (const Migration& migration : migrations()) {
        if (migration.to_version <= *version) continue;
        if (auto done = apply(database, migration); !done) return done;
    }
    return {};
}

}  // namespace sillwalk::app
