// A14: kill -9 at random instants while readings are entered. Every acknowledged reading is there afterwards; of the
// keypad's buffer at most the last key is missing; the file is sound.
#include "app/storage/writer.hpp"
#include "tests/app_storage/scratch.hpp"

#include <catch2/catch.hpp>

#include <csignal>
#include <cstdint>
#include <random>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

struct Progress {
    std::int32_t readings = 0;  ///< acknowledged
    std::int32_t keys = 0;      ///< of the reading in hand, acknowledged
};

void tell(int pipe_end, Progress progress) {
    if (::write(pipe_end, &progress, sizeof progress) != sizeof progress) ::_exit(2);
}

/// Types readings for ever: four keys each, then the commit. Tells of each only once it is on the disk.
[[noreturn]] void enter_readings(const std::string& path, int pipe_end) {
    auto writer = Writer::open(path, {});
    if (!writer) ::_exit(3);
    if (!(*writer)->submit(StoreVisit{"v1", "Plant", {{"/site", "\"Plant\""}}, 1})) ::_exit(4);
    if (!(*writer)->flush(5000)) ::_exit(5);
    tell(pipe_end, {0, 0});
    for (std::int32_t reading = 1;; ++reading) {
        const std::string entry = "/rooms/r" + std::to_string(reading) + "/air";
        for (std::int32_t key = 1; key <= 4; ++key) {
            const std::string keys(static_cast<std::size_t>(key), '7');
            if (!(*writer)->submit(StoreDraft{"v1", entry, keys, reading})) ::_exit(6);
            if (!(*writer)->flush(5000)) ::_exit(7);
            tell(pipe_end, {reading - 1, key});
        }
        if (!(*writer)->submit(StoreStep{"v1", reading, EditKind::edit, "edit", {{entry, {}, "7777"}}, reading}))
            ::_exit(8);
        if (!(*writer)->submit(StoreDraft{"v1", "", "", reading})) ::_exit(9);
        if (!(*writer)->flush(5000)) ::_exit(10);
        tell(pipe_end, {reading, 0});
    }
}

Progress kill_after(const std::string& path, int microseconds) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::close(ends[0]);
        enter_readings(path, ends[1]);
    }
    ::close(ends[1]);
    Progress last;
    Progress one;
    REQUIRE(::read(ends[0], &one, sizeof one) == sizeof one);  // the visit itself is there
    ::usleep(static_cast<useconds_t>(microseconds));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(WIFSIGNALED(status));
    while (::read(ends[0], &one, sizeof one) == sizeof one) last = one;
    ::close(ends[0]);
    return last;
}

}  // namespace

TEST_CASE("A14 a kill at any instant loses at most the key being typed", "[storage][kill]") {
    std::mt19937 random(20260901);
    std::uniform_int_distribution<int> pause(0, 30000);
    for (int round = 0; round < 200; ++round) {
        const test::Scratch scratch;
        const std::string path = scratch.file("a.db");
        const Progress told = kill_after(path, pause(random));
        INFO("round " << round << ", told of " << told.readings << " readings and " << told.keys << " keys");
        auto writer = Writer::open(path, {});
        REQUIRE(writer);
        const auto visit = (*writer)->visit("v1");
        REQUIRE(visit);
        const auto stored = static_cast<std::int32_t>(visit->entries.size()) - 1;
        CHECK(stored >= told.readings);
        CHECK(stored <= told.readings + 1);
        CHECK(visit->edits.size() == visit->entries.size() - 1);
        if (stored == told.readings && told.keys > 0) {
            REQUIRE(visit->draft);
            CHECK(static_cast<std::int32_t>(visit->draft->text.size()) >= told.keys);
        }
        (*writer)->with_database([](Database& database) {
            auto check = database.prepare("PRAGMA integrity_check");
            REQUIRE(check->step() == true);
            CHECK(check->text(0) == "ok");
        });
    }
}
