// What is kept from frame to frame, so that a frame is quick, must not be seen.
#include "tests/app_screens/drawn_text.hpp"
#include "tests/app_screens/screen_walk.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using test::Look;
using test::Viewer;

TEST_CASE("A17 a screen that remembers says the same on every page as one that is made anew with each frame",
          "[screens][property]") {
    const app::Language language = test::language_of("en");
    Viewer anew(test::all_glass[0]);
    Viewer remembers(test::all_glass[0]);
    std::uint64_t stamp = 0;
    for (const Look& look : test::every_screen()) {
        INFO(look.name);
        std::vector<std::string> pages;
        anew.show_whole(look, language, [&](const ui::HitMap& page) { pages.push_back(page.describe()); });
        remembers.remember(++stamp);
        std::size_t page = 0;
        remembers.show_whole(look, language, [&](const ui::HitMap& now) {
            REQUIRE(page < pages.size());
            CHECK(now.describe() == pages[page++]);
        });
        CHECK(page == pages.size());
    }
}

TEST_CASE("A17 of a long list in a screen only what is near the view is built", "[screens]") {
    const app::Language language = test::language_of("en");
    for (const Look& look : test::every_screen()) {
        if (look.name != "places") continue;
        Look big = look;
        for (int i = 0; i < 300; ++i) {
            auto& crossings = big.model.visit->survey.crossings;
            crossings.push_back(crossings.front());
        }
        Viewer viewer(test::all_glass[0]);
        viewer.remember(1);
        viewer.show(big, language);
        viewer.show(big, language);  // the heights are known now
        std::size_t rows = 0;
        for (const ui::Target& target : viewer.last().hit_map->targets()) {
            rows += target.id.rfind("places.crossing.", 0) == 0 ? 1U : 0U;
        }
        CHECK(rows >= 5);
        CHECK(rows <= 16);
        return;
    }
    FAIL("there is no look of the places");
}
