#include "app/storage/quarantine.hpp"
#include "app/sync/sender.hpp"
#include "engine/base/random.hpp"
#include "tests/app_sync/fake_office.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;
using test::FakeOffice;

namespace {

constexpr std::int64_t never = std::int64_t{1} << 52;  ///< a token that is not old

/// A tablet, an office, and a clock that jumps to the next moment at which something is due.
struct World {
    Database database = std::move(*Database::open(":memory:"));
    FakeOffice office;
    std::uint64_t draws = 0;
    std::int64_t now = 0;
    std::vector<std::int64_t> tried_at;
    std::unique_ptr<Sender> sender;

    World() {
        REQUIRE(migrate(database));
        REQUIRE(device_identity(database, test::field_device()));
        REQUIRE(store_office(database, {"https://office.example", test::visit_uuid(77), "token", never, office.key_id,
                                        office.key.public_key, ""}));
        restart();
    }
    void restart() {
        SenderOptions options;
        options.unit = [this] { return engine::random_unit(11, draws++); };
        options.utc_ms = [] { return std::int64_t{1000}; };
        sender = std::make_unique<Sender>([this](const std::function<void(Database&)>& job) { job(database); }, office,
                                          options);
    }
    /// Until nothing is left, a person is needed or the clock reached `until`.
    SendState run(std::int64_t until = 1'000'000'000) {
        for (;;) {
            const std::size_t seen = office.seen.size();
            const SendState state = sender->step(now);
            if (office.seen.size() > seen) tried_at.push_back(now);
            if (state.phase == SendPhase::busy) continue;
            if (state.phase != SendPhase::waiting && state.phase != SendPhase::storage_fault) return state;
            if (state.next_ms > until) return state;
            now = std::max(now + 1, state.next_ms);
        }
    }
    Digest seal(int visit, const std::string& note, const std::vector<std::string>& photos = {}) {
        const auto digest = test::seal_visit(database, test::visit_uuid(visit), note, photos);
        REQUIRE(digest);
        return *digest;
    }
    OutboxRow row(const Digest& digest) {
        const auto rows = list_outbox(database);
        REQUIRE(rows);
        for (const OutboxRow& one : *rows) {
            if (one.digest == digest) return one;
        }
        FAIL("no such row");
        return {};
    }
};

}  // namespace

TEST_CASE("revisions go first, photos after, and the last word is a complete receipt", "[sync]") {
    World world;
    const std::string small = test::photo_bytes(1, 5000), large = test::photo_bytes(2, 600000);
    const Digest first = world.seal(1, "one", {small, large});
    const Digest second = world.seal(2, "two");
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.office.seen[0].path.starts_with("/v1/revisions/"));
    CHECK(world.office.seen[1].path.starts_with("/v1/revisions/"));
    CHECK(world.office.blobs.size() == 2);
    CHECK(count_outbox(world.database) == OutboxCount{0, 0, 4});
    for (const Digest& digest : {first, second}) {
        const auto receipt = load_receipt(world.database, digest);
        REQUIRE(receipt);
        REQUIRE(*receipt);
        CHECK((**receipt).complete);
    }
    // What arrived is what was sealed, signed by the device under the id that the office gave it.
    const auto envelope = read_envelope(world.office.revisions.at(to_hex(first)));
    REQUIRE(envelope);
    CHECK(check_signatures(*envelope, [](std::string_view key_id) {
              return key_id == test::visit_uuid(77) ? std::optional<PublicKey>(test::field_device().key().public_key)
                                                    : std::nullopt;
          }) == SignatureState::good);
}

TEST_CASE("nothing leaves before an enrolment, and everything is kept when the office shuts the door", "[sync]") {
    World world;
    REQUIRE(world.database.execute("DELETE FROM office"));
    const Digest digest = world.seal(1, "one");
    CHECK(world.run().phase == SendPhase::not_enrolled);
    CHECK(world.office.seen.empty());
    REQUIRE(store_office(world.database, {"https://office.example", test::visit_uuid(77), "old", never,
                                          world.office.key_id, world.office.key.public_key, ""}));
    world.sender->hurry(false);
    CHECK(world.run().phase == SendPhase::enrol_again);
    CHECK(world.run().phase == SendPhase::enrol_again);
    CHECK(world.office.seen.size() == 1);
    CHECK(world.row(digest).state == OutboxState::queued);
    REQUIRE(store_office(world.database, {"https://office.example", test::visit_uuid(77), "token", never,
                                          world.office.key_id, world.office.key.public_key, ""}));
    world.sender->hurry(false);
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.row(digest).state == OutboxState::done);
}

TEST_CASE("an old token is renewed once all is sent, and the next run uses the new one", "[sync]") {
    World world;
    REQUIRE(store_office(world.database, {"https://office.example", test::visit_uuid(77), "token", 2000,
                                          world.office.key_id, world.office.key.public_key, ""}));
    CHECK(world.run().phase == SendPhase::all_sent);  // the office in memory gives no tokens: the old one stays
    CHECK(world.office.seen.size() == 1);
    CHECK(world.office.seen[0].path == "/v1/tokens");
    CHECK((**load_office(world.database)).token == "token");
    world.restart();
    world.office.instead.push_back(WireResponse{
        201, {}, R"({"device_id":")" + test::visit_uuid(77) + R"(","expires_ms":4503599627370496,"token":"newer"})"});
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK((**load_office(world.database)).token == "newer");
    world.office.token = "newer";
    (void)world.seal(1, "one");
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.office.revisions.size() == 1);
}

TEST_CASE("what the office refuses is parked with its reason, kept, and the rest goes on", "[sync]") {
    World world;
    const Digest first = world.seal(1, "one"), second = world.seal(2, "two");
    world.office.instead.push_back(WireResponse{422, {}, R"({"retry":"never"})"});
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.row(first).state == OutboxState::parked);
    CHECK(world.row(first).last_error == "sync.why.refused");
    CHECK(world.row(second).state == OutboxState::done);
    CHECK(load_revision(world.database, first));
    world.sender->hurry(true);
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.row(first).state == OutboxState::done);
}

TEST_CASE("the office's Retry-After is kept to", "[sync]") {
    World world;
    (void)world.seal(1, "one");
    world.office.instead.push_back(WireResponse{429, {{"retry-after", "30"}}, "{}"});
    CHECK(world.run().phase == SendPhase::all_sent);
    REQUIRE(world.tried_at.size() == 2);
    CHECK(world.tried_at[1] - world.tried_at[0] >= 30000);
    CHECK(world.tried_at[1] - world.tried_at[0] < 32000);
}

TEST_CASE("a log-in page of a guest network and a forged receipt are not taken for the office's word", "[sync]") {
    World world;
    const Digest digest = world.seal(1, "one");
    world.office.instead.push_back(WireResponse{200, {}, "<html>log in</html>"});
    world.office.instead.push_back(WireResponse{302, {{"Location", "https://elsewhere.example"}}, ""});
    FakeOffice forger;
    forger.key = test::seeded_key(66);
    forger.revisions[to_hex(digest)] = make_envelope(Json::parse(load_revision(world.database, digest)->body));
    world.office.instead.push_back(WireResponse{201, {}, forger.receipt(to_hex(digest))});
    (void)world.run(0);
    CHECK(world.row(digest).last_error == "sync.why.no_receipt");
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.office.seen.size() == 4);
    CHECK(world.office.revisions.size() == 1);
}

TEST_CASE("an office that was set back gets again what it lost", "[sync]") {
    World world;
    const std::string photo = test::photo_bytes(3, 1000);
    const Digest digest = world.seal(1, "one", {photo});
    CHECK(world.run().phase == SendPhase::all_sent);
    world.office.blobs.clear();
    REQUIRE(world.database.execute("UPDATE receipt SET complete=0"));
    world.sender->hurry(false);
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.office.blobs.size() == 1);
    world.office.revisions.clear();
    REQUIRE(world.database.execute("UPDATE receipt SET complete=0"));
    world.sender->hurry(false);
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.office.revisions.count(to_hex(digest)) == 1);
}

TEST_CASE("F6 what the disk changed never leaves: it is put aside and parked", "[sync][fault]") {
    World world;
    const std::string photo = test::photo_bytes(4, 3000);
    const Digest digest = world.seal(1, "one", {photo});
    REQUIRE(world.database.execute("UPDATE revision SET body=CAST(replace(CAST(body AS TEXT), 'one', 'two') AS BLOB)"));
    REQUIRE(world.database.execute("UPDATE blob_body SET body=CAST('other' AS BLOB)"));
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.office.seen.empty());
    CHECK(world.row(digest).state == OutboxState::parked);
    CHECK(world.row(digest).last_error == "sync.why.damaged");
    CHECK(world.row(sha256(photo)).state == OutboxState::parked);
    const auto aside = list_quarantine(world.database);
    REQUIRE(aside);
    REQUIRE(aside->size() == 2);
    CHECK((*aside)[0].digest == digest);
    CHECK((*aside)[1].bytes == 5);
}

TEST_CASE("a damaged signature is made anew, since the digest still holds", "[sync][fault]") {
    World world;
    const Digest digest = world.seal(1, "one");
    REQUIRE(world.database.execute("UPDATE revision SET signature=zeroblob(64)"));
    CHECK(world.run().phase == SendPhase::all_sent);
    const auto envelope = read_envelope(world.office.revisions.at(to_hex(digest)));
    REQUIRE(envelope);
    const auto any = [](std::string_view) { return std::optional<PublicKey>(test::field_device().key().public_key); };
    CHECK(check_signatures(*envelope, any) == SignatureState::good);
}

TEST_CASE("F8 half of all connections are cut, 300 things arrive once and whole", "[sync][fault]") {
    World world;
    std::vector<std::string> photos;
    for (int number = 0; number < 60; ++number) photos.push_back(test::photo_bytes(100 + number, 3000));
    for (int number = 0; number < 240; ++number)
        (void)world.seal(number, "note",
                         number < 60 ? std::vector<std::string>{photos[static_cast<std::size_t>(number)]}
                                     : std::vector<std::string>{});
    std::uint64_t exchange = 0;
    int lost_requests = 0, lost_answers = 0;
    world.office.network = [&](const WireRequest&) {
        const double dice = engine::random_unit(5, exchange++);
        lost_requests += dice < 0.25 ? 1 : 0;
        lost_answers += dice >= 0.25 && dice < 0.5 ? 1 : 0;
        return dice < 0.25  ? FakeOffice::Way::lose_request
               : dice < 0.5 ? FakeOffice::Way::lose_answer
                            : FakeOffice::Way::pass;
    };
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(lost_requests > 30);
    CHECK(lost_answers > 30);
    CHECK(world.office.revisions.size() == 240);
    CHECK(world.office.blobs.size() == 60);
    CHECK(count_outbox(world.database) == OutboxCount{0, 0, 300});
    for (const std::string& photo : photos) CHECK(world.office.blobs.at(to_hex(sha256(photo))) == photo);
    std::size_t sends = 0;
    for (const WireRequest& request : world.office.seen) sends += request.method == "GET" ? 0 : 1;
    CHECK(sends <= 3 * 300);
}

TEST_CASE("F9 a photo of 5 MB through cuts costs at most a quarter more than itself", "[sync][fault]") {
    World world;
    const std::string photo = test::photo_bytes(9, 5'000'000);
    (void)world.seal(1, "one", {photo});
    std::size_t since_cut = 0, on_the_wire = 0;
    std::uint64_t cuts = 0;
    world.office.network = [&](const WireRequest& request) {
        const auto every = static_cast<std::size_t>(200'000 + 800'000 * engine::random_unit(3, cuts));
        since_cut += request.body.size();
        on_the_wire += request.body.size();
        if (since_cut < every) return FakeOffice::Way::pass;
        on_the_wire -= since_cut - every;  // what came after the cut was never sent
        since_cut = 0;
        return ++cuts % 4 == 0 ? FakeOffice::Way::lose_answer : FakeOffice::Way::lose_request;
    };
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(cuts > 5);
    CHECK(world.office.blobs.at(to_hex(sha256(photo))) == photo);
    CHECK(on_the_wire >= photo.size());
    CHECK(on_the_wire <= photo.size() * 5 / 4);
}

TEST_CASE("F10 a link that is down is not hammered, and what waits goes out when it is back", "[sync][fault]") {
    World world;
    for (int number = 0; number < 5; ++number) (void)world.seal(number, "note");
    world.now = 1'000'000;
    const std::int64_t down = world.now, up = down + 30'000;
    world.office.network = [&](const WireRequest&) {
        return world.now < up ? FakeOffice::Way::lose_request : FakeOffice::Way::pass;
    };
    CHECK(world.run().phase == SendPhase::all_sent);
    std::size_t tries = 0;
    for (const std::int64_t when : world.tried_at) tries += when < up ? 1 : 0;
    CHECK(tries >= 2);
    CHECK(tries <= 30);  // at most one a second
    CHECK(world.office.revisions.size() == 5);
}

TEST_CASE("a sender that is stopped at any exchange goes on where the disk says", "[sync][fault]") {
    World world;
    const std::string photo = test::photo_bytes(12, 700'000);
    (void)world.seal(1, "one", {photo});
    for (int restart = 0; restart < 50; ++restart) {
        world.restart();
        (void)world.sender->step(world.now += 2000);  // where the office stands
        const SendState state = world.sender->step(world.now += 2000);
        if (state.phase == SendPhase::all_sent) break;
    }
    CHECK(world.run().phase == SendPhase::all_sent);
    CHECK(world.office.blobs.at(to_hex(sha256(photo))) == photo);
}
