#include "app/storage/writer.hpp"
#include "tests/app_storage/scratch.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <string>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

StoreVisit visit_of(std::string id) {
    return {std::move(id), "Plant", {{"/site", "\"Plant\""}}, 1};
}
StoreStep note(int step, std::size_t bytes) {
    const std::string text = "\"" + std::string(bytes, 'x') + "\"";
    return {"v1", step, EditKind::edit, "edit", {{"/rooms/r" + std::to_string(step) + "/notes", {}, text}}, step};
}
/// SQLite's own limit on the number of pages makes the "disk" full: the error is the real SQLITE_FULL.
void limit_pages(Writer& writer, int extra) {
    writer.with_database([&](Database& database) {
        const auto pages = database.number("PRAGMA page_count").value_or(0) + extra;
        REQUIRE(database.number("PRAGMA max_page_count=" + std::to_string(pages)));
    });
}

}  // namespace

TEST_CASE("everything submitted becomes durable and is told", "[storage]") {
    const test::Scratch scratch;
    std::atomic<int> told = 0;
    WriterOptions options;
    options.on_change = [&] { ++told; };
    auto writer = Writer::open(scratch.file("a.db"), options);
    REQUIRE(writer);
    REQUIRE((*writer)->submit(visit_of("v1")));
    for (int i = 1; i <= 50; ++i) REQUIRE((*writer)->submit(note(i, 20)));
    CHECK((*writer)->flush(5000));
    CHECK((*writer)->state().durable == 51);
    CHECK(told >= 1);
    CHECK((*writer)->visit("v1")->entries.size() == 51);
}

TEST_CASE("a full disk is a state, nothing is lost, and it heals", "[storage]") {
    const test::Scratch scratch;
    auto writer = Writer::open(scratch.file("a.db"), {});
    REQUIRE((*writer)->submit(visit_of("v1")));
    REQUIRE((*writer)->flush(5000));
    limit_pages(**writer, 0);
    REQUIRE((*writer)->submit(note(1, 200000)));
    CHECK_FALSE((*writer)->flush(5000));
    CHECK((*writer)->state().refused);
    CHECK((*writer)->state().error.where == "full");
    CHECK((*writer)->visit("v1")->entries.size() == 1);
    REQUIRE((*writer)->submit(note(2, 10)));
    CHECK_FALSE((*writer)->flush(5000));
    limit_pages(**writer, 100000);
    (*writer)->retry();
    CHECK((*writer)->flush(5000));
    CHECK_FALSE((*writer)->state().refused);
    CHECK((*writer)->visit("v1")->entries.size() == 3);
}

TEST_CASE("a full queue refuses instead of growing", "[storage]") {
    const test::Scratch scratch;
    WriterOptions options;
    options.queue_limit = 3;
    options.own_thread = false;
    auto writer = Writer::open(scratch.file("a.db"), options);
    CHECK((*writer)->submit(visit_of("v1")) == 1);
    CHECK((*writer)->submit(note(1, 1)) == 2);
    CHECK((*writer)->submit(note(2, 1)) == 3);
    CHECK((*writer)->submit(note(3, 1)) == 0);
    (*writer)->pump();
    CHECK((*writer)->submit(note(3, 1)) == 4);
    CHECK((*writer)->flush(1000));
    CHECK((*writer)->visit("v1")->entries.size() == 4);
}
