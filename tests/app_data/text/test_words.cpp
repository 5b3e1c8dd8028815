#include "app/data/load_tables.hpp"
#include "app/text/explain.hpp"
#include "app/text/language.hpp"
#include "engine/model/finding.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>

using namespace sillwalk;
using app::Language;

namespace {

std::size_t longest_sentence(const std::string& text) {
    std::size_t longest = 0;
    std::stringstream sentences(text);
    for (std::string sentence; std::getline(sentences, sentence, '.');) {
        std::stringstream words(sentence);
        std::size_t count = 0;
        for (std::string word; words >> word;) ++count;
        longest = std::max(longest, count);
    }
    return longest;
}

std::vector<std::string> slots(const std::string& text) {
    std::vector<std::string> out;
    for (std::size_t i = text.find('{'); i != std::string::npos; i = text.find('{', i + 1))
        out.push_back(text.substr(i, 3));
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

}  // namespace

TEST_CASE("both languages have the same words with the same slots, in short sentences", "[app][text]") {
    const auto english = Language::load("en");
    const auto spanish = Language::load("es");
    REQUIRE(english);
    REQUIRE(spanish);
    for (const auto& [key, text] : english->words()) {
        INFO(key);
        CHECK(spanish->has(key));
        CHECK(slots(text) == slots(spanish->get(key)));
        CHECK(longest_sentence(text) <= 25);
        CHECK(longest_sentence(spanish->get(key)) <= 25);
    }
    CHECK(english->words().size() == spanish->words().size());
}

TEST_CASE("every check, outcome, verdict, reading and assumption has words", "[app][text]") {
    const auto english = Language::load("en");
    REQUIRE(english);
    const auto needs = [&](const std::string& key) {
        INFO(key);
        CHECK(english->has(key));
    };
    for (std::size_t i = 0; i < engine::check_count; ++i) {
        needs(std::string("check.") + engine::check_name(static_cast<engine::CheckId>(i)));
        needs(std::string("question.") + engine::check_name(static_cast<engine::CheckId>(i)));
    }
    for (int i = 0; i <= static_cast<int>(engine::Assumption::practice_figure); ++i) {
        needs(std::string("assumption.") + engine::assumption_key(static_cast<engine::Assumption>(i)));
    }
    for (int i = 0; i <= static_cast<int>(engine::last_field); ++i) {
        needs(app::field_key(static_cast<engine::Field>(i)));
    }
    for (int i = 1; i <= static_cast<int>(engine::Statement::room_ok); ++i) {
        needs(std::string("finding.") + engine::statement_key(static_cast<engine::Statement>(i)));
    }
}

TEST_CASE("floors, cleaning agents and formulas of the tables have their words in both languages", "[app][text]") {
    const engine::Tables tables = app::load_tables().tables;
    const auto english = Language::load("en");
    const auto spanish = Language::load("es");
    REQUIRE((english && spanish));
    const auto check = [&](const std::string& key, const std::string& name) {
        INFO(key);
        CHECK(english->get(key) == name);
        CHECK(spanish->has(key));
    };
    for (const engine::FormulaRow& row : tables.formulas) {
        if (english->has("formula." + row.id)) check("formula." + row.id, row.text);
        if (english->has("formula_range." + row.id)) check("formula_range." + row.id, row.range);
    }
    for (const engine::Floor& floor : tables.floors) check("floor." + floor.id, floor.name);
    for (const engine::ChemicalRow& row : tables.chemicals.rows) check("agent." + row.agent, row.name);
}

TEST_CASE("a hole in the words is seen and a template takes its arguments in any order", "[app][text]") {
    const auto words = Language::from_text("xx", R"({"a": "{1} of {0}, {2}", "b": "50 {not a slot}"})");
    REQUIRE(words);
    CHECK(words->fill("a", {"ten", "two"}) == "two of ten, ?");
    CHECK(words->get("b") == "50 {not a slot}");
    CHECK(words->get("c") == "<c>");
    CHECK_FALSE(Language::from_text("xx", "[]"));
    CHECK_FALSE(Language::load("zz"));
}
