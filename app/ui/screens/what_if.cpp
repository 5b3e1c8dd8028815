// Other values for some readings, answered at once: nothing is written unless it is taken over.

#include "app/core/reading_access.hpp"
#include "app/ui/screens/crossing_picture.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

using engine::CartAdvice;
using engine::ReadingRef;

namespace {

/// The mildest limit of that reading with which all of its checks hold; from the wheel that is judged now.
std::optional<double> limit_of(const ScreenContext& context, const ReadingRef& ref) {
    const app::Completion* done = app::completion_in_hand(context.model);
    if (!done || !done->would_hold || done->would_hold->empty()) return std::nullopt;
    const engine::RankedCandidate* first = app::headline(app::cart_advice(context.model));
    const engine::FamilyLimits& family = done->would_hold->front();
    if (!first || family.candidate != first->candidate) return std::nullopt;
    std::optional<double> least;
    for (const engine::CheckLimits& check : family.checks) {
        for (const engine::SolvedLimit& limit : check.limits) {
            if (limit.reading != ref || limit.bound != engine::Bound::at_most || !limit.whole_check) continue;
            least = least ? std::min(*least, limit.value.si) : limit.value.si;
        }
    }
    return least;
}

void slider_for(ScreenContext& shown, const app::WhatIfRange& range) {
    Ui& ui = shown.ui;
    const auto read = app::read_number(shown.model.visit->survey, range.ref);
    const auto now = app::read_number(shown.survey(), range.ref);
    const bool known = now && now->value;
    SliderOptions options;
    options.min = static_cast<double>(range.least);
    options.max = static_cast<double>(range.most);
    options.step = static_cast<double>(range.step);
    options.label = capitalised(shown.say(app::field_key(range.ref.field)));
    options.value_text = known ? value_text(shown, range.ref) : shown.say("known.not_yet_read");
    if (const auto limit = limit_of(shown, range.ref)) {
        options.limit = *limit * app::canonical_per_si(range.kind);
    }
    const double value = known ? static_cast<double>(*now->value) : options.min;
    const std::string id = "what_if." + reading_id(range.ref);
    const auto moved = ui.slider(id, value, options);
    if (moved) shown.act(app::WhatIfSet{range.ref, app::snapped(range, std::llround(*moved))});
    const bool changed = read && now && read->value != now->value;
    if (!changed) return;
    ScreenContext plain = shown;
    plain.tried = false;
    const std::string was = value_text(plain, range.ref);
    ui.caption(was.empty() ? shown.say("what_if.not_read") : shown.say("what_if.read", {was}));
}

/// Verdict and the check that decides, as read or as tried.
void verdict_row(ScreenContext& context, const char* id, const char* word, const CartAdvice* advice) {
    RowOptions options;
    options.touchable = false;
    const engine::RankedCandidate* first = app::headline(advice);
    std::string name = context.say(word) + ": ";
    if (!first) {
        context.ui.row(id, name + context.say("answer.working"), options);
        return;
    }
    const std::string wheel = wheel_text(context, context.model.data->catalogue.wheels[first->candidate.wheel]);
    name += advice->nothing_holds ? context.say("answer.nothing_holds") : wheel;
    options.badge = badge_of(first->verdict);
    if (!context.ui.metrics().compact()) options.badge_word = verdict_text(context, first->verdict);
    const auto urgent = by_urgency(first->findings);
    if (!urgent.empty()) {
        const std::string check = context.say(std::string("check.") + engine::check_name(urgent.front()->check));
        const std::string& compared = compared_of(context, *urgent.front());
        options.detail = compared.empty() ? check : check + ": " + compared;
    }
    if (advice->nothing_holds) options.detail = context.say("answer.nearest", {wheel, options.detail});
    context.ui.row(id, name, options);
}

void verdicts(ScreenContext& shown) {
    ScreenContext plain = shown;
    plain.tried = false;
    verdict_row(plain, "what_if.as_read", "what_if.as_read", app::cart_advice(plain.model));
    if (shown.tried) verdict_row(shown, "what_if.tried", "what_if.tried", app::what_if_advice(shown.model));
}

/// The next crossing of the route, for there is room for one.
void crossing_button(ScreenContext& context, const std::vector<std::uint16_t>& crossings, std::uint16_t now) {
    if (crossings.empty()) return;
    const auto at = std::find(crossings.begin(), crossings.end(), now);
    const std::size_t next = at == crossings.end() ? 0 : (static_cast<std::size_t>(at - crossings.begin()) + 1);
    RowOptions options;
    options.detail = context.say("what_if.other_crossing");
    options.chevron = crossings.size() > 1;
    options.touchable = crossings.size() > 1;
    if (crossings.size() < 2) options.detail.clear();
    if (context.ui.row("what_if.crossing", context.survey().crossings[now].name, options)) {
        context.act(app::GoBack{});
        context.act(app::GoTo{{app::Screen::what_if, crossings[next % crossings.size()]}});
    }
}

void sliders(ScreenContext& shown, std::optional<std::uint16_t> crossing) {
    // The ranges are those of what was read: they must not grow under the finger.
    const std::uint64_t which = crossing ? *crossing : UINT16_MAX + 1U;
    const auto& ranges = shown.recall(Remembered::what_if_ranges, which, [&] {
        return app::what_if_ranges(shown.model.visit->survey, shown.model.data->entry, shown.model.cart, crossing,
                                   shown.model.settings.unit);
    });
    for (const app::WhatIfRange& range : ranges) shown.ui.block([&] { slider_for(shown, range); });
    shown.ui.caption(shown.say("what_if.never_written"));
}

}  // namespace

void draw_what_if(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    ScreenContext shown = context.trying();
    const auto crossings = app::crossings_of(context.survey(), context.model.cart);
    std::optional<std::uint16_t> crossing;
    if (context.model.spot.index < context.survey().crossings.size()) crossing = context.model.spot.index;
    const Rect rest = what_if_bar(context, area);
    if (m.width_class == WidthClass::expanded) {
        const auto columns = ui.columns(rest, {744, 420}, true);
        Rect left = columns[0];
        if (crossing) {
            const Rect picture = left.cut_top(left.height() * 0.56F, m.gap);
            ui.kept("what_if.picture", [&] {
                const auto card = ui.card({.rect = picture, .pad = 0});
                draw_crossing_picture(context, picture.inset(2), *crossing);
            });
        }
        {
            const auto list = ui.scroll("what_if.verdicts", left);
            ui.block([&] { verdicts(shown); });
        }
        const auto list = ui.scroll("what_if", columns[1]);
        if (crossing) ui.block([&] { crossing_button(context, crossings, *crossing); });
        sliders(shown, crossing);
        return;
    }
    const auto list = ui.scroll("what_if", rest);
    if (crossing) {
        ui.block([&] {
            const Rect picture = ui.place(rest.width() * (m.compact() ? 0.60F : 0.44F));
            ui.canvas().fill_rect(picture, ui.theme().surface, m.radius);
            draw_crossing_picture(context, picture.inset(2), *crossing);
        });
        ui.block([&] { crossing_button(context, crossings, *crossing); });
    }
    ui.block([&] { verdicts(shown); });
    sliders(shown, crossing);
}

}  // namespace sillwalk::ui
