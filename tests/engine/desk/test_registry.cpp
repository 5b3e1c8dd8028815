#include "engine/desk/desk.hpp"
#include "engine/desk/stages_text.hpp"
#include "tests/engine/desk/loaded_tables.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string>
#include <vector>

using namespace sillwalk::engine;

namespace {

Error error_of(const char* name, const std::vector<std::string>& words) {
    const DeskCalculation* calculation = find_desk_calculation(name);
    REQUIRE(calculation != nullptr);
    const auto outputs = solve(*calculation, words, loaded_tables());
    REQUIRE_FALSE(outputs);
    return outputs.error();
}

std::vector<std::string> split(std::string_view text) {
    std::vector<std::string> words(1);
    for (const char c : text) {
        if (c == ' ') {
            words.emplace_back();
        } else {
            words.back() += c;
        }
    }
    return words;
}

}  // namespace

TEST_CASE("the registry is complete and every row explains itself", "[engine][desk]") {
    const std::set<std::string_view> expected{
        "wheel-load",        "axle-load",  "step",         "step-speed", "gap",       "rolling",      "swivel",
        "push-limit",        "push-share", "traction",     "hardness",   "contact",   "rolling-loss", "dew-point",
        "wheel-temperature", "tip",        "bearing-life", "bearing-pv", "flat-spot", "chemical"};
    std::set<std::string_view> found;
    for (const DeskCalculation& row : desk_calculations()) {
        INFO(row.name);
        CHECK(found.insert(row.name).second);
        CHECK_FALSE(row.meaning.empty());
        CHECK_FALSE(row.formula.empty());
        CHECK_FALSE(row.source.empty());
        for (const DeskKey& key : row.keys) {
            INFO(key.name);
            CHECK_FALSE(key.meaning.empty());
            CHECK_FALSE(key.unit.empty());
            CHECK(key.required == key.fallback.empty());
        }
    }
    CHECK(found == expected);
}

TEST_CASE("the example of every calculation works and gives the outputs it promises", "[engine][desk]") {
    for (const DeskCalculation& row : desk_calculations()) {
        DYNAMIC_SECTION(std::string(row.name)) {
            const auto outputs = solve(row, split(row.example), loaded_tables());
            INFO((outputs ? std::string() : outputs.error().where + ": " + outputs.error().message));
            REQUIRE(outputs);
            std::set<std::string_view> given;
            for (const DeskOutput& output : *outputs) {
                given.insert(output.key);
                CHECK_FALSE(output.meaning.empty());
            }
            for (const DeskKey& key : row.outputs) {
                INFO(key.name);
                CHECK((!key.required || given.contains(key.name)));
            }
            CHECK(outputs->front().key == row.outputs.front().name);
        }
    }
}

TEST_CASE("leaving out any required key names that key", "[engine][desk]") {
    for (const DeskCalculation& row : desk_calculations()) {
        for (const DeskKey& key : row.keys) {
            if (!key.required) {
                continue;
            }
            std::vector<std::string> words;
            for (const std::string& word : split(row.example)) {
                if (word.rfind(std::string(key.name) + "=", 0) != 0) {
                    words.push_back(word);
                }
            }
            INFO(row.name << " without " << key.name);
            const Error error = error_of(std::string(row.name).c_str(), words);
            CHECK(error.code == ErrorCode::bad_input);
            CHECK(error.where == key.name);
        }
    }
}

TEST_CASE("bad input names the key, what was wrong and what would be right", "[engine][desk]") {
    const Error bare = error_of("step", {"load=100", "diameter=5in", "rise=1/4in"});
    CHECK(bare.where == "load");
    CHECK_THAT(bare.message, Catch::Contains("\"100\"") && Catch::Contains("kgf"));
    const Error negative = error_of("step", {"load=100kg", "diameter=-5in", "rise=1/4in"});
    CHECK(negative.where == "diameter");
    CHECK_THAT(negative.message, Catch::Contains("\"-5in\"") && Catch::Contains("over 0"));
    const Error typo = error_of("step", {"load=100kg", "diamter=5in", "rise=1/4in"});
    CHECK(typo.where == "diamter");
    CHECK_THAT(typo.message, Catch::Contains("diameter"));
    const Error loose = error_of("step", {"load=100kg", "diameter=5", "1/2in", "rise=1/4in"});
    CHECK_THAT(loose.message, Catch::Contains("quotes"));
    const Error stretched = error_of("hardness", {"scale=A", "value=60", "kind=ether"});
    CHECK(stretched.where == "kind");
    const Error twice =
        error_of("bearing-life", {"rating=1kN", "load=1kN", "kind=ball", "rpm=1", "speed=1m/s", "diameter=5in"});
    CHECK(twice.where == "rpm");
}

TEST_CASE("numbers too large to compute with are refused, not printed", "[engine][desk]") {
    CHECK(error_of("rolling", {"load=1e308N", "diameter=1nm", "f=1000km"}).code == ErrorCode::no_answer);
    CHECK(error_of("rolling", {"load=1e308kN", "diameter=5in", "f=1mm"}).code == ErrorCode::bad_input);
}

TEST_CASE("stages are read with their units and say which one is wrong", "[engine][desk]") {
    const auto stages = parse_stages("-25degF@34W/m2K:60min,40degF@9.37W/m2K:0.5h");
    REQUIRE(stages);
    REQUIRE(stages->size() == 2);
    CHECK((*stages)[0].air.fahrenheit() == Approx(-25));
    CHECK((*stages)[1].film.si() == Approx(9.37));
    CHECK((*stages)[1].time.in(minute) == Approx(30));
    const auto wrong = parse_stages("-25degF@34W/m2K:60min,40degF@34:30min");
    REQUIRE_FALSE(wrong);
    CHECK_THAT(wrong.error().message, Catch::Contains("stage 2") && Catch::Contains("W/m2K"));
    CHECK_FALSE(parse_stages(""));
    CHECK_FALSE(parse_stages("20degC@34W/m2K:-1min"));
}
