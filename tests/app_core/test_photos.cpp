// Photos in the model: every change is one undoable step of the one journal, and outlives a restart.
#include "tests/app_core/world.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;
using test::World;

namespace {

PhotoTaken taken(const World& world, const std::string& text) {
    PhotoTaken news{world.model.visit->id.text(), text + ".jpg", to_hex(sha256(text)), {}, 1600, 1200, {}};
    news.bytes = std::make_shared<const std::string>(text);
    return news;
}

void take(World& world, const std::string& text) {
    world.act(PhotoAction(TakePhotoFile{text + ".jpg"}));
    world.act(PhotoAction(taken(world, text)));
}

template <class T>
void photo_act(World& world, T action) {
    world.act(PhotoAction(std::move(action)));
}

}  // namespace

TEST_CASE("a photo is stored before the entry that names it, and asks for no new answer", "[core][photo]") {
    World world;
    const std::uint64_t version = world.model.version;
    photo_act(world, TakePhotoFile{"sill.jpg"});
    REQUIRE(world.effect<ReadPhotoFile>());
    CHECK(world.effect<ReadPhotoFile>()->name == "sill.jpg");
    photo_act(world, TakePhotoFile{"sill.jpg"});  // on its way already
    CHECK(world.effects.empty());
    photo_act(world, taken(world, "sill"));
    REQUIRE(world.effects.size() == 2);
    CHECK(std::get<SavePhoto>(world.effects[0]).sha256 == to_hex(sha256("sill")));
    CHECK(std::get<SaveEdit>(world.effects[1]).label == "done.photo_added");
    CHECK(world.model.version == version);
    REQUIRE(world.model.visit->photos.size() == 1);
    CHECK(world.model.visit->photos[0].bytes == 4);
    CHECK(photos_of(world.model.visit->entries) == world.model.visit->photos);
}

TEST_CASE("a second tap on a file takes no second photo", "[core][photo]") {
    World world;
    photo_act(world, OpenPhotoFiles{});
    CHECK(world.effect<ListPhotoFiles>());
    photo_act(world, PhotoFilesListed{"folder", {"sill.jpg"}});
    take(world, "sill");
    photo_act(world, TakePhotoFile{"sill.jpg"});
    CHECK(world.effects.empty());
    CHECK(world.model.visit->photos.size() == 1);
    photo_act(world, OpenPhotoFiles{});  // the sheet no longer knows; the picture tells
    take(world, "sill");
    CHECK(world.model.visit->photos.size() == 1);
    CHECK(world.model.toast->key == "toast.photo_twice");
    CHECK(world.model.photos.files->taken.count("sill.jpg") == 1);
}

TEST_CASE("marks, captions and what a photo shows are undone and done again with the readings", "[core][photo]") {
    World world;
    const Entries before = world.model.visit->entries;
    take(world, "sill");
    photo_act(world, BindPhoto{0, "/crossings/door/rise"});
    photo_act(world, AddPhotoMark{0, {MarkKind::dimension, {100, 200}, {300, 200}, "19 mm"}});
    // A reading between: the photos stay, and the answer is asked for.
    world.act(OpenSheet{test::door_rise});
    world.type("6");
    world.act(SheetKeep{});
    CHECK(world.effect<Assess>());
    CHECK(world.model.visit->photos.size() == 1);
    photo_act(world, SetPhotoText{{0, {}}, "  Sill  "});
    photo_act(world, SetPhotoText{{0, std::uint16_t{0}}, "20 mm"});
    const auto& photos = world.model.visit->photos;
    CHECK(photos[0].caption == "Sill");
    CHECK(photos[0].marks.at(0).text == "20 mm");
    CHECK(photos[0].about == "/crossings/door/rise");
    photo_act(world, RemoveLastMark{0});
    CHECK(photos[0].marks.empty());
    const Entries after = world.model.visit->entries;
    for (int i = 0; i < 7; ++i) world.act(Undo{});
    CHECK(world.model.visit->entries == before);
    CHECK(world.model.visit->photos.empty());
    for (int i = 0; i < 7; ++i) world.act(Redo{});
    CHECK(world.model.visit->entries == after);
    CHECK(world.model.visit->photos.at(0).caption == "Sill");
    World again;
    again.act(VisitLoaded{world.model.visit->id.text(), after, {}, "", ""});
    CHECK(again.model.visit->photos == world.model.visit->photos);
}

TEST_CASE("a deleted photo comes back; its screen gives way meanwhile", "[core][photo]") {
    World world;
    take(world, "a");
    take(world, "b");
    world.act(GoTo{{Screen::evidence, 0}});
    world.act(GoTo{{Screen::photo, 1}});
    photo_act(world, DeletePhoto{1});
    CHECK(world.model.spot == Spot{Screen::evidence, 0});
    CHECK(world.model.visit->photos.size() == 1);
    world.act(Undo{});
    CHECK(world.model.visit->photos.size() == 2);
    world.act(GoTo{{Screen::photo, 1}});
    world.act(Undo{});  // the adding of the second
    CHECK(world.model.visit->photos.size() == 1);
    CHECK(world.model.spot == Spot{Screen::evidence, 0});
}

TEST_CASE("a caption that was being typed when the power went is kept", "[core][photo]") {
    World world;
    take(world, "sill");
    photo_act(world, AddPhotoMark{0, {MarkKind::dimension, {0, 0}, {9, 9}, ""}});
    for (const PhotoTextRef& ref : {PhotoTextRef{0, {}}, PhotoTextRef{0, std::uint16_t{0}}}) {
        photo_act(world, TypePhotoText{ref, "Hinge si"});
        REQUIRE(world.effect<SaveDraft>());
        const SaveDraft draft = *world.effect<SaveDraft>();
        World again;
        again.act(VisitLoaded{draft.survey_id, world.model.visit->entries, {}, draft.path, draft.text});
        const VisitPhoto& photo = again.model.visit->photos.at(0);
        CHECK((ref.mark ? photo.marks.at(0).text : photo.caption) == "Hinge si");
    }
}

TEST_CASE("a visit takes sixty photos; a refused file is told; a photo of another visit is left", "[core][photo]") {
    World world;
    for (std::size_t i = 0; i < most_photos; ++i) take(world, "photo " + std::to_string(i));
    CHECK(world.model.visit->photos.size() == most_photos);
    photo_act(world, TakePhotoFile{"one more.jpg"});
    CHECK_FALSE(world.effect<ReadPhotoFile>());
    CHECK(world.model.toast->key == "toast.photos_full");
    photo_act(world, PhotoRefused{"x.jpg", "photo.why.unusable"});
    CHECK(world.model.toast->key == "toast.photo_refused");
    PhotoTaken other = taken(world, "other");
    other.survey_id = "another visit";
    photo_act(world, other);
    CHECK(world.effects.empty());
    CHECK(world.model.visit->photos.size() == most_photos);
}

TEST_CASE("only what the screen shows is decoded", "[core][photo]") {
    World world;
    take(world, "a");
    take(world, "b");
    CHECK(wanted_pictures(world.model).empty());
    world.act(GoTo{{Screen::evidence, 0}});
    CHECK(wanted_pictures(world.model).size() == 2);
    const auto picture = std::make_shared<const Picture>();
    photo_act(world, PictureReady{to_hex(sha256("a")), false, picture});
    photo_act(world, PictureReady{to_hex(sha256("b")), false, nullptr});
    CHECK(wanted_pictures(world.model).empty());
    world.act(GoTo{{Screen::photo, 0}});
    REQUIRE(wanted_pictures(world.model).size() == 1);
    CHECK(wanted_pictures(world.model)[0].whole);
}

TEST_CASE("a reading holds twelve photos, and one that is there may be bound to it again", "[core][photo]") {
    World world;
    for (std::uint16_t i = 0; i < 13; ++i) {
        take(world, "sill " + std::to_string(i));
        photo_act(world, BindPhoto{i, "/crossings/door/rise"});
    }
    CHECK(world.model.visit->photos[11].about == "/crossings/door/rise");
    CHECK(world.model.visit->photos[12].about.empty());
    CHECK(world.model.toast->key == "toast.photos_of_one_full");
    photo_act(world, BindPhoto{3, "/crossings/door/rise"});
    photo_act(world, BindPhoto{12, "/crossings/door/gap"});
    CHECK(world.model.visit->photos[12].about == "/crossings/door/gap");
}

TEST_CASE("the camera's photo is kept as one from a file, and the same one once", "[core][photo]") {
    World world;
    photo_act(world, ShootPhoto{});
    CHECK(world.effects.empty());  // it is not open
    photo_act(world, OpenCamera{});
    photo_act(world, ShootPhoto{});
    CHECK(world.effect<TakePicture>());
    photo_act(world, ShootPhoto{});  // a second tap while it is being taken
    CHECK(world.effects.empty());
    PhotoTaken news = taken(world, "seen");
    news.name.clear();
    photo_act(world, news);
    CHECK(world.model.visit->photos.size() == 1);
    CHECK_FALSE(world.model.photos.camera->shooting);
    photo_act(world, news);
    CHECK(world.model.visit->photos.size() == 1);
    CHECK(world.model.toast->key == "toast.photo_same");
    photo_act(world, CameraSeen{nullptr, "camera.why"});
    CHECK(world.model.photos.camera->why == "camera.why");
    photo_act(world, CameraSeen{});  // it was closed: the reason stays
    CHECK(world.model.photos.camera->why == "camera.why");
    photo_act(world, OpenCamera{});
    CHECK(world.model.photos.camera->why.empty());
    const Spot here = world.model.spot;
    world.act(GoBack{});  // closes the camera's sheet and leaves no screen
    CHECK_FALSE(world.model.photos.camera);
    CHECK(world.model.spot == here);
}
