// F2: the power goes at any instant while readings are entered and visits are sealed. Method after "How SQLite Is
// Tested", §3.3 (crash testing), with the app's own storage code in place of SQL scripts.
#include "tests/app_storage/scratch.hpp"
#include "tests/app_sync/field.hpp"
#include "tests/faults/fault_vfs.hpp"
#include "tests/faults/power_cut.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>

using namespace sillwalk;
using namespace sillwalk::app;
using namespace sillwalk::test;

namespace {

struct Told {
    std::size_t event;  ///< the cut is after so many events
    int readings, seals;
};

struct Run {
    std::vector<DiskEvent> events;
    std::vector<Told> told;
};

/// Readings, photos and seals through the app's writer; a small log, so that it is emptied into the file many times.
Run enter_and_seal(const std::string& path) {
    FaultDisk& disk = FaultDisk::stand();
    disk.recording = true;
    Run run;
    WriterOptions options;
    options.own_thread = false;
    auto writer = Writer::open(path, options);
    REQUIRE(writer);
    Writer& store = **writer;
    store.with_database([](Database& database) { REQUIRE(database.execute("PRAGMA wal_autocheckpoint=30")); });
    REQUIRE(store.submit(plain_visit(visit_uuid(1))));
    REQUIRE(store.flush(1000));
    int seals = 0;
    run.told.push_back({disk.events.size(), 0, 0});
    for (int reading = 1; reading <= 40; ++reading) {
        const std::string entry = "/rooms/r" + std::to_string(reading) + "/air";
        REQUIRE(
            store.submit(StoreStep{visit_uuid(1), reading, EditKind::edit, "edit", {{entry, {}, "7777"}}, reading}));
        REQUIRE(store.flush(1000));
        run.told.push_back({disk.events.size(), reading, seals});
        if (reading % 5 != 0) continue;
        const std::string photo = photo_bytes(reading, 20000);
        REQUIRE(store.submit(photo_of(photo)));
        REQUIRE(store.flush(1000));
        engine::Result<VisitHead> head;
        store.with_database([&](Database& database) { head = load_head(database, visit_uuid(1)); });
        REQUIRE(head);
        REQUIRE(store.seal(seal_order(visit_uuid(1), *head, std::to_string(reading), {photo})));
        run.told.push_back({disk.events.size(), reading, ++seals});
    }
    run.events = std::move(disk.events);
    disk.calm();
    return run;
}

struct Seen {
    bool sound = false;
    int readings = 0, seals = 0;
};

/// What the app finds on that disk.
Seen open_image(const DiskImage& image) {
    const Scratch scratch;
    for (const auto& [path, bytes] : image) {
        std::ofstream file(scratch.file(std::filesystem::path(path).filename().string()), std::ios::binary);
        file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    }
    Seen seen;
    auto database = Database::open(scratch.file("a.db"));
    if (!database || !migrate(*database)) return seen;
    auto check = database->prepare("PRAGMA integrity_check");
    const auto row = check ? check->step() : engine::Result<bool>(false);
    if (!row || !*row || check->text(0) != "ok") return seen;
    check->reset();
    const auto visit = load_visit(*database, visit_uuid(1));
    seen.readings = visit ? static_cast<int>(visit->entries.size()) - 1 : 0;
    const auto digests = list_revisions(*database, "");
    if (!digests) return seen;
    for (const Digest& digest : *digests) {
        const auto photos = photos_of_revision(*database, digest);
        if (!load_revision(*database, digest) || !photos || photos->size() != 1) return seen;
        if (!load_photo(*database, photos->front())) return seen;
        ++seen.seals;
    }
    // A sealed revision and its place in the outbox are one thing.
    const auto rows = list_outbox(*database);
    seen.sound = rows && static_cast<int>(rows->size()) == 2 * seen.seals;
    return seen;
}

struct Losses {
    int images = 0, unsound = 0, lost = 0;
};

Losses cut_everywhere(const Run& run, bool heeds_flushes, int points) {
    std::mt19937 random(20260902);
    PowerCut cut(run.events, heeds_flushes);
    Losses losses;
    std::size_t next_told = 0;
    // After the visit itself was told of; before, there is nothing to lose.
    const std::size_t first = run.told.front().event, span = run.events.size() - first;
    for (int point = 0; point < points; ++point) {
        const std::size_t event = first + span * static_cast<std::size_t>(point) / static_cast<std::size_t>(points);
        cut.go_to(event);
        while (next_told + 1 < run.told.size() && run.told[next_told + 1].event <= event) ++next_told;
        const Told& told = run.told[next_told];
        for (const Damage damage : {Damage::nothing_more, Damage::some, Damage::garbage}) {
            const Seen seen = open_image(cut.image(damage, random));
            ++losses.images;
            losses.unsound += seen.sound ? 0 : 1;
            losses.lost += seen.sound && (seen.readings < told.readings || seen.seals < told.seals) ? 1 : 0;
        }
    }
    return losses;
}

int points() {
    return std::getenv("SILLWALK_LONG") ? 500 : 60;
}

}  // namespace

TEST_CASE("F2 a power cut at any instant loses nothing that was told saved or sealed", "[fault]") {
    const Scratch scratch;
    const Run run = enter_and_seal(scratch.file("a.db"));
    const Losses real = cut_everywhere(run, true, points());
    CHECK(real.images == 3 * points());
    CHECK(real.unsound == 0);
    CHECK(real.lost == 0);
    // The control: a device that says flushed and is not. Its damage must be seen, or the test above sees nothing.
    const Losses lying = cut_everywhere(run, false, points());
    CHECK(lying.unsound + lying.lost > lying.images / 10);
    CHECK(lying.unsound > 0);
}
