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
    {"push", {app::Screen::push, 0}},         {"what_if", {app::Screen::what_if, 1}},
    {"damage", {app::Screen::damage, 0}},     {"hand_over", {app::Screen::hand_over, 0}},
    {"setup", {app::Screen::setup, 0}},       {"about", {app::Screen::about, 0}},
    {"places", {app::Screen::places, 0}},     {"plan", {app::Screen::plan, 0}},
};

/// Sheets that lie over a screen while a visit is built.
struct Sheet {
    const char* name;
    app::Pick pick;
};
constexpr Sheet sheets[] = {
    {"pick_room", {app::PickKind::new_room, 0, 0}},      {"pick_cart", {app::PickKind::new_cart, 0, 0}},
    {"pick_washed", {app::PickKind::new_washing, 0, 0}}, {"pick_from", {app::PickKind::crossing_from, 0, 0}},
    {"pick_to", {app::PickKind::crossing_to, 0, 0}},     {"pick_end", {app::PickKind::end_to, 0, 0}},
    {"pick_way", {app::PickKind::stop_crossing, 0, 0}},
};

void build(AppHost& host, app::BuildAction action) {
    host.shell().act(app::Action(std::move(action)));
}

/// No finger can hit two things at once.
void check_overlaps(const ui::HitMap& screen) {
    std::vector<const ui::Target*> live;
    for (const ui::Target& target : screen.targets()) {
        if (target.enabled && !target.covered && !target.overscan && !target.visible.empty()) live.push_back(&target);
    }
    for (std::size_t i = 0; i < live.size(); ++i) {
        for (std::size_t k = i + 1; k < live.size(); ++k) {
            const ui::Rect both = live[i]->visible.intersected(live[k]->visible);
            INFO(live[i]->id << " and " << live[k]->id);
            if (live[k]->id == "toast.action" && !both.empty()) {
                CHECK(screen.at(both.center()) == live[k]);  // it lies over the screen and takes the finger
                continue;
            }
            CHECK((both.empty() || both.width() < 1 || both.height() < 1));
        }
    }
}

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
        check_overlaps(host.driver().screen());
        CHECK(host.shell().describe().size() > 20);
    }
    host.shell().act(app::GoTo{{app::Screen::visits, 0}});
    host.run("wait 0.1\nshot visits.png\n");
    check_targets(host.driver().screen(), metrics);
    check_overlaps(host.driver().screen());
}

TEST_CASE("what builds a visit has whole texts and targets for gloves, in both languages", "[screens]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    const std::string language = GENERATE("en", "es");
    AppHost host(size.first, size.second);
    ui::FrameInput input;
    input.width = size.first;
    input.height = size.second;
    const ui::Metrics metrics(input, {});
    host.run("set language " + language + "\n");
    const auto look = [&](const std::string& name) {
        host.run("wait 0.1\nshot " + language + "-" + name + ".png\n");
        INFO(name << " at " << size.first << " x " << size.second << " in " << language);
        check_targets(host.driver().screen(), metrics);
        check_overlaps(host.driver().screen());
    };
    host.shell().act(app::GoTo{{app::Screen::plan, 0}});
    for (const Sheet& sheet : sheets) {
        build(host, app::OpenPick{sheet.pick});
        look(sheet.name);
    }
    build(host, app::ClosePick{});
    build(host, app::OpenCastors{0});
    look("castors");
    build(host, app::CloseCastors{});
    // An empty visit: every screen says what comes next.
    build(host, app::NewVisit{});
    for (const app::Screen screen :
         {app::Screen::about, app::Screen::overview, app::Screen::places, app::Screen::plan, app::Screen::route,
          app::Screen::loads, app::Screen::washing, app::Screen::answer}) {
        host.shell().act(app::GoTo{{screen, 0}});
        look(std::string("empty-") + app::screen_name(screen));
    }
    // A route that waits for a crossing, and one that waits for a choice.
    build(host, app::AddRoom{"Freezer"});
    build(host, app::AddRoom{"Dock"});
    build(host, app::AddCart{"Tray rack"});
    look("cart-new");
    build(host, app::AppendStop{0, 0});
    build(host, app::AppendStop{0, 1});
    host.shell().act(app::GoTo{{app::Screen::plan, 0}});
    look("plan-no_way");
    build(host, app::AddCrossing{0, 1});
    look("crossing-new");
    build(host, app::AddCrossing{0, 1});
    build(host, app::AppendStop{0, 0});
    build(host, app::ClosePick{});
    host.shell().act(app::GoTo{{app::Screen::plan, 0}});
    look("plan-several_ways");
    build(host, app::AddWashing{"Foam", 0});
    look("washing-new");
    build(host, app::DeletePart{app::Part::room, 0});
    look("deleted");
    host.shell().act(app::GoTo{{app::Screen::overview, 0}});
    look("overview-begun");
    host.shell().act(app::GoTo{{app::Screen::visits, 0}});
    look("visits-two");
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

TEST_CASE("what lies behind the answer is whole in Spanish and in every theme", "[screens][spanish]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    ui::FrameInput input;
    input.width = size.first;
    input.height = size.second;
    const ui::Metrics metrics(input, {});
    const std::pair<const char*, const char*> looks[] = {{"light", "es"}, {"sun", "en"}, {"dark", "en"}};
    for (const auto& [theme, language] : looks) {
        host.run(std::string("theme ") + theme + "\nset language " + language + "\n");
        for (const Stop& stop : stops) {
            const app::Screen screen = stop.spot.screen;
            if (screen != app::Screen::answer && screen != app::Screen::push && screen != app::Screen::what_if &&
                screen != app::Screen::damage && screen != app::Screen::hand_over && screen != app::Screen::crossing)
                continue;
            host.shell().act(app::GoTo{stop.spot});
            host.run(std::string("wait 0.1\nshot ") + stop.name + "-" + theme + ".png\n");
            INFO(stop.name << " at " << size.first << " x " << size.second << ", " << theme << ", " << language);
            if (std::string(theme) == "light") check_targets(host.driver().screen(), metrics);
        }
    }
}
