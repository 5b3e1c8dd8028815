#include "app/storage/schema.hpp"
#include "app/storage/writer.hpp"
#include "tests/app_storage/scratch.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

std::string fixture(const std::string& name) {
    std::string path = SILLWALK_TEST_DATA;
    path.append("/app_storage/").append(name);
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::string bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

}  // namespace

TEST_CASE("a database of every schema ever shipped opens with all it holds", "[storage]") {
    const test::Scratch scratch;
    auto database = Database::open(scratch.file("v1.db"));
    REQUIRE(database);
    REQUIRE(database->execute(fixture("fixture_v1.sql").c_str()));
    REQUIRE(migrate(*database));
    CHECK(database->number("PRAGMA user_version") == schema_version());
    const auto visit = load_visit(*database, "v1");
    REQUIRE(visit);
    CHECK(visit->entries.at("/crossings/door/rise") == "{\"value_nm\":6000000}");
    CHECK(visit->edits.size() == 3);
    CHECK(visit->edits[1].kind == EditKind::undo);
    CHECK(visit->draft->path == "/crossings/door/gap");
    CHECK(load_settings(*database)->at("theme") == "sun");
}

TEST_CASE("the steps of the schema rise by one and a second run changes nothing", "[storage]") {
    std::int64_t version = 0;
    for (const Migration& migration : migrations()) CHECK(migration.to_version == ++version);
    auto database = Database::open(":memory:");
    REQUIRE(migrate(*database));
    const auto before = database->number("SELECT count(*) FROM sqlite_schema");
    REQUIRE(migrate(*database));
    CHECK(database->number("SELECT count(*) FROM sqlite_schema") == before);
}

TEST_CASE("a database from before the photos keeps its visit and takes photos", "[storage][photo]") {
    const test::Scratch scratch;
    {
        auto database = Database::open(scratch.file("v1.db"));
        REQUIRE(database->execute(fixture("fixture_v1.sql").c_str()));
        CHECK_FALSE(database->prepare("SELECT body FROM blob_body"));
    }
    const std::string bytes = "a picture";
    {
        auto writer = Writer::open(scratch.file("v1.db"), {});
        REQUIRE(writer);
        CHECK((*writer)->submit(StorePhoto{sha256(bytes), std::make_shared<const std::string>(bytes), 16, 12}) != 0);
        REQUIRE((*writer)->flush(10000));
    }
    auto writer = Writer::open(scratch.file("v1.db"), {});  // a second start finds nothing more to do
    REQUIRE(writer);
    CHECK((*writer)->photo(sha256(bytes)) == bytes);
    CHECK((*writer)->visits()->size() == 1);
    const auto visit = (*writer)->visit("v1");
    REQUIRE(visit);
    CHECK(visit->entries.at("/crossings/door/rise") == "{\"value_nm\":6000000}");
    CHECK(visit->draft->text == "mm 32");
}

TEST_CASE("a database of a later program is refused in words and left byte by byte", "[storage]") {
    const test::Scratch scratch;
    const std::string path = scratch.file("later.db");
    {
        auto writer = Writer::open(path, {});
        REQUIRE(writer);
        CHECK((*writer)->submit(StoreVisit{"v1", "Plant", {{"/site", "\"Plant\""}}, 1}) != 0);
        REQUIRE((*writer)->flush(10000));
        (*writer)->with_database([](Database& database) {
            const std::string later = "PRAGMA user_version=" + std::to_string(schema_version() + 1);
            CHECK(database.execute(later.c_str()));
        });
    }
    const std::string before = bytes_of(path);
    REQUIRE_FALSE(before.empty());
    const auto refused = Writer::open(path, {});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == engine::ErrorCode::too_new);
    CHECK(refused.error().message == "a newer program wrote this file; it is left as it is");
    CHECK(bytes_of(path) == before);
}
