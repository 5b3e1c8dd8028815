#include "engine/select/assess.hpp"
#include "engine/select/conditions.hpp"
#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

struct Case {
    Survey survey = plain_survey();
    Tables tables = plain_tables();
    Catalogue catalogue = plain_catalogue();
    Preparation preparation = Preparation::as_supplied;

    [[nodiscard]] std::vector<Condition> conditions() const {
        const Advice advice = assess(survey, catalogue, tables, {100, 0, 0});
        for (const RankedCandidate& ranked : advice.carts[0].ranked) {
            if (ranked.candidate.preparation == preparation) {
                return conditions_of(survey, catalogue, tables, 0, ranked);
            }
        }
        FAIL("no candidate with that preparation is ranked");
        return {};
    }
};

const Condition* find(const std::vector<Condition>& conditions, ConditionKind kind) {
    for (const Condition& condition : conditions) {
        if (condition.kind == kind) return &condition;
    }
    return nullptr;
}

double amount_of(const std::vector<Condition>& conditions, ConditionKind kind) {
    const Condition* condition = find(conditions, kind);
    REQUIRE(condition != nullptr);
    REQUIRE(condition->amounts.size() >= 1);
    return condition->amounts[0].si;
}

}  // namespace

TEST_CASE("conditions: what the cart was judged for and what its parts are rated for", "[conditions]") {
    Case plain;
    plain.catalogue.bearings[0].temperature_max = celsius(60.0);
    plain.catalogue.rigs[0].temperature_min = celsius(-20.0);
    const auto conditions = plain.conditions();
    CHECK(amount_of(conditions, ConditionKind::payload) == Approx(240.0));
    CHECK(amount_of(conditions, ConditionKind::speed) == Approx(4.0 / 3.6));  // test speed of its class
    CHECK(amount_of(conditions, ConditionKind::parked) == Approx(14.0 * 86400.0));
    const Condition* range = find(conditions, ConditionKind::temperature_range);
    REQUIRE(range != nullptr);
    REQUIRE(range->amounts.size() == 2);
    CHECK(range->amounts[0].si == Approx(253.15));  // the rig's, higher than the wheel's -40 F
    CHECK(range->amounts[1].si == Approx(333.15));  // the bearing's, lower than the wheel's 180 F
    for (const ConditionKind absent : {ConditionKind::no_blows_below, ConditionKind::cross_rolling,
                                       ConditionKind::assess_team, ConditionKind::degreased}) {
        CHECK(find(conditions, absent) == nullptr);
    }
}

TEST_CASE("conditions: the wheel's own speed and a longer stand", "[conditions]") {
    Case plain;
    plain.catalogue.wheels[0].rated_speed = 2.0 * metre_per_second;
    plain.survey.carts[0].parked_loaded = measured(21.0 * day);
    const auto conditions = plain.conditions();
    CHECK(amount_of(conditions, ConditionKind::speed) == Approx(2.0));
    CHECK(amount_of(conditions, ConditionKind::parked) == Approx(21.0 * 86400.0));
}

TEST_CASE("conditions: an edge on the route asks for no blows below the impact floor", "[conditions]") {
    Case plain;
    plain.survey.crossings[0].rise = measured(1.0 * millimetre);
    const auto conditions = plain.conditions();
    CHECK(amount_of(conditions, ConditionKind::no_blows_below) == Approx(fahrenheit(-20.0).kelvin()));
}

TEST_CASE("conditions: cross it rolling, at each crossing that asks for it", "[conditions]") {
    Case plain;
    plain.survey.carts[0].payload = measured(400.0 * kilogram);
    plain.survey.crossings[0].rise = measured(4.0 * millimetre);
    const auto conditions = plain.conditions();
    const Condition* rolling = find(conditions, ConditionKind::cross_rolling);
    REQUIRE(rolling != nullptr);
    CHECK(rolling->place == Place{PlaceKind::crossing, 0});
    const auto count = std::count_if(conditions.begin(), conditions.end(), [](const Condition& condition) {
        return condition.kind == ConditionKind::cross_rolling;
    });
    CHECK(count == 1);  // passed twice, told once
}

TEST_CASE("conditions: a team's push is assessed on site", "[conditions]") {
    Case plain;
    plain.survey.carts[0].people = measured(2.0);
    const auto conditions = plain.conditions();
    const Condition* team = find(conditions, ConditionKind::assess_team);
    REQUIRE(team != nullptr);
    CHECK(team->place.kind == PlaceKind::none);
}

TEST_CASE("conditions: the preparation goes on the specification", "[conditions]") {
    Case plain;
    plain.preparation = Preparation::degreased;
    CHECK(find(plain.conditions(), ConditionKind::degreased) != nullptr);
    plain.preparation = Preparation::h1_lubricated;
    CHECK(find(plain.conditions(), ConditionKind::h1_lubricant) != nullptr);
    CHECK(find(plain.conditions(), ConditionKind::degreased) == nullptr);
}

TEST_CASE("conditions: tight, turning and assumed checks are named", "[conditions]") {
    Case plain;
    plain.survey.carts[0].payload = within(240.0 * kilogram, 30.0 * kilogram);
    plain.survey.carts[0].payload.known = Known::assumed;
    plain.catalogue.wheels[0].rated_load = 135.0 * kilogram;  // 112.5 of 135 kg holds; 123.75 of 135 kg is tight
    const auto conditions = plain.conditions();
    const Condition* tight = find(conditions, ConditionKind::tight);
    REQUIRE(tight != nullptr);
    CHECK(tight->check == CheckId::load);
    CHECK(tight->amounts[0].si == Approx(330.0 / 4.0 * 1.5 / 135.0));
    const Condition* again = find(conditions, ConditionKind::read_again);
    REQUIRE(again != nullptr);
    CHECK(again->check == CheckId::load);
    CHECK(again->reading == ReadingRef{Field::cart_payload, 0, 0});
    const Condition* assumed = find(conditions, ConditionKind::assumed_readings);
    REQUIRE(assumed != nullptr);
    CHECK(assumed->reading == ReadingRef{Field::cart_payload, 0, 0});
    CHECK(std::count_if(conditions.begin(), conditions.end(), [](const Condition& condition) {
              return condition.kind == ConditionKind::assumed_readings;
          }) == 1);
}
