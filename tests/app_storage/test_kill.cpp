// A14: kill -9 at random instants while readings are entered and photos taken. Every acknowledged reading is there
// afterwards, with its photo; of the keypad's buffer at most the last key is missing; the file is sound.
#include "app/storage/writer.hpp"
#include "tests/app_storage/killed.hpp"
#include "tests/app_storage/scratch.hpp"

#include <catch2/catch.hpp>

#include <cstdint>
#include <random>
#include <string>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

struct Progress {
    std::int32_t readings = 0;  ///< acknowledged
    std::int32_t keys = 0;      ///< of the reading in hand, acknowledged
};

std::string photo_of(std::int32_t reading) {
    return std::string(5000, 'p') + std::to_string(reading);
}

std::string hex_of(std::int32_t reading) {
    return to_hex(sha256(photo_of(reading)));
}

/// Types readings for ever: four keys each, then the commit with a photo. Tells of each only once it is on the disk.
[[noreturn]] void enter_readings(const std::string& path, int pipe_end) {
    auto writer = Writer::open(path, {});
    if (!writer) ::_exit(3);
    if (!(*writer)->submit(StoreVisit{"v1", "Plant", {{"/site", "\"Plant\""}}, 1})) ::_exit(4);
    if (!(*writer)->flush(5000)) ::_exit(5);
    test::tell(pipe_end, Progress{0, 0});
    for (std::int32_t reading = 1;; ++reading) {
        const std::string entry = "/rooms/r" + std::to_string(reading) + "/air";
        for (std::int32_t key = 1; key <= 4; ++key) {
            const std::string keys(static_cast<std::size_t>(key), '7');
            if (!(*writer)->submit(StoreDraft{"v1", entry, keys, reading})) ::_exit(6);
            if (!(*writer)->flush(5000)) ::_exit(7);
            test::tell(pipe_end, Progress{reading - 1, key});
        }
        const auto photo = std::make_shared<const std::string>(photo_of(reading));
        if (!(*writer)->submit(StorePhoto{sha256(*photo), photo, 16, 12})) ::_exit(8);
        const std::vector<Change> changes = {{entry, {}, "7777"},
                                             {"/photos/" + std::to_string(reading), {}, hex_of(reading)}};
        if (!(*writer)->submit(StoreStep{"v1", reading, EditKind::edit, "edit", changes, reading})) ::_exit(8);
        if (!(*writer)->submit(StoreDraft{"v1", "", "", reading})) ::_exit(9);
        if (!(*writer)->flush(5000)) ::_exit(10);
        test::tell(pipe_end, Progress{reading, 0});
    }
}

/// Photos that the visit names, each of which must be in the file.
std::int32_t photos_kept(Writer& writer, const StoredVisit& visit) {
    std::int32_t kept = 0;
    for (const auto& [path, value] : visit.entries) {
        if (path.rfind("/photos/", 0) != 0) continue;
        const auto digest = digest_from_hex(value);
        REQUIRE(digest);
        CHECK(writer.photo(*digest) == photo_of(std::stoi(path.substr(std::string("/photos/").size()))));
        ++kept;
    }
    return kept;
}

}  // namespace

TEST_CASE("A14 a kill at any instant loses at most the key being typed", "[storage][kill]") {
    std::mt19937 random(20260901);
    std::uniform_int_distribution<useconds_t> pause(0, 30000);
    for (int round = 0; round < 200; ++round) {
        const test::Scratch scratch;
        const std::string path = scratch.file("a.db");
        const auto told =
            test::killed_after<Progress>(pause(random), [&path](int pipe_end) { enter_readings(path, pipe_end); });
        INFO("round " << round << ", told of " << told.readings << " readings and " << told.keys << " keys");
        auto writer = Writer::open(path, {});
        REQUIRE(writer);
        const auto visit = (*writer)->visit("v1");
        REQUIRE(visit);
        const auto stored = static_cast<std::int32_t>(visit->entries.size()) / 2;  // each with a photo, beside the site
        CHECK(photos_kept(**writer, *visit) == stored);
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
