// Every screen at three sizes: pictures to look at, texts that are not cut, targets that a glove can hit.
#include "app/ui/metrics.hpp"
#include "tests/app_screens/app_host.hpp"

using namespace sillwalk;
using test::AppHost;

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
    {"setup", {app::Screen::setup, 0}},
};

void check_targets(const ui::HitMap& screen, const ui::Metrics& metrics) {
    for (const ui::Target& target : screen.targets()) {
        if (target.covered || target.overscan || target.visible.empty()) continue;
        INFO(target.id << " '" << target.label << "' " << target.rect.width() << " x " << target.rect.height());
        const float least = metrics.target_size(target.target_class) - 0.6F;
        CHECK(target.rect.width() >= least);
        CHECK(target.rect.height() >= least);
        CHECK_FALSE(target.label_clipped);
    }
    for (const ui::TextItem& text : screen.texts()) {
        // Names that a person gave may be longer than any screen; the bar shortens them.
        if (text.id == "top.title" || text.id == "top.subtitle") continue;
        INFO("text '" << text.text << "'");
        CHECK_FALSE(text.clipped);
        CHECK(text.text.find('<') == std::string::npos);  // a word that is missing shows as <key>
    }
}

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
        CHECK(host.shell().describe().size() > 20);
    }
    host.shell().act(app::GoTo{{app::Screen::visits, 0}});
    host.run("wait 0.1\nshot visits.png\n");
    check_targets(host.driver().screen(), metrics);
}
