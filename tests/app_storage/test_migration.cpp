#include "app/storage/schema.hpp"
#include "app/storage/survey_store.hpp"
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
