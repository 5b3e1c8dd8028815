// Every screen at three sizes: pictures to look at, texts that are not cut, targets that a glove can hit.
#include "app/ui/metrics.hpp"
#include "tests/app_screens/screen_checks.hpp"
#include "tests/app_screens/screen_walk.hpp"

using namespace sillwalk;
using test::AppHost;
using test::check_overlaps;
using test::check_targets;

namespace {

struct Stop {
    const char* name;
    app::Spot spot;
};
constexpr Stop stops[] = {
    {"overview", {app::Screen::overview, 0}}, {"route", {app::Screen::route, 0}},
    {"room", {app::Screen::room, 0}},         {"crossing", {app::Screen::crossing, 1}},
    {"loads", {app::Screen::loads, 0}},       {"cart", {app::Screen::cart, 0}},
    {"washing", {app::Screen::washing, 0}},   {"washing_step", {app::Screen::washing_step, 0}},
    {"answer", {app::Screen::answer, 0}},     {"temperature", {app::Screen::temperature, 0}},
    {"push", {app::Screen::push, 0}},         {"what_if", {app::Screen::what_if, 1}},
    {"damage", {app::Screen::damage, 0}},     {"hand_over", {app::Screen::hand_over, 0}},
    {"setup", {app::Screen::setup, 0}},       {"about", {app::Screen::about, 0}},
    {"places", {app::Screen::places, 0}},     {"plan", {app::Screen::plan, 0}},
    {"evidence", {app::Screen::evidence, 0}},
};

}  // namespace

TEST_CASE("every screen has whole texts and targets for gloves", "[screens]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    host.run("expect nav.route shown\n");
    ui::FrameInput input;
    input.width = size.first;
    input.height = size.second;
    const ui::Metrics metrics(input, {});
    for (const Stop& stop : stops) {
        host.shell().act(app::GoTo{stop.spot});
        host.run(std::string("wait 0.1\nshot ") + stop.name + ".png\n");
        INFO(stop.name << " at " << size.first << " x " << size.second);
        check_targets(host.driver().screen(), metrics);
        check_overlaps(host.driver().screen());
        CHECK(host.shell().describe().size() > 20);
    }
    host.shell().act(app::GoTo{{app::Screen::visits, 0}});
    host.run("wait 0.1\nshot visits.png\n");
    check_targets(host.driver().screen(), metrics);
    check_overlaps(host.driver().screen());
}

TEST_CASE("every picture has its numbers as a table, one tap away", "[screens][table]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    ui::FrameInput input;
    input.width = size.first;
    input.height = size.second;
    const ui::Metrics metrics(input, {});
    // On a narrow screen the checks of the answer are rows from the start.
    for (const char* name : {"answer", "temperature", "push"}) {
        const bool rows_already = metrics.compact() && std::string(name) == "answer";
        const app::Screen screen = std::string(name) == "answer"        ? app::Screen::answer
                                   : std::string(name) == "temperature" ? app::Screen::temperature
                                                                        : app::Screen::push;
        host.shell().act(app::ShowTable{false});
        host.shell().act(app::GoTo{{screen, 0}});
        host.run("wait 0.1\n");
        if (!rows_already) host.run("tap chart.table\n");
        host.run(std::string("shot ") + name + "-table.png\n");
        INFO(name << " at " << size.first << " x " << size.second);
        check_targets(host.driver().screen(), metrics);
        if (screen == app::Screen::answer) host.run("expect check.step contains \"mm of\"\n");
        if (screen == app::Screen::temperature) host.run("screen contains \"core\"\n");
        if (screen == app::Screen::push) host.run("expect push.row.0 contains \"N\"\n");
    }
}

// A tool, not a check: SILLWALK_SHOTS=folder SILLWALK_LOOK="es 130 dark" test_app_screens "[pictures]"
TEST_CASE("pictures of every screen and sheet", "[.pictures]") {
    const char* folder = std::getenv("SILLWALK_SHOTS");
    const char* look = std::getenv("SILLWALK_LOOK");
    REQUIRE(folder);
    std::istringstream wanted(look ? look : "en 100 light");
    std::string code;
    std::string theme;
    ui::UiSettings settings;
    wanted >> code >> settings.text_percent >> theme;
    settings.theme = theme == "sun" ? ui::ThemeName::sun : theme == "dark" ? ui::ThemeName::dark : ui::ThemeName::light;
    const app::Language language = test::language_of(code);
    const std::vector<test::Look> looks = test::every_screen();
    for (const test::Glass& glass : test::all_glass) {
        test::Viewer viewer(glass, settings);
        const std::filesystem::path place = std::filesystem::path(folder) / glass.name;
        std::filesystem::create_directories(place);
        for (std::size_t i = 0; i < looks.size(); ++i) {
            viewer.show(looks[i], language);
            const std::string file = std::to_string(101 + i) + " " + looks[i].name + ".png";
            REQUIRE(platforms::write_png(platforms::render(viewer.last()), (place / file).string()));
        }
    }
}
