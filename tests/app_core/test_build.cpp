// A visit built by hand: every action is one undoable edit.
#include "app/core/open_readings.hpp"
#include "tests/app_core/world.hpp"

#include <catch2/catch.hpp>

#include <random>
#include <set>

using namespace sillwalk;
using namespace sillwalk::app;
using test::World;

namespace {

void build(World& world, BuildAction action) {
    world.act(Action(std::move(action)));
}
const engine::Survey& survey_of_world(const World& world) {
    return world.model.visit->survey;
}

/// One random thing that a person may do while building a visit; it need not be possible.
BuildAction random_build(std::mt19937& random) {
    const auto draw = [&](int below) { return static_cast<std::uint16_t>(random() % static_cast<unsigned>(below)); };
    const auto part = static_cast<Part>(draw(4));
    const std::uint16_t index = draw(5);
    const std::uint16_t other = draw(5);
    switch (draw(20)) {
        case 0:
            return AddRoom{draw(2) ? "Freezer" : "Dock"};
        case 1:
            return AddCart{"Tray rack"};
        case 2:
            return AddWashing{"Foam", other};
        case 3:
        case 4:
            return AddCrossing{index, other};
        case 5:
            return DuplicatePart{part, index};
        case 6:
        case 16:
        case 17:
        case 18:
        case 19:  // as many taken away as added, or the visit would only grow
            return DeletePart{part, index};
        case 7:
            return MovePart{part, index, draw(2) ? 1 : -1};
        case 8:
            return SetCrossingEnd{index, draw(2) == 0, other};
        case 9:
            return TurnCrossing{index};
        case 10:
            return ToggleWashedRoom{index, other};
        case 11:
        case 12:
            return AppendStop{draw(3), other};
        case 13:
            return RemoveStop{draw(3), other};
        case 14:
            return CreateStopCrossing{draw(3), other};
        default:
            return SetText{{static_cast<TextField>(draw(12)), index}, "Text " + std::to_string(draw(1000))};
    }
}

/// References that lead nowhere would make the engine refuse the whole survey.
void check_whole(const engine::Survey& survey) {
    std::set<std::string> rooms;
    for (const engine::Room& room : survey.rooms) CHECK(rooms.insert(room.id.text()).second);
    const auto known = [&](const engine::RoomId& id) { return rooms.count(id.text()) == 1; };
    for (const engine::Crossing& crossing : survey.crossings) CHECK((known(crossing.from) && known(crossing.to)));
    for (const engine::Washing& washing : survey.washings) {
        CHECK_FALSE(washing.rooms.empty());
        for (const engine::RoomId& room : washing.rooms) CHECK(known(room));
    }
    for (const engine::Cart& cart : survey.carts) {
        for (std::size_t i = 0; i < cart.route.size(); ++i) {
            CHECK(known(cart.route[i].room));
            if (!cart.route[i].leaves_by) continue;
            const auto ways =
                crossings_between(survey, cart.route[i].room, cart.route[(i + 1) % cart.route.size()].room);
            const bool leads_on = std::any_of(ways.begin(), ways.end(), [&](std::uint16_t way) {
                return survey.crossings[way].id == *cart.route[i].leaves_by;
            });
            CHECK(leads_on);
        }
    }
}

}  // namespace

TEST_CASE("A13 a visit built by 500 random commands: undo all and redo all give the same bytes", "[core][undo]") {
    World world;
    std::mt19937 random(13);
    const Entries before = world.model.visit->entries;
    std::vector<StoredEditRow> stored;
    const auto note = [&] {
        const SaveEdit* edit = world.effect<SaveEdit>();
        if (!edit) return;
        for (const Change& change : edit->changes) stored.push_back({edit->step, edit->kind, edit->label, change});
    };
    std::size_t commands = 0;
    while (commands < 500) {
        build(world, random_build(random));
        if (!world.effect<SaveEdit>()) continue;
        ++commands;
        note();
        if (commands % 25 == 0) check_whole(survey_of_world(world));
    }
    const Entries after = world.model.visit->entries;
    CHECK(after != before);
    for (std::size_t i = 0; i < 500; ++i) {
        world.act(Undo{});
        note();
    }
    CHECK(world.model.visit->entries == before);
    CHECK(put_together(world.model.visit->entries) == put_together(before));
    CHECK_FALSE(world.model.visit->journal.can_undo());
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
}

TEST_CASE("a new visit is stored at once, empty and open; its site names it in the list", "[core][build]") {
    World world;
    const std::string old_id = world.model.visit->id.text();
    build(world, NewVisit{});
    REQUIRE(world.effect<SaveVisit>());
    const SaveVisit saved = *world.effect<SaveVisit>();
    CHECK(saved.survey_id != old_id);
    CHECK(saved.survey_id == world.model.visit->id.text());
    CHECK(survey_of(saved.entries) == survey_of_world(world));
    CHECK(survey_of_world(world).rooms.empty());
    CHECK(survey_of_world(world).made_ms == saved.at_ms);
    CHECK(world.model.spot == Spot{Screen::about, 0});
    CHECK_FALSE(world.model.visit->journal.can_undo());
    build(world, SetText{{TextField::site, 0}, "  Plant 7 "});
    REQUIRE(world.effect<SaveEdit>());
    CHECK(world.effect<SaveEdit>()->title == "Plant 7");
    build(world, NewVisit{});
    CHECK(world.effect<SaveVisit>()->survey_id != saved.survey_id);
}

TEST_CASE("a follow-up has the same readings under another id and no history", "[core][build]") {
    World world;
    build(world, CopyVisit{"01900000-0000-7000-8000-000000000001"});
    REQUIRE(world.effect<LoadVisit>());
    CHECK(world.effect<LoadVisit>()->follow_up);
    engine::Survey before = survey_of_world(world);
    before.revision = 3;
    world.act(VisitLoaded{before.id.text(), entries_of(before), {}, "", "", true});
    REQUIRE(world.effect<SaveVisit>());
    engine::Survey copy = survey_of_world(world);
    CHECK(copy.id.text() == world.effect<SaveVisit>()->survey_id);
    CHECK_FALSE(copy.id == before.id);
    CHECK(copy.revision == 0);
    CHECK_FALSE(world.model.visit->journal.can_undo());
    copy.id = before.id;
    copy.revision = before.revision;
    copy.made_ms = before.made_ms;
    CHECK(copy == before);
}

TEST_CASE("a text that was being typed when the power went is kept", "[core][build]") {
    World world;
    build(world, TypeText{{TextField::room_name, 1}, "Loading do"});
    REQUIRE(world.effect<SaveDraft>());
    const SaveDraft draft = *world.effect<SaveDraft>();
    CHECK(draft.path == "/rooms/dock/name");
    CHECK(survey_of_world(world).rooms[1].name == "Dock");
    World again;
    again.act(VisitLoaded{draft.survey_id, world.model.visit->entries, {}, draft.path, draft.text});
    CHECK(survey_of_world(again).rooms[1].name == "Loading do");
    CHECK(again.model.visit->journal.can_undo());
    build(again, SetText{{TextField::room_name, 1}, "   "});  // a room keeps a name
    CHECK(survey_of_world(again).rooms[1].name == "Loading do");
}

TEST_CASE("tapping rooms makes the route; the only crossing between two rooms is taken", "[core][route]") {
    World world;
    build(world, DeletePart{Part::crossing, 1});
    build(world, AppendStop{0, 0});
    build(world, AppendStop{0, 1});
    build(world, AppendStop{0, 0});  // back over the same crossing: a loop
    const auto* route = &survey_of_world(world).carts[0].route;
    REQUIRE(route->size() == 3);
    CHECK((*route)[0].leaves_by == engine::CrossingId("door"));
    CHECK((*route)[1].leaves_by == engine::CrossingId("door"));
    CHECK_FALSE((*route)[2].leaves_by);
    CHECK_FALSE(world.model.pick);
    build(world, SetStopLoaded{0, 2, false});
    build(world, AppendStop{0, 1});
    route = &survey_of_world(world).carts[0].route;
    CHECK_FALSE(route->back().loaded);  // as the stop before
    world.act(Undo{});
    world.act(Undo{});
    CHECK(survey_of_world(world).carts[0].route.size() == 3);
    build(world, RemoveStop{0, 2});
    route = &survey_of_world(world).carts[0].route;
    REQUIRE(route->size() == 2);
    CHECK_FALSE(route->back().leaves_by);  // the way on is no way back
    CHECK(route->front().leaves_by == engine::CrossingId("door"));
}

TEST_CASE("where several crossings lead to the next room the person is asked", "[core][route]") {
    World world;
    build(world, AppendStop{0, 0});
    build(world, AppendStop{0, 1});
    REQUIRE(world.model.pick);
    CHECK(*world.model.pick == Pick{PickKind::stop_crossing, 0, 0});
    CHECK_FALSE(survey_of_world(world).carts[0].route[0].leaves_by);
    build(world, SetStopCrossing{0, 0, std::uint16_t{1}});
    CHECK_FALSE(world.model.pick);
    CHECK(survey_of_world(world).carts[0].route[0].leaves_by == engine::CrossingId("plate"));
    build(world, SetStopCrossing{0, 1, std::uint16_t{0}});
    CHECK(survey_of_world(world).carts[0].route[1].leaves_by == engine::CrossingId("door"));  // the way back
    build(world, DeletePart{Part::crossing, 1});
    CHECK(survey_of_world(world).carts[0].route[0].leaves_by == engine::CrossingId("door"));  // the only one now
}

TEST_CASE("where no crossing leads to the next room one is made in one edit", "[core][route]") {
    World world;
    build(world, AddRoom{"Dock"});
    REQUIRE(survey_of_world(world).rooms.size() == 3);
    CHECK(survey_of_world(world).rooms[2].name == "Dock 2");
    build(world, AppendStop{0, 1});
    build(world, AppendStop{0, 2});
    CHECK_FALSE(survey_of_world(world).carts[0].route[0].leaves_by);
    CHECK_FALSE(world.model.pick);
    build(world, CreateStopCrossing{0, 0});
    const engine::Survey& survey = survey_of_world(world);
    REQUIRE(survey.crossings.size() == 3);
    CHECK(survey.crossings[2].name == "Dock \u2013 Dock 2");
    CHECK(survey.carts[0].route[0].leaves_by == survey.crossings[2].id);
    CHECK(survey.crossings[2].rise.known == engine::Known::not_yet_read);
    world.act(Undo{});
    CHECK(survey_of_world(world).crossings.size() == 2);
    CHECK_FALSE(survey_of_world(world).carts[0].route[0].leaves_by);
}

TEST_CASE("a room that goes takes with it what hangs on it, and comes back whole", "[core][build]") {
    World world;
    build(world, AddWashing{"Foam", 0});
    CHECK(world.model.spot == Spot{Screen::washing_step, 0});
    build(world, AppendStop{0, 0});
    build(world, AppendStop{0, 1});
    build(world, SetStopCrossing{0, 0, std::uint16_t{0}});
    const Entries before = world.model.visit->entries;
    world.act(GoTo{{Screen::room, 0}});
    build(world, DeletePart{Part::room, 0});
    const engine::Survey& survey = survey_of_world(world);
    CHECK(survey.rooms.size() == 1);
    CHECK(survey.crossings.empty());
    CHECK(survey.washings.empty());
    REQUIRE(survey.carts[0].route.size() == 1);
    CHECK_FALSE(survey.carts[0].route[0].leaves_by);
    REQUIRE(world.model.toast);
    CHECK(world.model.toast->undo);
    CHECK(world.model.toast->arguments == std::vector<std::string>{"Holding freezer"});
    CHECK(world.model.spot.screen == Screen::washing);  // the washing it was opened from is gone too
    world.act(Undo{});
    CHECK(world.model.visit->entries == before);
}

TEST_CASE("a copy keeps its readings, and what is moved stays on the screen", "[core][build]") {
    World world;
    world.act(GoTo{{Screen::crossing, 0}});
    build(world, DuplicatePart{Part::crossing, 0});
    const engine::Survey& survey = survey_of_world(world);
    REQUIRE(survey.crossings.size() == 3);
    CHECK(survey.crossings[1].name == "Freezer door 2");
    CHECK(survey.crossings[1].rise == survey.crossings[0].rise);
    CHECK_FALSE(survey.crossings[1].id == survey.crossings[0].id);
    CHECK(world.model.spot == Spot{Screen::crossing, 1});
    build(world, MovePart{Part::crossing, 1, 1});
    CHECK(world.model.spot == Spot{Screen::crossing, 2});
    CHECK(survey_of_world(world).crossings[2].name == "Freezer door 2");
    build(world, MovePart{Part::crossing, 2, 1});  // there is nothing further down
    CHECK_FALSE(world.effect<SaveEdit>());
}

TEST_CASE("an answer that counts other carts is not shown", "[core][build]") {
    World world;
    build(world, AddCart{"Tote dolly"});
    CHECK(world.model.spot == Spot{Screen::cart, 1});
    CHECK(world.model.cart == 1);
    auto answer = std::make_shared<Answer>();
    answer->version = world.model.version;
    world.act(AnswerReady{answer});
    REQUIRE(world.model.answer);
    build(world, DeletePart{Part::cart, 0});
    CHECK_FALSE(world.model.answer);
    CHECK(world.model.cart == 0);
    REQUIRE(world.effect<Assess>());
}

TEST_CASE("castors stand where both distances say, and are kept only when both are known", "[core][castors]") {
    World world;
    build(world, OpenCastors{0});
    world.act(OpenSheet{wheelbase_ref(0)});
    REQUIRE(world.model.sheet);
    world.type("850");
    world.act(SheetKeep{true});
    CHECK(survey_of_world(world).carts[0].castors.empty());
    REQUIRE(world.model.sheet);
    CHECK(world.model.sheet->ref == track_ref(0));
    world.type("600");
    world.act(SheetKeep{});
    REQUIRE(world.effect<SaveEdit>());
    using namespace engine;
    const std::vector<CastorPosition> four = {{0.0 * millimetre, 300.0 * millimetre, CastorFunction::rigid},
                                              {0.0 * millimetre, -300.0 * millimetre, CastorFunction::rigid},
                                              {850.0 * millimetre, 300.0 * millimetre, CastorFunction::swivel},
                                              {850.0 * millimetre, -300.0 * millimetre, CastorFunction::swivel}};
    CHECK(survey_of_world(world).carts[0].castors == four);
    CHECK(read_number(survey_of_world(world), wheelbase_ref(0))->value == 850000000);
    world.act(OpenSheet{track_ref(0)});
    world.type("500");
    world.act(SheetKeep{});
    CHECK(survey_of_world(world).carts[0].castors[3].across == -250.0 * millimetre);
    CHECK(survey_of_world(world).carts[0].castors[3].forward == 850.0 * millimetre);
    build(world, TurnCastorFunction{0, 0});
    CHECK(survey_of_world(world).carts[0].castors[0].function == CastorFunction::total_lock);
    build(world, SetCastorCount{6});
    CHECK(survey_of_world(world).carts[0].castors.size() == 6);
    world.act(OpenSheet{track_ref(0)});
    world.act(SheetNone{});
    world.act(SheetKeep{});
    CHECK(world.model.sheet);  // no distance at all cannot be
}

TEST_CASE("a distance of the castors that was being typed comes back after a restart", "[core][castors]") {
    World world;
    world.act(OpenSheet{wheelbase_ref(0)});
    world.type("85");
    const SaveDraft draft = *world.effect<SaveDraft>();
    World again;
    again.act(VisitLoaded{draft.survey_id, world.model.visit->entries, {}, draft.path, draft.text});
    REQUIRE(again.model.sheet);
    CHECK(again.model.sheet->ref == wheelbase_ref(0));
    CHECK(again.model.sheet->entry.digits == "85");
}

TEST_CASE("open readings: those that most checks wait for come first", "[core][open]") {
    using engine::CheckId;
    using engine::Field;
    const engine::ReadingRef rise{Field::crossing_rise, 0, 0}, tare{Field::cart_tare, 0, 0}, air{Field::room_air, 0, 0};
    engine::CartAdvice advice;
    advice.not_read = {rise, air, tare};
    advice.nearest = engine::RankedCandidate{};
    const auto waiting = [&](CheckId check, std::initializer_list<engine::ReadingRef> refs) {
        engine::Finding finding;
        finding.check = check;
        finding.outcome = engine::Outcome::not_known;
        for (const engine::ReadingRef& ref : refs) finding.missing.add(ref);
        advice.nearest->findings.push_back(finding);
    };
    waiting(CheckId::load, {tare});
    waiting(CheckId::push, {tare, rise});
    waiting(CheckId::cold, {air});
    const auto open = open_readings(advice);
    REQUIRE(open.size() == 3);
    CHECK(open[0].ref == tare);
    CHECK(open[0].checks == std::vector<CheckId>{CheckId::load, CheckId::push});
    CHECK(open[1].ref == rise);
    CHECK(open[2].ref == air);
    // Where the doubt was worked out it decides.
    engine::ReadAgain again;
    again.readings = {{air, true, 0, 1, 0.8}, {tare, true, 0, 1, 0.1}};
    advice.read_again = again;
    CHECK(open_readings(advice)[0].ref == air);
    CHECK(std::holds_alternative<OpenSheet>(action_for(rise)));
    CHECK(std::holds_alternative<OpenChoice>(action_for({Field::room_floor, 0, 0})));
    CHECK(std::holds_alternative<GoTo>(action_for({Field::cart_route, 0, 0})));
    CHECK(std::holds_alternative<BuildAction>(action_for({Field::cart_castors, 0, 0})));
}
