// Taking a visit off the tablet: only what the office has whole, and nothing of another visit.
#include "app/storage/erase.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

struct Tablet {
    Database database = std::move(*Database::open(":memory:"));

    Tablet() { REQUIRE(migrate(database)); }
    std::int64_t count(const std::string& table) {
        const auto rows = database.number("SELECT count(*) FROM " + table);
        REQUIRE(rows);
        return *rows;
    }
    Digest seal(const std::string& visit, const std::string& note, const std::vector<std::string>& photos = {}) {
        const auto digest = test::seal_visit(database, visit, note, photos);
        REQUIRE(digest);
        return *digest;
    }
    /// The office's word that it has the version, and the photos too where `complete`.
    void acknowledge(const Digest& digest, bool complete = true) {
        REQUIRE(store_receipt(database, {digest, "https://office.example", 1, complete, false, "{}"}));
        if (complete) REQUIRE(database.execute("UPDATE outbox SET state='done'"));
    }
    engine::ErrorCode refusal(const std::string& visit) {
        const auto done = erase_visit(database, visit);
        REQUIRE_FALSE(done);
        return done.error().code;
    }
};

const std::string one = test::visit_uuid(1), two = test::visit_uuid(2);
constexpr auto refused = engine::ErrorCode::no_answer;

}  // namespace

TEST_CASE("a visit is erased only once the office has every version and photo of it", "[sync][erase]") {
    Tablet tablet;
    const std::string photo = test::photo_bytes(1, 5000);
    CHECK(tablet.refusal(one) == engine::ErrorCode::not_found);
    REQUIRE(apply_all(tablet.database, {test::plain_visit(one)}));
    CHECK(tablet.refusal(one) == refused);
    const Digest first = tablet.seal(one, "one", {photo});
    CHECK(tablet.refusal(one) == refused);
    tablet.acknowledge(first, false);
    CHECK(tablet.refusal(one) == refused);
    tablet.acknowledge(first);
    const StoreStep change{one, 1, EditKind::edit, "x", {{"/site", "\"Plant\"", "\"P\""}}, 9};
    REQUIRE(apply_all(tablet.database, {change}));
    CHECK(tablet.refusal(one) == refused);
    const Digest second = tablet.seal(one, "two", {photo});
    CHECK(tablet.refusal(one) == refused);
    CHECK(tablet.count("revision") == 2);
    tablet.acknowledge(second);
    REQUIRE(erase_visit(tablet.database, one));
    for (const char* table : {"survey", "entry", "edit", "draft", "revision", "revision_parent", "revision_blob",
                              "receipt", "outbox", "blob", "blob_body"}) {
        INFO(table);
        CHECK(tablet.count(table) == 0);
    }
    CHECK(tablet.refusal(one) == engine::ErrorCode::not_found);
}

TEST_CASE("what another visit shows stays, sealed or not", "[sync][erase]") {
    Tablet tablet;
    const std::string sealed = test::photo_bytes(1, 500), drawn = test::photo_bytes(2, 500),
                      own = test::photo_bytes(3, 500);
    tablet.acknowledge(tablet.seal(one, "one", {sealed, drawn, own}));
    (void)tablet.seal(two, "two", {sealed});
    const StoreStep shows{two, 1, EditKind::edit, "x", {{"/photos/a/sha256", {}, '"' + to_hex(sha256(drawn)) + '"'}},
                          9};
    REQUIRE(apply_all(tablet.database, {shows}));
    REQUIRE(erase_visit(tablet.database, one));
    CHECK(tablet.count("survey") == 1);
    CHECK(tablet.count("revision") == 1);
    CHECK(load_photo(tablet.database, sha256(sealed)));
    CHECK(load_photo(tablet.database, sha256(drawn)));
    CHECK_FALSE(load_photo(tablet.database, sha256(own)));
    CHECK(tablet.refusal(two) == refused);
}
