#pragma once
/// What every screen keeps: targets that a glove can hit, one thing under a finger, texts that are not cut.

#include "app/ui/metrics.hpp"
#include "tests/app_screens/app_host.hpp"

namespace sillwalk::test {

/// No finger can hit two things at once.
inline void check_overlaps(const ui::HitMap& screen) {
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

/// `bars`: those of every screen as well.
inline void check_targets(const ui::HitMap& screen, const ui::Metrics& metrics, bool bars = true) {
    for (const ui::Target& target : screen.targets()) {
        if (!bars && (target.id == "answer_bar" || target.id.rfind("nav.", 0) == 0)) continue;
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

}  // namespace sillwalk::test
