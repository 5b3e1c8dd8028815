// Use without touch: a keyboard alone, and the screen as plain text.
#include "tests/app_screens/drawn_text.hpp"
#include "tests/app_screens/screen_walk.hpp"

#include <algorithm>
#include <cctype>

using namespace sillwalk;
using test::AppHost;
using test::Faults;
using test::Look;

namespace {

/// Presses Tab as a person does, who looks where the ring is; the order is the one that the screen gives.
class Keyboard {
public:
    explicit Keyboard(AppHost& host) : host_(host) {}

    void tab_to(const std::string& id) {
        for (int i = 0; i < 300; ++i) {
            if (host_.driver().screen().find(focus_) == nullptr) focus_.clear();
            const std::vector<std::string> order = host_.driver().screen().keyboard_order();
            REQUIRE_FALSE(order.empty());
            const auto now = std::find(order.begin(), order.end(), focus_);
            const auto next = now == order.end() || now + 1 == order.end() ? order.begin() : now + 1;
            focus_ = *next;
            host_.run("key tab\n");
            ++tabs_;
            if (focus_ == id) return;
        }
        FAIL("Tab never comes to " << id << "\n" << host_.shell().describe());
    }
    /// The ring is on the screen, around the target that Enter will tap, and nowhere else.
    void check_ring() const {
        const ui::Target* target = host_.driver().screen().find(focus_);
        REQUIRE(target != nullptr);
        const platforms::Image image = platforms::render(host_.driver().last());
        const ui::Color ring = ui::theme(ui::ThemeName::dark).focus;
        const ui::Rect around = target->rect.inset(-12);
        int inside = 0;
        int outside = 0;
        for (std::size_t i = 0; i < image.rgba.size(); i += 4) {
            if (image.rgba[i] != ring.r || image.rgba[i + 1] != ring.g || image.rgba[i + 2] != ring.b) continue;
            const std::size_t pixel = i / 4;
            const ui::Point at{static_cast<float>(pixel % static_cast<std::size_t>(image.width)),
                               static_cast<float>(pixel / static_cast<std::size_t>(image.width))};
            ++(around.contains(at) ? inside : outside);
        }
        INFO(focus_);
        CHECK(inside > 200);
        CHECK(outside == 0);
    }
    void press(const std::string& id) {
        tab_to(id);
        check_ring();
        host_.run("key enter\n");
    }
    [[nodiscard]] int tabs() const { return tabs_; }

private:
    AppHost& host_;
    std::string focus_;
    int tabs_ = 0;
};

/// Without any space: lines of a wrapped text then lie one after the other in it.
std::string squeezed(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (std::isspace(static_cast<unsigned char>(text[i])) != 0) continue;
        bool space = false;
        for (const char* wide : {"\u00A0", "\u2009", "\u202F"}) {
            const std::string one = wide;
            if (text.compare(i, one.size(), one) != 0) continue;
            i += one.size() - 1;
            space = true;
            break;
        }
        if (!space) out += text[i];
    }
    return out;
}

bool has_digit(const std::string& text) {
    return std::any_of(text.begin(), text.end(),
                       [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; });
}

/// The look without what lies over its screen.
Look uncovered(Look look) {
    look.model.choice.reset();
    look.model.sending.asks_to_send = look.model.sending.asks_to_erase = false;
    look.model.pick.reset();
    look.model.castors.reset();
    look.model.open_reason.reset();
    look.scratch.present_part = -1;
    return look;
}

}  // namespace

TEST_CASE("A24 a keyboard alone changes a reading and comes to the answer, its ring in view", "[acceptance]") {
    AppHost host;
    host.run("theme dark\n");
    Keyboard keyboard(host);
    keyboard.press("route.crossing.freezer-door");
    host.run("expect reading.crossing_rise contains \"19\"\n");
    keyboard.press("reading.crossing_rise");
    host.run("key 6\nexpect sheet.typed is \"6\"\n");
    keyboard.press("sheet.done");
    host.run("expect reading.crossing_rise contains \"6\"\n");
    keyboard.press("answer_bar");
    host.run("expect-not answer.headline contains \"Nothing holds yet\"\n");
    keyboard.press("nav.hand_over");
    host.run("expect hand_over.candidate.0 shown\n");
    host.run("key undo\nexpect hand_over.headline contains \"Nothing holds yet\"\n");
    CHECK(keyboard.tabs() < 120);
}

TEST_CASE("A24 the text of every screen has each number that is drawn", "[acceptance]") {
    const app::Language language = test::language_of("en");
    const std::vector<Look> looks = test::every_screen();
    Faults faults;
    std::size_t numbers = 0;
    for (const test::Glass& glass : test::all_glass) {
        test::Viewer viewer(glass);
        for (const Look& look : looks) {
            viewer.show(uncovered(look), language);
            std::string text = viewer.last().hit_map->describe();
            text += viewer.show(look, language).describe();
            text = squeezed(text);
            for (const std::string& drawn : test::drawn_texts(viewer.last())) {
                if (!has_digit(drawn)) continue;
                ++numbers;
                // Names that a person gave may be shortened on the screen; the text has them whole.
                const bool shortened = drawn.ends_with("\u2026");
                const std::string shown = shortened ? drawn.substr(0, drawn.size() - 3) : drawn;
                if (text.find(squeezed(shown)) == std::string::npos)
                    faults.add("'" + drawn + "' is not in the text of " + look.name, glass.name);
            }
        }
    }
    INFO(faults.text());
    CHECK(faults.text().empty());
    CHECK(numbers > 1000);
}
