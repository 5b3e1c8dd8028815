#include "app/office/sql.hpp"

#include <charconv>

namespace sillwalk::office {

namespace {

constexpr std::int64_t schema_version = 1;

/// "{strict}" and "{integer}" are what the engines write differently.
constexpr const char* tables[] = {
    "CREATE TABLE IF NOT EXISTS setting(name TEXT PRIMARY KEY, value TEXT NOT NULL){strict}",
    "CREATE TABLE IF NOT EXISTS device(id TEXT PRIMARY KEY, name TEXT NOT NULL, public_key TEXT NOT NULL, "
    "token_hash TEXT NOT NULL UNIQUE, next_token_hash TEXT UNIQUE, created_ms {integer} NOT NULL, "
    "seen_ms {integer} NOT NULL, expires_ms {integer} NOT NULL, revoked_ms {integer}){strict}",
    "CREATE TABLE IF NOT EXISTS enrolment_code(hash TEXT PRIMARY KEY, label TEXT NOT NULL, "
    "expires_ms {integer} NOT NULL){strict}",
    "CREATE TABLE IF NOT EXISTS person(id TEXT PRIMARY KEY, name TEXT NOT NULL, code_hash TEXT NOT NULL UNIQUE, "
    "created_ms {integer} NOT NULL, revoked_ms {integer}){strict}",
    "CREATE TABLE IF NOT EXISTS login(hash TEXT PRIMARY KEY, person_id TEXT NOT NULL REFERENCES person(id), "
    "expires_ms {integer} NOT NULL){strict}",
    "CREATE TABLE IF NOT EXISTS survey(id TEXT PRIMARY KEY, title TEXT NOT NULL DEFAULT ''){strict}",
    "CREATE TABLE IF NOT EXISTS revision(digest TEXT PRIMARY KEY, survey_id TEXT NOT NULL REFERENCES survey(id), "
    "device_id TEXT NOT NULL, body TEXT NOT NULL, signatures TEXT NOT NULL, received_ms {integer} NOT NULL, "
    "seq {integer} NOT NULL UNIQUE, feed {integer} NOT NULL){strict}",
    "CREATE INDEX IF NOT EXISTS revision_survey ON revision(survey_id)",
    "CREATE INDEX IF NOT EXISTS revision_feed ON revision(feed, seq)",
    "CREATE TABLE IF NOT EXISTS revision_parent(digest TEXT NOT NULL, parent TEXT NOT NULL, "
    "PRIMARY KEY(digest, parent)){strict}",
    "CREATE INDEX IF NOT EXISTS revision_parent_parent ON revision_parent(parent)",
    "CREATE TABLE IF NOT EXISTS head(survey_id TEXT NOT NULL, digest TEXT NOT NULL, "
    "PRIMARY KEY(survey_id, digest)){strict}",
    "CREATE TABLE IF NOT EXISTS blob(digest TEXT PRIMARY KEY, bytes {integer} NOT NULL, "
    "stored_ms {integer} NOT NULL){strict}",
    "CREATE TABLE IF NOT EXISTS revision_blob(digest TEXT NOT NULL, blob TEXT NOT NULL, bytes {integer} NOT NULL, "
    "media TEXT NOT NULL, PRIMARY KEY(digest, blob)){strict}",
    "CREATE INDEX IF NOT EXISTS revision_blob_blob ON revision_blob(blob)",
    "CREATE TABLE IF NOT EXISTS upload(id TEXT PRIMARY KEY, digest TEXT NOT NULL, device_id TEXT NOT NULL, "
    "length {integer} NOT NULL, received {integer} NOT NULL, expires_ms {integer} NOT NULL){strict}",
    "CREATE TABLE IF NOT EXISTS quarantine(id TEXT PRIMARY KEY, at_ms {integer} NOT NULL, device_id TEXT NOT NULL, "
    "why TEXT NOT NULL, body TEXT NOT NULL){strict}",
};

std::string for_engine(std::string sql, bool shared) {
    const auto replace = [&](std::string_view slot, std::string_view by) {
        for (auto at = sql.find(slot); at != std::string::npos; at = sql.find(slot)) sql.replace(at, slot.size(), by);
    };
    replace("{strict}", shared ? "" : " STRICT");
    replace("{integer}", shared ? "BIGINT" : "INTEGER");
    return sql;
}

Result<void> make_tables(SqlSession& session) {
    if (session.shared()) {
        // Several programs may start at once; the second waits here. The number is ours, made once at random.
        if (auto locked = session.run("SELECT pg_advisory_xact_lock(7310868735403299)"); !locked)
            return tl::make_unexpected(locked.error());
        if (auto made = session.run("CREATE SEQUENCE IF NOT EXISTS revision_seq"); !made)
            return tl::make_unexpected(made.error());
    }
    for (const char* table : tables) {
        if (auto made = session.run(for_engine(table, session.shared())); !made)
            return tl::make_unexpected(made.error());
    }
    auto put = session.run("INSERT INTO setting(name, value) VALUES('schema', ?1) ON CONFLICT DO NOTHING",
                           {std::to_string(schema_version)});
    if (!put) return tl::make_unexpected(put.error());
    auto version = session.run("SELECT value FROM setting WHERE name = 'schema'");
    if (!version) return tl::make_unexpected(version.error());
    if (to_integer(version->at(0).at(0)) > schema_version)
        return engine::fail(engine::ErrorCode::too_new, "the database is of a newer version of this program", "schema");
    return {};
}

}  // namespace

Result<void> migrate(Sql& sql) {
    return sql.transact(make_tables);
}

std::int64_t to_integer(const std::optional<std::string>& value) {
    std::int64_t out = 0;
    if (value) std::from_chars(value->data(), value->data() + value->size(), out);
    return out;
}
std::string to_text(const std::optional<std::string>& value) {
    return value.value_or(std::string());
}

}  // namespace sillwalk::office
