#include "app/bundle/canonical.hpp"
#include "app/office/secret.hpp"
#include "app/office/store.hpp"

#include <fmt/format.h>

#include <charconv>

namespace sillwalk::office {

namespace {

constexpr std::string_view receipt_format = "sillwalk-receipt/1";

constexpr const char* revision_columns =
    "SELECT digest, survey_id, device_id, received_ms, seq, body, signatures FROM revision ";

Json parsed(const std::optional<std::string>& text) {
    return Json::parse(to_text(text), nullptr, false);
}

RevisionRow revision_of(const SqlRow& row) {
    RevisionRow out{to_text(row[0]),    to_text(row[1]), to_text(row[2]), to_integer(row[3]),
                    to_integer(row[4]), parsed(row[5]),  parsed(row[6]),  {}};
    for (const Json& parent : out.revision.value("parents", Json::array()))
        out.parents.push_back(parent.get<std::string>());
    return out;
}

Json texts(const SqlRows& rows) {
    Json out = Json::array();
    for (const SqlRow& row : rows) out.push_back(to_text(row[0]));
    return out;
}

/// A row for the survey, locked until the transaction ends, so that heads change one revision at a time.
Result<void> lock_survey(SqlSession& session, const std::string& survey_id) {
    auto put = session.run("INSERT INTO survey(id) VALUES(?1) ON CONFLICT DO NOTHING", {survey_id});
    if (!put) return tl::make_unexpected(put.error());
    if (!session.shared()) return {};
    auto locked = session.run("SELECT id FROM survey WHERE id = ?1 FOR UPDATE", {survey_id});
    if (!locked) return tl::make_unexpected(locked.error());
    return {};
}

Result<void> run_all(SqlSession& session, const std::vector<std::pair<const char*, std::vector<SqlValue>>>& list) {
    for (const auto& [sql, values] : list) {
        auto done = session.run(sql, values);
        if (!done) return tl::make_unexpected(done.error());
    }
    return {};
}

/// A new revision ends its parents as heads, and is one itself unless a child of it came before it.
Result<void> update_heads(SqlSession& session, const app::Envelope& envelope) {
    const std::string digest = app::to_hex(envelope.digest);
    for (const Digest& parent : envelope.parents) {
        auto done = run_all(
            session,
            {{"INSERT INTO revision_parent(digest, parent) VALUES(?1, ?2)", {digest, app::to_hex(parent)}},
             {"DELETE FROM head WHERE survey_id = ?1 AND digest = ?2", {envelope.survey_id, app::to_hex(parent)}}});
        if (!done) return done;
    }
    return run_all(session, {{"INSERT INTO head(survey_id, digest) SELECT ?1, ?2 WHERE NOT EXISTS (SELECT 1 FROM "
                              "revision_parent p JOIN revision r ON r.digest = p.digest WHERE p.parent = ?2 AND "
                              "r.survey_id = ?1)",
                              {envelope.survey_id, digest}}});
}

std::string next_in_sequence(const SqlSession& session) {
    // On PostgreSQL the feed goes by transaction: a slow one that commits later is not passed over (sync: feed cursor).
    return session.shared() ? "nextval('revision_seq'), pg_current_xact_id()::text::bigint"
                            : "(SELECT coalesce(max(seq), 0) + 1 FROM revision), "
                              "(SELECT coalesce(max(seq), 0) + 1 FROM revision)";
}

}  // namespace

std::string title_of(const Json& revision) {
    for (const auto& [uuid, item] : revision.at("items").items()) {
        if (item.value("kind", "") != "site") continue;
        const auto site = item.at("v").find("site");
        if (site != item.at("v").end() && site->is_string()) return site->get<std::string>();
    }
    return "";
}

Result<bool> Store::insert_revision(SqlSession& session, const app::Envelope& envelope, const std::string& device_id,
                                    std::int64_t received_ms) const {
    const std::string digest = app::to_hex(envelope.digest);
    if (auto locked = lock_survey(session, envelope.survey_id); !locked) return tl::make_unexpected(locked.error());
    Json signatures = Json::parse(app::envelope_text(envelope), nullptr, false).at("sig");
    auto fresh = session.run(
        "INSERT INTO revision(digest, survey_id, device_id, body, signatures, received_ms, seq, "
        "feed) SELECT ?1, ?2, ?3, ?4, ?5, CAST(?6 AS BIGINT), " +
            next_in_sequence(session) + " WHERE true ON CONFLICT(digest) DO NOTHING RETURNING digest",
        {digest, envelope.survey_id, device_id, envelope.canonical, app::canonical_json(signatures), received_ms});
    if (!fresh) return tl::make_unexpected(fresh.error());
    if (fresh->empty()) return false;
    for (const app::BlobRef& blob : envelope.blobs) {
        auto named = session.run(
            "INSERT INTO revision_blob(digest, blob, bytes, media) VALUES(?1, ?2, ?3, ?4) ON "
            "CONFLICT DO NOTHING",
            {digest, app::to_hex(blob.digest), blob.bytes, blob.media});
        if (!named) return tl::make_unexpected(named.error());
    }
    if (auto done = update_heads(session, envelope); !done) return tl::make_unexpected(done.error());
    auto titled =
        session.run("UPDATE survey SET title = ?2 WHERE id = ?1", {envelope.survey_id, title_of(envelope.revision)});
    if (!titled) return tl::make_unexpected(titled.error());
    return true;
}

Result<std::string> Store::receipt_in(SqlSession& session, const std::string& digest) const {
    auto row = only_row(session.run("SELECT survey_id, received_ms, seq FROM revision WHERE digest = ?1", {digest}),
                        "revision");
    if (!row) return tl::make_unexpected(row.error());
    auto missing = session.run(
        "SELECT rb.blob FROM revision_blob rb LEFT JOIN blob b ON b.digest = rb.blob WHERE "
        "rb.digest = ?1 AND b.digest IS NULL ORDER BY rb.blob",
        {digest});
    if (!missing) return tl::make_unexpected(missing.error());
    auto found = session.run("SELECT digest FROM head WHERE survey_id = ?1 ORDER BY digest", {to_text(row->at(0))});
    if (!found) return tl::make_unexpected(found.error());
    const Json body{{"format", receipt_format},         {"digest", digest},
                    {"survey_id", to_text(row->at(0))}, {"stored_at_ms", to_integer(row->at(1))},
                    {"seq", to_integer(row->at(2))},    {"missing_blobs", texts(*missing)},
                    {"complete", missing->empty()},     {"heads", texts(*found)},
                    {"fork", found->size() > 1}};
    const auto signature = app::sign(key_, receipt_format, app::sha256(app::canonical_json(body)));
    return app::canonical_json({{"receipt", body},
                                {"sig", Json::array({{{"alg", "Ed25519"},
                                                      {"kid", key_id()},
                                                      {"value", app::to_base64url(app::byte_view(signature))}}})}});
}

Result<StoredRevision> Store::put(const app::Envelope& envelope, const std::string& device_id) {
    StoredRevision out;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        auto fresh = insert_revision(session, envelope, device_id, now_ms());
        if (!fresh) return tl::make_unexpected(fresh.error());
        auto receipt = receipt_in(session, app::to_hex(envelope.digest));
        if (!receipt) return tl::make_unexpected(receipt.error());
        out = {*fresh, std::move(*receipt)};
        return {};
    });
    if (!done) return tl::make_unexpected(done.error());
    return out;
}

Result<void> Store::quarantine(std::string_view body, const std::string& why, const std::string& device_id) {
    auto put = query("INSERT INTO quarantine(id, at_ms, device_id, why, body) VALUES(?1, ?2, ?3, ?4, ?5)",
                     {new_id(now_ms()), now_ms(), device_id, why, app::to_base64(body)});
    if (!put) return tl::make_unexpected(put.error());
    return {};
}

Result<std::string> Store::receipt(const std::string& digest) {
    Result<std::string> out;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        out = receipt_in(session, digest);
        if (!out) return tl::make_unexpected(out.error());
        return {};
    });
    if (!done) return tl::make_unexpected(done.error());
    return out;
}

Result<RevisionRow> Store::revision(const std::string& digest) {
    auto row = only_row(query(std::string(revision_columns) + "WHERE digest = ?1", {digest}), "revision");
    if (!row) return tl::make_unexpected(row.error());
    return revision_of(*row);
}

Result<std::vector<std::string>> Store::heads(const std::string& survey_id) {
    auto rows = query("SELECT digest FROM head WHERE survey_id = ?1 ORDER BY digest", {survey_id});
    if (!rows) return tl::make_unexpected(rows.error());
    if (rows->empty()) return engine::fail(engine::ErrorCode::not_found, "no such survey", "survey");
    return texts(*rows).get<std::vector<std::string>>();
}

Result<std::vector<RevisionRow>> Store::history(const std::string& survey_id) {
    auto rows = query(std::string(revision_columns) + "WHERE survey_id = ?1 ORDER BY seq", {survey_id});
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<RevisionRow> out;
    for (const SqlRow& row : *rows) out.push_back(revision_of(row));
    return out;
}

Result<std::vector<SurveyRow>> Store::surveys() {
    auto rows = query(
        "SELECT s.id, s.title, max(r.received_ms), count(*), (SELECT count(DISTINCT rb.blob) FROM "
        "revision_blob rb JOIN revision r2 ON r2.digest = rb.digest LEFT JOIN blob b ON b.digest = rb.blob "
        "WHERE r2.survey_id = s.id AND b.digest IS NULL) FROM survey s JOIN revision r ON r.survey_id = "
        "s.id GROUP BY s.id, s.title ORDER BY max(r.received_ms) DESC, s.id");
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<SurveyRow> out;
    std::map<std::string, std::size_t> place;
    for (const SqlRow& row : *rows) {
        place[to_text(row[0])] = out.size();
        out.push_back(
            {to_text(row[0]), to_text(row[1]), to_integer(row[2]), to_integer(row[3]), to_integer(row[4]), {}});
    }
    auto found = query("SELECT survey_id, digest FROM head ORDER BY survey_id, digest");
    if (!found) return tl::make_unexpected(found.error());
    for (const SqlRow& row : *found) {
        const auto survey = place.find(to_text(row[0]));
        if (survey != place.end()) out[survey->second].heads.push_back(to_text(row[1]));
    }
    return out;
}

Result<ChangeList> Store::changes(const std::string& cursor, std::int64_t limit) {
    ChangeList out;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        auto setting = only_row(session.run("SELECT value FROM setting WHERE name = 'epoch'"), "setting");
        if (!setting) return tl::make_unexpected(setting.error());
        const std::string epoch = to_text(setting->at(0));
        // "<epoch>.<feed>.<seq>"; a cursor of another epoch (after a restore) starts anew.
        std::int64_t feed = 0, seq = 0;
        if (cursor.starts_with(epoch + ".")) {
            const char* const end = cursor.data() + cursor.size();
            const auto first = std::from_chars(cursor.data() + epoch.size() + 1, end, feed);
            if (first.ptr != end) std::from_chars(first.ptr + 1, end, seq);
        }
        const std::string settled =
            session.shared() ? " AND feed < pg_snapshot_xmin(pg_current_snapshot())::text::bigint" : "";
        auto rows = session.run(
            "SELECT digest, survey_id, body, feed, seq FROM revision WHERE (feed > ?1 OR (feed = ?1 "
            "AND seq > ?2))" +
                settled + " ORDER BY feed, seq LIMIT ?3",
            {feed, seq, limit});
        if (!rows) return tl::make_unexpected(rows.error());
        for (const SqlRow& row : *rows) {
            out.items.push_back(
                {to_text(row[0]), to_text(row[1]), parsed(row[2]).at("author").at("role").get<std::string>()});
            feed = to_integer(row[3]);
            seq = to_integer(row[4]);
        }
        out.next = fmt::format("{}.{}.{}", epoch, feed, seq);
        return {};
    });
    if (!done) return tl::make_unexpected(done.error());
    return out;
}

app::SignatureState Store::signature_state(const app::Envelope& envelope) {
    return app::check_signatures(envelope, [&](std::string_view key_id) -> std::optional<app::PublicKey> {
        if (key_id == this->key_id()) return key_.public_key;
        auto rows = query("SELECT public_key FROM device WHERE id = ?1 AND revoked_ms IS NULL", {std::string(key_id)});
        if (!rows || rows->empty()) return std::nullopt;
        return app::digest_from_hex(to_text(rows->front()[0]));
    });
}

}  // namespace sillwalk::office
