// Golden pictures, drawn without a graphics card: twelve screens in three themes, both ways up. Small: drawn at half
// the density, every golden pixel is the mean of four by four.
//   SILLWALK_RETAKE=1 ctest --test-dir build/asan -R "A22 "      takes them again
#include "tests/app_screens/drawn_text.hpp"
#include "tests/app_screens/screen_walk.hpp"

#include <cmath>

using namespace sillwalk;
using test::Look;
using test::Viewer;

namespace {

constexpr const char* golden_screens[] = {"overview", "route",       "room", "crossing", "cart",   "washing_step",
                                          "answer",   "temperature", "push", "what_if",  "damage", "hand_over"};
constexpr test::Glass both_ways[] = {{"wide", 640, 400, 2.95F}, {"upright", 400, 640, 2.95F}};
constexpr ui::ThemeName golden_themes[] = {ui::ThemeName::light, ui::ThemeName::sun, ui::ThemeName::dark};

platforms::Image reduced_to_quarter(const platforms::Image& image) {
    platforms::Image out(image.width / 4, image.height / 4);
    for (int y = 0; y < out.height; ++y) {
        for (int x = 0; x < out.width; ++x) {
            for (int channel = 0; channel < 4; ++channel) {
                int sum = 0;
                for (int k = 0; k < 16; ++k) {
                    const int from = ((y * 4 + k / 4) * image.width + x * 4 + k % 4) * 4 + channel;
                    sum += image.rgba[static_cast<std::size_t>(from)];
                }
                out.rgba[static_cast<std::size_t>((y * out.width + x) * 4 + channel)] =
                    static_cast<std::uint8_t>((sum + 8) / 16);
            }
        }
    }
    return out;
}

/// Pixels of which any channel differs by more than 8 of 255.
double share_that_differs(const platforms::Image& a, const platforms::Image& b) {
    if (a.width != b.width || a.height != b.height) return 1;
    std::size_t differing = 0;
    for (std::size_t i = 0; i < a.rgba.size(); i += 4) {
        bool differs = false;
        for (std::size_t k = i; k < i + 3; ++k) differs = differs || std::abs(a.rgba[k] - b.rgba[k]) > 8;
        differing += differs ? 1 : 0;
    }
    return 4 * static_cast<double>(differing) / static_cast<double>(a.rgba.size());
}

const Look& look_named(const std::vector<Look>& looks, const std::string& name) {
    for (const Look& look : looks) {
        if (look.name == name) return look;
    }
    FAIL("no screen is called " << name);
    return looks.front();
}

}  // namespace

TEST_CASE("A22 twelve screens in three themes, both ways up, look as they did, and draw the same twice",
          "[acceptance]") {
    const bool retake = std::getenv("SILLWALK_RETAKE") != nullptr;
    const std::filesystem::path folder = std::filesystem::path(SILLWALK_TEST_DATA) / "goldens";
    const std::vector<Look> looks = test::every_screen();
    const app::Language language = test::language_of("en");
    for (const test::Glass& glass : both_ways) {
        for (const ui::ThemeName theme : golden_themes) {
            ui::UiSettings settings;
            settings.theme = theme;
            Viewer viewer(glass, settings);
            Viewer again(glass, settings);
            for (const char* screen : golden_screens) {
                const std::string file = std::string(screen) + "-" + ui::theme_name(theme) + "-" + glass.name + ".png";
                const Look& look = look_named(looks, screen);
                viewer.show(look, language);
                again.show(look, language);
                INFO(file);
                CHECK(test::draw_hash(viewer.last()) == test::draw_hash(again.last()));
                const platforms::Image taken = reduced_to_quarter(platforms::render(viewer.last()));
                const std::string path = (folder / file).string();
                if (retake) REQUIRE(platforms::write_png(taken, path));
                const auto golden = platforms::read_png(path);
                REQUIRE(golden);
                CHECK(share_that_differs(*golden, taken) <= 0.001);
            }
        }
    }
}
