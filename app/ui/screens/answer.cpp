#include "app/text/read_again.hpp"
#include "app/ui/draw/wheel.hpp"
#include "app/ui/screens/answer_parts.hpp"
#include "app/ui/screens/parts.hpp"

namespace sillwalk::ui {

using engine::CartAdvice;
using engine::RankedCandidate;

namespace {

std::string size_text(const ScreenContext& context, const engine::Wheel& wheel) {
    const auto length = [&](engine::Length l) { return app::show({l.si(), engine::Kind::length}, context.units()); };
    return length(wheel.diameter) + " \u00D7 " + length(wheel.tread_width);
}

std::string short_candidate(const ScreenContext& context, const engine::Candidate& candidate) {
    const engine::Catalogue& catalogue = context.model.data->catalogue;
    std::string text =
        catalogue.bearings[candidate.bearing].description + ", " + catalogue.rigs[candidate.rig].description;
    constexpr const char* preparations[] = {"preparation.as_supplied", "preparation.degreased",
                                            "preparation.h1_lubricated"};
    return text + ", " + context.say(preparations[static_cast<std::size_t>(candidate.preparation)]);
}

/// "It fails nothing in 87 of 100", where that says more than the verdict does.
std::string share_text(const ScreenContext& context, const RankedCandidate& first) {
    const app::Completion* done = app::completion_in_hand(context.model);
    if (first.verdict != engine::Verdict::cannot_tell || !done || !done->read_again) return "";
    const auto answers = app::read_again_text(*done->read_again, *context.advice(), context.text()).answers;
    return answers.empty() ? "" : answers.front();
}

/// On a narrow screen: one under another. Where nothing holds the nearest is named below.
void narrow_headline(ScreenContext& context, const CartAdvice& advice, const RankedCandidate& first) {
    Ui& ui = context.ui;
    const auto card = ui.card();
    const std::string wheel = wheel_text(context, context.model.data->catalogue.wheels[first.candidate.wheel]);
    const bool chosen = !advice.nothing_holds;
    if (chosen) ui.caption(context.say("answer.first_choice"));
    ui.text(chosen ? wheel : context.say("answer.nothing_holds"), TextRole::section, Weight::medium, {},
            "answer.headline");
    if (!chosen) {
        ui.text(context.say("answer.nearest_named", {wheel}), TextRole::body, Weight::medium, {}, "answer.nearest");
    }
    ui.caption(short_candidate(context, first.candidate), "answer.parts");
    ui.badge(badge_of(first.verdict), verdict_text(context, first.verdict), "answer.verdict");
    const std::string share = share_text(context, first);
    if (!share.empty()) ui.caption(share, "answer.share");
}

/// First choice; where nothing holds there is none, and the card says so and names the nearest.
void headline_card(ScreenContext& context, const Rect& rect, const CartAdvice& advice, const RankedCandidate& first) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const engine::Wheel& wheel = context.model.data->catalogue.wheels[first.candidate.wheel];
    const auto card = ui.card({.rect = rect, .pad = 0});
    Rect rest = rect.inset(m.pad, m.dp(10));
    const bool chosen = !advice.nothing_holds;
    const Rect picture = rest.cut_left(rest.height(), m.gutter);
    draw_wheel(ui.canvas(), theme, picture.center(), picture.height() / 2 - m.dp(2),
               chosen ? WheelStyle::first_choice : WheelStyle::runner_up);
    const Rect badge = ui.badge_at({rest.x1, rest.y0 + m.dp(24)}, badge_of(first.verdict), Align::right,
                                   verdict_text(context, first.verdict), TextRole::body);
    const float width = badge.x0 - rest.x0 - m.dp(16);
    const float caption = m.cap_height(TextRole::caption);
    const std::string share = share_text(context, first);
    const std::string over = chosen ? context.say("answer.first_choice") : context.say("answer.no_choice");
    ui.text_at({rest.x0, rest.y0 + caption + m.dp(4)},
               fitted(ui, share.empty() ? over : over + ". " + share, width, TextRole::caption, Weight::regular),
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, width, "answer.share");
    const std::string head = chosen ? wheel_text(context, wheel) : context.say("answer.nothing_holds");
    ui.text_in({rest.x0, rest.y0 + caption + m.dp(8), rest.x0 + width, rest.y1 - caption - m.dp(10)}, head,
               {TextRole::value, Weight::medium, theme.text, Align::left}, "answer.headline");
    const std::string what =
        chosen ? size_text(context, wheel) : context.say("answer.nearest_named", {wheel_text(context, wheel)});
    const std::string detail = fitted(ui, what + ". " + short_candidate(context, first.candidate), rest.width(),
                                      TextRole::caption, Weight::regular);
    ui.text_at({rest.x0, rest.y1 - m.dp(6)}, detail, {TextRole::caption, Weight::regular, theme.text2, Align::left},
               rest.width(), "answer.nearest");
}

void runner_up_card(ScreenContext& context, const Rect& rect, const RankedCandidate& second) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const engine::Wheel& wheel = context.model.data->catalogue.wheels[second.candidate.wheel];
    const auto card = ui.card({.rect = rect, .pad = 0});
    Rect rest = rect.inset(m.pad, m.dp(12));
    const Rect picture = rest.cut_left(rest.height() * 0.74F, m.pad);
    draw_wheel(ui.canvas(), theme, {picture.center().x, rest.center().y}, picture.width() / 2, WheelStyle::runner_up);
    ui.text_at({rest.x0, rest.y0 + m.cap_height(TextRole::caption) + m.dp(2)}, context.say("answer.runner_up"),
               {TextRole::caption, Weight::regular, theme.text2, Align::left}, rest.width());
    ui.text_at({rest.x0, rest.center().y + m.cap_height(TextRole::row) / 2 - m.dp(2)}, wheel_text(context, wheel),
               {TextRole::row, Weight::medium, theme.text, Align::left}, rest.width());
    ui.badge_at({rest.x0, rest.y1 - m.dp(16)}, badge_of(second.verdict), Align::left,
                verdict_text(context, second.verdict));
}

void draw_empty(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const auto list = ui.scroll("answer", area);
    if (context.model.answer && !context.model.answer->refused.empty()) {
        ui.title(context.say("answer.contradiction"));
        for (const engine::Error& error : context.model.answer->refused) ui.text(error.where + ": " + error.message);
        return;
    }
    no_wheel_judged(context);
}

}  // namespace

const RankedCandidate* runner_up_of(const CartAdvice& advice) {
    return advice.runner_up ? &*advice.runner_up : nullptr;
}

void draw_answer(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const CartAdvice* advice = app::cart_advice(context.model);
    const RankedCandidate* first = app::headline(advice);
    if (!first) return draw_empty(context, area);
    const RankedCandidate* second = runner_up_of(*advice);
    const float head_height = m.text_size(TextRole::value) + 2 * m.text_size(TextRole::caption) + m.dp(26);
    if (m.width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {704, 400}, true);
        Rect left = columns[0];
        const Rect head = left.cut_top(head_height, m.gap);
        ui.kept("answer.first", [&] {
            headline_card(context, head, *advice, *first);
            draw_reasons(context, left, *advice, *first);
        });
        Rect right = columns[1];
        if (second) {
            const Rect card = right.cut_top(head_height, m.gap);
            ui.kept("answer.second", [&] { runner_up_card(context, card, *second); });
        }
        const auto list = ui.scroll("answer", right);
        draw_answer_sections(context, *advice, *first);
        return;
    }
    const auto list = ui.scroll("answer", area);
    if (m.compact()) {
        ui.block([&] { narrow_headline(context, *advice, *first); });
        draw_reason_rows(context, *first);
    } else {
        ui.block([&] { headline_card(context, ui.place(head_height), *advice, *first); });
        ui.block([&] { draw_reasons(context, {}, *advice, *first); });
    }
    if (second) ui.block([&] { runner_up_card(context, ui.place(head_height), *second); });
    draw_answer_sections(context, *advice, *first);
}

}  // namespace sillwalk::ui
