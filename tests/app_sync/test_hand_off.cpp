#include "app/bundle/photos.hpp"
#include "app/bundle/survey_entries.hpp"
#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "app/storage/quarantine.hpp"
#include "app/sync/hand_off_files.hpp"
#include "app/sync/sealed_visit.hpp"
#include "assets/embedded.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

Database tablet(const DeviceIdentity& device) {
    auto database = Database::open(":memory:");
    REQUIRE(database);
    REQUIRE(migrate(*database));
    REQUIRE(device_identity(*database, device));
    return std::move(*database);
}

DeviceIdentity other_device() {
    DeviceIdentity device{test::visit_uuid(500), {}};
    device.seed.fill(3);
    return device;
}

/// The demo visit with one photo, stored as the app stores it.
std::string store_demo(Database& database, const std::string& photo) {
    const auto text = assets::embedded("demo/quillwater.json");
    REQUIRE(text);
    const SurveyRead read = read_survey(*text);
    REQUIRE(read.errors.empty());
    VisitPhoto row;
    row.id = test::visit_uuid(601);
    row.sha256 = to_hex(sha256(photo));
    row.bytes = static_cast<std::int64_t>(photo.size());
    row.width_px = 20;
    row.height_px = 10;
    row.caption = "Freezer door";
    Entries entries = entries_of(read.survey);
    entries.merge(photo_entries({row}));
    const std::string id = read.survey.id.text();
    REQUIRE(apply_all(database, {StoreVisit{id, "Demo", entries, 1}, test::photo_of(photo)}));
    return id;
}

engine::Result<SealOrder> demo_order(Database& database, const std::string& id) {
    static const LoadedTables tables = load_tables();
    static const LoadedCatalogue catalogue = load_catalogue();
    const DeviceIdentity device = test::field_device();
    return make_seal_order(id, *load_visit(database, id), *load_head(database, id),
                           {catalogue.catalogue, tables.tables, device, "Test", 1795600000000});
}

}  // namespace

TEST_CASE("a visit sealed on one tablet is a visit on another, photo and caption too", "[sync]") {
    Database here = tablet(test::field_device()), there = tablet(other_device());
    const std::string photo = test::photo_bytes(1, 4000);
    const std::string id = store_demo(here, photo);
    const auto order = demo_order(here, id);
    REQUIRE(order);
    REQUIRE(seal(here, *order));
    CHECK(load_head(here, id)->state == "sealed");
    const auto again = demo_order(here, id);
    REQUIRE_FALSE(again);  // nothing has changed since
    CHECK(again.error().code == engine::ErrorCode::no_answer);

    std::stringstream file;
    const auto written = write_hand_off(here, "", file);
    REQUIRE(written);
    CHECK(written->revisions == 1);
    CHECK(written->photos == 1);

    const auto refused = take_in_hand_off(there, file, {});
    REQUIRE(refused);
    CHECK(refused->put_aside == 2);  // nobody here knows the signer, so nobody names the photo
    CHECK(list_visits(there)->empty());
    CHECK(list_quarantine(there)->size() == 2);

    file.clear();
    file.seekg(0);
    const auto taken = take_in_hand_off(there, file, {true, 7});
    REQUIRE(taken);
    CHECK(taken->visits == 1);
    CHECK(taken->photos == 1);
    const auto stored = load_visit(there, id);
    REQUIRE(stored);
    CHECK(stored->entries == load_visit(here, id)->entries);
    CHECK(photos_of(stored->entries)->front().caption == "Freezer door");
    CHECK(load_photo(there, sha256(photo)) == photo);
    CHECK(load_head(there, id)->base == order->digest);

    // A second time nothing is new, and the file written from there is the same, with the first tablet's signature.
    file.clear();
    file.seekg(0);
    CHECK(take_in_hand_off(there, file, {true, 8})->known == 1);
    std::stringstream from_there;
    REQUIRE(write_hand_off(there, id, from_there));
    CHECK(from_there.str() == file.str());
}

TEST_CASE("a later state of a visit that came from a file follows the earlier one", "[sync]") {
    Database here = tablet(test::field_device()), there = tablet(other_device());
    const std::string id = store_demo(here, test::photo_bytes(2, 1000));
    REQUIRE(seal(here, *demo_order(here, id)));
    REQUIRE(apply_all(here, {StoreStep{id, 1, EditKind::edit, "edit", {{"/site", {}, "\"New name\""}}, 9}}));
    CHECK(load_head(here, id)->state == "draft");
    REQUIRE(seal(here, *demo_order(here, id)));
    std::stringstream file;
    REQUIRE(write_hand_off(here, id, file));
    const auto taken = take_in_hand_off(there, file, {true, 7});
    REQUIRE(taken);
    CHECK(taken->revisions == 2);
    CHECK(taken->visits == 1);
    CHECK(load_visit(there, id)->entries.at("/site") == "\"New name\"");
    CHECK(load_head(there, id)->base == load_head(here, id)->base);
    CHECK(load_head(there, id)->state == "sealed");
}

TEST_CASE("what was edited here is not changed by a file", "[sync]") {
    Database here = tablet(test::field_device()), there = tablet(other_device());
    const std::string id = store_demo(here, test::photo_bytes(3, 1000));
    REQUIRE(seal(here, *demo_order(here, id)));
    (void)store_demo(there, test::photo_bytes(3, 1000));
    REQUIRE(apply_all(there, {StoreStep{id, 1, EditKind::edit, "edit", {{"/site", {}, "\"Mine\""}}, 9}}));
    std::stringstream file;
    REQUIRE(write_hand_off(here, id, file));
    const auto taken = take_in_hand_off(there, file, {true, 7});
    REQUIRE(taken);
    CHECK(taken->revisions == 1);
    CHECK(taken->visits == 0);
    CHECK(load_visit(there, id)->entries.at("/site") == "\"Mine\"");
}

TEST_CASE("a changed line of a hand-off file is put aside or ends the reading, and says where", "[sync]") {
    Database here = tablet(test::field_device());
    const std::string id = store_demo(here, test::photo_bytes(4, 1000));
    REQUIRE(seal(here, *demo_order(here, id)));
    std::stringstream file;
    REQUIRE(write_hand_off(here, id, file));
    const std::string good = file.str();

    std::string renamed = good;  // a name inside the signed text: the signature of a known key no longer holds
    renamed.replace(renamed.find("\"name\":\"Test\""), 13, "\"name\":\"Tess\"");
    std::istringstream changed(renamed);
    const auto aside = take_in_hand_off(here, changed, {true, 7});
    REQUIRE(aside);
    CHECK(aside->revisions == 0);
    CHECK(aside->put_aside >= 1);
    CHECK(list_quarantine(here)->front().why == "sync.why.bad_signature");

    std::istringstream cut(good.substr(0, good.size() - 100));
    const auto stopped = take_in_hand_off(here, cut, {true, 7});
    REQUIRE(stopped);
    CHECK(stopped->known == 1);
    CHECK_FALSE(stopped->fault.errors.empty());
    CHECK(stopped->stopped_at == 2);
}
