/// The touch rules of the interface design: what a finger does, at low frame rates too, and never by surprise.

#include "app/ui/gesture.hpp"
#include "tests/ui_kit/touch_bench.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <random>

using namespace sillwalk;
using test::TouchBench;
using ui::Point;

TEST_CASE("A7 a tap fires once, whatever the frame rate", "[gesture]") {
    const double rate = GENERATE(4.0, 15.0, 30.0, 60.0);
    TouchBench bench(rate);
    const Point at = bench.middle("row.3");
    bench.down(at);
    bench.frames(3);
    bench.up(at);
    bench.settle();
    CHECK(bench.count("row.3") == 1);
    CHECK(bench.total() == 1);
}

TEST_CASE("A7 down and up within one frame is a tap", "[gesture]") {
    TouchBench bench(GENERATE(4.0, 15.0, 30.0, 60.0));
    const Point at = bench.middle("row.4");
    bench.down(at);
    bench.up(at);
    bench.settle();
    CHECK(bench.count("row.4") == 1);
    CHECK(bench.total() == 1);
}

TEST_CASE("A7 a finger that trembles less than the slop still taps, at any frame rate", "[gesture]") {
    TouchBench bench(GENERATE(4.0, 15.0, 30.0, 60.0));
    const Point at = bench.middle("row.2");
    bench.down(at);
    bench.frames(2);
    bench.move(at + Point{5, 6});
    bench.frame();
    bench.up(at + Point{5, 6});
    bench.settle();
    CHECK(bench.count("row.2") == 1);
    CHECK(bench.offset("rows") == 0);
}

TEST_CASE("A8 a drag that starts on a row scrolls as far as the finger, and taps nothing (A7)", "[gesture]") {
    const double rate = GENERATE(4.0, 15.0, 30.0, 60.0);
    const float way = GENERATE(40.0F, 137.0F, 200.0F, 400.0F);
    TouchBench bench(rate);
    const Point at = bench.middle("row.4");
    bench.down(at);
    bench.frames(2);
    for (int i = 1; i <= 20; ++i) {
        bench.move(at - Point{0, way * static_cast<float>(i) / 20});
        bench.frame();
    }
    CHECK(bench.offset("rows") == Approx(way).margin(2));
    bench.frames(static_cast<int>(0.2 * rate) + 1);  // rests: no fling
    bench.up(at - Point{0, way});
    bench.frame();
    CHECK_FALSE(bench.out.wants_frame);
    bench.settle();
    CHECK(bench.offset("rows") == Approx(way).margin(2));
    CHECK(bench.total() == 0);
}

TEST_CASE("A8 a whole drag between two frames scrolls and taps nothing", "[gesture]") {
    TouchBench bench(4);
    const Point at = bench.middle("row.4");
    double time = bench.now + 0.01;
    bench.event(ui::PointerPhase::down, at, 1, time);
    for (int i = 1; i <= 10; ++i) {
        time += 0.01;
        bench.event(ui::PointerPhase::move, at - Point{0, 20.0F * static_cast<float>(i)}, 1, time);
    }
    bench.event(ui::PointerPhase::up, at - Point{0, 200}, 1, time + 0.1);
    bench.settle();
    CHECK(bench.offset("rows") == Approx(200).margin(2));
    CHECK(bench.total() == 0);
}

TEST_CASE("A7 three quick taps between two frames all count", "[gesture]") {
    TouchBench bench(GENERATE(4.0, 15.0, 30.0, 60.0));
    int finger = 1;
    for (const char* id : {"row.1", "row.2", "row.3"}) {
        bench.down(bench.middle(id), finger);
        bench.up(bench.middle(id), finger++);
    }
    bench.settle();
    for (const char* id : {"row.1", "row.2", "row.3"}) CHECK(bench.count(id) == 1);
    CHECK(bench.total() == 3);
}

namespace {

/// Down, six moves of 30 px and up, each a sixtieth of a second after the other, however seldom the screen is drawn.
void flick(TouchBench& bench, Point at, float way) {
    const double begin = bench.now + 0.001;
    constexpr int up = 7;
    for (int sent = 0; sent <= up;) {
        for (; sent <= up && begin + sent / 60.0 <= bench.now + bench.frame_seconds; ++sent) {
            const auto phase = sent == 0    ? ui::PointerPhase::down
                               : sent == up ? ui::PointerPhase::up
                                            : ui::PointerPhase::move;
            const int moves = std::min(sent, up - 1);
            bench.event(phase, at + Point{0, way * 30.0F * static_cast<float>(moves)}, 1, begin + sent / 60.0);
        }
        bench.frame();
    }
}

}  // namespace

TEST_CASE("A8 a flick runs on, slows down and ends within three seconds, at any frame rate", "[gesture]") {
    TouchBench bench(GENERATE(4.0, 15.0, 30.0, 60.0));
    flick(bench, {600, 500}, -1);
    const float after_finger = bench.offset("rows");
    CHECK(bench.out.wants_frame);
    const double lifted = bench.now;
    for (int i = 0; bench.out.wants_frame && i < 600; ++i) bench.frame();
    CHECK(bench.now - lifted > 0.3);
    CHECK(bench.now - lifted <= 3.0);
    CHECK(bench.offset("rows") > after_finger + 100);
    CHECK(bench.total() == 0);
}

TEST_CASE("A8 a touch during a fling stops it and taps nothing, at any frame rate", "[gesture]") {
    TouchBench bench(GENERATE(4.0, 15.0, 30.0, 60.0));
    flick(bench, {600, 500}, -1);
    bench.frame();
    CHECK(bench.out.wants_frame);
    bench.down({600, 300});
    bench.frame();
    const float stopped = bench.offset("rows");
    bench.up({600, 300});
    bench.settle();
    CHECK(bench.offset("rows") == stopped);
    CHECK(bench.total() == 0);
}

TEST_CASE("a fling stops at the end of the list", "[gesture]") {
    TouchBench bench;
    flick(bench, {600, 300}, 1);  // already at the top
    bench.frames(2);
    CHECK(bench.offset("rows") == 0);
    CHECK_FALSE(bench.out.wants_frame);
}

TEST_CASE("a finger that comes up after a pause does not fling", "[gesture]") {
    TouchBench bench;
    bench.down({600, 500});
    bench.frame();
    bench.move({600, 350});
    bench.frames(10);
    bench.up({600, 350});
    bench.frames(2);
    CHECK_FALSE(bench.out.wants_frame);
}

TEST_CASE("A7 a long press fires once where it is offered, and is no tap", "[gesture]") {
    TouchBench bench;
    bench.app.screen = 2;
    bench.app.rows = 1;
    bench.frames(3);
    bench.next.wheels.push_back({{600, 300}, {0, -2000}});
    bench.settle();
    const Point at = bench.middle("clear");
    bench.down(at);
    bench.frames(50);
    CHECK(bench.app.longs == 1);
    bench.up(at);
    bench.settle();
    CHECK(bench.app.longs == 1);
    CHECK(bench.count("clear") == 0);
}

TEST_CASE("a slow press on a target without a long press is a tap", "[gesture]") {
    TouchBench bench;
    const Point at = bench.middle("row.1");
    bench.down(at);
    bench.frames(70);
    bench.up(at);
    bench.settle();
    CHECK(bench.count("row.1") == 1);
}

TEST_CASE("A7 a slider follows the finger and the list around it stays", "[gesture]") {
    TouchBench bench;
    bench.app.screen = 2;
    bench.frames(3);
    const Point at = bench.middle("speed");
    bench.down(at);
    bench.frame();
    for (int i = 1; i <= 10; ++i) {
        bench.move(at + Point{15.0F * static_cast<float>(i), 2.0F * static_cast<float>(i)});
        bench.frame();
    }
    bench.up(at + Point{150, 20});
    bench.settle();
    // The knob's way is the target less one knob radius at each end.
    const float way =
        bench.screen().find("speed")->rect.width() - 2 * 0.28F * bench.screen().find("speed")->rect.height();
    CHECK(bench.app.slider == Approx(0.5 + 150 / static_cast<double>(way)).margin(0.026));  // steps of 0.05
    CHECK(bench.offset("controls") == 0);
}

TEST_CASE("A7 a second finger cancels what the first began, at any frame rate", "[gesture]") {
    TouchBench bench(GENERATE(4.0, 15.0, 30.0, 60.0));
    const Point at = bench.middle("row.2");
    bench.down(at, 1);
    bench.frame();
    bench.down(bench.middle("row.4"), 2);
    bench.frame();
    bench.up(at, 1);
    bench.up(bench.middle("row.4"), 2);
    bench.settle();
    CHECK(bench.total() == 0);
    bench.down(at);
    bench.up(at);
    bench.settle();
    CHECK(bench.count("row.2") == 1);
}

TEST_CASE("a touch that the system takes away is no tap", "[gesture]") {
    TouchBench bench;
    const Point at = bench.middle("row.2");
    bench.down(at);
    bench.frame();
    bench.event(ui::PointerPhase::cancel, at);
    bench.frame();
    bench.up(at);
    bench.settle();
    CHECK(bench.total() == 0);
}

TEST_CASE("a press shows within one frame and for at least 80 ms", "[gesture]") {
    TouchBench bench;
    ui::Gesture gesture;
    const auto parameters = ui::GestureParameters::for_screen(0.9366F, true);
    const Point at = bench.middle("row.2");
    ui::FrameInput input;
    input.now = 1;
    input.pointers = {{ui::PointerPhase::down, 1, at, 1.0}, {ui::PointerPhase::up, 1, at, 1.01}};
    CHECK(gesture.advance(input, bench.screen(), parameters).pressed == "row.2");
    input.pointers.clear();
    input.now = 1.07;
    CHECK(gesture.advance(input, bench.screen(), parameters).pressed == "row.2");
    CHECK(gesture.wants_frame_in(1.07) == Approx(0.01).margin(1e-9));
    input.now = 1.09;
    CHECK(gesture.advance(input, bench.screen(), parameters).pressed.empty());
}

TEST_CASE("a key that bounces counts once", "[gesture]") {
    TouchBench bench;
    bench.app.sheet_open = true;
    bench.frames(3);
    const Point at = bench.middle("key.7");
    double time = bench.now;
    for (const double pause : {0.0, 0.05, 0.30}) {
        time += pause;
        bench.event(ui::PointerPhase::down, at, 1, time);
        bench.event(ui::PointerPhase::up, at, 1, time + 0.01);
    }
    bench.settle();
    CHECK(bench.app.entered == "77");
}

TEST_CASE("a sheet takes the touches that lie on it", "[gesture]") {
    TouchBench bench;
    const Point at = bench.middle("row.2");
    bench.app.sheet_open = true;
    bench.frames(3);
    CHECK(bench.screen().find("row.2")->covered);
    bench.down(at);
    bench.up(at);
    bench.settle();
    CHECK(bench.count("row.2") == 0);
}

TEST_CASE("the body of a toast does not let touches through", "[gesture]") {
    TouchBench bench;
    bench.app.toast_since = bench.now;
    bench.frames(3);
    const ui::TextItem* toast = bench.screen().find_text("toast");
    REQUIRE(toast != nullptr);
    bench.down(toast->rect.center());
    bench.up(toast->rect.center());
    bench.settle();
    CHECK(bench.total() == 0);
    const Point action = bench.middle("toast.action");
    bench.down(action);
    bench.up(action);
    bench.settle();
    CHECK(bench.count("toast.action") == 1);
}

TEST_CASE("two fingers zoom a map about their middle", "[gesture]") {
    ui::HitMap map;
    ui::Target target;
    target.id = "map";
    target.rect = {0, 0, 1000, 1000};
    target.visible = target.rect;
    target.drag = ui::DragMode::pan_zoom;
    map.add(target);
    ui::Gesture gesture;
    ui::FrameInput input;
    input.now = 1;
    input.pointers = {{ui::PointerPhase::down, 1, {400, 500}, 1},
                      {ui::PointerPhase::down, 2, {600, 500}, 1},
                      {ui::PointerPhase::move, 1, {300, 500}, 1.1},
                      {ui::PointerPhase::move, 2, {700, 500}, 1.1}};
    const auto result = gesture.advance(input, map, {});
    REQUIRE(result.drag.has_value());
    CHECK(result.drag->zoom == Approx(2));
    CHECK(result.drag->at.x == Approx(500));
    CHECK_FALSE(result.tap.has_value());
}

namespace {

struct Plan {
    Point start;
    Point end;
    int moves = 0;
    bool two_fingers = false;
};

Plan random_plan(std::mt19937& random) {
    std::uniform_real_distribution<float> x(0, 1280);
    std::uniform_real_distribution<float> y(0, 800);
    std::uniform_int_distribution<int> kind(0, 9);
    Plan plan;
    plan.start = {x(random), y(random)};
    plan.end = plan.start;
    const int which = kind(random);
    if (which >= 4) plan.end = {x(random), y(random)};
    plan.moves = which < 4 ? 0 : which;
    plan.two_fingers = which == 9;
    return plan;
}

}  // namespace

namespace {

/// A list of rows that really scrolls and a button beside it, without any drawing.
class BareScreen {
public:
    BareScreen() { build(); }

    ui::GestureResult frame(double now) {
        input.now = now;
        ui::GestureResult result = gesture.advance(input, map, parameters);
        input.pointers.clear();
        for (const ui::ScrollStep& step : result.scrolls) {
            const float wanted = offset + step.offset;
            offset = std::clamp(wanted, 0.0F, most);
            if (offset != wanted) gesture.stop_fling();
        }
        if (!result.scrolls.empty()) build();
        return result;
    }

    ui::Gesture gesture;
    ui::GestureParameters parameters = ui::GestureParameters::for_screen(0.9366F, true);
    ui::FrameInput input;
    ui::HitMap map;

private:
    void build() {
        map.clear();
        const ui::Rect view{0, 0, 1000, 800};
        const int first = static_cast<int>(offset / 96);
        for (int i = first; i < std::min(60, first + 10); ++i) {
            ui::Target row;
            row.rect = ui::Rect{0, 0, 1000, 84}.moved(0, static_cast<float>(i) * 96 - offset);
            row.visible = row.rect.intersected(view);
            if (row.visible.empty()) continue;
            row.id = "row." + std::to_string(i);
            row.enabled = i % 7 != 6;
            row.scroll_area = "rows";
            map.add(row);
        }
        ui::Target button;
        button.id = "button";
        button.rect = button.visible = {1012, 0, 1280, 800};
        map.add(button);
        map.add_scroll({"rows", view, offset, most, false});
    }

    static constexpr float most = 60 * 96 - 800;
    float offset = 0;
};

}  // namespace

TEST_CASE("A7 ten thousand random gestures at each frame rate: one activation at most, and idle within three seconds",
          "[gesture]") {
    const double rate = GENERATE(4.0, 15.0, 30.0, 60.0);
    BareScreen screen;
    std::mt19937 random(20261125);
    double now = 10;
    int activations = 0;
    int wrong = 0;
    int stuck = 0;
    for (int n = 0; n < 10000; ++n) {
        const Plan plan = random_plan(random);
        const ui::Target* under = screen.map.at(plan.start);
        const std::string id = under != nullptr && under->enabled ? under->id : std::string();
        const bool flinging = screen.gesture.state() == ui::GestureState::flinging;
        std::vector<std::string> fired;
        const auto frame = [&] {
            now += 1 / rate;
            if (const auto result = screen.frame(now); result.tap) fired.push_back(result.tap->id);
        };
        const auto finger = [&](ui::PointerPhase phase, Point at, std::int64_t which) {
            screen.input.pointers.push_back({phase, which, at, now + 0.5 / rate});
        };
        finger(ui::PointerPhase::down, plan.start, 1);
        if (plan.two_fingers) finger(ui::PointerPhase::down, plan.end, 2);
        if (n % 3 != 0) frame();
        for (int i = 1; i <= plan.moves; ++i) {
            const float share = static_cast<float>(i) / static_cast<float>(plan.moves);
            finger(ui::PointerPhase::move, plan.start + (plan.end - plan.start) * share, 1);
            if (n % 2 == 0) frame();
        }
        finger(ui::PointerPhase::up, plan.end, 1);
        if (plan.two_fingers) finger(ui::PointerPhase::up, plan.end, 2);
        frame();
        const double lifted = now;
        // Every fourth gesture begins while the list may still run on from the one before.
        for (int i = 0; i < 400 && n % 4 != 0 && screen.gesture.wants_frame(); ++i) frame();
        const Point way = plan.end - plan.start;
        const float slop = screen.parameters.slop;
        const bool dragged = way.x * way.x + way.y * way.y > slop * slop;
        const bool taps = !dragged && !plan.two_fingers && !flinging && !id.empty();
        if (taps ? fired != std::vector<std::string>{id} : !fired.empty()) ++wrong;
        activations += static_cast<int>(fired.size());
        const bool idle = screen.gesture.state() == ui::GestureState::idle;
        if (now - lifted > 3.0 || (n % 4 != 0 && !idle)) ++stuck;
    }
    CHECK(activations > 1000);
    CHECK(wrong == 0);
    CHECK(stuck == 0);
}

// The whole kit is drawn: a thousand gestures; with SILLWALK_LONG set, ten thousand.
TEST_CASE("A7 random gestures on a screen that is drawn: one activation at most, of what lay under the finger",
          "[gesture]") {
    const int gestures = std::getenv("SILLWALK_LONG") != nullptr ? 5000 : 500;
    const double rate = GENERATE(4.0, 60.0);
    TouchBench bench(rate);
    bench.app.rows = 300;
    bench.frames(2);
    std::mt19937 random(20261125);
    const float slop = ui::Metrics(bench.next, bench.app.settings).slop;
    int wrong = 0;
    int stuck = 0;
    for (int n = 0; n < gestures; ++n) {
        const Plan plan = random_plan(random);
        const ui::Target* under = bench.screen().at(plan.start);
        const std::string id = under != nullptr && under->enabled ? under->id : std::string();
        bench.app.taps.clear();
        bench.down(plan.start);
        if (plan.two_fingers) bench.down(plan.end, 2);
        if (n % 3 != 0) bench.frame();
        for (int i = 1; i <= plan.moves; ++i) {
            const float share = static_cast<float>(i) / static_cast<float>(plan.moves);
            bench.move(plan.start + (plan.end - plan.start) * share);
            if (n % 2 == 0) bench.frame();
        }
        bench.up(plan.end);
        if (plan.two_fingers) bench.up(plan.end, 2);
        const double lifted = bench.now;
        bench.settle();
        const Point way = plan.end - plan.start;
        const bool dragged = way.x * way.x + way.y * way.y > slop * slop;
        const int fired = bench.total();
        const int allowed = dragged || plan.two_fingers || id.empty() ? 0 : 1;
        if (fired > allowed) ++wrong;
        // Rows, tabs and bars count under their own names; a still tap must reach them.
        if (allowed == 1 && id.rfind("row.", 0) == 0 && bench.count(id) != 1) ++wrong;
        if (bench.out.wants_frame || bench.now - lifted > 3.0 + 2 / rate) ++stuck;
    }
    CHECK(wrong == 0);
    CHECK(stuck == 0);
}
