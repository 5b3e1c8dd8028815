#include "app/storage/schema.hpp"
#include "app/storage/writer.hpp"
#include "tests/app_storage/scratch.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

std::string some_bytes() {
    std::string bytes("\xFF\xD8\0\1", 4);  // with a zero, as pictures have
    for (int i = 0; i < 300000; ++i) bytes += static_cast<char>(i * 7 % 251);
    return bytes;
}

StorePhoto store_photo(const std::string& bytes) {
    return {sha256(bytes), std::make_shared<const std::string>(bytes), 1600, 1200};
}

}  // namespace

TEST_CASE("a photo lies in the file under its digest and comes back byte by byte after a restart", "[storage][photo]") {
    const test::Scratch scratch;
    const std::string bytes = some_bytes();
    {
        auto writer = Writer::open(scratch.file("a.db"), {});
        REQUIRE(writer);
        CHECK((*writer)->submit(store_photo(bytes)) != 0);
        CHECK((*writer)->submit(store_photo(bytes)) != 0);  // the same picture again is no other one
        REQUIRE((*writer)->flush(10000));
    }
    auto writer = Writer::open(scratch.file("a.db"), {});
    REQUIRE(writer);
    CHECK((*writer)->photo(sha256(bytes)) == bytes);
    const auto none = (*writer)->photo(sha256("another"));
    REQUIRE_FALSE(none);
    CHECK(none.error().code == engine::ErrorCode::not_found);
    (*writer)->with_database([](Database& database) {
        CHECK(database.number("SELECT count(*) FROM blob") == 1);
        CHECK(database.number("SELECT count(*) FROM blob_body") == 1);
        CHECK(database.number("SELECT width FROM blob") == 1600);
        CHECK(database.number("SELECT bytes FROM blob") == static_cast<std::int64_t>(some_bytes().size()));
    });
}

TEST_CASE("a photo that the disk has changed is told, not shown", "[storage][photo]") {
    auto database = Database::open(":memory:");
    REQUIRE(database);
    REQUIRE(migrate(*database));
    const std::string bytes = some_bytes();
    REQUIRE(apply(*database, store_photo(bytes)));
    REQUIRE(database->execute("UPDATE blob_body SET body=CAST('other' AS BLOB)"));
    const auto read = load_photo(*database, sha256(bytes));
    REQUIRE_FALSE(read);
    CHECK(read.error().code == engine::ErrorCode::disagreement);
}

TEST_CASE("a photo and the visit that names it are kept together or not at all", "[storage][photo]") {
    auto database = Database::open(":memory:");
    REQUIRE(database);
    REQUIRE(migrate(*database));
    const std::string bytes = some_bytes();
    // The second command cannot be done: its visit is missing.
    const StoreStep step{"v1", 1, EditKind::edit, "done.photo", {{"/photos", std::nullopt, "[]"}}, 2000};
    CHECK_FALSE(apply_all(*database, {store_photo(bytes), step}));
    CHECK(database->number("SELECT count(*) FROM blob") == 0);
    CHECK(database->number("SELECT count(*) FROM blob_body") == 0);
}
