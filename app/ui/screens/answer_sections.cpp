// What stands behind the answer: readings to take, what would make it hold, conditions, doubt, what was turned down.

#include "app/core/quantity.hpp"
#include "app/text/read_again.hpp"
#include "app/text/would_hold.hpp"
#include "app/ui/screens/answer_parts.hpp"

#include <algorithm>

namespace sillwalk::ui {

using engine::CartAdvice;
using engine::RankedCandidate;

namespace {

void title(ScreenContext& context, const char* key, const std::vector<std::string>& arguments = {}) {
    context.ui.text(context.say(key, arguments), TextRole::row, Weight::medium, {}, key);
}

void working(ScreenContext& context, const std::string& id) {
    context.ui.text(context.say("answer.working"), TextRole::body, Weight::regular, context.ui.theme().text2, id);
}

/// The readings that the first choice still needs: a tap opens the measuring sheet.
void to_read(ScreenContext& context, const CartAdvice& advice) {
    if (advice.not_read.empty()) return;
    const auto card = context.ui.card();
    title(context, "answer.read_before");
    for (const engine::ReadingRef& ref : advice.not_read) {
        RowOptions options;
        options.mark = Badge::not_known;
        options.detail = context.say("known.not_yet_read");
        options.chevron = true;
        options.framed = false;
        context.ui.block([&] {
            if (context.ui.row("open." + reading_id(ref, true), capitalised(app::reading_name(ref, context.text())),
                               options)) {
                const bool number = app::quantity_of(ref.field).has_value();
                context.act(number ? app::Action(app::OpenSheet{ref}) : app::Action(app::OpenChoice{ref}));
            }
            context.ui.space(-context.ui.metrics().gap);
        });
    }
    context.ui.space(context.ui.metrics().gap);
}

void check_limits(ScreenContext& context, const app::CheckLimitsText& check) {
    Ui& ui = context.ui;
    const std::string place = check.place.empty() ? check.check : check.check + ", " + check.place;
    ui.text(place + ": " + check.compared, TextRole::body, Weight::medium);
    for (const auto* lines : {&check.limits, &check.notes}) {
        for (const std::string& line : *lines) ui.text(line);
    }
}

/// The headline's construction first; the others behind one tap.
void would_hold(ScreenContext& context, const CartAdvice& advice) {
    Ui& ui = context.ui;
    const app::Completion* done = app::completion_in_hand(context.model);
    if (done && done->would_hold && done->would_hold->empty()) return;
    const auto card = ui.card();
    title(context, advice.nothing_holds ? "answer.would_hold" : "answer.others_would_hold");
    if (!done || !done->would_hold) return working(context, "answer.would_hold.working");
    const auto& families = context.recall(Remembered::would_hold, 0,
                                          [&] { return app::would_hold_text(*done->would_hold, context.text()); });
    const std::size_t open = context.scratch.all_families ? families.size() : advice.nothing_holds ? 1U : 0U;
    for (std::size_t i = 0; i < std::min(open, families.size()); ++i) {
        ui.block([&] { ui.caption(families[i].candidate, "answer.would_hold." + std::to_string(i)); });
        for (const app::CheckLimitsText& check : families[i].checks) ui.block([&] { check_limits(context, check); });
    }
    if (families.size() <= open && !context.scratch.all_families) return;
    const std::string more = context.scratch.all_families
                                 ? context.say("answer.fewer_families")
                                 : context.say("answer.more_families", {std::to_string(families.size() - open)});
    if (ui.button("answer.families", more)) context.scratch.all_families = !context.scratch.all_families;
}

void conditions(ScreenContext& context, const CartAdvice& advice) {
    if (advice.nothing_holds) return;
    const app::Completion* done = app::completion_in_hand(context.model);
    const auto card = context.ui.card();
    title(context, "answer.conditions");
    if (!done || !done->conditions) return working(context, "answer.conditions.working");
    const auto& lines = context.recall(Remembered::conditions, 0,
                                       [&] { return app::conditions_text(*done->conditions, context.text()); });
    for (const std::string& line : lines) context.ui.block([&] { context.ui.text(line); });
}

void doubt(ScreenContext& context, const CartAdvice& advice) {
    Ui& ui = context.ui;
    const app::Completion* done = app::completion_in_hand(context.model);
    const auto card = ui.card();
    title(context, "answer.read_again");
    if (!done || !done->read_again) return working(context, "answer.read_again.working");
    const app::ReadAgainText& text = context.recall(
        Remembered::read_again, 0, [&] { return app::read_again_text(*done->read_again, advice, context.text()); });
    ui.text(text.headline, TextRole::body, Weight::medium, {}, "answer.stays");
    for (const std::string& line : text.answers) ui.text(line);
    // What was read and carries doubt can be read again from here.
    std::size_t shown = 0;
    for (const engine::ReadingDoubt& row : done->read_again->readings) {
        if (row.share == 0.0 || shown >= text.readings.size()) continue;
        RowOptions options;
        options.framed = false;
        options.chevron = true;
        options.touchable = app::quantity_of(row.reading.field).has_value();
        const std::string& words = text.readings[shown++];
        ui.block([&] {
            const std::string id = "again." + reading_id(row.reading, true);
            if (ui.row(id, words, options)) context.act(app::OpenSheet{row.reading});
            ui.space(-ui.metrics().gap);
        });
    }
    if (shown > 0) ui.space(ui.metrics().gap);
    for (; shown < text.readings.size(); ++shown) ui.text(text.readings[shown]);
    for (const app::MissingText& missing : text.missing) {
        ui.block([&] {
            ui.text(missing.reading, TextRole::body, Weight::medium);
            for (const std::string& line : missing.lines) ui.text(line);
        });
    }
    for (const std::string& line : text.notes) ui.caption(line);
}

void turned_down(ScreenContext& context, const CartAdvice& advice) {
    if (advice.turned_down.empty()) return;
    Ui& ui = context.ui;
    const auto card = ui.card();
    title(context, "answer.turned_down", {std::to_string(advice.turned_down_total)});
    std::size_t shown = 0;
    for (const engine::TurnedDown& down : advice.turned_down) {
        ++shown;
        ui.block([&] {
            const engine::Wheel& wheel = context.model.data->catalogue.wheels[down.candidate.wheel];
            RowOptions options;
            options.framed = false;
            options.touchable = false;
            options.detail = sentence_of(context, down.first_failing);
            ui.row("turned_down." + std::to_string(shown), wheel_text(context, wheel), options);
            ui.space(-ui.metrics().gap);
        });
    }
    ui.space(ui.metrics().gap);
}

/// Where the deciding check lies, else the first crossing of the route: there a what-if begins.
std::uint16_t crossing_to_try(const ScreenContext& context, const RankedCandidate& first) {
    for (const engine::Finding* finding : by_urgency(first.findings)) {
        if (finding->place.kind == engine::PlaceKind::crossing) return finding->place.index;
    }
    const auto crossings = app::crossings_of(context.survey(), context.model.cart);
    return crossings.empty() ? std::uint16_t{0} : crossings.front();
}

/// Two beside each other where their words leave room. Where there is a rail, hand-over is on it.
void links(ScreenContext& context, const RankedCandidate& first) {
    struct Link {
        const char* key;
        app::Spot spot;
    };
    std::vector<Link> links = {{"what_if.title", {app::Screen::what_if, crossing_to_try(context, first)}},
                               {"push.title", {app::Screen::push, 0}},
                               {"temperature.title", {app::Screen::temperature, 0}},
                               {"damage.title", {app::Screen::damage, 0}}};
    if (context.ui.metrics().compact()) links.push_back({"hand_over.title", {app::Screen::hand_over, 0}});
    // High enough for two lines, so that neighbours are alike.
    const Metrics& m = context.ui.metrics();
    const float half = (context.ui.remaining().width() - m.gap) / 2 - 2 * m.pad;
    const bool narrow = std::any_of(links.begin(), links.end(), [&](const Link& link) {
        return context.ui.word_width(context.say(link.key), TextRole::caption, Weight::medium) > half;
    });
    const float height = m.target_size(TargetClass::row) + m.dp(10);
    for (std::size_t i = 0; i < links.size(); i += narrow ? 1 : 2) {
        const bool pair = !narrow && i + 1 < links.size();
        const auto cells = context.ui.cells(pair ? std::vector<float>{1, 1} : std::vector<float>{1}, height);
        for (std::size_t k = i; k < i + (pair ? 2U : 1U); ++k) {
            const std::string id = std::string("answer.open.") + app::screen_name(links[k].spot.screen);
            if (context.ui.button(id, context.say(links[k].key))) context.act(app::GoTo{links[k].spot});
        }
    }
}

}  // namespace

void draw_answer_sections(ScreenContext& context, const CartAdvice& advice, const RankedCandidate& first) {
    to_read(context, advice);
    context.ui.block([&] { links(context, first); });
    would_hold(context, advice);
    conditions(context, advice);
    doubt(context, advice);
    turned_down(context, advice);
}

}  // namespace sillwalk::ui
