// F22: the writer's thread, a sending thread and a person's thread on one file, for the thread sanitizer. Exit status
// 0: all arrived; the sanitizer ends the program otherwise where it sees a race.
#include "app/sync/sender.hpp"
#include "tests/app_storage/scratch.hpp"
#include "tests/app_sync/fake_office.hpp"
#include "tests/app_sync/field.hpp"

#include <atomic>
#include <cstdio>
#include <thread>

using namespace sillwalk;
using namespace sillwalk::app;
using namespace sillwalk::test;

namespace {

constexpr int seals = 30;

bool prepare(Writer& writer, const FakeOffice& office) {
    bool good = false;
    writer.with_database([&](Database& database) {
        good = device_identity(database, field_device()) &&
               store_office(database, {"https://office.example", visit_uuid(77), "token", std::int64_t{1} << 52,
                                       office.key_id, office.key.public_key, ""});
    });
    return good;
}

/// Readings without pause, a seal now and then.
bool enter_and_seal(Writer& writer) {
    for (int number = 1; number <= seals; ++number) {
        const std::string visit = visit_uuid(number);
        if (writer.submit(plain_visit(visit)) == 0) return false;
        for (int step = 1; step <= 5; ++step) {
            const std::string entry = "/rooms/r" + std::to_string(step) + "/air";
            if (writer.submit(StoreStep{visit, step, EditKind::edit, "edit", {{entry, {}, "1"}}, step}) == 0)
                return false;
        }
        const std::string photo = photo_bytes(number, 2000);
        if (writer.submit(photo_of(photo)) == 0 || !writer.flush(20000)) return false;
        engine::Result<VisitHead> head;
        writer.with_database([&](Database& database) { head = load_head(database, visit); });
        if (!head || !writer.seal(seal_order(visit, *head, "note", {photo}))) return false;
        (void)writer.state();
    }
    return true;
}

/// Two threads count without a lock.
int count_with_a_race() {
    int count = 0;
    const auto count_up = [&count] {
        for (int i = 0; i < 100000; ++i) ++count;
    };
    std::thread one(count_up), two(count_up);
    one.join();
    two.join();
    std::printf("counted %d\n", count);
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc == 2 && std::string(argv[1]) == "race") return count_with_a_race();
    const Scratch scratch;
    WriterOptions options;
    options.keep = true;
    options.ballast = 4096;
    std::atomic<int> wakes = 0;
    options.on_change = [&] { ++wakes; };
    auto writer = Writer::open(scratch.file("a.db"), options);
    FakeOffice office;
    if (!writer || !prepare(**writer, office)) return 2;
    std::atomic<bool> over = false;
    std::thread sending([&] {
        SenderOptions sender_options;
        sender_options.unit = [] { return 0.0; };
        sender_options.utc_ms = [] { return std::int64_t{1}; };
        Sender sender([&](const std::function<void(Database&)>& job) { (*writer)->with_database(job); }, office,
                      sender_options);
        for (std::int64_t now = 0;; ++now) {
            const bool last = over;
            if (last) sender.hurry(false);
            if (sender.step(now).phase == SendPhase::all_sent && last) return;
        }
    });
    const bool entered = enter_and_seal(**writer);
    over = true;
    sending.join();
    const bool arrived = office.revisions.size() == seals && office.blobs.size() == seals;
    std::printf("%zu revisions and %zu photos, %d wakes\n", office.revisions.size(), office.blobs.size(), wakes.load());
    return entered && arrived && wakes > 0 ? 0 : 1;
}
