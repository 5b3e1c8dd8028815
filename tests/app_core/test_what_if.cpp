#include "app/core/reading_access.hpp"
#include "app/core/what_if.hpp"
#include "tests/app_core/world.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using engine::Field;
using engine::Known;
using engine::ReadingRef;
using test::door_rise;
using test::World;

namespace {

constexpr ReadingRef payload{Field::cart_payload, 0, 0};
constexpr std::int64_t mm = 1000000;

/// The small visit with a way from the freezer through the door, and a load.
engine::Survey walked_survey() {
    engine::Survey survey = test::small_survey();
    engine::Cart& cart = survey.carts[0];
    cart.payload = engine::measured(240.0 * engine::kilogram, 2.0 * engine::kilogram);
    cart.route = {{survey.rooms[0].id, engine::measured(30.0 * engine::minute), true, survey.crossings[0].id},
                  {survey.rooms[1].id, {}, false, std::nullopt}};
    return survey;
}

const app::WhatIfRange* range_for(const std::vector<app::WhatIfRange>& ranges, Field field) {
    for (const app::WhatIfRange& range : ranges) {
        if (range.ref.field == field) return &range;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("payload, rise, gap, minutes and speed can be tried at a crossing of the route", "[app][what_if]") {
    const World world(walked_survey());
    const auto& survey = world.model.visit->survey;
    const auto ranges = app::what_if_ranges(survey, world.data.entry, 0, 0, world.model.settings.unit);
    for (const Field field :
         {Field::crossing_rise, Field::crossing_gap, Field::cart_payload, Field::cart_speed, Field::cart_stay}) {
        INFO(static_cast<int>(field));
        const app::WhatIfRange* range = range_for(ranges, field);
        REQUIRE(range);
        CHECK(range->least < range->most);
        CHECK((range->most - range->least) / range->step <= 150);
        const auto now = app::read_number(survey, range->ref);
        REQUIRE(now);
        if (!now->value) continue;
        CHECK(*now->value >= range->least);
        CHECK(*now->value <= range->most);
    }
    CHECK(range_for(ranges, Field::crossing_rise)->least == 0);
    CHECK(range_for(ranges, Field::crossing_rise)->step == mm);
    // The second crossing is not on the route: no room lies before it.
    const auto off = app::what_if_ranges(survey, world.data.entry, 0, 1, world.model.settings.unit);
    CHECK_FALSE(range_for(off, Field::cart_stay));
    CHECK(app::crossings_of(survey, 0) == std::vector<std::uint16_t>{0});
}

TEST_CASE("a tried value goes to the nearest step and never out of the range", "[app][what_if]") {
    const app::WhatIfRange range{door_rise, app::QuantityKind::small_length, 0, 40 * mm, mm};
    CHECK(app::snapped(range, 6400000) == 6 * mm);
    CHECK(app::snapped(range, 6600000) == 7 * mm);
    CHECK(app::snapped(range, -5 * mm) == 0);
    CHECK(app::snapped(range, 90 * mm) == 40 * mm);
}

TEST_CASE("what is tried is answered and never written", "[app][what_if]") {
    World world(walked_survey());
    const app::Entries before = world.model.visit->entries;
    const std::uint64_t version = world.model.version;
    world.act(app::WhatIfSet{door_rise, 6 * mm});
    REQUIRE(world.model.what_if);
    CHECK(world.effect<app::AssessWhatIf>());
    CHECK_FALSE(world.effect<app::SaveEdit>());
    CHECK(world.model.visit->entries == before);
    CHECK(world.model.version == version);
    CHECK_FALSE(world.model.visit->journal.can_undo());
    const auto tried = app::read_number(world.model.what_if->survey, door_rise);
    REQUIRE(tried);
    CHECK(tried->value == 6 * mm);
    // Only the value moves: how far it may be off, and how it was read, stay as they are.
    CHECK(tried->tolerance == mm);
    CHECK(tried->known == Known::measured);

    world.act(app::WhatIfSet{door_rise, 19 * mm});
    CHECK_FALSE(world.model.what_if);
}

TEST_CASE("taking over makes one undoable edit for each changed reading", "[app][what_if]") {
    World world(walked_survey());
    world.act(app::WhatIfSet{door_rise, 6 * mm});
    world.act(app::WhatIfSet{payload, 200000});
    world.act(app::WhatIfTakeOver{});
    CHECK_FALSE(world.model.what_if);
    REQUIRE(world.model.visit->journal.done().size() == 2);
    const auto rise = app::read_number(world.model.visit->survey, door_rise);
    CHECK(rise->value == 6 * mm);
    CHECK(rise->known == Known::assumed);  // nobody has measured it
    CHECK(app::read_number(world.model.visit->survey, payload)->value == 200000);
    world.act(app::Undo{});
    CHECK(app::read_number(world.model.visit->survey, payload)->value == 240000);
    CHECK(app::read_number(world.model.visit->survey, door_rise)->value == 6 * mm);
    world.act(app::Undo{});
    CHECK(app::read_number(world.model.visit->survey, door_rise)->value == 19 * mm);
    CHECK(app::read_number(world.model.visit->survey, door_rise)->known == Known::measured);
}

TEST_CASE("a reading that was never taken can be tried, and counts as assumed", "[app][what_if]") {
    World world(walked_survey());
    const ReadingRef gap{Field::crossing_gap, 0, 0};
    world.act(app::WhatIfSet{gap, 30 * mm});
    const auto tried = app::read_number(world.model.what_if->survey, gap);
    CHECK(tried->value == 30 * mm);
    CHECK(tried->known == Known::assumed);
    CHECK_FALSE(app::read_number(world.model.visit->survey, gap)->value);
}

TEST_CASE("a new reading ends the trial, and a late answer to it is not shown", "[app][what_if]") {
    World world(walked_survey());
    world.act(app::WhatIfSet{door_rise, 6 * mm});
    const std::uint64_t asked = world.effect<app::AssessWhatIf>()->version;
    world.act(app::OpenSheet{payload});
    world.type("200");
    world.act(app::SheetKeep{});
    CHECK_FALSE(world.model.what_if);
    world.act(app::WhatIfSet{door_rise, 8 * mm});
    auto late = std::make_shared<app::Answer>();
    late->version = asked;
    world.act(app::WhatIfAnswered{late});
    CHECK_FALSE(world.model.what_if_answer);
    auto fresh = std::make_shared<app::Answer>();
    fresh->version = world.model.what_if->version;
    world.act(app::WhatIfAnswered{fresh});
    CHECK(world.model.what_if_answer == fresh);
}

TEST_CASE("a what-if belongs to the cart it was begun for", "[app][what_if]") {
    engine::Survey survey = walked_survey();
    survey.carts.push_back(survey.carts[0]);
    survey.carts[1].id = engine::CartId("other");
    World world(survey);
    world.act(app::WhatIfSet{door_rise, 6 * mm});
    CHECK(app::what_if_in_hand(world.model));
    world.act(app::SelectCart{1});
    CHECK_FALSE(app::what_if_in_hand(world.model));
    world.act(app::WhatIfSet{payload, 100000});
    REQUIRE(app::what_if_in_hand(world.model));
    CHECK(world.model.what_if->changes.size() == 1);
}

TEST_CASE("damage that is seen is toggled, and each tap can be undone", "[app][damage]") {
    World world(walked_survey());
    const auto cart = [&]() -> const engine::Cart& { return world.model.visit->survey.carts[0]; };
    world.act(app::ToggleDamage{0, engine::DamageKind::chunks});
    REQUIRE(cart().damage.size() == 1);
    CHECK(cart().damage[0].kind == engine::DamageKind::chunks);
    world.act(app::ToggleDamage{0, engine::DamageKind::rust});
    CHECK(cart().damage.size() == 2);
    world.act(app::ToggleDamage{0, engine::DamageKind::chunks});
    REQUIRE(cart().damage.size() == 1);
    CHECK(cart().damage[0].kind == engine::DamageKind::rust);
    world.act(app::Undo{});
    CHECK(cart().damage.size() == 2);
    world.act(app::ToggleDamage{7, engine::DamageKind::rust});
    CHECK(cart().damage.size() == 2);
}

TEST_CASE("the present wheel is chosen by eye", "[app][damage]") {
    World world(walked_survey());
    world.act(app::SetPresent{0, 0, "some-wheel"});
    const auto& wheel = world.model.visit->survey.carts[0].present_wheel;
    CHECK(wheel.value == "some-wheel");
    CHECK(wheel.known == Known::by_eye);
    CHECK(world.effect<app::SaveEdit>());
}
