#include "app/bundle/survey_json.hpp"
#include "assets/embedded.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace sillwalk;

namespace {

std::string demo(const char* name) {
    const auto bytes = assets::embedded(std::string("demo/") + name);
    REQUIRE(bytes);
    return std::string(*bytes);
}

/// A small survey to break; `member` is put into its only room.
std::string with_room_member(const std::string& member) {
    return R"({"format":"sillwalk-survey/1","id":"s","site":"A","crossings":[],"washings":[],"carts":[],)"
           R"("rooms":[{"id":"r","name":"R",)" +
           member + "}]}";
}

std::vector<std::string> places(const app::SurveyRead& read) {
    std::vector<std::string> out;
    for (const engine::Error& error : read.errors) out.push_back(error.where + " " + error.message);
    return out;
}

}  // namespace

TEST_CASE("each demo survey is read without a mistake and written back byte for byte", "[survey][property]") {
    for (const char* name : {"quillwater.json", "quillwater-us.json", "half-read.json"}) {
        const std::string text = demo(name);
        const app::SurveyRead read = app::read_survey(text);
        CAPTURE(name, places(read));
        REQUIRE(read.errors.empty());
        CHECK(app::write_survey(read.survey) == text);
        CHECK(app::read_survey(app::write_survey(read.survey)).survey == read.survey);
    }
}

TEST_CASE("the demo site has the rooms, crossings and carts it is described with", "[survey]") {
    const engine::Survey survey = app::read_survey(demo("quillwater.json")).survey;
    CHECK(survey.invented);
    CHECK(survey.site.find("(invented)") != std::string::npos);
    CHECK(survey.rooms.size() == 7);
    CHECK(survey.crossings.size() >= 12);
    CHECK(survey.carts.size() >= 6);
    CHECK(survey.rooms[0].air.value->celsius() == Approx(-32.0));
    const engine::Crossing& sill = survey.crossings[1];
    CHECK(sill.heated);
    CHECK(*sill.rise.value == 19.0 * engine::millimetre);
    CHECK(*sill.gap.value == 32.0 * engine::millimetre);
    const engine::Cart& rack = survey.carts[0];
    CHECK((*rack.tare.value + *rack.payload.value).in(engine::kilogram) == Approx(310.0));
}

TEST_CASE("the inch survey holds what an inch tape reads", "[survey]") {
    const engine::Survey survey = app::read_survey(demo("quillwater-us.json")).survey;
    CHECK(survey.crossings[1].rise.value->in(engine::inch) == Approx(0.75).epsilon(1e-12));
    CHECK(survey.crossings[1].rise.tolerance.in(engine::inch) == Approx(1.0 / 16).epsilon(1e-8));
    CHECK(survey.rooms[0].air.value->fahrenheit() == Approx(-25.0).margin(2e-3));
    CHECK(survey.crossings[1].rise.as_entered == "3/4 in");
}

TEST_CASE("each unit of a reading comes back in SI", "[survey]") {
    const auto room = [](const char* member) { return app::read_survey(with_room_member(member)).survey.rooms.at(0); };
    CHECK(
        room(R"("air":{"value_millikelvin":241150,"tolerance_millikelvin":500,"known":"told"})").air.value->celsius() ==
        Approx(-32.0));
    CHECK(*room(R"("humidity":{"value_ppm":850000,"known":"by_eye"})").humidity.value == 0.85);
    CHECK(room(R"("humidity":{"known":"not_accessible"})").humidity.known == engine::Known::not_accessible);
    CHECK(room(R"("notes":"n")").humidity.known == engine::Known::not_yet_read);
}

TEST_CASE("each slip of form is one error at its own path", "[survey]") {
    struct Slip {
        const char* member;
        const char* where;
    };
    const Slip slips[] = {
        {R"("air":{"value_millikelvin":241150.5,"known":"told"})", "/rooms/0/air/value_millikelvin"},
        {R"("air":{"value_millikelvin":-1,"known":"told"})", "/rooms/0/air/value_millikelvin"},
        {R"("air":{"value_celsius":-32,"value_millikelvin":1000,"known":"told"})", "/rooms/0/air/value_celsius"},
        {R"("air":{"known":"measured"})", "/rooms/0/air/value_millikelvin"},
        {R"("air":{"value_millikelvin":250000,"known":"not_yet_read"})", "/rooms/0/air/value_millikelvin"},
        {R"("air":{"value_millikelvin":250000})", "/rooms/0/air/known"},
        {R"("air":{"value_millikelvin":250000,"tolerance_millikelvin":-1,"known":"told"})",
         "/rooms/0/air/tolerance_millikelvin"},
        {R"("air":{"tolerance_millikelvin":1,"known":"not_yet_read"})", "/rooms/0/air/tolerance_millikelvin"},
        {R"("air":-32)", "/rooms/0/air"},
        {R"("wetness":{"value":"soaked","known":"told"})", "/rooms/0/wetness/value"},
        {R"("wetness":{"value":"wet","known":"guessed"})", "/rooms/0/wetness/known"},
        {R"("cleanroom_class":{"value":10,"known":"told"})", "/rooms/0/cleanroom_class/value"},
        {R"("humidity":{"value_ppm":1000001,"known":"told"})", "/rooms/0/humidity/value_ppm"},
        {R"("colour":"grey")", "/rooms/0/colour"},
    };
    for (const Slip& slip : slips) {
        const app::SurveyRead read = app::read_survey(with_room_member(slip.member));
        CAPTURE(slip.member, places(read));
        REQUIRE(read.errors.size() == 1);
        CHECK(read.errors[0].where == slip.where);
    }
}

TEST_CASE("members of a later format can be passed over", "[survey]") {
    const std::string text = with_room_member(R"("colour":"grey")");
    CHECK(app::read_survey(text).errors.size() == 1);
    CHECK(app::read_survey(text, app::UnknownMembers::ignore).errors.empty());
}

TEST_CASE("what is no survey is refused", "[survey]") {
    for (const char* text : {"", "{", "[]", "3", "{\"format\":\"sillwalk-survey/9\"}", "\xff", "null"}) {
        CAPTURE(text);
        CHECK(!app::read_survey(text).errors.empty());
    }
}

TEST_CASE("a reading of which nothing is known leaves no trace in the file", "[survey]") {
    engine::Survey survey;
    survey.id = engine::SurveyId("s");
    survey.rooms.emplace_back().id = engine::RoomId("r");
    CHECK(app::write_survey(survey).find("not_yet_read") == std::string::npos);
    survey.rooms[0].air.known = engine::Known::not_accessible;
    const app::SurveyRead read = app::read_survey(app::write_survey(survey));
    CAPTURE(places(read));
    CHECK(read.survey == survey);
}
