#include "app/storage/survey_store.hpp"

#include "app/bundle/entries.hpp"

#include <utility>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr const char* kind_names[] = {"do", "undo", "redo"};

EditKind kind_from(const std::string& name) {
    if (name == "undo") return EditKind::undo;
    return name == "redo" ? EditKind::redo : EditKind::edit;
}

Result<void> write_entry(Database& database, const std::string& survey_id, const std::string& path,
                         const std::optional<std::string>& value, std::int64_t at_ms) {
    auto statement =
        database.prepare(value ? "INSERT INTO entry(survey_id, path, value, updated_ms) VALUES(?1, ?2, ?3, ?4) "
                                 "ON CONFLICT(survey_id, path) DO UPDATE SET value=?3, updated_ms=?4"
                               : "DELETE FROM entry WHERE survey_id=?1 AND path=?2");
    if (!statement) return tl::make_unexpected(statement.error());
    statement->bind(1, survey_id).bind(2, path);
    if (value) statement->bind(3, *value).bind(4, at_ms);
    return statement->run();
}

Result<void> write(Database& database, const StoreStep& step) {
    auto journal = database.prepare(
        "INSERT INTO edit(survey_id, step, kind, label, path, old, new, at_ms) VALUES(?1,?2,?3,?4,?5,?6,?7,?8)");
    if (!journal) return tl::make_unexpected(journal.error());
    for (const Change& change : step.changes) {
        if (auto done = write_entry(database, step.survey_id, change.path, change.now, step.at_ms); !done) return done;
        journal->bind(1, step.survey_id).bind(2, step.step);
        journal->bind(3, kind_names[static_cast<int>(step.kind)]).bind(4, step.label).bind(5, change.path);
        journal->bind_optional(6, change.before).bind_optional(7, change.now).bind(8, step.at_ms);
        if (auto done = journal->run(); !done) return done;
    }
    auto touched = database.prepare(
        "UPDATE survey SET updated_ms=?2, title=CASE ?3 WHEN '' THEN title ELSE ?3 END, "
        "state='draft' WHERE survey_id=?1");
    if (!touched) return tl::make_unexpected(touched.error());
    return touched->bind(1, step.survey_id).bind(2, step.at_ms).bind(3, step.title).run();
}

Result<void> write(Database& database, const StoreVisit& visit) {
    auto row = database.prepare(
        "INSERT INTO survey(survey_id, title, state, created_ms, updated_ms) VALUES(?1, ?2, 'draft', ?3, ?3)");
    if (!row) return tl::make_unexpected(row.error());
    if (auto done = row->bind(1, visit.survey_id).bind(2, visit.title).bind(3, visit.at_ms).run(); !done) return done;
    for (const auto& [path, value] : visit.entries) {
        if (auto done = write_entry(database, visit.survey_id, path, value, visit.at_ms); !done) return done;
    }
    return {};
}

Result<void> write(Database& database, const StoreDraft& draft) {
    auto statement =
        database.prepare(draft.path.empty() ? "DELETE FROM draft WHERE survey_id=?1"
                                            : "INSERT INTO draft(survey_id, path, text, at_ms) VALUES(?1, ?2, ?3, ?4) "
                                              "ON CONFLICT(survey_id) DO UPDATE SET path=?2, text=?3, at_ms=?4");
    if (!statement) return tl::make_unexpected(statement.error());
    statement->bind(1, draft.survey_id);
    if (!draft.path.empty()) statement->bind(2, draft.path).bind(3, draft.text).bind(4, draft.at_ms);
    return statement->run();
}

Result<void> write(Database& database, const StoreSetting& setting) {
    auto statement =
        database.prepare("INSERT INTO meta(key, value) VALUES(?1, ?2) ON CONFLICT(key) DO UPDATE SET value=?2");
    if (!statement) return tl::make_unexpected(statement.error());
    return statement->bind(1, setting.key).bind(2, setting.value).run();
}

Result<void> write(Database& database, const StorePhoto& photo) {
    auto row = database.prepare(
        "INSERT INTO blob(digest, bytes, media, width, height) VALUES(?1, ?2, 'image/jpeg', ?3, ?4) "
        "ON CONFLICT(digest) DO NOTHING");
    if (!row) return tl::make_unexpected(row.error());
    row->bind_bytes(1, byte_view(photo.sha256)).bind(2, static_cast<std::int64_t>(photo.bytes->size()));
    if (auto done = row->bind(3, photo.width_px).bind(4, photo.height_px).run(); !done) return done;
    auto body = database.prepare("INSERT INTO blob_body(digest, body) VALUES(?1, ?2) ON CONFLICT(digest) DO NOTHING");
    if (!body) return tl::make_unexpected(body.error());
    return body->bind_bytes(1, byte_view(photo.sha256)).bind_bytes(2, *photo.bytes).run();
}

/// Calls f for each row of a query about one visit.
template <class F>
Result<void> each_row(Database& database, const char* sql, const std::string& survey_id, F&& f) {
    auto rows = database.prepare(sql);
    if (!rows) return tl::make_unexpected(rows.error());
    rows->bind(1, survey_id);
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return {};
        f(*rows);
    }
}

}  // namespace

Result<void> apply(Database& database, const StoreCommand& command) {
    return std::visit([&](const auto& one) { return write(database, one); }, command);
}

Result<void> apply_all(Database& database, const std::vector<StoreCommand>& commands) {
    auto transaction = database.begin();
    if (!transaction) return tl::make_unexpected(transaction.error());
    for (const StoreCommand& command : commands) {
        if (auto done = apply(database, command); !done) return done;
    }
    return transaction->commit();
}

Result<std::vector<VisitRow>> list_visits(Database& database) {
    std::vector<VisitRow> visits;
    auto rows = database.prepare(
        "SELECT s.survey_id, s.title, s.state, s.created_ms, s.updated_ms, e.value FROM survey s LEFT JOIN entry e "
        "ON e.survey_id=s.survey_id AND e.path='/customer' ORDER BY s.updated_ms DESC, s.survey_id");
    if (!rows) return tl::make_unexpected(rows.error());
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return visits;
        visits.push_back({rows->text(0), rows->text(1), rows->text(2), rows->integer(3), rows->integer(4),
                          text_of_entry(rows->optional_text(5).value_or(""))});
    }
}

Result<StoredVisit> load_visit(Database& database, const std::string& survey_id) {
    StoredVisit visit;
    auto done = each_row(database, "SELECT path, value FROM entry WHERE survey_id=?1", survey_id,
                         [&](const Statement& row) { visit.entries[row.text(0)] = row.text(1); });
    if (!done) return tl::make_unexpected(done.error());
    if (visit.entries.empty()) return engine::fail(ErrorCode::not_found, "no such visit", survey_id);
    done = each_row(database, "SELECT step, kind, label, path, old, new FROM edit WHERE survey_id=?1 ORDER BY seq",
                    survey_id, [&](const Statement& row) {
                        visit.edits.push_back({row.integer(0),
                                               kind_from(row.text(1)),
                                               row.text(2),
                                               {row.text(3), row.optional_text(4), row.optional_text(5)}});
                    });
    if (!done) return tl::make_unexpected(done.error());
    done = each_row(database, "SELECT path, text, at_ms FROM draft WHERE survey_id=?1", survey_id,
                    [&](const Statement& row) {
                        visit.draft = StoreDraft{survey_id, row.text(0), row.text(1), row.integer(2)};
                    });
    if (!done) return tl::make_unexpected(done.error());
    return visit;
}

Result<std::string> load_photo(Database& database, const Digest& digest) {
    auto row = database.prepare("SELECT body FROM blob_body WHERE digest=?1");
    if (!row) return tl::make_unexpected(row.error());
    row->bind_bytes(1, byte_view(digest));
    const auto found = row->step();
    if (!found) return tl::make_unexpected(found.error());
    if (!*found) return engine::fail(ErrorCode::not_found, "the picture is not in this file", to_hex(digest));
    std::string bytes = row->bytes(0);
    if (sha256(bytes) == digest) return bytes;
    return engine::fail(ErrorCode::disagreement, "the picture is damaged on the disk", to_hex(digest));
}

Result<std::map<std::string, std::string>> load_settings(Database& database) {
    std::map<std::string, std::string> settings;
    auto rows = database.prepare("SELECT key, value FROM meta");
    if (!rows) return tl::make_unexpected(rows.error());
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return settings;
        settings[rows->text(0)] = rows->text(1);
    }
}

}  // namespace sillwalk::app
