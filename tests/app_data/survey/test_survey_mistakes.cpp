#include "app/bundle/survey_json.hpp"
#include "app/data/json_reader.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "assets/embedded.hpp"
#include "engine/select/assess.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace sillwalk;
using app::Json;

namespace {

const engine::Tables& tables() {
    static const app::LoadedTables loaded = app::load_tables();
    return loaded.tables;
}
const engine::Catalogue& catalogue() {
    static const app::LoadedCatalogue loaded = app::load_catalogue();
    return loaded.catalogue;
}

Json demo() {
    return Json::parse(*assets::embedded("demo/quillwater.json"));
}

std::vector<std::string> places_of_mistakes(const Json& survey) {
    std::vector<std::string> out;
    for (const engine::Error& error : app::survey_mistakes(app::read_survey(survey.dump()), catalogue(), tables())) {
        UNSCOPED_INFO(error.where << ": " << error.message);
        out.push_back(error.where);
    }
    std::sort(out.begin(), out.end());
    return out;
}

/// The one mistake that a change to the demo survey makes, or what came instead.
std::vector<std::string> after(const char* at, Json value) {
    Json survey = demo();
    survey[Json::json_pointer(at)] = std::move(value);
    return places_of_mistakes(survey);
}

using Places = std::vector<std::string>;

}  // namespace

TEST_CASE("the demo surveys have no mistake", "[survey]") {
    for (const char* name : {"demo/quillwater.json", "demo/quillwater-us.json", "demo/half-read.json"}) {
        CHECK(places_of_mistakes(Json::parse(*assets::embedded(name))).empty());
    }
}

TEST_CASE("a survey with 12 mistakes gives 12 errors, each at its place", "[survey]") {
    Json survey = demo();
    survey["rooms"][0]["air"]["value_millikelvin"] = "cold";
    survey["rooms"][1]["wetness"]["value"] = "soaked";
    survey["rooms"][2]["floor"]["value"] = "parquet";
    survey["crossings"][0]["to"] = "cellar";
    survey["crossings"][1]["rise"] = {{"value_nm", 900000000}, {"known", "by_eye"}};
    survey["crossings"][2]["gap"]["tolerance_nm"] = -1;
    survey["washings"][0]["agent"]["value"] = "soap";
    survey["washings"][1]["rooms"][0] = "attic";
    survey["carts"][0]["castors"].erase(2);
    survey["carts"][0]["castors"].erase(2);
    survey["carts"][1]["handle_height"] = {{"value_nm", 5000000000}, {"known", "told"}};
    survey["carts"][2]["route"][0]["leaves_by"] = "freezer-door";
    survey["carts"][3]["colour"] = "grey";
    CHECK(places_of_mistakes(survey) == Places{"/carts/0/castors", "/carts/1/handle_height",
                                               "/carts/2/route/0/leaves_by", "/carts/3/colour", "/crossings/0/to",
                                               "/crossings/1/rise", "/crossings/2/gap/tolerance_nm",
                                               "/rooms/0/air/value_millikelvin", "/rooms/1/wetness/value",
                                               "/rooms/2/floor", "/washings/0/agent", "/washings/1/rooms/0"});
}

TEST_CASE("a mistake of form is not named again by what follows from it", "[survey]") {
    Json survey = demo();
    survey["rooms"][0]["id"] = 7;
    CHECK(places_of_mistakes(survey) == Places{"/rooms/0/id"});
    survey = demo();
    survey.erase("rooms");
    CHECK(places_of_mistakes(survey) == Places{"/rooms"});
    CHECK(places_of_mistakes(Json::array()) == Places{"/"});
}

TEST_CASE("ids that stand twice or lead nowhere are named", "[survey][validate]") {
    CHECK(after("/crossings/3/id", "ramp") == Places{"/crossings/6/id"});
    CHECK(after("/rooms/6/id", "pack") == Places{"/rooms/6/id"});
    CHECK(after("/carts/1/id", "tray-rack") == Places{"/carts/1/id"});
    CHECK(after("/carts/0/route/1/room", "cellar") == Places{"/carts/0/route/1/room"});
    CHECK(after("/carts/0/route/1/leaves_by", "gate") == Places{"/carts/0/route/1/leaves_by"});
    CHECK(after("/washings/0/rooms", {"raw", "raw"}) == Places{"/washings/0/rooms/1"});
    CHECK(after("/washings/0/rooms", Json::array()) == Places{"/washings/0/rooms"});
}

TEST_CASE("a crossing joins the rooms of the stops before and after it, either way round", "[survey][validate]") {
    CHECK(after("/carts/2/route/0/leaves_by", "ramp").empty());
    CHECK(after("/carts/2/route/1/leaves_by", "strip-curtain") == Places{"/carts/2/route/1/leaves_by"});
    CHECK(after("/carts/0/route/3/leaves_by", "freezer-door") == Places{"/carts/0/route/3/leaves_by"});
}

TEST_CASE("impossible values are named", "[survey][validate]") {
    const auto told = [](const char* key, std::int64_t value) { return Json{{key, value}, {"known", "told"}}; };
    CHECK(after("/rooms/0/air", told("value_millikelvin", 500000)) == Places{"/rooms/0/air"});
    CHECK(after("/crossings/1/rise", told("value_nm", -19000000)) == Places{"/crossings/1/rise"});
    CHECK(after("/crossings/2/slope", told("value_ppm", 800000)) == Places{"/crossings/2/slope"});
    CHECK(after("/crossings/2/slope_length", told("value_nm", 0)) == Places{"/crossings/2/slope_length"});
    CHECK(after("/carts/0/tare", told("value_g", 0)) == Places{"/carts/0/tare"});
    CHECK(after("/carts/0/people", told("value_thousandths", 0)) == Places{"/carts/0/people"});
    CHECK(after("/carts/0/speed", told("value_um_per_s", 30000000)) == Places{"/carts/0/speed"});
    CHECK(after("/carts/0/cg_forward_loaded", told("value_nm", 760000000)) == Places{"/carts/0/cg_forward_loaded"});
    CHECK(after("/carts/0/trips_per_day", told("value_thousandths", 40000)) == Places{"/carts/0/trips_per_day"});
    CHECK(after("/carts/0/castors/1/across_nm", 240000000) == Places{"/carts/0/castors/1"});
}

TEST_CASE("a value that is not what was entered is named", "[survey][validate]") {
    CHECK(after("/crossings/1/rise/value_nm", 6000000) == Places{"/crossings/1/rise"});
    CHECK(after("/crossings/1/rise/as_entered", "3/4 in") == Places{"/crossings/1/rise"});
    CHECK(after("/crossings/1/rise/as_entered", "about an inch").empty());
}

TEST_CASE("readings that contradict themselves are named, though no file can hold them", "[survey][validate]") {
    engine::Survey survey = app::read_survey(demo().dump()).survey;
    survey.crossings[1].rise.known = engine::Known::not_yet_read;
    survey.crossings[1].gap.tolerance = -1.0 * engine::millimetre;
    survey.rooms[0].wetness.value.reset();
    const auto errors = engine::validate(survey, catalogue(), tables());
    REQUIRE(errors.size() == 3);
    CHECK(errors[0].where == "/rooms/0/wetness");
    CHECK(errors[1].where == "/crossings/1/rise");
    CHECK(errors[2].where == "/crossings/1/gap");
}

TEST_CASE("a present wheel of another catalogue is no mistake", "[survey][validate]") {
    CHECK(after("/carts/0/present_wheel/value", "some-other-maker").empty());
}
