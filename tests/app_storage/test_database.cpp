#include "app/storage/database.hpp"
#include "app/storage/schema.hpp"
#include "tests/app_storage/scratch.hpp"

#include <catch2/catch.hpp>

#include <sys/wait.h>
#include <unistd.h>

using namespace sillwalk;
using app::Database;

TEST_CASE("the database waits for the disk and keeps a write-ahead log", "[storage]") {
    const test::Scratch scratch;
    auto database = Database::open(scratch.file("a.db"));
    REQUIRE(database);
    CHECK(database->number("PRAGMA synchronous") == 2);  // FULL in SQLite's documentation of the pragma
    auto mode = database->prepare("PRAGMA journal_mode");
    REQUIRE(mode->step() == true);
    CHECK(mode->text(0) == "wal");
    CHECK(database->number("PRAGMA foreign_keys") == 1);
}

TEST_CASE("a second connection to the same file is refused", "[storage]") {
    const test::Scratch scratch;
    {
        auto first = Database::open(scratch.file("a.db"));
        REQUIRE(first);
        CHECK_FALSE(Database::open(scratch.file("a.db")));
        CHECK_FALSE(Database::open(scratch.file("./a.db")));
    }
    CHECK(Database::open(scratch.file("a.db")));
}

TEST_CASE("a second program is refused while the first holds the file", "[storage]") {
    const test::Scratch scratch;
    const std::string path = scratch.file("a.db");
    int ready[2];
    REQUIRE(::pipe(ready) == 0);
    const pid_t child = ::fork();
    if (child == 0) {
        auto held = Database::open(path);
        const char answer = held ? '1' : '0';
        if (::write(ready[1], &answer, 1) != 1) ::_exit(1);
        ::pause();
        ::_exit(0);
    }
    char answer = '0';
    REQUIRE(::read(ready[0], &answer, 1) == 1);
    CHECK(answer == '1');
    CHECK_FALSE(Database::open(path));
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    CHECK(Database::open(path));
}

TEST_CASE("a transaction that is not committed leaves nothing", "[storage]") {
    auto database = Database::open(":memory:");
    REQUIRE(database);
    REQUIRE(database->execute("CREATE TABLE t(x INTEGER) STRICT"));
    {
        auto transaction = database->begin();
        REQUIRE(transaction);
        REQUIRE(database->execute("INSERT INTO t VALUES(1)"));
    }
    CHECK(database->number("SELECT count(*) FROM t") == 0);
}

TEST_CASE("a new file gets the current schema and passes the integrity check", "[storage]") {
    const test::Scratch scratch;
    auto database = Database::open(scratch.file("a.db"));
    REQUIRE(app::migrate(*database));
    CHECK(database->number("PRAGMA user_version") == app::schema_version());
    CHECK(database->number("PRAGMA application_id") == app::application_id);
    auto check = database->prepare("PRAGMA integrity_check");
    REQUIRE(check->step() == true);
    CHECK(check->text(0) == "ok");
    CHECK_FALSE(database->execute("INSERT INTO entry VALUES('nobody','/p','{}',0)"));  // no such visit
    CHECK_FALSE(database->execute("INSERT INTO outbox(kind, digest, state) VALUES('other', x'00', 'queued')"));
}

TEST_CASE("a file of a later program and a file of another program are left alone", "[storage]") {
    const test::Scratch scratch;
    {
        auto database = Database::open(scratch.file("later.db"));
        REQUIRE(app::migrate(*database));
        REQUIRE(database->execute("PRAGMA user_version=99"));
        const auto refused = app::migrate(*database);
        REQUIRE_FALSE(refused);
        CHECK(refused.error().code == engine::ErrorCode::too_new);
        CHECK(database->number("PRAGMA user_version") == 99);
    }
    auto foreign = Database::open(scratch.file("foreign.db"));
    REQUIRE(foreign->execute("CREATE TABLE theirs(x)"));
    CHECK_FALSE(app::migrate(*foreign));
}
