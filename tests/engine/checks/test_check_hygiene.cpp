#include "rule_case.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

void put_in(RuleCase& given, HygieneZone zone) {
    given.cart.stops[1].hygiene = choose(zone, Field::room_hygiene, 1);
}

struct FeatureCase {
    const char* name;
    void (*set)(RuleCase&);
    HygieneFeature feature;
    Outcome non_food, splash, food;
};

// Scores: our judgement. Threads: none in food or splash areas, a few allowed outside them (NSF/ANSI 18:2016 5.5.5);
// hollow sections sealed or avoided (ISO 14159, from memory).
const FeatureCase cases[] = {
    {"closed", [](RuleCase&) {}, HygieneFeature::closed, Outcome::holds, Outcome::holds, Outcome::holds},
    {"open hub", [](RuleCase& c) { c.wheel.hygiene.open_hub = true; }, HygieneFeature::open_hub, Outcome::tight,
     Outcome::fails, Outcome::fails},
    {"spoked", [](RuleCase& c) { c.wheel.hygiene.spoked = true; }, HygieneFeature::spoked_core, Outcome::tight,
     Outcome::fails, Outcome::fails},
    {"tread joint", [](RuleCase& c) { c.wheel.hygiene.visible_tread_joint = true; },
     HygieneFeature::visible_tread_joint, Outcome::holds, Outcome::holds, Outcome::tight},
    {"thread guard", [](RuleCase& c) { c.wheel.hygiene.thread_guard = true; }, HygieneFeature::thread_guard,
     Outcome::holds, Outcome::tight, Outcome::fails},
    {"threads", [](RuleCase& c) { c.rig.exposed_threads = true; }, HygieneFeature::exposed_threads, Outcome::tight,
     Outcome::fails, Outcome::fails},
    {"hollow back", [](RuleCase& c) { c.rig.hollow_back = true; }, HygieneFeature::hollow_back, Outcome::tight,
     Outcome::fails, Outcome::fails},
};

}  // namespace

TEST_CASE("each feature is held against the area", "[engine][hygiene][published]") {
    for (const FeatureCase& feature : cases) {
        DYNAMIC_SECTION(feature.name) {
            RuleCase given;
            feature.set(given);
            put_in(given, HygieneZone::non_food);
            CHECK(given.run(check_hygiene).outcome == feature.non_food);
            put_in(given, HygieneZone::splash);
            CHECK(given.run(check_hygiene).outcome == feature.splash);
            put_in(given, HygieneZone::food);
            const Finding finding = given.run(check_hygiene);
            CHECK(finding.outcome == feature.food);
            CHECK(finding.place == Place{PlaceKind::room, 1});
            if (feature.feature == HygieneFeature::closed) {
                CHECK(finding.statement == Statement::hygiene_clean);
            } else {
                CHECK(finding.statement == Statement::hygiene_crevice);
                CHECK(finding.numbers[0].si == static_cast<double>(feature.feature));
            }
        }
    }
}

TEST_CASE("exposed grease is put right by the preparation", "[engine][hygiene][practice]") {
    RuleCase given;
    given.bearing.sealed = false;
    given.bearing.grease_exposed = true;
    given.bearing.grease = "general";
    put_in(given, HygieneZone::splash);
    CHECK(given.run(check_hygiene).outcome == Outcome::fails);
    given.preparation = Preparation::h1_lubricated;
    CHECK(given.run(check_hygiene).outcome == Outcome::holds);
    given.preparation = Preparation::degreased;
    CHECK(given.run(check_hygiene).statement == Statement::hygiene_clean);
    given.bearing.sealed = true;  // nothing reaches the grease inside a seal
    CHECK(given.run(check_hygiene).outcome == Outcome::fails);
}

TEST_CASE("the area and the grease must be known", "[engine][hygiene]") {
    RuleCase given;
    const Finding none = given.run(check_hygiene);
    CHECK(none.outcome == Outcome::does_not_apply);
    CHECK(none.statement == Statement::hygiene_no_rule);
    given.cart.stops[0].hygiene = unchosen<HygieneZone>(Field::room_hygiene, 0);
    const Finding unread_area = given.run(check_hygiene);
    CHECK(unread_area.outcome == Outcome::not_known);
    CHECK(misses(unread_area, Field::room_hygiene));
    put_in(given, HygieneZone::splash);
    given.cart.stops[0].hygiene = choose(HygieneZone::none, Field::room_hygiene, 0);
    given.bearing.grease.clear();
    CHECK(given.run(check_hygiene).outcome == Outcome::not_known);
    given.bearing.grease = "H1";
    given.tables.hygiene.clear();
    CHECK(given.run(check_hygiene).outcome == Outcome::not_known);
}

TEST_CASE("a stricter area or another feature never improves hygiene", "[engine][hygiene][property]") {
    for (const FeatureCase& first : cases) {
        for (const FeatureCase& second : cases) {
            RuleCase given;
            first.set(given);
            put_in(given, HygieneZone::splash);
            const Finding alone = given.run(check_hygiene);
            second.set(given);
            const Finding both = given.run(check_hygiene);
            CHECK(no_better(both, alone));
            put_in(given, HygieneZone::food);
            CHECK(no_better(given.run(check_hygiene), both));
        }
    }
}
