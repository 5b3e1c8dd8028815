// The tablet is turned while it is used: nothing that was begun is lost.
#include "tests/app_screens/app_host.hpp"

#include <cstdlib>

using namespace sillwalk;
using test::AppHost;

namespace {

/// The rows of a list that is scrolled, in order, and the first that is in view.
struct InView {
    std::vector<std::string> rows;
    std::ptrdiff_t first = -1;
};

InView in_view(const ui::HitMap& screen, const std::string& list) {
    InView out;
    const ui::ScrollRegion* region = screen.find_scroll(list);
    if (region == nullptr) return out;
    for (const ui::Target& target : screen.targets()) {
        if (target.scroll_area != list || target.overscan) continue;
        if (out.first < 0 && target.rect.center().y >= region->view.y0)
            out.first = static_cast<std::ptrdiff_t>(out.rows.size());
        out.rows.push_back(target.id);
    }
    return out;
}

std::ptrdiff_t position(const InView& view, const std::string& id) {
    for (std::size_t i = 0; i < view.rows.size(); ++i) {
        if (view.rows[i] == id) return static_cast<std::ptrdiff_t>(i);
    }
    return -1;
}

}  // namespace

TEST_CASE("A19 turning the tablet in the middle of an entry keeps the keys and the undo stack", "[acceptance]") {
    AppHost host;
    host.run(R"(
tap route.crossing.freezer-door
tap reading.crossing_rise
tap sheet.key.6
tap sheet.done
expect reading.crossing_rise contains "6"
tap reading.crossing_gap
tap sheet.key.2
expect sheet.typed is "2"
size 800 1280
expect sheet.typed is "2"
tap sheet.key.4
expect sheet.typed is "24"
size 1280 800
expect sheet.typed is "24"
tap sheet.done
expect reading.crossing_gap contains "24"
size 800 1280
tap top.undo
expect-not reading.crossing_gap contains "24"
wait 9
size 1280 800
tap top.undo
expect reading.crossing_rise contains "19"
wait 9
tap top.redo
expect reading.crossing_rise contains "6"
wait 9
tap top.redo
expect reading.crossing_gap contains "24"
)");
}

TEST_CASE("A19 turning the tablet keeps the first row of a scrolled list in view", "[acceptance]") {
    AppHost host;
    int scrolled = 0;
    for (int i = 0; i <= static_cast<int>(app::Screen::plan); ++i) {
        host.run("size 1280 800\n");
        host.shell().act(app::GoTo{{static_cast<app::Screen>(i), 0}});
        host.run("wait 0.1\n");
        for (const ui::ScrollRegion& list : std::vector<ui::ScrollRegion>(host.driver().screen().scrolls())) {
            if (list.id == "nav.list" || list.max_offset < 150) continue;
            const InView before = in_view(host.driver().screen(), list.id);
            std::string grip;
            for (const std::string& row : before.rows) {
                const ui::Target& target = *host.driver().screen().find(row);
                if (target.visible == target.rect && target.drag == ui::DragMode::none && target.enabled) grip = row;
            }
            if (grip.empty()) continue;
            host.run("size 1280 800\ndrag " + grip + " 0 -30\n");
            const InView held = in_view(host.driver().screen(), list.id);
            if (held.first <= 0) continue;
            host.run("size 800 1280\n");
            const InView turned = in_view(host.driver().screen(), list.id);
            const std::string first = held.rows[static_cast<std::size_t>(held.first)];
            const ui::ScrollRegion* region = host.driver().screen().find_scroll(list.id);
            if (region == nullptr || position(turned, first) < 0) continue;  // upright it is another list
            ++scrolled;
            INFO(app::screen_name(static_cast<app::Screen>(i)) << ", " << list.id << ", " << first);
            const bool at_end = region->offset >= region->max_offset;
            CHECK((at_end || std::abs(position(turned, first) - turned.first) <= 1));
            host.run("size 1280 800\n");
        }
    }
    CHECK(scrolled >= 4);
}
