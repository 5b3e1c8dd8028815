#include "app/core/update.hpp"
#include "tests/app_core/world.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace sillwalk;
using namespace sillwalk::app;
using test::World;

TEST_CASE("the tables of entry load without an error", "[core]") {
    std::vector<engine::Error> errors;
    const EntryTables tables = load_entry_tables(errors);
    for (const auto& error : errors) FAIL_CHECK(error.where << ": " << error.message);
    CHECK(tables.methods.size() > 10);
    CHECK(tables.plausible.size() > 20);
}

TEST_CASE("entries rebuild the survey exactly", "[core]") {
    const engine::Survey survey = test::small_survey();
    const Entries entries = entries_of(survey);
    CHECK(entries.at("/crossings/door/rise").find("19000000") != std::string::npos);
    CHECK(survey_of(entries) == survey);
}

TEST_CASE("a typed reading is kept with what was typed, saved and assessed at once", "[core]") {
    World world;
    world.act(OpenSheet{test::door_rise});
    REQUIRE(world.model.sheet);
    world.type("6");
    REQUIRE(world.effect<SaveDraft>());
    CHECK(world.effect<SaveDraft>()->path == "/crossings/0/rise");
    const auto version = world.model.version;
    world.act(SheetKeep{});
    CHECK_FALSE(world.model.sheet);
    const auto rise = read_number(world.model.visit->survey, test::door_rise);
    CHECK(rise->value == 6000000);
    CHECK(rise->as_entered == "6 mm");
    CHECK(rise->known == engine::Known::measured);
    CHECK(rise->tolerance == 500000);
    REQUIRE(world.effect<SaveEdit>());
    CHECK(world.effect<SaveEdit>()->changes.at(0).path == "/crossings/door/rise");
    REQUIRE(world.effect<Assess>());
    CHECK(world.effect<Assess>()->version == version + 1);
    REQUIRE(world.effect<SaveDraft>());
    CHECK(world.effect<SaveDraft>()->path.empty());
}

TEST_CASE("three quarters of an inch are typed with one key", "[core]") {
    World world;
    world.act(OpenSheet{test::plate_rise});
    world.act(SheetUnit{1});
    world.act(SheetFraction{12});
    world.act(SheetMethod{0});
    world.act(SheetKeep{});
    const auto rise = read_number(world.model.visit->survey, test::plate_rise);
    CHECK(rise->value == 19050000);
    CHECK(rise->as_entered == "3/4 in");
    CHECK(rise->tolerance == 800000);
    world.act(OpenSheet{test::plate_rise});
    CHECK(world.model.sheet->unit == 1);  // sticky for the kind of quantity
}

TEST_CASE("zero, not accessible and not yet read are three different things", "[core]") {
    World world;
    CHECK(read_number(world.model.visit->survey, test::plate_rise)->known == engine::Known::not_yet_read);
    world.act(OpenSheet{test::plate_rise});
    world.act(SheetNone{});
    world.act(SheetKeep{});
    CHECK(read_number(world.model.visit->survey, test::plate_rise)->value == 0);
    world.act(OpenSheet{test::plate_rise});
    world.act(SheetNotAccessible{});
    const auto rise = read_number(world.model.visit->survey, test::plate_rise);
    CHECK_FALSE(rise->value);
    CHECK(rise->known == engine::Known::not_accessible);
}

TEST_CASE("a value taken over from another place is marked copied", "[core]") {
    World world;
    world.act(OpenSheet{test::plate_rise});
    CHECK(same_as(world.model.visit->survey, test::plate_rise) == std::vector<engine::ReadingRef>{test::door_rise});
    world.act(SheetSameAs{test::door_rise});
    world.act(SheetKeep{});
    const auto rise = read_number(world.model.visit->survey, test::plate_rise);
    CHECK(rise->value == 19000000);
    CHECK(rise->known == engine::Known::copied);
    CHECK(rise->method == "Freezer door");
}

TEST_CASE("a second reading gives the middle and says when both disagree", "[core]") {
    World world;
    world.act(OpenSheet{test::plate_rise});
    world.type("19");
    world.act(SheetAgain{});
    CHECK(world.model.sheet->entry.empty());
    world.type("23");
    CHECK(disagrees(*world.model.sheet, world.data.entry));
    world.act(SheetKeep{});
    const auto rise = read_number(world.model.visit->survey, test::plate_rise);
    CHECK(rise->value == 21000000);
    CHECK(rise->tolerance == 2000000);
    CHECK(rise->as_entered == "19 mm; 23 mm");
}

TEST_CASE("an impossible value is not kept", "[core]") {
    World world;
    world.act(OpenSheet{test::door_rise});
    world.act(SheetSign{});
    world.type("19");
    world.act(SheetKeep{});
    CHECK(world.model.sheet);
    CHECK(read_number(world.model.visit->survey, test::door_rise)->value == 19000000);
}

TEST_CASE("Next opens the next reading that nobody has taken", "[core]") {
    World world;
    world.act(OpenSheet{test::door_rise});
    world.type("6");
    world.act(SheetKeep{true});
    REQUIRE(world.model.sheet);
    CHECK(world.model.sheet->ref.field == engine::Field::crossing_gap);
}

TEST_CASE("a draft brings the keys back after a restart", "[core]") {
    World world;
    world.act(OpenSheet{test::door_rise});
    world.act(SheetUnit{1});
    world.type("3");
    world.act(SheetFraction{6});
    const SaveDraft draft = *world.effect<SaveDraft>();
    World again;
    again.act(VisitLoaded{draft.survey_id, world.model.visit->entries, {}, draft.path, draft.text});
    REQUIRE(again.model.sheet);
    CHECK(again.model.sheet->ref == test::door_rise);
    CHECK(again.model.sheet->entry == world.model.sheet->entry);
    CHECK(again.model.sheet->unit == 1);
    again.act(VisitLoaded{draft.survey_id, world.model.visit->entries, {}, "/crossings/77/rise", draft.text});
    CHECK_FALSE(again.model.sheet);
    again.act(VisitLoaded{draft.survey_id, world.model.visit->entries, {}, draft.path, "rubbish"});
    CHECK(again.model.sheet->entry.empty());
}

TEST_CASE("a newer answer is never replaced by an older one", "[core]") {
    World world;
    auto newer = std::make_shared<Answer>();
    newer->version = 7;
    auto older = std::make_shared<Answer>();
    older->version = 6;
    world.act(AnswerReady{newer});
    world.act(AnswerReady{older});
    CHECK(world.model.answer == newer);
}

TEST_CASE("back closes what is open, then goes where we came from", "[core]") {
    World world;
    world.act(GoTo{{Screen::crossing, 0}});
    world.act(OpenSheet{test::door_rise});
    world.act(GoBack{});
    CHECK_FALSE(world.model.sheet);
    CHECK(world.model.spot == Spot{Screen::crossing, 0});
    world.act(GoBack{});
    CHECK(world.model.spot == Spot{Screen::route, 0});
    world.act(GoTo{{Screen::visits, 0}});
    CHECK_FALSE(world.model.visit);
}

namespace {

/// One random thing that a person may do to the document.
Action random_edit(std::mt19937& random) {
    const auto draw = [&](int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); };
    const auto index = static_cast<std::uint16_t>(draw(2));
    switch (draw(4)) {
        case 0:
            return Choose{{engine::Field::crossing_kind, index, 0}, draw(2) ? "sill" : "ramp", draw(2) == 0};
        case 1:
            return Choose{{engine::Field::room_wetness, index, 0}, draw(2) ? "wet" : "frost", false};
        case 2:
            return BuildAction{SetText{{TextField::room_name, index}, "Room " + std::to_string(draw(1000))}};
        default:
            return OpenSheet{{draw(2) ? engine::Field::crossing_rise : engine::Field::crossing_gap, index, 0}};
    }
}

}  // namespace

TEST_CASE("A13 undoing 500 commands and doing them again gives the same bytes", "[core][undo]") {
    World world;
    std::mt19937 random(500);
    const Entries before = world.model.visit->entries;
    std::vector<StoredEditRow> stored;
    const auto note = [&] {
        const SaveEdit* edit = world.effect<SaveEdit>();
        if (!edit) return;
        for (const Change& change : edit->changes) stored.push_back({edit->step, edit->kind, edit->label, change});
    };
    std::size_t commands = 0;
    while (commands < 500) {
        world.act(random_edit(random));
        if (world.model.sheet) {
            world.type(std::to_string(1 + random() % 60));
            world.act(SheetKeep{});
        }
        if (world.effect<SaveEdit>()) ++commands;
        note();
    }
    const Entries after = world.model.visit->entries;
    CHECK(after != before);
    for (std::size_t i = 0; i < 500; ++i) {
        world.act(Undo{});
        note();
    }
    CHECK(world.model.visit->entries == before);
    CHECK_FALSE(world.model.visit->journal.can_undo());
    CHECK(put_together(world.model.visit->entries) == put_together(before));
    for (std::size_t i = 0; i < 250; ++i) {
        world.act(Redo{});
        note();
    }
    // A restart in the middle: the journal is rebuilt from the stored rows.
    World again;
    again.act(VisitLoaded{world.model.visit->id.text(), world.model.visit->entries, stored, "", ""});
    CHECK(again.model.visit->journal == world.model.visit->journal);
    for (std::size_t i = 0; i < 250; ++i) again.act(Redo{});
    CHECK(again.model.visit->entries == after);
    CHECK_FALSE(again.model.visit->journal.can_redo());
    CHECK(survey_of(after) == again.model.visit->survey);
}
