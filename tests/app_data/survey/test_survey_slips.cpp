#include "app/bundle/survey_json.hpp"
#include "app/data/json_reader.hpp"
#include "assets/embedded.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

using namespace sillwalk;

namespace {

app::Json slips() {
    std::ifstream file(SILLWALK_TEST_DATA "/app_data/survey/slips.json");
    std::stringstream text;
    text << file.rdbuf();
    return app::Json::parse(text.str());
}

/// The demo survey with one change.
std::string changed(const app::Json& change) {
    app::Json survey = app::Json::parse(*assets::embedded("demo/quillwater.json"));
    const app::Json::json_pointer at(change["at"].get<std::string>());
    if (change.contains("remove")) {
        survey[at.parent_pointer()].erase(at.back());
    } else {
        survey[at] = change["set"];
    }
    return survey.dump();
}

}  // namespace

TEST_CASE("the reader refuses what the schema refuses, with one error each", "[survey]") {
    const app::Json all = slips();
    REQUIRE(all["bad"].size() > 40);
    for (const app::Json& change : all["bad"]) {
        const app::SurveyRead read = app::read_survey(changed(change));
        CAPTURE(change.dump());
        CHECK(read.errors.size() == 1);
        for (const engine::Error& error : read.errors) {
            CHECK(error.where.find(
                      app::Json::json_pointer(change["at"].get<std::string>()).parent_pointer().to_string()) == 0);
        }
    }
}

TEST_CASE("the reader takes what the schema takes", "[survey]") {
    const app::Json all = slips();
    for (const app::Json& change : all["fine"]) {
        const app::SurveyRead read = app::read_survey(changed(change));
        CAPTURE(change.dump());
        CHECK(read.errors.empty());
    }
}
