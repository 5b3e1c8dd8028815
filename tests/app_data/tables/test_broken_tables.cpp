/// One spoilt file per rule of the loader; each must give exactly one error, at the right path.

#include "tests/app_data/tables/broken_tables.hpp"

#include <catch2/catch.hpp>

#include <vector>

using namespace sillwalk;
using nlohmann::json;
using test::load_spoilt;
using test::Spoil;

namespace {

struct BrokenCase {
    std::string rule, file;
    Spoil spoil;
    std::string where, message;  ///< path below the file's root; part of the message
};

json& first_figure(json& d) {
    return d["rows"][0]["density_kg_per_m3"];
}

const std::vector<BrokenCase>& figure_cases() {
    static const std::vector<BrokenCase> cases = {
        {"a value that is missing", "tables/materials.json", [](json& d) { first_figure(d).erase("value"); },
         "/rows/0/density_kg_per_m3/value", "missing"},
        {"a value of the wrong type", "tables/materials.json", [](json& d) { first_figure(d)["value"] = "heavy"; },
         "/rows/0/density_kg_per_m3/value", "text"},
        {"a value out of the plausible range", "tables/materials.json",
         [](json& d) {
             first_figure(d) = {{"value", 1e6}, {"source", "memory"}, {"locator", "x"}, {"status", "memory"}};
         },
         "/rows/0/density_kg_per_m3/value", "10000"},
        {"a low end above the value", "tables/materials.json", [](json& d) { first_figure(d)["low"] = 1500; },
         "/rows/0/density_kg_per_m3/low", "above the value"},
        {"a high end below the value", "tables/materials.json",
         [](json& d) {
             first_figure(d)["low"] = 1300;
             first_figure(d)["high"] = 1350;
         },
         "/rows/0/density_kg_per_m3/high", "below the value"},
        {"an unknown source", "tables/materials.json", [](json& d) { first_figure(d)["source"] = "hearsay"; },
         "/rows/0/density_kg_per_m3/source", "'hearsay' is no key of sources.json"},
        {"an empty locator", "tables/materials.json", [](json& d) { first_figure(d)["locator"] = ""; },
         "/rows/0/density_kg_per_m3/locator", "empty"},
        {"an unknown status", "tables/materials.json", [](json& d) { first_figure(d)["status"] = "sure"; },
         "/rows/0/density_kg_per_m3/status", "'sure' is not one of"},
        {"an unknown member of a figure", "tables/materials.json", [](json& d) { first_figure(d)["unit"] = "kg/m3"; },
         "/rows/0/density_kg_per_m3/unit", ""},
        {"a conflicting figure without a source", "tables/practice.json",
         [](json& d) { d["conductive_ohm"]["conflicting"][0].erase("source"); }, "/conductive_ohm/conflicting/0/source",
         "missing"},
        {"a rule of practice that is missing", "tables/practice.json", [](json& d) { d.erase("holds_below"); },
         "/holds_below", "missing"},
    };
    return cases;
}

const std::vector<BrokenCase>& row_cases() {
    static const std::vector<BrokenCase> cases = {
        {"an unknown member of a row", "tables/floors.json", [](json& d) { d["rows"][0]["colour"] = "grey"; },
         "/rows/0/colour", ""},
        {"an unknown member of a file", "tables/film.json", [](json& d) { d["remark"] = "x"; }, "/remark", ""},
        {"a row that is no object", "tables/floors.json", [](json& d) { d["rows"].push_back(3); }, "/rows/14",
         "object"},
        {"an id that stands twice", "tables/formulas.json", [](json& d) { d["rows"][1]["id"] = d["rows"][0]["id"]; },
         "/rows/1/id", "stands twice"},
        {"ids out of order", "tables/formulas.json", [](json& d) { std::swap(d["rows"][0], d["rows"][1]); },
         "/rows/1/id", "must stand before"},
        {"an unknown material family", "tables/materials.json", [](json& d) { d["rows"][0]["family"] = "wood"; },
         "/rows/0/family", "'wood' is not one of"},
        {"a material's column that does not exist", "tables/materials.json",
         [](json& d) { d["rows"][0]["chemical_column"] = "wood"; }, "/rows/0/chemical_column", "no column"},
        {"a floor's rolling surface that does not exist", "tables/floors.json",
         [](json& d) { d["rows"][0]["rolling_surface"] = "sand"; }, "/rows/0/rolling_surface", "no surface"},
        {"brittle limits the wrong way round", "tables/materials.json",
         [](json& d) { d["rows"][0]["brittle_unstruck_c"]["value"] = 0; }, "/rows/0/brittle_unstruck_c",
         "a blow never helps"},
        {"a wetness without a row", "tables/friction.json", [](json& d) { d["rows"].erase(0); }, "/rows", "13 of 14"},
        {"a bearing kind twice", "tables/bearings.json", [](json& d) { d["rows"].push_back(d["rows"][0]); },
         "/rows/5/kind", "stands twice"},
        {"an air movement without a row", "tables/film.json", [](json& d) { d["rows"].erase(3); }, "/rows", "3 of 4"},
        {"a load factor case without a row", "tables/load_factors.json", [](json& d) { d["rows"].erase(1); }, "/rows",
         "3 of 4"},
        {"a rating class with two obstacles", "tables/rating_classes.json",
         [](json& d) { d["rows"][0]["obstacle_height_m"] = d["rows"][3]["obstacle_height_m"]; },
         "/rows/0/obstacle_share", "either"},
        {"a rolling pair twice", "tables/rolling.json", [](json& d) { d["rows"].push_back(d["rows"][0]); },
         "/rows/30/tread", "stand twice"},
        {"a hygiene feature without a score", "tables/hygiene.json", [](json& d) { d["features"].erase(0); },
         "/features", "9 of 10"},
        {"a hygiene zone without a row", "tables/hygiene.json", [](json& d) { d["zones"].erase(0); }, "/zones",
         "2 of 3"},
        {"another edition", "tables/film.json", [](json& d) { d["edition"] = "2020-01-01"; }, "/edition", "differs"},
    };
    return cases;
}

const std::vector<BrokenCase>& special_cases() {
    static const std::vector<BrokenCase> cases = {
        {"an unknown chemical level", "tables/chemicals.json",
         [](json& d) { d["rows"][0]["ratings"]["ptfe"]["level"] = "fine"; }, "/rows/0/ratings/ptfe/level",
         "'fine' is not one of"},
        {"a rating of an unknown column", "tables/chemicals.json",
         [](json& d) { d["rows"][0]["ratings"]["wood"] = d["rows"][0]["ratings"]["ptfe"]; }, "/rows/0/ratings/wood",
         ""},
        {"a column twice", "tables/chemicals.json", [](json& d) { d["columns"].push_back("ptfe"); }, "/columns",
         "stands twice"},
        {"a row id twice", "tables/chemicals.json", [](json& d) { d["rows"][1]["id"] = d["rows"][0]["id"]; },
         "/rows/1/id", "stands twice"},
        {"a strength that is a percentage", "tables/chemicals.json",
         [](json& d) { d["rows"][0]["strength_share"] = 5; }, "/rows/0/strength_share", "1"},
        {"agents out of order", "tables/chemicals.json", [](json& d) { std::swap(d["rows"][0], d["rows"][1]); },
         "/rows/1/agent", "must stand before"},
        {"a reading of an unknown source", "tables/chemicals.json",
         [](json& d) { d["rows"][0]["ratings"]["pu-ester"]["readings"][0]["source"] = "hearsay"; },
         "/rows/0/ratings/pu-ester/readings/0/source", "no key"},
        {"an equation that is missing", "tables/people.json", [](json& d) { d["equations"].erase(7); }, "/equations",
         "7 of the 8"},
        {"an equation that stands twice", "tables/people.json",
         [](json& d) { d["equations"].push_back(d["equations"][0]); }, "/equations/8/action", "stand twice"},
        {"a divisor of nothing", "tables/people.json", [](json& d) { d["equations"][0]["height"]["divisor"] = 0; },
         "/equations/0/height/divisor", "divisor of 0"},
        {"a range the wrong way round", "tables/people.json",
         [](json& d) {
             d["ranges"]["distance_m"] = {61, 2.1};
         },
         "/ranges/distance_m", "least and the greatest"},
        {"heights that do not rise", "tables/people.json",
         [](json& d) { d["biomechanical"]["rows"][1]["height_in"] = 30; }, "/biomechanical/rows/1/height_in",
         "does not rise"},
        {"a curve that is too short", "tables/layer.json", [](json& d) { d["rows"][0]["load_factor"].erase(10); },
         "/rows/0/load_factor", "needs 11 numbers, has 10"},
        {"a curve that falls", "tables/layer.json", [](json& d) { d["rows"][0]["load_factor"][10] = 2; },
         "/rows/0/load_factor", "does not rise"},
        {"Poisson's ratios that do not fall", "tables/layer.json", [](json& d) { d["rows"][1]["poisson"] = 0.5; },
         "/rows/1/poisson", "does not fall"},
    };
    return cases;
}

void check_case(const BrokenCase& broken) {
    const app::LoadedTables loaded = load_spoilt(broken.file, broken.spoil);
    INFO(test::listing(loaded));
    REQUIRE(loaded.errors.size() == 1);
    CHECK(loaded.errors[0].where == broken.file + "#" + broken.where);
    CHECK_THAT(loaded.errors[0].message, Catch::Contains(broken.message));
}

}  // namespace

TEST_CASE("a broken figure is named by its path", "[tables][property]") {
    for (const BrokenCase& broken : figure_cases()) DYNAMIC_SECTION(broken.rule) {
            check_case(broken);
        }
}

TEST_CASE("a broken row is named by its path", "[tables][property]") {
    for (const BrokenCase& broken : row_cases()) DYNAMIC_SECTION(broken.rule) {
            check_case(broken);
        }
}

TEST_CASE("a broken chemical, equation or curve is named by its path", "[tables][property]") {
    for (const BrokenCase& broken : special_cases()) DYNAMIC_SECTION(broken.rule) {
            check_case(broken);
        }
}

TEST_CASE("a source key in capitals is refused", "[tables][property]") {
    const app::LoadedTables loaded = load_spoilt("sources.json", [](json& d) { d["rows"][0]["key"] = "Acetal"; });
    REQUIRE_FALSE(loaded.errors.empty());
    CHECK(loaded.errors[0].where == "sources.json#/rows/0/key");
    CHECK_THAT(loaded.errors[0].message, Catch::Contains("lower-case"));
}

TEST_CASE("text that is no JSON gives one error with the file's name", "[tables][property]") {
    const app::LoadedTables loaded = test::load_replaced("tables/film.json", "{\"rows\": [");
    INFO(test::listing(loaded));
    REQUIRE(loaded.errors.size() == 1);
    CHECK(loaded.errors[0].where == "tables/film.json#");
}

TEST_CASE("a missing file is an error, not a crash", "[tables][property]") {
    for (const std::string_view path : app::table_files()) {
        const app::LoadedTables loaded = test::load_replaced(std::string(path), std::nullopt);
        INFO(path);
        REQUIRE_FALSE(loaded.errors.empty());
        CHECK(loaded.errors[0].code == engine::ErrorCode::not_found);
        CHECK(loaded.errors[0].where == std::string(path) + "#");
    }
}

TEST_CASE("all errors are listed, not only the first", "[tables][property]") {
    const app::LoadedTables loaded = load_spoilt("tables/practice.json", [](json& d) {
        d.erase("holds_below");
        d["parked_limit_d"]["value"] = -1;
        d["life_wet_factor"]["status"] = "sure";
    });
    INFO(test::listing(loaded));
    CHECK(loaded.errors.size() == 3);
}
