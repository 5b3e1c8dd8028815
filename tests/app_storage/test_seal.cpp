#include "app/storage/quarantine.hpp"
#include "tests/app_storage/scratch.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;
using namespace sillwalk::test;

namespace {

Database fresh() {
    auto database = Database::open(":memory:");
    REQUIRE(database);
    REQUIRE(migrate(*database));
    return std::move(*database);
}

std::int64_t count(Database& database, const std::string& table) {
    return database.number("SELECT count(*) FROM " + table).value_or(-1);
}

}  // namespace

TEST_CASE("a seal stands in the outbox with its photos in the same transaction", "[storage]") {
    Database database = fresh();
    const std::string visit = visit_uuid(1), photo = photo_bytes(1, 500);
    const auto digest = seal_visit(database, visit, "one", {photo});
    REQUIRE(digest);
    const auto head = load_head(database, visit);
    CHECK(head->state == "sealed");
    CHECK(head->base == *digest);
    const auto rows = list_outbox(database);
    REQUIRE(rows->size() == 2);
    CHECK((*rows)[0].kind == OutboxKind::revision);
    CHECK((*rows)[0].digest == *digest);
    CHECK((*rows)[1].kind == OutboxKind::blob);
    CHECK((*rows)[1].digest == sha256(photo));
    CHECK(photos_of_revision(database, *digest) == std::vector<Digest>{sha256(photo)});
    const auto stored = load_revision(database, *digest);
    REQUIRE(stored);
    CHECK(sha256(stored->body) == *digest);
}

TEST_CASE("a seal whose row in the outbox cannot be written leaves nothing at all", "[storage]") {
    Database database = fresh();
    REQUIRE(apply_all(database, {plain_visit(visit_uuid(1))}));
    REQUIRE(database.execute("CREATE TRIGGER no BEFORE INSERT ON outbox BEGIN SELECT raise(ABORT, 'no'); END"));
    CHECK_FALSE(seal(database, seal_order(visit_uuid(1), *load_head(database, visit_uuid(1)), "one")));
    CHECK(count(database, "revision") == 0);
    CHECK(load_head(database, visit_uuid(1))->state == "draft");
    REQUIRE(database.execute("DROP TRIGGER no"));
    CHECK(seal(database, seal_order(visit_uuid(1), *load_head(database, visit_uuid(1)), "one")));
}

TEST_CASE("what was made from an older state of the visit is not sealed", "[storage]") {
    Database database = fresh();
    const std::string visit = visit_uuid(1);
    REQUIRE(apply_all(database, {plain_visit(visit)}));
    const auto early = load_head(database, visit);
    REQUIRE(early);
    const SealOrder order = seal_order(visit, *early, "one");
    REQUIRE(apply_all(database, {StoreStep{visit, 1, EditKind::edit, "edit", {{"/site", {}, "\"New\""}}, 1}}));
    const auto edited = seal(database, order);
    REQUIRE_FALSE(edited);
    CHECK(edited.error().code == engine::ErrorCode::disagreement);
    REQUIRE(seal_visit(database, visit, "two"));
    SealOrder old_base = seal_order(visit, *load_head(database, visit), "three");
    old_base.parents.clear();
    CHECK_FALSE(seal(database, old_base));
    CHECK(count(database, "revision") == 1);
}

TEST_CASE("a photo that is not in the file, or a visit that is not, cannot be sealed", "[storage]") {
    Database database = fresh();
    REQUIRE(apply_all(database, {plain_visit(visit_uuid(1))}));
    const auto missing =
        seal(database, seal_order(visit_uuid(1), *load_head(database, visit_uuid(1)), "one", {"none"}));
    REQUIRE_FALSE(missing);
    CHECK(missing.error().code == engine::ErrorCode::not_found);
    CHECK_FALSE(seal(database, seal_order(visit_uuid(2), {"draft", 0, {}}, "one")));
    CHECK(count(database, "revision") == 0);
}

TEST_CASE("sealing again builds on the last one, the same again changes nothing, an edit makes a draft", "[storage]") {
    Database database = fresh();
    const std::string visit = visit_uuid(1), photo = photo_bytes(1, 500);
    REQUIRE(apply_all(database, {plain_visit(visit), photo_of(photo)}));
    const SealOrder first = seal_order(visit, *load_head(database, visit), "one", {photo});
    REQUIRE(seal(database, first));
    REQUIRE(seal(database, first));
    CHECK(count(database, "outbox") == 2);
    REQUIRE(apply_all(database, {StoreStep{visit, 1, EditKind::edit, "edit", {{"/site", {}, "\"New\""}}, 1}}));
    CHECK(load_head(database, visit)->state == "draft");
    const SealOrder second = seal_order(visit, *load_head(database, visit), "two", {photo});
    CHECK(second.parents == std::vector<Digest>{first.digest});
    REQUIRE(seal(database, second));
    CHECK(count(database, "outbox") == 3);  // the photo waits once
    CHECK(list_revisions(database, visit) == std::vector<Digest>{first.digest, second.digest});
}

TEST_CASE("the outbox gives revisions first, keeps what is parked and counts", "[storage]") {
    Database database = fresh();
    const std::string photo = photo_bytes(1, 500);
    const auto first = seal_visit(database, visit_uuid(1), "one", {photo});
    const auto second = seal_visit(database, visit_uuid(2), "two");
    auto row = next_in_outbox(database);
    REQUIRE((row && *row));
    CHECK((**row).digest == *first);
    (**row).state = OutboxState::done;
    REQUIRE(update_outbox(database, **row));
    row = next_in_outbox(database);
    CHECK((**row).digest == *second);
    (**row).state = OutboxState::parked;
    (**row).last_error = "sync.why.refused";
    REQUIRE(update_outbox(database, **row));
    row = next_in_outbox(database);
    CHECK((**row).digest == sha256(photo));
    (**row).state = OutboxState::sending;
    (**row).upload_url = "/v1/uploads/a";
    (**row).upload_offset = 7;
    REQUIRE(update_outbox(database, **row));
    CHECK(count_outbox(database) == OutboxCount{1, 1, 1});
    REQUIRE(requeue_sending(database));
    row = next_in_outbox(database);
    CHECK((**row).state == OutboxState::queued);
    CHECK((**row).upload_url == "/v1/uploads/a");
    CHECK((**row).upload_offset == 7);
    REQUIRE(requeue_parked(database));
    CHECK(count_outbox(database) == OutboxCount{2, 0, 1});
    CHECK((**next_in_outbox(database)).digest == *second);
    REQUIRE(requeue_done(database, OutboxKind::revision, {*first, *second}));
    CHECK(count_outbox(database) == OutboxCount{3, 0, 0});
}

TEST_CASE("a receipt is kept with its row, and tells of a fork", "[storage]") {
    Database database = fresh();
    const auto digest = seal_visit(database, visit_uuid(1), "one");
    auto row = **next_in_outbox(database);
    row.state = OutboxState::done;
    REQUIRE(store_receipt(database, {*digest, "https://office.example", 4711, false, true, "text"}, &row));
    CHECK(load_head(database, visit_uuid(1))->state == "forked");
    CHECK(incomplete_receipts(database) == std::vector<Digest>{*digest});
    CHECK(count_outbox(database) == OutboxCount{0, 0, 1});
    REQUIRE(store_receipt(database, {*digest, "https://office.example", 4711, true, false, "later"}));
    CHECK(load_head(database, visit_uuid(1))->state == "sealed");
    CHECK(incomplete_receipts(database)->empty());
    CHECK((**load_receipt(database, *digest)).body == "later");
    CHECK_FALSE(*load_receipt(database, sha256("none")));
}

TEST_CASE("the device's key is made once and the office's access is kept apart from the settings", "[storage]") {
    Database database = fresh();
    CHECK_FALSE(*load_device(database));
    const auto device = device_identity(database, field_device());
    REQUIRE(device);
    DeviceIdentity other{visit_uuid(9), {}};
    CHECK(device_identity(database, other)->device_id == field_device_id);
    CHECK_FALSE(*load_office(database));
    OfficeAccess office{"https://office.example", visit_uuid(3), "token", 5, "k", {}, "sha256//x"};
    REQUIRE(store_office(database, office));
    office.token = "newer";
    REQUIRE(store_office(database, office));
    CHECK((**load_office(database)).token == "newer");
    CHECK((**load_office(database)).pin == "sha256//x");
    CHECK(load_settings(database)->empty());
}

TEST_CASE("a scrub finds what the disk changed, keeps a copy once, and nothing is deleted", "[storage]") {
    Database database = fresh();
    const std::string photo = photo_bytes(1, 500);
    const auto digest = seal_visit(database, visit_uuid(1), "one", {photo});
    CHECK(scrub(database, 3)->empty());
    REQUIRE(database.execute("UPDATE revision SET body=CAST('other' AS BLOB)"));
    CHECK(scrub(database, 3) == std::vector<Digest>{*digest});
    CHECK(scrub(database, 4) == std::vector<Digest>{*digest});
    const auto aside = list_quarantine(database);
    REQUIRE(aside->size() == 1);
    CHECK(aside->front().at_ms == 3);
    CHECK(aside->front().why == "sync.why.damaged");
    CHECK(count(database, "revision") == 1);
    CHECK(load_revision(database, *digest).error().code == engine::ErrorCode::disagreement);
}

TEST_CASE("a database of the second schema opens with all it holds", "[storage]") {
    auto database = Database::open(":memory:");
    REQUIRE(database->execute(file_bytes(std::string(SILLWALK_TEST_DATA) + "/app_storage/fixture_v2.sql").c_str()));
    REQUIRE(migrate(*database));
    CHECK(database->number("PRAGMA user_version") == schema_version());
    CHECK(load_photo(*database, sha256("a picture")) == "a picture");
    CHECK(load_visit(*database, "v1")->edits.size() == 3);
    CHECK(count_outbox(*database) == OutboxCount{});
}
