#include "engine/model/finding.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string>

using namespace sillwalk::engine;

TEST_CASE("names: checks are written as the advice schema lists them", "[finding]") {
    const char* expected[] = {"load",  "parked",   "step",      "gap",     "cold",   "heat",
                              "bond",  "chemical", "corrosion", "hygiene", "push",   "traction",
                              "floor", "bearing",  "tip",       "fit",     "static", "room"};
    for (std::size_t i = 0; i < check_count; ++i)
        CHECK(check_name(static_cast<CheckId>(i)) == std::string(expected[i]));
}

TEST_CASE("names: every statement and assumption has its own key", "[finding]") {
    std::set<std::string> keys;
    for (int i = 0; i <= static_cast<int>(Statement::room_ok); ++i)
        keys.insert(statement_key(static_cast<Statement>(i)));
    CHECK(keys.size() == static_cast<std::size_t>(Statement::room_ok) + 1);
    CHECK(keys.count("load.rating") == 1);
    CHECK(keys.count("push.crossing_rest") == 1);
    CHECK(keys.count("static.not_asked") == 1);
    keys.clear();
    for (int i = 0; i <= static_cast<int>(Assumption::practice_figure); ++i) {
        keys.insert(assumption_key(static_cast<Assumption>(i)));
    }
    CHECK(keys.size() == static_cast<std::size_t>(Assumption::practice_figure) + 1);
}

TEST_CASE("names: a reading's path is that of the survey file", "[finding]") {
    CHECK(reading_path({Field::crossing_rise, 4, 0}) == "/crossings/4/rise");
    CHECK(reading_path({Field::room_cleanroom, 1, 0}) == "/rooms/1/cleanroom_class");
    CHECK(reading_path({Field::washing_strength, 2, 0}) == "/washings/2/strength");
    CHECK(reading_path({Field::cart_stay, 3, 5}) == "/carts/3/route/5/stay");
    CHECK(reading_path({Field::cart_damage_size, 3, 1}) == "/carts/3/damage/1/size");
    CHECK(reading_path({}).empty());
}
