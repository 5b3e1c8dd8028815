#include "app/storage/erase.hpp"

#include "app/storage/rows.hpp"
#include "app/storage/seal.hpp"

#include <algorithm>
#include <vector>

namespace sillwalk::app {

using engine::Result;

namespace {

// Versions of the visit that the office has not acknowledged whole, and photos of theirs that are still on the way.
constexpr const char* not_at_office = R"sql(
SELECT (SELECT count(*) FROM revision r WHERE r.survey_id=?1
          AND NOT EXISTS(SELECT 1 FROM receipt c WHERE c.digest=r.digest AND c.complete=1))
     + (SELECT count(*) FROM revision r JOIN revision_blob b ON b.digest=r.digest
          JOIN outbox o ON o.kind='blob' AND o.digest=b.blob WHERE r.survey_id=?1 AND o.state<>'done')
)sql";

Result<bool> office_has_all(Database& database, const std::string& survey_id) {
    const auto head = load_head(database, survey_id);
    if (!head) return tl::make_unexpected(head.error());
    if (head->state == "draft" || !head->base) return false;
    auto missing = database.prepare(not_at_office);
    if (!missing) return tl::make_unexpected(missing.error());
    missing->bind(1, survey_id);
    const auto row = missing->step();
    if (!row) return tl::make_unexpected(row.error());
    return missing->integer(0) == 0;
}

Result<void> run_for_visit(Database& database, const char* sql, const std::string& survey_id) {
    auto statement = database.prepare(sql);
    if (!statement) return tl::make_unexpected(statement.error());
    return statement->bind(1, survey_id).run();
}

Result<std::vector<Digest>> photos_of_visit(Database& database, const std::string& survey_id) {
    std::vector<Digest> photos;
    const auto revisions = list_revisions(database, survey_id);
    if (!revisions) return tl::make_unexpected(revisions.error());
    for (const Digest& revision : *revisions) {
        const auto some = photos_of_revision(database, revision);
        if (!some) return tl::make_unexpected(some.error());
        photos.insert(photos.end(), some->begin(), some->end());
    }
    std::sort(photos.begin(), photos.end());
    photos.erase(std::unique(photos.begin(), photos.end()), photos.end());
    return photos;
}

/// A photo that another visit shows, sealed or not, stays.
Result<void> erase_photo(Database& database, const Digest& photo) {
    const auto named = has_row(database, "SELECT 1 FROM revision_blob WHERE blob=?1", photo);
    if (!named) return tl::make_unexpected(named.error());
    auto shown = database.prepare("SELECT count(*) FROM entry WHERE value=?1");
    if (!shown) return tl::make_unexpected(shown.error());
    shown->bind(1, '"' + to_hex(photo) + '"');
    const auto row = shown->step();
    if (!row) return tl::make_unexpected(row.error());
    if (*named || shown->integer(0) > 0) return {};
    shown->reset();
    for (const char* sql : {"DELETE FROM outbox WHERE kind='blob' AND digest=?1",
                            "DELETE FROM blob_body WHERE digest=?1", "DELETE FROM blob WHERE digest=?1"}) {
        if (auto done = run_with(database, sql, photo); !done) return done;
    }
    return {};
}

}  // namespace

Result<void> erase_visit(Database& database, const std::string& survey_id) {
    auto transaction = database.begin();
    if (!transaction) return tl::make_unexpected(transaction.error());
    const auto whole = office_has_all(database, survey_id);
    if (!whole) return tl::make_unexpected(whole.error());
    if (!*whole) return engine::no_answer("the office does not have all of this visit");
    const auto photos = photos_of_visit(database, survey_id);
    if (!photos) return tl::make_unexpected(photos.error());
    constexpr const char* own = "(SELECT digest FROM revision WHERE survey_id=?1)";
    const std::string of_own = std::string(" WHERE digest IN ") + own;
    const std::string statements[] = {
        "DELETE FROM draft WHERE survey_id=?1",   "DELETE FROM edit WHERE survey_id=?1",
        "DELETE FROM entry WHERE survey_id=?1",   "DELETE FROM survey WHERE survey_id=?1",
        "DELETE FROM receipt" + of_own,           "DELETE FROM outbox" + of_own + " AND kind='revision'",
        "DELETE FROM revision_blob" + of_own,     "DELETE FROM revision_parent" + of_own,
        "DELETE FROM revision WHERE survey_id=?1"};
    for (const std::string& sql : statements) {
        if (auto done = run_for_visit(database, sql.c_str(), survey_id); !done) return done;
    }
    for (const Digest& photo : *photos) {
        if (auto done = erase_photo(database, photo); !done) return done;
    }
    return transaction->commit();
}

}  // namespace sillwalk::app
