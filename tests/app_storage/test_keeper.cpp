#include "app/storage/backup.hpp"
#include "app/storage/files.hpp"
#include "app/storage/keeper.hpp"
#include "tests/app_storage/scratch.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

using namespace sillwalk;
using namespace sillwalk::app;
using namespace sillwalk::test;

namespace {

WriterOptions kept_options() {
    WriterOptions options;
    options.keep = true;
    options.ballast = 4096;
    return options;
}

void seal_one(Writer& writer, const std::string& note) {
    if (writer.visits()->empty()) CHECK(writer.submit(plain_visit(visit_uuid(1))) != 0);
    REQUIRE(writer.flush(5000));
    engine::Result<VisitHead> head;
    writer.with_database([&](Database& database) { head = load_head(database, visit_uuid(1)); });
    REQUIRE(head);
    REQUIRE(writer.seal(seal_order(visit_uuid(1), *head, note)));
    CHECK(writer.state().backup_error.message.empty());
}

/// Rubbish in the middle of every page but the first, as a failing disk leaves it.
void spoil(const std::string& path) {
    std::string bytes = file_bytes(path);
    for (std::size_t page = 4096; page < bytes.size(); page += 4096) bytes.replace(page, 64, std::string(64, '\xA5'));
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file << bytes;
}

}  // namespace

TEST_CASE("each seal leaves a checked copy and the one before it", "[storage]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    auto writer = Writer::open(path, kept_options());
    REQUIRE(writer);
    CHECK(backups_of(path).empty());
    seal_one(**writer, "one");
    CHECK(backups_of(path).size() == 1);
    seal_one(**writer, "two");
    seal_one(**writer, "three");
    const auto copies = backups_of(path);
    REQUIRE(copies.size() == 2);
    for (const std::string& copy : copies) CHECK(check_backup(copy));
    CHECK(Database::open_to_read(copies[0])->number("SELECT count(*) FROM revision") == 3);
    CHECK(Database::open_to_read(copies[1])->number("SELECT count(*) FROM revision") == 2);
    CHECK_FALSE(file_exists(path + ".backup.part"));
}

TEST_CASE("a copy that is damaged, foreign or cut off is no copy", "[storage]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    {
        auto writer = Writer::open(path, kept_options());
        seal_one(**writer, "one");
    }
    const std::string copy = path + ".backup", good = file_bytes(copy);
    spoil(copy);
    CHECK_FALSE(check_backup(copy));
    std::ofstream(copy, std::ios::binary | std::ios::trunc) << good.substr(0, good.size() / 2);
    CHECK_FALSE(check_backup(copy));
    std::ofstream(copy, std::ios::binary | std::ios::trunc) << "text";
    CHECK_FALSE(check_backup(copy));
    CHECK_FALSE(check_backup(scratch.file("none")));
    std::ofstream(copy, std::ios::binary | std::ios::trunc) << good;
    CHECK(check_backup(copy));
}

TEST_CASE("a file that was closed opens clean, one that was not is checked", "[storage]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    {
        auto kept = open_kept(path);
        REQUIRE(kept);
        CHECK(kept->found == Found::clean);
        REQUIRE(mark_closed(kept->database));
    }
    {
        auto kept = open_kept(path);
        CHECK(kept->found == Found::clean);
    }
    CHECK(open_kept(path)->found == Found::unclean);
    {
        auto writer = Writer::open(path, kept_options());
        CHECK((*writer)->found() == Found::unclean);
    }
    CHECK(open_kept(path)->found == Found::clean);
}

TEST_CASE("a damaged file is put aside whole and the newest sound copy takes its place", "[storage][fault]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    {
        auto writer = Writer::open(path, kept_options());
        seal_one(**writer, "one");
        seal_one(**writer, "two");
    }
    spoil(path + ".backup");  // the newest copy is bad as well: the older one must serve
    {
        std::ofstream(path, std::ios::binary | std::ios::trunc)
            << "this is no database at all, not even its first page";
    }
    const std::string bad = file_bytes(path);
    {
        auto writer = Writer::open(path, kept_options());
        REQUIRE(writer);
        CHECK((*writer)->found() == Found::restored);
        CHECK(file_bytes((*writer)->aside()) == bad);
        (*writer)->with_database([](Database& database) { CHECK(list_revisions(database, "")->size() == 1); });
    }
    CHECK(open_kept(path)->found == Found::clean);
}

TEST_CASE("an unclean file with spoilt pages is found out at the start", "[storage][fault]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    {
        auto writer = Writer::open(path, kept_options());
        seal_one(**writer, "one");
    }
    { auto kept = open_kept(path); }  // not marked as closed
    spoil(path);
    auto kept = open_kept(path);
    REQUIRE(kept);
    CHECK(kept->found == Found::restored);
    CHECK(file_exists(kept->aside));
    CHECK(list_revisions(kept->database, "")->size() == 1);
}

TEST_CASE("without a sound copy a damaged file is kept and a new one begun", "[storage][fault]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    { std::ofstream(path, std::ios::binary) << std::string(9000, 'x'); }
    auto kept = open_kept(path);
    REQUIRE(kept);
    CHECK(kept->found == Found::started_anew);
    CHECK(file_bytes(kept->aside) == std::string(9000, 'x'));
    CHECK(list_visits(kept->database)->empty());
}

TEST_CASE("a file of a later program or of another one is not damaged, and stays as it is", "[storage]") {
    const Scratch scratch;
    const std::string later = scratch.file("later.db"), foreign = scratch.file("foreign.db");
    {
        auto database = Database::open(later);
        REQUIRE(migrate(*database));
        REQUIRE(database->execute(("PRAGMA user_version=" + std::to_string(schema_version() + 1)).c_str()));
        auto other = Database::open(foreign);
        REQUIRE(other->execute("CREATE TABLE t(x INTEGER)"));
    }
    CHECK(open_kept(later).error().code == engine::ErrorCode::too_new);
    CHECK(open_kept(foreign).error().code == engine::ErrorCode::storage);
    CHECK_FALSE(file_exists(later + ".damaged-1"));
    CHECK_FALSE(file_exists(foreign + ".damaged-1"));
}

TEST_CASE("a file of an older schema is copied before it is changed", "[storage]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    {
        auto old = Database::open(path);
        REQUIRE(old->execute(file_bytes(std::string(SILLWALK_TEST_DATA) + "/app_storage/fixture_v1.sql").c_str()));
    }
    REQUIRE(open_kept(path));
    const auto copies = backups_of(path);
    REQUIRE(copies.size() == 1);
    CHECK(Database::open_to_read(copies[0])->number("PRAGMA user_version") == 1);
    CHECK(Database::open_to_read(copies[0])->number("SELECT count(*) FROM entry") == 3);
}

TEST_CASE("the reserve is made, given back once, and made again where there is room", "[storage]") {
    const Scratch scratch;
    Ballast ballast(scratch.file("a.db"), 100'000);
    CHECK_FALSE(ballast.there());
    CHECK_FALSE(ballast.drop());
    CHECK(ballast.keep());
    CHECK(std::filesystem::file_size(scratch.file("a.db.ballast")) >= 100'000);
    CHECK(ballast.drop());
    CHECK_FALSE(ballast.there());
    CHECK_FALSE(Ballast(scratch.file("a.db"), std::int64_t{1} << 60).keep());
}
