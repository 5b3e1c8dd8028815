#include "office_world.hpp"

#include <algorithm>
#include <atomic>
#include <fstream>
#include <random>
#include <set>
#include <sstream>
#include <thread>

using namespace sillwalk;
using namespace sillwalk::test;

TEST_CASE("a revision sent twice is stored once and gets the same receipt", "[office]") {
    World world;
    const auto revision = envelope({});
    const auto first = must(world.store->put(revision, device));
    world.now += 1000;
    const auto second = must(world.store->put(revision, device));
    CHECK(first.fresh);
    CHECK_FALSE(second.fresh);
    CHECK(first.receipt == second.receipt);
    CHECK(receipt_of(first).at("heads") == Json{hex(revision)});
    CHECK(receipt_of(first).at("complete") == true);
}

TEST_CASE("a receipt is signed by the office's key, which outlives a restart", "[office]") {
    World world;
    const std::string text = must(world.store->put(envelope({}), device)).receipt;
    const auto before = world.store->key().public_key;
    world.reopen();
    CHECK(world.store->key().public_key == before);
    const Json receipt = Json::parse(text);
    const auto bytes = app::from_base64url(receipt.at("sig").at(0).at("value").get<std::string>());
    REQUIRE(bytes.has_value());
    app::Signature signature{};
    std::copy(bytes->begin(), bytes->end(), signature.begin());
    const auto digest = app::sha256(app::canonical_json(receipt.at("receipt")));
    CHECK(app::verify(before, "sillwalk-receipt/1", digest, signature));
    CHECK_FALSE(app::verify(before, "sillwalk-revision/1", digest, signature));
}

TEST_CASE("F13 forks arriving in any order end with exactly their heads", "[office]") {
    World world;
    std::mt19937 random(1);
    const int surveys = std::getenv("SILLWALK_LONG") ? 200 : 20;
    std::vector<app::Envelope> all;
    std::map<int, std::set<std::string>> wanted;
    for (int survey = 0; survey < surveys; ++survey) {
        const auto root = envelope({survey, {}, "root"});
        all.push_back(root);
        for (int child = 0; child < 3; ++child) {
            all.push_back(envelope({survey, {hex(root)}, "child " + std::to_string(child)}));
            wanted[survey].insert(hex(all.back()));
        }
    }
    const auto once = all;
    all.insert(all.end(), once.begin(), once.end());  // everything is sent twice
    std::shuffle(all.begin(), all.end(), random);
    constexpr std::size_t clients = 8;
    std::vector<std::thread> threads;
    std::atomic<int> fresh{0}, failed{0};
    for (std::size_t client = 0; client < clients; ++client) {
        threads.emplace_back([&, client] {
            for (std::size_t i = client; i < all.size(); i += clients) {
                const auto stored = world.store->put(all[i], device);
                if (!stored) ++failed;
                if (stored && stored->fresh) ++fresh;
            }
        });
    }
    for (auto& thread : threads) thread.join();
    CHECK(failed == 0);
    CHECK(fresh == surveys * 4);
    for (const auto& [survey, heads] : wanted) {
        const auto found = must(world.store->heads(survey_id(survey)));
        CHECK(std::set<std::string>(found.begin(), found.end()) == heads);
    }
}

TEST_CASE("F13 sixteen clients with the same revisions leave each once", "[office]") {
    World world;
    std::vector<app::Envelope> all;
    const int revisions = std::getenv("SILLWALK_LONG") ? 500 : 40;
    for (int number = 0; number < revisions; ++number) all.push_back(envelope({number, {}, "same"}));
    std::atomic<int> fresh{0}, known{0};
    std::vector<std::thread> threads;
    for (int client = 0; client < 16; ++client) {
        threads.emplace_back([&] {
            for (const auto& revision : all) {
                const auto stored = world.store->put(revision, device);
                if (stored) ++(stored->fresh ? fresh : known);
            }
        });
    }
    for (auto& thread : threads) thread.join();
    CHECK(fresh == revisions);
    CHECK(known == 15 * revisions);
    CHECK(must(world.store->verify()).revisions == revisions);
}

TEST_CASE("a parent of another visit ends no head there", "[office]") {
    World world;
    const auto one = envelope({1, {}, "one"});
    const auto two = envelope({2, {hex(one)}, "two"});
    must(world.store->put(two, device));
    must(world.store->put(one, device));
    CHECK(must(world.store->heads(survey_id(1))) == std::vector<std::string>{hex(one)});
    CHECK(must(world.store->heads(survey_id(2))) == std::vector<std::string>{hex(two)});
}

TEST_CASE("the receipt names missing photos until they are there", "[office]") {
    World world;
    const auto revision = envelope({1, {}, "with photos", device, {"photo a", "photo b"}});
    const auto first = receipt_of(must(world.store->put(revision, device)));
    CHECK(first.at("missing_blobs").size() == 2);
    CHECK(first.at("complete") == false);
    CHECK(must(world.store->put_blob(app::sha256("photo a"), "photo a")));
    CHECK_FALSE(must(world.store->put_blob(app::sha256("photo a"), "photo a")));
    CHECK_FALSE(world.store->put_blob(app::sha256("photo b"), "another").has_value());
    CHECK(must(world.store->put_blob(app::sha256("photo b"), "photo b")));
    const Json last = Json::parse(must(world.store->receipt(hex(revision)))).at("receipt");
    CHECK(last.at("complete") == true);
}

TEST_CASE("an upload goes on where it stopped and ends with the right digest only", "[office]") {
    World world;
    const std::string photo(3000, 'p');
    auto upload = must(world.store->new_upload(app::sha256(photo), 3000, device));
    upload = must(world.store->append(upload.id, device, 0, photo.substr(0, 1000)));
    CHECK(upload.received == 1000);
    const auto twice = world.store->append(upload.id, device, 0, photo.substr(0, 1000));
    REQUIRE_FALSE(twice.has_value());
    CHECK(twice.error().where == "offset");
    CHECK_FALSE(world.store->upload(upload.id, "another device").has_value());
    world.reopen();
    upload = must(world.store->append(upload.id, device, 1000, photo.substr(1000)));
    CHECK(must(world.store->finish(upload)));
    CHECK(must(world.store->missing({upload.digest})).empty());
    CHECK(must(world.store->blobs().read(app::sha256(photo))) == photo);

    auto wrong = must(world.store->new_upload(app::sha256("other"), 5, device));
    wrong = must(world.store->append(wrong.id, device, 0, "OTHER"));
    const auto refused = world.store->finish(wrong);
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == engine::ErrorCode::disagreement);
    CHECK(must(world.store->missing({wrong.digest})).size() == 1);

    const auto old = must(world.store->new_upload(app::sha256("old"), 3, device));
    world.now += office::upload_lifetime_ms + 1;
    CHECK_FALSE(world.store->upload(old.id, device).has_value());
    must(world.store->drop_old_uploads());
}

TEST_CASE("an enrolment code works once and for fifteen minutes", "[office]") {
    World world;
    const std::string key = app::to_hex(app::byte_view(key_of(1).public_key));
    const std::string code = must(world.store->new_enrolment("van 3"));
    CHECK_FALSE(world.store->enrol("aaaaa-aaaaa", key, "x").has_value());
    std::string typed = code;
    std::transform(typed.begin(), typed.end(), typed.begin(), [](char c) { return c == '-' ? ' ' : c; });
    const auto enrolled = must(world.store->enrol(typed, key, "Tablet"));
    CHECK_FALSE(world.store->enrol(code, key, "Tablet").has_value());
    const std::string late = must(world.store->new_enrolment(""));
    world.now += office::code_lifetime_ms + 1;
    CHECK_FALSE(world.store->enrol(late, key, "Tablet").has_value());
    CHECK(must(world.store->caller(enrolled.token)).access == office::Access::granted);
    CHECK(must(world.store->caller("wrong")).access == office::Access::unknown);
}

TEST_CASE("a withdrawn tablet is out at its next call and what it sent is kept", "[office]") {
    World world;
    const std::string code = must(world.store->new_enrolment(""));
    const auto enrolled = must(world.store->enrol(code, std::string(64, '0'), "Tablet"));
    CHECK(must(world.store->caller(enrolled.token)).access == office::Access::granted);
    const auto revision = envelope({1, {}, "kept", enrolled.device_id});
    must(world.store->put(revision, enrolled.device_id));
    must(world.store->revoke(enrolled.device_id));
    CHECK(must(world.store->caller(enrolled.token)).access == office::Access::revoked);
    CHECK(must(world.store->revision(hex(revision))).digest == hex(revision));
}

TEST_CASE("the old token works until the new one was used", "[office]") {
    World world;
    const auto first = must(world.store->enrol(must(world.store->new_enrolment("")), std::string(64, '0'), "Tablet"));
    const auto caller = must(world.store->caller(first.token));
    const auto second = must(world.store->rotate(caller.device));
    CHECK(must(world.store->caller(first.token)).access == office::Access::granted);
    CHECK(must(world.store->caller(second.token)).access == office::Access::granted);
    CHECK(must(world.store->caller(first.token)).access == office::Access::unknown);
    CHECK(must(world.store->caller(second.token)).access == office::Access::granted);
}

TEST_CASE("no secret stands in the database", "[office]") {
    World world;
    const std::string code = must(world.store->new_enrolment(""));
    const auto enrolled = must(world.store->enrol(code, std::string(64, '0'), "Tablet"));
    const std::string person = must(world.store->new_person("Ada"));
    const std::string login = must(world.store->log_in(person));
    world.store.reset();
    std::string all;
    for (const char* name : {"/office.sqlite", "/office.sqlite-wal"}) {
        std::ifstream file(world.folder.text() + name, std::ios::binary);
        all.append(std::istreambuf_iterator<char>(file), {});
    }
    REQUIRE(all.find(enrolled.device_id) != std::string::npos);
    std::string plain = person;
    plain.erase(std::remove(plain.begin(), plain.end(), '-'), plain.end());
    for (const std::string& secret : {enrolled.token, code, person, plain, login})
        CHECK(all.find(secret) == std::string::npos);
}

TEST_CASE("changes are told in order and once", "[office]") {
    World world;
    std::vector<std::string> sent, told;
    for (int i = 0; i < 5; ++i) {
        const auto revision = envelope({i, {}, "x"});
        must(world.store->put(revision, device));
        sent.push_back(hex(revision));
    }
    std::string cursor;
    for (int page = 0; page < 4; ++page) {
        const auto list = must(world.store->changes(cursor, 2));
        for (const auto& item : list.items) told.push_back(item.digest);
        cursor = list.next;
    }
    CHECK(told == sent);
    CHECK(must(world.store->changes(cursor, 2)).next == cursor);
    CHECK(must(world.store->changes("of-another-office.7.7", 9)).items.size() == 5);
}

TEST_CASE("F24 a backup restored elsewhere verifies wholly", "[office]") {
    World world;
    const auto root = envelope({1, {}, "root", device, {"photo a"}});
    const auto left = envelope({1, {hex(root)}, "left"});
    const auto right = envelope({1, {hex(root)}, "right"});
    for (const auto* revision : {&left, &root, &right}) must(world.store->put(*revision, device));
    must(world.store->put_blob(app::sha256("photo a"), "photo a"));
    const auto enrolled =
        must(world.store->enrol(must(world.store->new_enrolment("")), std::string(64, '0'), "Tablet"));
    Folder backup;
    const auto saved = must(world.store->backup(backup.text()));
    CHECK(saved.revisions == 3);
    CHECK(saved.blobs == 1);
    CHECK(saved.faults.empty());
    CHECK_FALSE(world.store->backup(backup.text()).has_value());

    World fresh;
    const auto restored = must(fresh.store->restore(backup.text()));
    CHECK(restored.revisions == 3);
    CHECK(restored.faults.empty());
    CHECK_FALSE(fresh.store->restore(backup.text()).has_value());
    fresh.reopen();
    const auto verified = must(fresh.store->verify());
    CHECK(verified.revisions == 3);
    CHECK(verified.blobs == 1);
    CHECK(verified.faults.empty());
    CHECK(fresh.store->key().public_key == world.store->key().public_key);
    CHECK(must(fresh.store->heads(survey_id(1))) == must(world.store->heads(survey_id(1))));
    CHECK(must(fresh.store->caller(enrolled.token)).access == office::Access::granted);
    for (const auto* revision : {&left, &root, &right})
        CHECK(must(fresh.store->revision(hex(*revision))).revision == revision->revision);
}

TEST_CASE("F24 what is damaged in a backup is told and left out, the rest comes back", "[office]") {
    World world;
    const auto one = envelope({1, {}, "first word", device, {"photo a", "photo b"}}), two = envelope({2, {}, "second"});
    for (const auto* revision : {&one, &two}) must(world.store->put(*revision, device));
    for (const char* photo : {"photo a", "photo b"}) must(world.store->put_blob(app::sha256(photo), photo));
    Folder backup;
    must(world.store->backup(backup.text()));
    std::ostringstream text;
    text << std::ifstream(backup.text() + "/office.ndjson", std::ios::binary).rdbuf();
    std::string changed = text.str();
    changed.replace(changed.find("first word"), 10, "other word");  // still a revision, of another digest
    std::ofstream(backup.text() + "/office.ndjson", std::ios::binary) << changed;
    const std::string photo = app::to_hex(app::sha256("photo b"));
    std::ofstream(backup.text() + "/blobs/" + photo.substr(0, 2) + "/" + photo, std::ios::binary) << "photo B";

    World fresh;
    const auto restored = must(fresh.store->restore(backup.text()));
    CHECK(restored.revisions == 1);
    CHECK(restored.blobs == 1);
    REQUIRE(restored.faults.size() == 2);
    CHECK(restored.faults[0].find(hex(one)) != std::string::npos);
    CHECK(restored.faults[1].find(photo) != std::string::npos);
    CHECK(must(fresh.store->verify()).faults.empty());
    CHECK_FALSE(fresh.store->revision(hex(one)).has_value());
    CHECK(must(fresh.store->revision(hex(two))).revision == two.revision);
}

TEST_CASE("F6 verify finds one turned bit in a photo", "[office]") {
    World world;
    must(world.store->put_blob(app::sha256("photo a"), "photo a"));
    CHECK(must(world.store->verify()).faults.empty());
    std::ofstream(world.store->blobs().path(app::sha256("photo a")), std::ios::binary) << "photo b";
    CHECK(must(world.store->verify()).faults.size() == 1);
}

TEST_CASE("signatures are judged by the tablet's own key", "[office]") {
    World world;
    const auto key = key_of(3), other = key_of(4);
    const std::string public_key = app::to_hex(app::byte_view(key.public_key));
    const auto enrolled = must(world.store->enrol(must(world.store->new_enrolment("")), public_key, "Tablet"));
    const RevisionWish wish{1, {}, "signed", enrolled.device_id, {}};
    CHECK(world.store->signature_state(envelope(wish, &key, enrolled.device_id)) == app::SignatureState::good);
    CHECK(world.store->signature_state(envelope(wish, &other, enrolled.device_id)) == app::SignatureState::bad);
    CHECK(world.store->signature_state(envelope(wish, &key, "stranger")) == app::SignatureState::unknown_key);
    CHECK(world.store->signature_state(envelope(wish)) == app::SignatureState::none);
    must(world.store->revoke(enrolled.device_id));
    CHECK(world.store->signature_state(envelope(wish, &key, enrolled.device_id)) == app::SignatureState::unknown_key);
}

TEST_CASE("F23 a second program on the same SQLite file is refused", "[office]") {
    World world;
    CHECK_FALSE(Store::open({world.folder.text(), "", [] { return std::int64_t{1}; }}).has_value());
}

TEST_CASE("F20 a soak of revisions leaves a bounded log", "[office]") {
    World world;
    const int count = std::getenv("SILLWALK_LONG") ? 10'000 : 500;
    std::uintmax_t greatest = 0;
    for (int i = 0; i < count; ++i) {
        must(world.store->put(envelope({i % 50, {}, std::string(4000, 'x') + std::to_string(i)}), device));
        if (i % 100 == 0)
            greatest = std::max(greatest, std::filesystem::file_size(world.folder.text() + "/office.sqlite-wal"));
    }
    CHECK(greatest <= 16u << 20);
    CHECK(must(world.store->verify()).revisions == count);
}
