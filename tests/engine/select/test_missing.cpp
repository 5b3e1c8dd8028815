// What a missing reading may change, against assess() with the reading filled in.

#include "engine/select/missing.hpp"
#include "tests/engine/select/sampling_case.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

void check_against_assess(const Survey& survey, const Catalogue& catalogue, const PlausibleRange& range,
                          void (*fill)(Survey&, double), std::size_t least_stretches) {
    const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {5, 0, 0}).carts.front();
    const MissingReading missing = missing_answers(survey, catalogue, loaded_tables(), advice, range);
    REQUIRE(missing.ranges.size() >= least_stretches);
    CHECK(missing.ranges.front().from_si == range.low_si);
    CHECK(missing.ranges.back().to_si == range.high_si);
    const auto at = [&](double si) {
        Survey filled = survey;
        fill(filled, si);
        return headline_by_assess(filled, catalogue, 0);
    };
    const double width = range.high_si - range.low_si, border = width / 32768.0;
    for (std::size_t i = 0; i < missing.ranges.size(); ++i) {
        const AnswerRange& stretch = missing.ranges[i];
        INFO("stretch " << i << " from " << stretch.from_si << " to " << stretch.to_si);
        if (i > 0) {
            CHECK(stretch.from_si == missing.ranges[i - 1].to_si);
            CHECK_FALSE(stretch.answer == missing.ranges[i - 1].answer);
        }
        CHECK(at(0.5 * (stretch.from_si + stretch.to_si)) == stretch.answer);
        if (stretch.to_si - stretch.from_si > 4.0 * border) {
            CHECK(at(stretch.from_si + border) == stretch.answer);
            CHECK(at(stretch.to_si - border) == stretch.answer);
        }
    }
    // A plain scan, beside the grid of the search. What it finds between two points of that grid that agree is narrower
    // than the search promises to see.
    int overlooked = 0;
    for (int i = 0; i < 50; ++i) {
        const double part = (i + 0.37) * 128.0 / 50.0, si = range.low_si + width * part / 128.0;
        const auto stretch = std::find_if(missing.ranges.begin(), missing.ranges.end(),
                                          [&](const AnswerRange& row) { return si <= row.to_si; });
        if (at(si) == stretch->answer) continue;
        ++overlooked;
        INFO("at " << si);
        CHECK(at(range.low_si + width * std::floor(part) / 128.0) == stretch->answer);
        CHECK(at(range.low_si + width * std::ceil(part) / 128.0) == stretch->answer);
    }
    CHECK(overlooked <= 2);
}

}  // namespace

TEST_CASE("missing: the stretches of a rise that was not read are those of assess()", "[missing]") {
    const Catalogue catalogue = thinned_catalogue(4);
    check_against_assess(
        demo_survey("half-read.json"), catalogue, door_rise,
        [](Survey& survey, double si) { survey.crossings[1].rise = measured(Length::from_si(si)); }, 2);
}

TEST_CASE("missing: one reading alone, then the verdict is told too", "[missing]") {
    const Catalogue catalogue = thinned_catalogue(4);
    Survey survey = demo_survey("quillwater.json");
    survey.crossings[1].rise = {};
    const auto fill = [](Survey& filled, double si) { filled.crossings[1].rise = measured(Length::from_si(si)); };
    check_against_assess(survey, catalogue, door_rise, fill, 3);
    const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {5, 0, 0}).carts.front();
    REQUIRE_FALSE(advice.nothing_holds);
    const MissingReading missing = missing_answers(survey, catalogue, loaded_tables(), advice, door_rise);
    for (const AnswerRange& stretch : missing.ranges) {
        // It could not tell before; the same candidate with an answer is no other advice.
        const bool same = !stretch.answer.nothing_holds && stretch.answer.candidate == advice.ranked.front().candidate;
        CHECK(stretch.differs == !same);
    }
    CHECK(missing.ranges.back().answer.nothing_holds);  // nobody walks a rack over 40 mm
}
