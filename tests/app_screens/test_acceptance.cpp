// The geometry of every screen and sheet: sizes of glass, gaps, safe area, whole texts.
#include "tests/app_screens/screen_walk.hpp"
#include "tests/support/glass.hpp"

#include <algorithm>
#include <cmath>

using namespace sillwalk;
using test::Faults;
using test::least_mm;
using test::Look;
using test::Viewer;

namespace {

/// A finger can hit it: nothing lies over it, and it is in view.
bool can_be_hit(const ui::Target& target) {
    return target.enabled && !target.covered && !target.overscan && !target.visible.empty();
}

std::string place_of(const Look& look, const test::Glass& glass, bool glove) {
    return look.name + ", " + glass.name + (glove ? ", glove" : ", bare hand");
}

/// Free way between two rectangles.
float way_between(const ui::Rect& a, const ui::Rect& b) {
    const float x = std::max({0.0F, a.x0 - b.x1, b.x0 - a.x1});
    const float y = std::max({0.0F, a.y0 - b.y1, b.y0 - a.y1});
    return std::hypot(x, y);
}

/// Nothing else answers a finger that lands beside the button of a toast, which lies over the screen.
bool stands_free(const ui::HitMap& screen, const ui::Target& target, float way) {
    const ui::Rect ring = target.visible.inset(1 - way);
    for (int i = 0; i <= 20; ++i) {
        const float x = ring.x0 + ring.width() * static_cast<float>(i) / 20;
        const float y = ring.y0 + ring.height() * static_cast<float>(i) / 20;
        for (const ui::Point at : {ui::Point{x, ring.y0}, {x, ring.y1}, {ring.x0, y}, {ring.x1, y}}) {
            const ui::Target* hit = screen.at(at);
            if (hit != nullptr && hit->id != target.id) return false;
        }
    }
    return true;
}

void look_for_small_targets(const ui::HitMap& screen, float px_per_mm, bool glove, const std::string& where,
                            Faults& faults) {
    for (const ui::Target& target : screen.targets()) {
        if (target.covered || target.overscan) continue;
        const double least = least_mm(target.target_class, glove) - 1e-3;
        const auto width = static_cast<double>(target.rect.width() / px_per_mm);
        const auto height = static_cast<double>(target.rect.height() / px_per_mm);
        if (width >= least && height >= least) continue;
        faults.add(target.id + " is " + std::to_string(width) + " by " + std::to_string(height) + " mm", where);
    }
}

void look_for_close_targets(const ui::HitMap& screen, float px_per_mm, bool glove, const std::string& where,
                            Faults& faults) {
    std::vector<const ui::Target*> live;
    for (const ui::Target& target : screen.targets()) {
        if (can_be_hit(target)) live.push_back(&target);
    }
    for (std::size_t i = 0; i < live.size(); ++i) {
        for (std::size_t k = i + 1; k < live.size(); ++k) {
            const ui::Target& a = *live[i];
            const ui::Target& b = *live[k];
            const bool far_apart =
                a.target_class == ui::TargetClass::irreversible || b.target_class == ui::TargetClass::irreversible;
            const float least = px_per_mm * (far_apart ? (glove ? 6.0F : 4.0F) : (glove ? 2.0F : 1.5F));
            const bool over = b.id == "toast.action";
            const float way = way_between(a.visible, b.visible);
            if (over ? stands_free(screen, b, least) : way >= least - 1e-3F) continue;
            faults.add(a.id + " and " + b.id + " are " + std::to_string(way / px_per_mm) + " mm apart", where);
        }
    }
}

/// Names that a person gave may be longer than any bar; the bar shortens them. Words of ours may not.
bool may_be_shortened(const ui::TextItem& text, const app::Language& language) {
    if (text.id != "top.title" && text.id != "top.subtitle") return false;
    for (const auto& [key, word] : language.words()) {
        if (word == text.text) return false;
    }
    return true;
}

void look_for_clipped(const ui::HitMap& screen, const app::Language& language, const std::string& where,
                      Faults& faults) {
    for (const ui::Target& target : screen.targets()) {
        if (target.covered || target.overscan) continue;
        if (target.label_clipped) faults.add(target.id + " '" + target.label + "' is clipped", where);
    }
    for (const ui::TextItem& text : screen.texts()) {
        if (text.covered || may_be_shortened(text, language)) continue;
        if (text.clipped) faults.add("text " + text.id + " '" + text.text + "' is clipped", where);
        if (text.text.find('<') != std::string::npos) faults.add("text '" + text.text + "' lacks a word", where);
    }
}

void look_for_clipped_in(const std::vector<Look>& looks, const std::string& code, const std::vector<int>& percents) {
    const app::Language language = test::language_of(code);
    Faults faults;
    for (const test::Glass& glass : test::all_glass) {
        for (const int percent : percents) {
            ui::UiSettings settings;
            settings.text_percent = percent;
            Viewer viewer(glass, settings);
            for (const Look& look : looks) {
                const std::string where = place_of(look, glass, true) + ", " + std::to_string(percent) + " %";
                const auto see = [&](const ui::HitMap& screen) { look_for_clipped(screen, language, where, faults); };
                // Lists are scrolled to their end where texts are largest; rows out of view are looked at anyhow.
                if (percent == 130) {
                    viewer.show_whole(look, language, see);
                } else {
                    see(viewer.show(look, language));
                }
            }
        }
    }
    INFO(faults.text());
    CHECK(faults.text().empty());
}

}  // namespace

TEST_CASE("A1, A2 every target has its millimetres, none overlaps and a gap lies between, for glove and bare hand",
          "[acceptance]") {
    const std::vector<Look> looks = test::every_screen();
    const app::Language language = test::language_of("en");
    Faults small;
    Faults close;
    std::size_t seen = 0;
    for (const test::Glass& glass : test::all_glass) {
        for (const bool glove : {true, false}) {
            ui::UiSettings settings;
            settings.glove = glove;
            Viewer viewer(glass, settings);
            for (const Look& look : looks) {
                const std::string where = place_of(look, glass, glove);
                viewer.show_whole(look, language, [&](const ui::HitMap& screen) {
                    seen += screen.targets().size();
                    look_for_small_targets(screen, glass.px_per_mm, glove, where, small);
                    look_for_close_targets(screen, glass.px_per_mm, glove, where, close);
                });
            }
        }
    }
    INFO(small.text() << close.text());
    CHECK(small.text().empty());
    CHECK(close.text().empty());
    CHECK(seen > 8000);
}

TEST_CASE("A3 every target lies in the safe area, and is large enough without the edge that a lip may hide",
          "[acceptance]") {
    const std::vector<Look> looks = test::every_screen();
    const app::Language language = test::language_of("en");
    Faults faults;
    for (const test::Glass& glass : test::all_glass) {
        const float dp = glass.px_per_mm * 25.4F / 160;
        for (const ui::Insets& insets : {ui::Insets{}, ui::Insets{0, 24 * dp, 0, 20 * dp}}) {
            Viewer viewer(glass, {}, insets);
            const ui::Rect safe{insets.left, insets.top, glass.width - insets.right, glass.height - insets.bottom};
            for (const Look& look : looks) {
                for (const ui::Target& target : viewer.show(look, language).targets()) {
                    if (target.covered || target.overscan || target.visible.empty()) continue;
                    const std::string where = place_of(look, glass, true) + (insets.top > 0 ? ", insets" : "");
                    const ui::Rect in_safe = target.visible.intersected(safe);
                    if (!(in_safe == target.visible)) faults.add(target.id + " leaves the safe area", where);
                    if (!(target.visible == target.rect)) continue;  // runs on below the edge of its list
                    const ui::Rect reached = target.rect.intersected(safe.inset(3 * glass.px_per_mm));
                    const auto least = static_cast<float>(least_mm(target.target_class, true)) * glass.px_per_mm;
                    if (std::min(reached.width(), reached.height()) >= least - 0.1F) continue;
                    faults.add(target.id + " keeps " + std::to_string(reached.width() / glass.px_per_mm) + " by " +
                                   std::to_string(reached.height() / glass.px_per_mm) + " mm inside the edge",
                               where);
                }
            }
        }
    }
    INFO(faults.text());
    CHECK(faults.text().empty());
}

TEST_CASE("A4 no label is clipped at any text scale in English", "[acceptance]") {
    look_for_clipped_in(test::every_screen(), "en", {100, 115, 130});
}

TEST_CASE("A4 no label is clipped at any text scale in Spanish", "[acceptance]") {
    look_for_clipped_in(test::every_screen(), "es", {100, 115, 130});
}

TEST_CASE("A4 no label is clipped at any text scale in words drawn out by 35 %", "[acceptance]") {
    look_for_clipped_in(test::every_screen(), "long", {100, 115, 130});
}

TEST_CASE("A4 no label is clipped on the sheet of any reading", "[acceptance]") {
    const std::vector<Look> looks = test::every_sheet();
    for (const char* code : {"en", "es"}) look_for_clipped_in(looks, code, {100, 130});
}
