#include "app/bundle/envelope.hpp"
#include "app/bundle/photos.hpp"
#include "app/bundle/survey_entries.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

std::vector<VisitPhoto> two_photos() {
    VisitPhoto sill{"0199a000-0000-7000-8000-000000000001", to_hex(sha256("sill")), 250000, 1600, 1200};
    sill.about = "/crossings/door/rise";
    sill.caption = "Sill, \"left\" / seen from the dock";
    sill.marks = {{MarkKind::arrow, {0, 10000}, {5000, 1}, ""},
                  {MarkKind::circle, {100, 200}, {300, 400}, ""},
                  {MarkKind::dimension, {1, 2}, {3, 4}, "3/4 in"}};
    return {sill, {"0199a000-0000-7000-8000-000000000002", to_hex(sha256("loose")), 1, 16, 900}};
}

engine::Survey survey_with_door() {
    engine::Survey survey;
    survey.id = engine::SurveyId("01900000-0000-7000-8000-000000000001");
    survey.rooms = {{engine::RoomId("dock"), "Dock", {}, {}, {}, {}, {}, {}, {}, ""}};
    engine::Crossing door;
    door.id = engine::CrossingId("door");
    door.from = door.to = engine::RoomId("dock");
    survey.crossings = {door};
    return survey;
}

}  // namespace

TEST_CASE("photos go into entries and back exactly, in their order", "[app][photo]") {
    CHECK(photo_entries({}).empty());
    CHECK(photos_of({})->empty());
    const auto photos = two_photos();
    const Entries entries = photo_entries(photos);
    for (const auto& [path, text] : entries) CHECK(is_photo_entry(path));
    CHECK_FALSE(is_photo_entry("/photosynthesis"));
    CHECK(photos_of(entries) == photos);
    // One photo's caption is one entry: an edit touches nothing else.
    auto other = photos;
    other[0].caption = "Sill";
    CHECK(difference(entries, photo_entries(other)).size() == 1);
}

TEST_CASE("the survey reads its own entries and leaves those of the photos alone", "[app][photo]") {
    const engine::Survey survey = survey_with_door();
    Entries entries = entries_of(survey);
    for (const auto& [path, text] : photo_entries(two_photos())) entries[path] = text;
    CHECK(survey_of(entries) == survey);
    CHECK(photos_of(entries) == two_photos());
}

TEST_CASE("what is no photo is refused with its path", "[app][photo]") {
    const auto broken = [](const std::string& member, const std::string& value) {
        Entries entries = photo_entries(two_photos());
        entries["/photos/0199a000-0000-7000-8000-000000000001/" + member] = value;
        const auto read = photos_of(entries);
        REQUIRE_FALSE(read);
        return read.error().message;
    };
    CHECK(broken("sha256", "\"abc\"").find("/photos/0/sha256") != std::string::npos);
    CHECK(broken("width_px", "0").find("/photos/0/width_px") != std::string::npos);
    CHECK(broken("marks", "[{\"kind\":\"star\"}]").find("/photos/0/marks/0/kind") != std::string::npos);
    CHECK(broken("marks", "[{\"kind\":\"arrow\",\"from_x_per_10000\":10001}]").find("from_x") != std::string::npos);
    for (const char* order : {"{}", "[1]", "null"}) CHECK_FALSE(photos_of({{"/photos", order}}));
}

TEST_CASE("a revision names each picture once, with the item that it shows", "[app][photo][bundle]") {
    const engine::Survey survey = survey_with_door();
    auto photos = two_photos();
    photos.push_back(photos[0]);
    const auto blobs = blobs_of(survey.id, photos);
    REQUIRE(blobs.size() == 2);
    CHECK(blobs[0].item == item_uuid(survey_uuid(survey.id), "crossing", "door"));
    CHECK(blobs[1].item.empty());
    const RevisionInput input{survey, {},   {"0190e100-0000-7000-8000-0000000000a1", "field", ""}, 0, {}, "1", "1",
                              "1",    blobs};
    const Json revision = make_revision(input);
    CHECK(revision["items"].contains(blobs[0].item));
    const auto envelope = read_envelope(make_envelope(revision));
    REQUIRE(envelope);
    REQUIRE(envelope->blobs.size() == 2);
    CHECK(envelope->blobs[0].digest == sha256("sill"));
    CHECK(envelope->blobs[0].width_px == 1600);
    CHECK(envelope->blobs[0].item == blobs[0].item);
}
