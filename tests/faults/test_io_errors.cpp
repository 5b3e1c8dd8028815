// F3, F4, F5: the disk refuses calls, memory is short, the disk is full. Method after "How SQLite Is Tested", §3.1 and
// §3.2: the n-th call fails, for rising n, once and for ever, until a run meets no failure any more.
#include "app/storage/backup.hpp"
#include "tests/app_storage/scratch.hpp"
#include "tests/app_sync/field.hpp"
#include "tests/faults/fault_vfs.hpp"

#include <catch2/catch.hpp>
#include <sqlite3.h>

#include <filesystem>
#include <fstream>
#include <random>
#include <sched.h>
#include <sys/mount.h>
#include <unistd.h>

using namespace sillwalk;
using namespace sillwalk::app;
using namespace sillwalk::test;

namespace {

constexpr int readings = 8;
const std::string visit = visit_uuid(1);

StoreStep reading(int number, std::size_t bytes = 4) {
    const std::string value = "\"" + std::string(bytes, '7') + "\"";
    return {visit, number, EditKind::edit, "edit", {{"/rooms/r" + std::to_string(number) + "/air", {}, value}}, number};
}

struct Outcome {
    bool opened = false;
    bool refused = false;  ///< the app was told at least once
    bool worded = true;    ///< and each time with words
    int stored_at_fault = 0, told_at_fault = 0;
};

int count_readings(Writer& writer) {
    const auto stored = writer.visit(visit);
    return stored ? static_cast<int>(stored->entries.size()) - 1 : 0;
}

void note_refusal(Writer& writer, int told, Outcome& outcome) {
    const WriterState state = writer.state();
    if (!state.refused) return;
    outcome.worded = outcome.worded && !state.error.message.empty();
    if (!outcome.refused) {
        outcome.told_at_fault = told;
        outcome.stored_at_fault = count_readings(writer);
    }
    outcome.refused = true;
}

/// Readings one by one while the disk is as it is.
Outcome enter(const std::string& path) {
    Outcome outcome;
    auto opened = Writer::open(path, {});
    if (!opened) return outcome;
    outcome.opened = true;
    Writer& writer = **opened;
    CHECK(writer.submit(plain_visit(visit)));
    (void)writer.flush(20000);  // until it is on the disk or refused
    note_refusal(writer, 0, outcome);
    for (int number = 1; number <= readings; ++number) {
        CHECK(writer.submit(reading(number)));
        (void)writer.flush(20000);
        note_refusal(writer, static_cast<int>(writer.state().durable) - 1, outcome);
    }
    // The disk is well again: everything is still in hand and goes down now, without a new start.
    FaultDisk::stand();
    writer.retry();
    CHECK(writer.flush(20000));
    CHECK_FALSE(writer.state().refused);
    CHECK(count_readings(writer) == readings);
    return outcome;
}

void check_file(const std::string& path, int expected) {
    auto database = Database::open(path);
    REQUIRE(database);
    REQUIRE(migrate(*database));
    auto check = database->prepare("PRAGMA integrity_check");
    REQUIRE(check->step() == true);
    CHECK(check->text(0) == "ok");
    check->reset();
    const auto stored = load_visit(*database, visit);
    CHECK((stored ? static_cast<int>(stored->entries.size()) - 1 : 0) == expected);
}

struct Failing {
    DiskCall call;
    Verdict verdict;
    bool for_ever;
    const char* name;
};

/// One run with the n-th such call failing; false where the run made fewer such calls.
bool run_with_failure(const Failing& failing, int nth, int& refusals) {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    int count = 0;
    bool failed = false;
    FaultDisk::stand().verdict = [&](DiskCall call, const std::string&) {
        if (call != failing.call) return Verdict{};
        ++count;
        const bool now = count == nth || (failing.for_ever && count > nth);
        failed = failed || now;
        return now ? failing.verdict : Verdict{};
    };
    INFO(failing.name << ", call " << nth << (failing.for_ever ? " and all after" : " once"));
    const Outcome outcome = enter(path);
    FaultDisk::stand();
    CHECK(outcome.worded);
    if (outcome.refused) {
        ++refusals;
        CHECK(outcome.stored_at_fault == outcome.told_at_fault);
    }
    check_file(path, outcome.opened ? readings : 0);
    return failed;
}

}  // namespace

TEST_CASE("F3 whichever call the disk refuses, nothing told saved is lost and the rest goes down later", "[fault]") {
    const Failing kinds[] = {
        {DiskCall::write, {SQLITE_IOERR_WRITE, false}, false, "write error"},
        {DiskCall::write, {SQLITE_IOERR_WRITE, false}, true, "write error"},
        {DiskCall::write, {SQLITE_FULL, true}, false, "short write on a full disk"},
        {DiskCall::write, {SQLITE_FULL, true}, true, "short write on a full disk"},
        {DiskCall::sync, {SQLITE_IOERR_FSYNC, false}, false, "flush error"},
        {DiskCall::sync, {SQLITE_IOERR_FSYNC, false}, true, "flush error"},
        {DiskCall::truncate, {SQLITE_IOERR_TRUNCATE, false}, false, "truncate error"},
    };
    for (const Failing& failing : kinds) {
        int refusals = 0, nth = 1;
        while (run_with_failure(failing, nth, refusals)) ++nth;
        INFO(failing.name);
        if (failing.call != DiskCall::truncate) {
            CHECK(nth > readings);           // the control: each commit did make such a call
            CHECK(refusals > readings / 2);  // and its failure was told
        }
    }
}

TEST_CASE("F3 a seal that the disk refuses leaves no half of itself and goes through later", "[fault]") {
    int refusals = 0, copies_failed = 0;
    bool failed = true;
    for (int nth = 1; failed; ++nth) {
        failed = false;
        const Scratch scratch;
        FaultDisk::stand();
        WriterOptions options;
        options.own_thread = false;
        options.keep = true;
        options.ballast = 4096;
        auto writer = Writer::open(scratch.file("a.db"), options);
        REQUIRE(writer);
        const std::string photo = photo_bytes(1, 9000);
        REQUIRE((*writer)->submit(plain_visit(visit)));
        REQUIRE((*writer)->submit(photo_of(photo)));
        REQUIRE((*writer)->flush(1000));
        const SealOrder order = seal_order(visit, {"draft", 0, {}}, "note", {photo});
        int count = 0;
        FaultDisk::stand().verdict = [&](DiskCall call, const std::string&) {
            const bool now = (call == DiskCall::write || call == DiskCall::sync) && ++count >= nth;
            failed = failed || now;
            return !now                      ? Verdict{}
                   : call == DiskCall::write ? Verdict{SQLITE_FULL, true}
                                             : Verdict{SQLITE_IOERR_FSYNC, false};
        };
        const auto sealed = (*writer)->seal(order);
        const bool copy_failed = !(*writer)->state().backup_error.message.empty();
        FaultDisk::stand();
        INFO("all writes and flushes from the " << nth << ". on");
        refusals += sealed ? 0 : 1;
        copies_failed += copy_failed ? 1 : 0;
        if (sealed && !copy_failed) CHECK(check_backup(scratch.file("a.db.backup")));  // told as good, so it is good
        (*writer)->with_database([&](Database& database) {
            CHECK(list_revisions(database, "")->size() == (sealed ? 1 : 0));
            CHECK(list_outbox(database)->size() == (sealed ? 2 : 0));
            CHECK(load_head(database, visit)->state == (sealed ? "sealed" : "draft"));
        });
        CHECK((*writer)->seal(order));
        (*writer)->with_database([&](Database& database) { CHECK(list_outbox(database)->size() == 2); });
    }
    CHECK(refusals > 3);  // the control: the seal itself was met, and the copy too
    CHECK(copies_failed > 3);
}

TEST_CASE("F4 failures at random, 2 of 100 writes and 5 of 100 flushes, lose nothing", "[fault]") {
    const Scratch scratch;
    FaultDisk::stand();
    std::mt19937 random(4);
    int failures = 0;
    {
        WriterOptions options;
        options.own_thread = false;
        auto writer = Writer::open(scratch.file("a.db"), options);
        REQUIRE(writer);
        REQUIRE((*writer)->submit(plain_visit(visit)));
        REQUIRE((*writer)->flush(1000));
        FaultDisk::stand().verdict = [&](DiskCall call, const std::string&) {
            const unsigned chance = call == DiskCall::write ? 2 : call == DiskCall::sync ? 5 : 0;
            if (random() % 100 >= chance) return Verdict{};
            ++failures;
            return call == DiskCall::write ? Verdict{SQLITE_FULL, true} : Verdict{SQLITE_IOERR_FSYNC, false};
        };
        for (int number = 1; number <= 300; ++number) {
            REQUIRE((*writer)->submit(reading(number)));
            for (int attempt = 0; attempt < 20 && !(*writer)->flush(10); ++attempt) (*writer)->retry();
            CHECK((*writer)->state().durable == static_cast<std::uint64_t>(number) + 1);
        }
        FaultDisk::stand();
    }
    CHECK(failures > 20);
    check_file(scratch.file("a.db"), 300);
}

TEST_CASE("F4 with memory for SQLite running out at any point, errors come back and nothing is lost", "[fault]") {
    int refused = 0;
    for (sqlite3_int64 room = 0; room < 400'000; room += room < 40'000 ? 2'000 : 20'000) {
        const Scratch scratch;
        const std::string path = scratch.file("a.db");
        {
            WriterOptions options;
            options.own_thread = false;
            auto writer = Writer::open(path, options);
            REQUIRE(writer);
            REQUIRE((*writer)->submit(plain_visit(visit)));
            REQUIRE((*writer)->flush(1000));
            sqlite3_hard_heap_limit64(sqlite3_memory_used() + room);
            for (int number = 1; number <= readings; ++number) {
                CHECK((*writer)->submit(reading(number, 3000)));
                (void)(*writer)->flush(10);
                const WriterState state = (*writer)->state();
                refused += state.refused ? 1 : 0;
                CHECK((!state.refused || !state.error.message.empty()));
            }
            sqlite3_hard_heap_limit64(0);
            (*writer)->retry();
            CHECK((*writer)->flush(1000));
        }
        check_file(path, readings);
    }
    CHECK(refused > 5);  // the control: memory did run out
}

TEST_CASE("F5 a full disk: the reserve is given back, then readings wait, then all go down", "[fault]") {
    if (::geteuid() != 0 || ::unshare(CLONE_NEWNS) != 0 ||
        ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) != 0) {
        WARN("skipped: mounting a small file system needs the rights of the administrator");
        return;
    }
    const Scratch scratch;
    const std::string folder = scratch.file("small");
    std::filesystem::create_directory(folder);
    if (::mount("tmpfs", folder.c_str(), "tmpfs", 0, "size=2m") != 0) {
        WARN("skipped: this machine mounts no tmpfs");
        return;
    }
    {
        WriterOptions options;
        options.own_thread = false;
        options.keep = true;
        options.ballast = 128 << 10;
        auto writer = Writer::open(folder + "/a.db", options);
        REQUIRE(writer);
        {
            std::ofstream filler(folder + "/filler", std::ios::binary);
            filler << std::string(std::size_t{600} << 10, 'x');
        }
        REQUIRE((*writer)->submit(plain_visit(visit)));
        REQUIRE((*writer)->flush(1000));
        CHECK_FALSE((*writer)->state().reserve_used);
        int number = 0, told_with_reserve = 0;
        while (!(*writer)->state().refused && number < 1000) {
            REQUIRE((*writer)->submit(reading(++number, 8000)));
            (void)(*writer)->flush(10);
            if ((*writer)->state().reserve_used && !(*writer)->state().refused) ++told_with_reserve;
        }
        REQUIRE((*writer)->state().refused);
        CHECK((*writer)->state().error.where == "full");
        CHECK((*writer)->state().reserve_used);
        CHECK(told_with_reserve > 2);  // the reserve let work go on
        CHECK(count_readings(**writer) == number - 1);
        std::filesystem::remove(folder + "/filler");
        (*writer)->retry();
        CHECK((*writer)->flush(1000));
        CHECK(count_readings(**writer) == number);
    }
    CHECK(Database::open(folder + "/a.db"));
    ::umount2(folder.c_str(), MNT_DETACH);
}
