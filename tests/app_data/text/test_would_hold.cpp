#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "app/text/would_hold.hpp"
#include "assets/embedded.hpp"
#include "engine/select/assess.hpp"
#include "engine/select/limits.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace sillwalk;
using app::UnitSystem;
using engine::Amount;
using engine::Bound;
using engine::Kind;

namespace {

std::size_t longest_sentence(const std::string& text) {
    std::size_t longest = 0, count = 0;
    std::stringstream words(text);
    for (std::string word; words >> word;) {
        longest = std::max(longest, ++count);
        if (word.back() == '.') count = 0;
    }
    return longest;
}

struct Demo {
    engine::Tables tables = app::load_tables().tables;
    engine::Catalogue catalogue = app::load_catalogue().catalogue;
    engine::Survey survey = app::read_survey(*assets::embedded("demo/quillwater.json")).survey;
    engine::Advice advice = engine::assess(survey, catalogue, tables, {1, 0, std::nullopt});

    Demo() { engine::complete_advice(advice, survey, catalogue, tables); }
};

/// The number at the start of a shown value, with the true minus and the thin spaces taken out.
double number_in(std::string text) {
    for (const std::string from : {"\u202f", "\u2212"}) {
        for (std::size_t at; (at = text.find(from)) != std::string::npos;) {
            text.replace(at, from.size(), from == "\u2212" ? "-" : "");
        }
    }
    return std::stod(text);
}

}  // namespace

TEST_CASE("every sentence on limits and conditions is whole and short, in both languages", "[app][text]") {
    const Demo demo;
    for (const char* code : {"en", "es"}) {
        const auto words = app::Language::load(code);
        REQUIRE(words);
        for (const UnitSystem units : {UnitSystem::si, UnitSystem::us}) {
            const app::TextContext context{*words, units, demo.survey, demo.catalogue, demo.tables};
            std::vector<std::string> lines;
            for (const engine::CartAdvice& cart : demo.advice.carts) {
                for (const auto& line : app::conditions_text(*cart.conditions, context)) lines.push_back(line);
                for (const auto& family : app::would_hold_text(*cart.would_hold, context)) {
                    CHECK_FALSE(family.candidate.empty());
                    for (const auto& check : family.checks) {
                        CHECK_FALSE(check.compared.empty());
                        CHECK_FALSE((check.limits.empty() && check.notes.empty()));  // never silence
                        lines.insert(lines.end(), check.limits.begin(), check.limits.end());
                        lines.insert(lines.end(), check.notes.begin(), check.notes.end());
                    }
                }
            }
            CHECK(lines.size() > 100);
            for (const std::string& line : lines) {
                INFO(line);
                CHECK(line.find('<') == std::string::npos);
                CHECK(line.find('?') == std::string::npos);
                CHECK(line.find('{') == std::string::npos);
                CHECK(longest_sentence(line) <= 25);
            }
        }
    }
}

TEST_CASE("words for every driver and every condition", "[app][text]") {
    const auto words = app::Language::load("en");
    REQUIRE(words);
    for (int i = 0; i <= static_cast<int>(engine::Driver::diameter); ++i) {
        std::string key = std::string("limit.") + engine::driver_name(static_cast<engine::Driver>(i));
        for (char& c : key) {
            if (c == '-') c = '_';
        }
        INFO(key);
        CHECK((words->has(key) || words->has(key + ".at_most")));
    }
    for (int i = 0; i <= static_cast<int>(engine::ConditionKind::assumed_readings); ++i) {
        const std::string key = std::string("use.") + engine::condition_key(static_cast<engine::ConditionKind>(i));
        INFO(key);
        CHECK((words->has(key) || words->has(key + ".place") || words->has(key + ".reading")));
    }
}

TEST_CASE("a limit is shown on the side on which the check holds", "[app][text]") {
    const auto most = [](double si, Kind kind, UnitSystem units = UnitSystem::si) {
        return app::show_limit({si, kind}, Bound::at_most, units);
    };
    const auto least = [](double si, Kind kind, UnitSystem units = UnitSystem::si) {
        return app::show_limit({si, kind}, Bound::at_least, units);
    };
    CHECK(most(7.636e-3, Kind::length) == "7.63\u00a0mm");
    CHECK(most(7.636e-3, Kind::length, UnitSystem::us) == "19/64 in");  // 0.3006 in; 19/64 = 0.2969, 20/64 = 0.3125
    CHECK(least(0.4705882, Kind::length) == "471\u00a0mm");
    CHECK(most(0.4999999999, Kind::slope) == "50\u00a0%");
    CHECK(most(0.0839, Kind::slope) == "8.3\u00a0%");
    CHECK(most(161.67, Kind::mass) == "161\u00a0kg");
    CHECK(most(353.19, Kind::temperature) == "80\u00a0°C");
    CHECK(least(1500.0, Kind::duration) == "25\u00a0min");
    CHECK(least(1501.0, Kind::duration) == "25.1\u00a0min");
    CHECK(most(0.0, Kind::length) == "0\u00a0mm");
    for (const double value : {0.0123, 0.456, 0.9999, 1.239, 9.999, 12.34, 99.96, 123.4, 1234.5}) {
        INFO(value);
        CHECK(number_in(most(value, Kind::mass)) <= value * (1.0 + 1e-6));
        CHECK(number_in(least(value, Kind::mass)) >= value * (1.0 - 1e-6));
        CHECK(number_in(most(value, Kind::mass)) >= 0.97 * value - 0.001);
    }
}
