// What is handed over for the cart in hand: specification, bench sheet and parts, as it will be printed.

#include "app/text/hand_over.hpp"

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"
#include "app/ui/screens/sending_parts.hpp"

namespace sillwalk::ui {

namespace {

/// A line with its value at the right, or alone and wrapped.
void line(ScreenContext& context, const std::string& id, const app::HandOverLine& one) {
    Ui& ui = context.ui;
    if (one.value.empty()) return ui.text(one.text, TextRole::body, Weight::regular, {}, id);
    const Metrics& m = ui.metrics();
    const float whole = ui.remaining().width();
    const float value = ui.text_width(one.value, TextRole::body, Weight::medium);
    // A long value gets a line of its own.
    if (value > whole * 0.5F) {
        ui.text(one.text, TextRole::body, Weight::regular, {}, id);
        return ui.text(one.value, TextRole::body, Weight::medium, {}, id + ".value");
    }
    const float width = whole - value - m.gap;
    const Rect rect = ui.place(ui.text_height(one.text, TextRole::body, Weight::regular, width));
    {
        const auto column = ui.column({rect.x0, rect.y0, rect.x0 + width, rect.y1});
        ui.text(one.text, TextRole::body, Weight::regular, {}, id);
    }
    const float base = rect.y0 + (m.line_height(TextRole::body) + m.cap_height(TextRole::body)) / 2;
    ui.text_at({rect.x1, base}, one.value, {TextRole::body, Weight::medium, ui.theme().text, Align::right}, 0,
               id + ".value");
}

void sections(ScreenContext& context, const std::vector<app::HandOverSection>& list) {
    for (const app::HandOverSection& section : list) {
        const auto card = context.ui.card();
        context.ui.text(section.title, TextRole::row, Weight::medium);
        for (std::size_t i = 0; i < section.lines.size(); ++i) {
            context.ui.block(
                [&] { line(context, "hand_over." + section.key + "." + std::to_string(i), section.lines[i]); });
        }
    }
}

app::HandOver text_of(const ScreenContext& context, const engine::CartAdvice& advice) {
    const app::Completion* done = app::completion_in_hand(context.model);
    return app::hand_over(context.model.answer->advice, advice, done ? done->conditions : std::nullopt, context.text());
}

}  // namespace

void draw_hand_over(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const engine::CartAdvice* advice = context.advice();
    Rect rest = area;
    if (!advice) {
        send_head(context, rest);
        const auto list = ui.scroll("hand_over", rest);
        delivery_row(context);
        return no_wheel_judged(context);
    }
    const app::HandOver& text = context.recall(Remembered::hand_over, 0, [&] { return text_of(context, *advice); });
    const auto bench = [&] {
        ui.text(context.say("hand_over.bench_sheet"), TextRole::row, Weight::medium);
        if (text.bench.empty()) ui.text(context.say("hand_over.no_bench"));
        sections(context, text.bench);
    };
    if (ui.metrics().width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {600, 504}, true);
        {
            const auto list = ui.scroll("hand_over", columns[0]);
            ui.finding(text.headline, "hand_over.headline");
            sections(context, text.specification);
        }
        rest = columns[1];
        send_head(context, rest);
        const auto list = ui.scroll("hand_over.bench", rest);
        delivery_row(context);
        return bench();
    }
    send_head(context, rest);
    const auto list = ui.scroll("hand_over", rest);
    delivery_row(context);
    ui.finding(text.headline, "hand_over.headline");
    sections(context, text.specification);
    bench();
}

}  // namespace sillwalk::ui
