// Parts of a screen that are copied from the frame before: when they are, and when they must not be.
#include "app/ui/ui.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;

namespace {

/// A part that stays and a list of ten blocks; counts what is built.
struct Page {
    ui::Ui kit{"Asked blocks 0123456789"};
    ui::FrameInput input;
    ui::FrameOutput out;
    std::uint64_t content = 1;
    int part_builds = 0, block_builds = 0, taps = 0;
    double wake = -1;

    Page() {
        input.now = 10;
        for (int i = 0; i < 3; ++i) frame();
    }
    void frame() {
        input.now += 1.0 / 60;
        for (ui::PointerEvent& event : input.pointers) event.time = input.now;
        kit.begin(input, {});
        kit.set_content(content);
        kit.kept("part", [this] {
            ++part_builds;
            if (wake >= 0) kit.wake_in(wake);
            const auto column = kit.column({20, 20, 400, 100});
            if (kit.button("asked", "Asked")) ++taps;
        });
        {
            const auto list = kit.scroll("list", {500, 20, 900, 420});
            for (int i = 0; i < 10; ++i) {
                kit.block([this, i] {
                    ++block_builds;
                    if (kit.row("block." + std::to_string(i), "Block " + std::to_string(i))) ++taps;
                });
            }
        }
        out = kit.end();
        input.pointers.clear();
        input.wheels.clear();
        input.keys.clear();
    }
    void finger(ui::PointerPhase phase, const std::string& id) {
        input.pointers.push_back({phase, 1, out.hit_map->find(id)->visible.center()});
        frame();
    }
    void forget_counts() { part_builds = block_builds = 0; }
};

}  // namespace

TEST_CASE("a part of the screen is built once while nothing changes", "[kit]") {
    Page page;
    const std::string said = page.out.hit_map->describe();
    page.forget_counts();
    for (int i = 0; i < 5; ++i) page.frame();
    CHECK(page.part_builds == 0);
    CHECK(page.block_builds == 0);
    CHECK(page.out.hit_map->describe() == said);
    page.content = 2;
    page.frame();
    CHECK(page.part_builds == 1);
    CHECK(page.block_builds > 5);
}

TEST_CASE("a copied part is tapped like one that was built", "[kit]") {
    Page page;
    page.frame();
    page.finger(ui::PointerPhase::down, "asked");
    page.forget_counts();
    page.finger(ui::PointerPhase::move, "asked");
    CHECK(page.part_builds == 1);  // it is shown as pressed
    page.finger(ui::PointerPhase::up, "asked");
    for (int i = 0; i < 20; ++i) page.frame();
    CHECK(page.taps == 1);
    page.finger(ui::PointerPhase::down, "block.2");
    page.finger(ui::PointerPhase::up, "block.2");
    for (int i = 0; i < 20; ++i) page.frame();
    CHECK(page.taps == 2);
    page.forget_counts();
    page.frame();
    CHECK(page.part_builds + page.block_builds == 0);
}

TEST_CASE("a part under the keyboard is built, the others are copied", "[kit]") {
    Page page;
    page.input.keys.push_back({ui::Key::tab, false});
    page.frame();
    for (int i = 0; i < 3; ++i) page.frame();
    page.forget_counts();
    page.frame();
    CHECK(page.part_builds == 1);
    CHECK(page.block_builds == 0);
    page.input.keys.push_back({ui::Key::enter, false});
    page.frame();
    CHECK(page.taps == 1);
}

TEST_CASE("a list that moves is copied block by block, and its targets move with it", "[kit]") {
    Page page;
    page.frame();
    const ui::Rect before = page.out.hit_map->find("block.2")->rect;
    page.forget_counts();
    page.input.wheels.push_back({{700, 200}, {0, -30}});
    page.frame();
    page.frame();
    CHECK(page.out.hit_map->find_scroll("list")->offset == 30);
    CHECK(page.out.hit_map->find("block.2")->rect == before.moved(0, -30));
    CHECK(page.block_builds <= 1);  // only what came near
    CHECK(page.part_builds == 0);
    // What is cut by the edge of the list can be touched only where it is seen.
    const ui::Target& first = *page.out.hit_map->find("block.0");
    CHECK(first.visible.y0 == 20);
    CHECK(first.rect.y0 < 20);
}

TEST_CASE("what will look otherwise at some time is built with each frame until then", "[kit]") {
    Page page;
    page.wake = 0.5;
    page.content = 2;
    page.frame();
    page.forget_counts();
    page.frame();
    page.frame();
    CHECK(page.part_builds == 2);
    page.wake = -1;
    page.frame();
    page.forget_counts();
    page.frame();
    CHECK(page.part_builds == 0);
}

TEST_CASE("another size of the screen or another look builds all anew", "[kit]") {
    Page page;
    page.frame();
    page.forget_counts();
    page.input.width = 1000;
    page.frame();
    CHECK(page.part_builds == 1);
    page.frame();
    page.frame();
    page.forget_counts();
    page.input.px_per_mm = 6;
    page.frame();
    CHECK(page.part_builds == 1);
}
