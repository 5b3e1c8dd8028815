// The sentences on readings to take again and on the site, from made-up advice: what is said must be what was found.

#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "app/text/read_again.hpp"
#include "app/text/site.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace sillwalk;
using engine::Field;
using engine::Verdict;

namespace {

struct Made {
    engine::Tables tables;
    engine::Catalogue catalogue = app::load_catalogue().catalogue;
    engine::Survey survey;
    engine::CartAdvice advice;
    engine::ReadAgain again;

    Made() {
        survey.crossings.resize(1);
        survey.crossings[0].name = "Door sill";
        survey.carts.resize(3);
        survey.carts[0].name = "Rack", survey.carts[1].name = "Bin", survey.carts[2].name = "Cage";
        advice.ranked.resize(1);
        again.draws = 2000;
        again.seed = 9;
        again.stays_first = 0.58;
        again.holds = 1.0;
        again.nothing_holds = 0.001;
        again.others = {{{1, 0, 0, engine::Preparation::as_supplied}, 0.3}};
        again.readings = {{{Field::crossing_rise, 0, 0}, true, 0.0, 0.04, 0.65},
                          {{Field::cart_push_rate, 0, 0}, false, 0.001, 0.002, 0.0}};
        again.least_share = 0.012;
        again.together = 0.35;
        engine::MissingReading rise{{Field::crossing_rise, 0, 0}, 0.0, 0.04, {}};
        rise.ranges.push_back({0.0, 0.01, {false, {}, Verdict::fits_with_conditions}, false});
        rise.ranges.push_back({0.01, 0.04, {true, {}, Verdict::does_not_fit}, true});
        again.missing.push_back(rise);
        again.not_sampled = {{Field::crossing_kind, 0, 0}};
    }
};

bool has_hole(const std::string& text) {
    return text.find('<' + std::string("again")) != std::string::npos || text.find("<site") != std::string::npos ||
           text.find("<unit") != std::string::npos || text.find('?') != std::string::npos || text.empty();
}

engine::ServedCart served(std::uint16_t cart, std::uint32_t wheel, Verdict verdict, double use) {
    engine::ServedCart row;
    row.cart = cart;
    row.served = true;
    row.candidate.wheel = wheel;
    row.verdict = verdict;
    row.own_verdict = Verdict::fits;
    row.worst_use = use;
    row.own_use = 0.5;
    return row;
}

}  // namespace

TEST_CASE("readings to take again: what was found is what is said", "[app][text]") {
    const Made made;
    for (const char* code : {"en", "es"}) {
        const auto words = app::Language::load(code);
        REQUIRE(words);
        const app::TextContext context{*words, app::UnitSystem::si, made.survey, made.catalogue, made.tables};
        const app::ReadAgainText text = app::read_again_text(made.again, made.advice, context);
        std::vector<std::string> lines{text.headline};
        for (const auto* more : {&text.answers, &text.readings, &text.notes, &text.missing.front().lines}) {
            lines.insert(lines.end(), more->begin(), more->end());
        }
        for (const std::string& line : lines) {
            INFO(line);
            CHECK_FALSE(has_hole(line));
        }
        CHECK(text.headline.find("58") != std::string::npos);
        REQUIRE(text.answers.size() == 3);
        CHECK(text.answers[0].find("100") != std::string::npos);
        CHECK(text.answers[1].find("<1") != std::string::npos);  // seldom is not never
        CHECK(text.answers[2].find("30") != std::string::npos);
        REQUIRE(text.readings.size() == 2);  // the one without a share is not named
        CHECK(text.readings[0].find("Door sill") != std::string::npos);
        CHECK(text.readings[0].find("65") != std::string::npos);
        CHECK(text.readings[1].find("35") != std::string::npos);
        REQUIRE(text.missing.front().lines.size() == 2);
        CHECK(text.missing.front().lines[1].find("10\u00a0mm") != std::string::npos);
        CHECK(text.missing.front().lines[1].find(words->get("again.answer_nothing")) != std::string::npos);
        CHECK(text.notes.back().find("9") != std::string::npos);
    }
}

TEST_CASE("readings to take again: where nothing holds", "[app][text]") {
    Made made;
    made.advice.ranked.clear();
    made.advice.nothing_holds = true;
    made.again.others.clear();
    const auto words = app::Language::load("en");
    REQUIRE(words);
    const app::TextContext context{*words, app::UnitSystem::si, made.survey, made.catalogue, made.tables};
    const app::ReadAgainText text = app::read_again_text(made.again, made.advice, context);
    CHECK(text.headline == "Still nothing holds in 58 of 100 draws of the readings inside their tolerances.");
    CHECK(text.answers.empty());
    CHECK(app::show_reading(Field::cart_push_rate, 0.01, context).find("36") == 0);  // an hour
}

TEST_CASE("site: who is served by what, and who loses", "[app][text]") {
    const Made made;
    engine::SiteAdvice site;
    site.nothing_holds = {2};
    site.wheels.own = 3;
    site.wheels.fewest.kinds = {4, 7};
    site.wheels.fewest.carts = {served(0, 4, Verdict::fits, 0.5), served(1, 7, Verdict::fits, 0.75)};
    engine::KindSet one;
    one.kinds = {4};
    one.carts = {served(0, 4, Verdict::fits, 0.5), served(1, 4, Verdict::fits_with_conditions, 0.9)};
    site.wheels.fewer = {one};
    const auto words = app::Language::load("en");
    REQUIRE(words);
    const app::TextContext context{*words, app::UnitSystem::si, made.survey, made.catalogue, made.tables};
    const app::SiteText text = app::site_text(site, context);
    REQUIRE(text.sets.size() == 2);
    CHECK(text.sets[0].title.find("2 kinds of wheel") == 0);
    CHECK(text.sets[0].lines == std::vector<std::string>{made.catalogue.wheels[4].description + ": Rack",
                                                         made.catalogue.wheels[7].description + ": Bin"});
    CHECK(text.sets[1].title == "With one kind of wheel:");
    CHECK(text.sets[1].lines == std::vector<std::string>{"Bin: Fits with conditions instead of Fits."});
    CHECK(text.nothing_holds == "Nothing holds yet for: Cage.");
}
