#include "app/storage/schema.hpp"
#include "app/storage/survey_store.hpp"
#include "app/storage/writer.hpp"
#include "tests/app_storage/scratch.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

StoreVisit small_visit() {
    return {
        "v1", "Plant", {{"/site", "\"Plant\""}, {"/crossings", "[\"door\"]"}, {"/crossings/door/rise", "{}"}}, 1000};
}
Change rise(std::optional<std::string> before, std::optional<std::string> now) {
    return {"/crossings/door/rise", std::move(before), std::move(now)};
}

}  // namespace

TEST_CASE("a visit comes back as it was written", "[storage]") {
    const test::Scratch scratch;
    {
        auto writer = Writer::open(scratch.file("a.db"), {});
        REQUIRE(writer);
        CHECK((*writer)->submit(small_visit()) == 1);
        CHECK((*writer)->submit(StoreStep{"v1", 1, EditKind::edit, "edit", {rise("{}", "{\"value_nm\":19}")}, 2000}));
        CHECK((*writer)->submit(StoreDraft{"v1", "/crossings/door/gap", "mm|32", 3000}));
        CHECK((*writer)->submit(StoreSetting{"theme", "sun"}));
    }
    auto writer = Writer::open(scratch.file("a.db"), {});
    REQUIRE(writer);
    const auto visits = (*writer)->visits();
    REQUIRE(visits);
    CHECK(*visits == std::vector<VisitRow>{{"v1", "Plant", "draft", 1000, 2000}});
    const auto visit = (*writer)->visit("v1");
    REQUIRE(visit);
    Entries expected = small_visit().entries;
    expected["/crossings/door/rise"] = "{\"value_nm\":19}";
    CHECK(visit->entries == expected);
    REQUIRE(visit->edits.size() == 1);
    CHECK(visit->edits[0].change == rise("{}", "{\"value_nm\":19}"));
    REQUIRE(visit->draft);
    CHECK(visit->draft->text == "mm|32");
    CHECK((*writer)->settings()->at("theme") == "sun");
    CHECK_FALSE((*writer)->visit("nobody"));
}

TEST_CASE("an undone edit stays in the journal and the entry goes back", "[storage]") {
    auto database = Database::open(":memory:");
    REQUIRE(migrate(*database));
    const auto changes = std::vector<Change>{rise("{}", "{\"a\":1}"), {"/crossings/door/gap", std::nullopt, "{}"}};
    REQUIRE(apply_all(*database, {small_visit(), StoreStep{"v1", 1, EditKind::edit, "edit", changes, 1}}));
    REQUIRE(apply_all(*database, {StoreStep{"v1", 1, EditKind::undo, "edit", turned_round(changes), 2}}));
    const auto visit = load_visit(*database, "v1");
    REQUIRE(visit);
    CHECK(visit->entries == small_visit().entries);
    REQUIRE(visit->edits.size() == 4);
    CHECK(visit->edits[0].kind == EditKind::edit);
    CHECK(visit->edits[3].kind == EditKind::undo);
}

TEST_CASE("a batch with one bad command leaves nothing of itself", "[storage]") {
    auto database = Database::open(":memory:");
    REQUIRE(migrate(*database));
    const StoreStep dangling{"nobody", 1, EditKind::edit, "edit", {rise(std::nullopt, "{}")}, 1};
    CHECK_FALSE(apply_all(*database, {small_visit(), dangling}));
    CHECK(database->number("SELECT count(*) FROM survey") == 0);
}

TEST_CASE("text with quotes, wide letters and zero length survives", "[storage]") {
    auto database = Database::open(":memory:");
    REQUIRE(migrate(*database));
    StoreVisit visit = small_visit();
    visit.title = "O'Hara \"Kälte\" 冷\n'); DROP TABLE survey;--";
    visit.entries["/notes"] = "\"\"";
    REQUIRE(apply_all(*database, {visit}));
    CHECK(list_visits(*database)->at(0).title == visit.title);
    CHECK(load_visit(*database, "v1")->entries == visit.entries);
}
