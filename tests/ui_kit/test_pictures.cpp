/// Pictures without a graphics card: the same twice, shapes apart without colour, nothing left behind by a finger.

#include "app/ui/draw/crossing_section.hpp"
#include "app/ui/draw/limit_bars.hpp"
#include "app/ui/draw/margin_scale.hpp"
#include "app/ui/draw/outcome_mark.hpp"
#include "app/ui/draw/room_box.hpp"
#include "app/ui/painter.hpp"
#include "platforms/common/software_renderer.hpp"
#include "tests/ui_kit/touch_bench.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using test::TouchBench;

namespace {

platforms::Image picture_of(ui::ThemeName theme, int width, int height, const std::function<void(ui::Ui&)>& draw) {
    ui::Ui kit;
    ui::FrameInput input;
    input.width = static_cast<float>(width);
    input.height = static_cast<float>(height);
    ui::UiSettings settings;
    settings.theme = theme;
    settings.px_per_mm = 5.9F;
    kit.begin(input, settings);
    draw(kit);
    return platforms::render(kit.end());
}

double grey(const platforms::Image& image, std::size_t pixel) {
    const std::uint8_t* p = &image.rgba[pixel * 4];
    return 0.299 * p[0] + 0.587 * p[1] + 0.114 * p[2];
}

/// Pixels of a grey picture that stand out from the ground.
std::vector<bool> mask(const platforms::Image& image) {
    const double ground = grey(image, 0);
    std::vector<bool> out(image.rgba.size() / 4);
    for (std::size_t i = 0; i < out.size(); ++i) out[i] = std::abs(grey(image, i) - ground) > 60;
    return out;
}

double overlap(const std::vector<bool>& a, const std::vector<bool>& b) {
    double both = 0;
    double any = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        both += a[i] && b[i] ? 1 : 0;
        any += a[i] || b[i] ? 1 : 0;
    }
    return any > 0 ? both / any : 1;
}

}  // namespace

TEST_CASE("the same frame gives the same bytes", "[picture]") {
    TouchBench one;
    TouchBench two;
    one.app.screen = two.app.screen = 0;
    one.frames(3);
    two.frames(3);
    CHECK(platforms::render(one.out).rgba == platforms::render(two.out).rgba);
}

TEST_CASE("A9 three frames after the finger has left nothing shows where it was, at any frame rate", "[picture]") {
    TouchBench bench(GENERATE(4.0, 15.0, 30.0, 60.0));
    bench.app.screen = 0;
    bench.frames(3);
    const auto before = platforms::render(bench.out).rgba;
    const ui::Point at = bench.middle("crossing.rise");
    bench.down(at);
    bench.frames(static_cast<int>(0.1 / bench.frame_seconds) + 1);  // a shorter press is shown for 80 ms
    CHECK(platforms::render(bench.out).rgba != before);             // the press shows
    bench.up(at);
    bench.frames(3);
    CHECK(platforms::render(bench.out).rgba == before);
    CHECK(bench.count("crossing.rise") == 1);
}

TEST_CASE("A24 the focus ring shows in every frame with the keyboard and goes with a touch", "[picture]") {
    TouchBench bench;
    bench.app.screen = 0;
    bench.frames(3);
    const auto before = platforms::render(bench.out).rgba;
    auto last = before;
    for (int i = 0; i < 6; ++i) {
        bench.key(ui::Key::tab);
        const auto now = platforms::render(bench.out).rgba;
        CHECK(now != before);
        CHECK(now != last);
        last = now;
    }
    bench.down({640, 660});
    bench.up({640, 660});
    bench.settle();
    bench.frames(8);
    CHECK(platforms::render(bench.out).rgba == before);
}

TEST_CASE("A6 the five outcomes differ in shape, without colour", "[picture]") {
    for (const ui::ThemeName name : {ui::ThemeName::light, ui::ThemeName::sun, ui::ThemeName::dark}) {
        std::vector<std::vector<bool>> masks;
        for (const ui::Badge state :
             {ui::Badge::holds, ui::Badge::tight, ui::Badge::fails, ui::Badge::not_known, ui::Badge::by_eye}) {
            const ui::Theme& t = ui::theme(name);
            masks.push_back(mask(picture_of(name, 60, 60, [&](ui::Ui& kit) {
                ui::draw_outcome_mark(kit.canvas(), {30, 30}, 24, state, t.text, t.background);
            })));
        }
        for (std::size_t i = 0; i < masks.size(); ++i) {
            for (std::size_t j = i + 1; j < masks.size(); ++j) {
                INFO(ui::theme_name(name) << " " << i << " " << j);
                CHECK(overlap(masks[i], masks[j]) < 0.8);
            }
        }
    }
}

TEST_CASE("filled shapes cover the area that geometry says", "[picture]") {
    const ui::Color black = ui::rgb(0);
    const auto ink = [&](const std::function<void(ui::Canvas&)>& draw) {
        const auto image = picture_of(ui::ThemeName::light, 200, 200, [&](ui::Ui& kit) { draw(kit.canvas()); });
        const double ground = grey(image, 0);
        double area = 0;
        for (std::size_t i = 0; i < image.rgba.size() / 4; ++i) area += 1 - grey(image, i) / ground;
        return area;
    };
    // Euclid: rectangle, circle, triangle.
    CHECK(ink([&](ui::Canvas& c) { c.fill_rect({20, 30, 120, 90}, black); }) == Approx(6000).epsilon(0.01));
    CHECK(ink([&](ui::Canvas& c) { c.fill_circle({100, 100}, 60, black); }) == Approx(3.14159265 * 3600).epsilon(0.02));
    CHECK(ink([&](ui::Canvas& c) {
              const ui::Point corners[] = {{20, 180}, {180, 180}, {100, 20}};
              c.fill_polygon(corners, black);
          }) == Approx(12800).epsilon(0.03));
    CHECK(ink([&](ui::Canvas& c) { c.line({20.5F, 100}, {180.5F, 100}, black, 4); }) == Approx(640).epsilon(0.03));
    CHECK(ink([&](ui::Canvas& c) {
              c.stroke_circle({100, 100}, 60, black, 6);
          }) == Approx(3.14159265 * (3600 - 54 * 54)).epsilon(0.03));
}

TEST_CASE("a wheel in a gap sinks by r minus the root of r squared less a quarter of the gap squared", "[picture]") {
    // Lowest inked row of a wheel over a gap: circle geometry, any textbook.
    const auto image = picture_of(ui::ThemeName::light, 400, 300, [](ui::Ui& kit) {
        ui::CrossingSection section;
        section.kind = ui::SectionKind::gap;
        section.gap_mm = 60;
        section.wheel_mm = 100;
        ui::draw_crossing_section(kit.canvas(), kit.theme(), {0, 0, 400, 300}, 220, 2, section);
    });
    int lowest = 0;
    for (int y = 150; y < 290; ++y) {
        if (grey(image, static_cast<std::size_t>(y) * 400 + 200) < 100)
            lowest = std::max(lowest, y * ((y < 250) ? 1 : 0));
    }
    const double radius = 100;
    const double sag = radius - std::sqrt(radius * radius - 60.0 * 60.0);
    CHECK(lowest == Approx(220 + sag).margin(3));
}

TEST_CASE("every drawing of the vocabulary marks its box in every theme", "[picture]") {
    for (const ui::ThemeName name : {ui::ThemeName::light, ui::ThemeName::sun, ui::ThemeName::dark}) {
        const auto blank = picture_of(name, 500, 260, [](ui::Ui&) {});
        const auto differs = [&](const std::function<void(ui::Ui&)>& draw) {
            return picture_of(name, 500, 260, draw).rgba != blank.rgba;
        };
        for (const auto kind : {ui::SectionKind::level, ui::SectionKind::step, ui::SectionKind::hump,
                                ui::SectionKind::ramp, ui::SectionKind::gap, ui::SectionKind::slots_along}) {
            CHECK(differs([&](ui::Ui& kit) {
                ui::CrossingSection s{.kind = kind, .rise_mm = 19, .gap_mm = 32, .slope_percent = 8, .slot_mm = 38};
                s.edge = ui::Badge::fails;
                ui::draw_crossing_section(kit.canvas(), kit.theme(), {0, 0, 500, 260}, 200, 1, s);
            }));
        }
        CHECK(differs([](ui::Ui& kit) {
            ui::draw_room_box(kit.canvas(), kit.theme(), {20, 20, 230, 170}, {.name = "Dock"});
        }));
        CHECK(differs([](ui::Ui& kit) {
            const ui::LimitBar bars[] = {{"Onto sill", 1570, 1400, 1700, "1 570 N", ui::Badge::fails, "Fails"}};
            ui::draw_limit_bars(kit.canvas(), kit.theme(), {0, 0, 500, 260},
                                {.bars = bars, .limit = 450, .limit_label = "450 N"});
        }));
        CHECK(differs([](ui::Ui& kit) {
            const ui::MarginScale scale{20, 480};
            ui::draw_margin_mark(kit.canvas(), kit.theme(), scale, 100, {.margin = 0.07, .low = 0.02, .high = 0.12});
        }));
    }
}

TEST_CASE("the font draws every sign that measuring needs", "[picture]") {
    ui::Painter painter("Größe Łódź");
    ui::Textures textures;
    painter.begin({}, ui::Metrics({}, {}), textures);
    CHECK(painter.missing("−28.5 °C ± ≤ ≥ ≈ × µ ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ Größe Łódź ñ á é í ó ú ¿ ¡ … · – “”").empty());
    CHECK(painter.missing("雪") == std::vector<char32_t>{0x96EA});
    (void)painter.end();
}

TEST_CASE("a picture written as PNG reads back the same", "[picture]") {
    platforms::Image image(3, 2);
    for (std::size_t i = 0; i < image.rgba.size(); ++i) image.rgba[i] = static_cast<std::uint8_t>(i * 9);
    const std::string path = "ui_kit_test.png";
    REQUIRE(platforms::write_png(image, path).has_value());
    const auto back = platforms::read_png(path);
    std::remove(path.c_str());
    REQUIRE(back.has_value());
    CHECK(back->rgba == image.rgba);
    CHECK_FALSE(platforms::write_png(image, "/no/such/folder/x.png").has_value());
}
