// What is handed over and what the damage tells, for every cart of the demo site, in both languages.
#include "app/bundle/survey_json.hpp"
#include "app/bundle/survey_words.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "app/text/damage.hpp"
#include "app/text/hand_over.hpp"
#include "assets/embedded.hpp"
#include "engine/select/assess.hpp"
#include "engine/select/cautions.hpp"
#include "engine/select/limits.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

using namespace sillwalk;

namespace {

struct Demo {
    engine::Tables tables = app::load_tables().tables;
    engine::Catalogue catalogue = app::load_catalogue().catalogue;
    engine::Survey survey = app::read_survey(*assets::embedded("demo/quillwater.json")).survey;
    engine::Advice advice = engine::assess(survey, catalogue, tables, {1, 1, std::nullopt});
};

const app::HandOverSection* section(const std::vector<app::HandOverSection>& list, const std::string& key) {
    const auto at = std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.key == key; });
    return at == list.end() ? nullptr : &*at;
}

bool has_hole(const std::string& text) {
    return text.empty() || text.find('<') != std::string::npos || text.find('{') != std::string::npos;
}

}  // namespace

TEST_CASE("the cautions are on every hand-over, and nothing that fails is specified", "[app][text][hand_over]") {
    Demo demo;
    engine::complete_advice(demo.advice, demo.survey, demo.catalogue, demo.tables);
    bool some_hold = false, some_fail = false;
    for (const char* code : {"en", "es"}) {
        const auto words = app::Language::load(code);
        REQUIRE(words);
        const app::TextContext context{*words, app::UnitSystem::si, demo.survey, demo.catalogue, demo.tables};
        for (const engine::CartAdvice& cart : demo.advice.carts) {
            INFO(code << " " << demo.survey.carts[cart.cart].name);
            const app::HandOver text = app::hand_over(demo.advice, cart, cart.conditions, context);
            const app::HandOverSection* cautions = section(text.specification, "cautions");
            REQUIRE(cautions);
            REQUIRE(cautions->lines.size() == engine::caution_keys.size());
            for (std::size_t i = 0; i < engine::caution_keys.size(); ++i) {
                CHECK(cautions->lines[i].text == words->get(engine::caution_keys[i]));
            }
            for (const auto* list : {&text.specification, &text.bench}) {
                for (const app::HandOverSection& one : *list) {
                    CHECK_FALSE(has_hole(one.title));
                    CHECK_FALSE(one.lines.empty());
                    for (const app::HandOverLine& line : one.lines) CHECK_FALSE(has_hole(line.text));
                }
            }
            (cart.nothing_holds ? some_fail : some_hold) = true;
            CHECK(text.bench.empty() == cart.nothing_holds);
            CHECK((section(text.specification, "conditions") == nullptr) == cart.nothing_holds);
        }
    }
    CHECK(some_hold);
    CHECK(some_fail);
}

TEST_CASE("the parts list counts for the whole cart", "[app][text][hand_over]") {
    const Demo demo;
    const auto words = app::Language::load("en");
    REQUIRE(words);
    const app::TextContext context{*words, app::UnitSystem::si, demo.survey, demo.catalogue, demo.tables};
    for (const engine::CartAdvice& cart : demo.advice.carts) {
        if (cart.nothing_holds) continue;
        INFO(demo.survey.carts[cart.cart].name);
        const app::HandOver text = app::hand_over(demo.advice, cart, cart.conditions, context);
        const app::HandOverSection* parts = section(text.bench, "parts");
        REQUIRE(parts);
        std::map<engine::CastorFunction, int> functions;
        for (const engine::CastorPosition& castor : demo.survey.carts[cart.cart].castors) ++functions[castor.function];
        const std::size_t castors = demo.survey.carts[cart.cart].castors.size();
        const engine::Candidate& first = cart.ranked.front().candidate;
        // One wheel a castor, one rig of its function, and of each small part as many as the catalogue says a wheel
        // takes.
        CHECK(parts->lines.at(0).value == std::to_string(castors));
        CHECK(parts->lines.at(0).text.find(demo.catalogue.wheels[first.wheel].description) != std::string::npos);
        std::map<engine::CastorFunction, int> counted;
        for (std::size_t i = 1; i <= functions.size(); ++i) {
            const std::string& name = parts->lines.at(i).text;
            const engine::Rig* rig = demo.catalogue.rig(name.substr(0, name.find(':')));
            REQUIRE(rig != nullptr);
            CHECK(rig->wheel_diameter == demo.catalogue.rigs[first.rig].wheel_diameter);
            counted[rig->function] = std::stoi(parts->lines.at(i).value);
        }
        CHECK(counted == functions);
        const auto& small = demo.catalogue.bearings[first.bearing].parts;
        REQUIRE(parts->lines.size() == 1 + functions.size() + small.size());
        for (std::size_t i = 0; i < small.size(); ++i) {
            CHECK(parts->lines[1 + functions.size() + i].value ==
                  std::to_string(static_cast<std::size_t>(small[i].count) * castors));
        }
    }
}

TEST_CASE("conditions still being worked out are said to be, not left out", "[app][text][hand_over]") {
    const Demo demo;
    const auto words = app::Language::load("en");
    REQUIRE(words);
    const app::TextContext context{*words, app::UnitSystem::si, demo.survey, demo.catalogue, demo.tables};
    for (const engine::CartAdvice& cart : demo.advice.carts) {
        if (cart.nothing_holds) continue;
        const app::HandOver text = app::hand_over(demo.advice, cart, std::nullopt, context);
        const app::HandOverSection* conditions = section(text.specification, "conditions");
        REQUIRE(conditions);
        CHECK(conditions->lines.front().text == words->get("answer.working"));
    }
}

TEST_CASE("each damage says whether the computation supports it, with the sentence of the finding", "[app][text]") {
    const Demo demo;
    for (const char* code : {"en", "es"}) {
        const auto words = app::Language::load(code);
        REQUIRE(words);
        const app::TextContext context{*words, app::UnitSystem::si, demo.survey, demo.catalogue, demo.tables};
        for (const engine::CartAdvice& cart : demo.advice.carts) {
            const auto demand = engine::resolve(demo.survey, cart.cart, demo.tables);
            const auto present = cart.present ? cart.present->findings : std::vector<engine::Finding>();
            engine::Cart every = demo.survey.carts[cart.cart];
            every.damage.clear();
            for (const std::string_view word : app::WordsOf<engine::DamageKind>::list) {
                every.damage.push_back({*app::value_of_word<engine::DamageKind>(word), {}, ""});
            }
            for (const engine::DamageReading& row : engine::read_damage(every, demand, demo.tables, present)) {
                const app::DamageText text = app::damage_text(row, context);
                INFO(code << " " << text.kind);
                CHECK_FALSE(has_hole(text.kind));
                CHECK_FALSE(has_hole(text.support));
                REQUIRE(text.causes.size() == row.causes.size());
                for (std::size_t i = 0; i < text.causes.size(); ++i) {
                    const auto& finding = row.causes[i].finding;
                    CHECK_FALSE(has_hole(text.causes[i].sentence));
                    if (finding && finding->outcome == engine::Outcome::fails) {
                        CHECK(text.causes[i].sentence == app::sentence(*finding, context));
                        CHECK(text.causes[i].support == words->get("damage.supported"));
                    }
                }
                if (row.causes.empty()) CHECK(text.notes.front() == words->get("damage.no_check"));
            }
        }
    }
}
