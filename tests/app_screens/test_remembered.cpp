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

namespace {

struct Page {
    std::string texts;
    std::vector<test::DrawnTriangle> triangles;
};

/// All pages of a look. What is remembered is drawn three times: once made, then copied.
std::vector<Page> pages_of(Viewer& viewer, const Look& look, const app::Language& language) {
    std::vector<Page> pages;
    viewer.show_whole(look, language, [&](const ui::HitMap&) {
        for (int i = 0; i < 2; ++i) (void)viewer.again(look, language);
        const ui::FrameOutput& frame = viewer.again(look, language);
        pages.push_back({frame.hit_map->describe(), test::drawn_triangles(frame)});
    });
    return pages;
}

}  // namespace

TEST_CASE("A17 a screen copied from the frame before looks to the pixel like one that is made anew",
          "[screens][property]") {
    const app::Language language = test::language_of("en");
    for (const test::Glass& glass : test::all_glass) {
        Viewer anew(glass);
        Viewer remembers(glass);
        std::uint64_t stamp = 0;
        for (const Look& look : test::every_screen()) {
            INFO(glass.name << ", " << look.name);
            const std::vector<Page> wanted = pages_of(anew, look, language);
            remembers.remember(++stamp);
            const std::vector<Page> copied = pages_of(remembers, look, language);
            REQUIRE(copied.size() == wanted.size());
            for (std::size_t page = 0; page < wanted.size(); ++page) {
                INFO("page " << page + 1);
                CHECK(copied[page].texts == wanted[page].texts);
                CHECK(test::first_difference(copied[page].triangles, wanted[page].triangles) == "");
            }
        }
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
