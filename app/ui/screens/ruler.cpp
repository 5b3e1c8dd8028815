#include "app/ui/screens/ruler.hpp"

#include "app/ui/draw/strokes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace sillwalk::ui {

using app::QuantityKind;

namespace {

constexpr double nanometres_per_mm = 1e6;
constexpr double mm_per_inch = 25.4;      // exact, NIST SP 811
constexpr double scale_step = 1.0 / 400;  // a quarter of a millimetre over the bar of 100 mm

/// Where the ticks stand, and which of them are longer and bear a number.
struct Tape {
    Rect box;
    float step_px = 0;  ///< one resolution of the unit
    int ticks = 0;      ///< steps that fit
    bool sixteenths = false;
    [[nodiscard]] float x(double steps) const { return box.x0 + static_cast<float>(steps) * step_px; }
    /// Share of the tape's height.
    [[nodiscard]] float length(int tick) const {
        if (!sixteenths) return tick % 10 == 0 ? 0.62F : tick % 5 == 0 ? 0.44F : 0.27F;
        if (tick % 16 == 0) return 0.62F;
        if (tick % 8 == 0) return 0.50F;
        return tick % 4 == 0 ? 0.40F : tick % 2 == 0 ? 0.30F : 0.20F;
    }
    [[nodiscard]] std::optional<int> number(int tick) const {
        if (sixteenths) return tick % 16 == 0 ? std::optional(tick / 16) : std::nullopt;
        return tick % 10 == 0 ? std::optional(tick) : std::nullopt;
    }
};

Tape tape_in(const Metrics& m, const Rect& box, const app::Unit& unit) {
    Tape tape;
    const Rect inner = box.inset(m.pad + m.dp(8), m.pad);
    const float height = std::clamp(inner.height() * 0.5F, m.mm(16), m.mm(28));
    const float top = inner.y0 + (inner.height() - height) / 2;
    tape.box = {inner.x0, top, inner.x1, top + height};
    tape.step_px = m.mm(static_cast<float>(static_cast<double>(unit.step) / nanometres_per_mm));
    tape.ticks = static_cast<int>(tape.box.width() / tape.step_px);
    tape.sixteenths = unit.sixteenths;
    return tape;
}

void draw_ticks(Ui& ui, const Tape& tape) {
    Canvas& canvas = ui.canvas();
    const Theme& theme = ui.theme();
    canvas.fill_rect(tape.box, theme.muted_fill, ui.metrics().radius);
    const TextStyle style{TextRole::caption, Weight::medium, theme.text, Align::center};
    for (int tick = 0; tick <= tape.ticks; ++tick) {
        const float x = tape.x(tick);
        canvas.line({x, tape.box.y0}, {x, tape.box.y0 + tape.box.height() * tape.length(tick)}, theme.text,
                    (tape.number(tick) ? 2.4F : 1.6F) * theme.line_scale);
        if (const auto number = tape.number(tick)) {
            const std::string text = std::to_string(*number);
            const float half = ui.text_width(text, style.role, style.weight) / 2;
            ui.text_at({std::clamp(x, tape.box.x0 + half, tape.box.x1 - half), tape.box.y1 - ui.metrics().dp(8)}, text,
                       style);
        }
    }
}

/// The mark of the value: a line across the tape with a point above it; an arrow where it lies beyond.
void draw_mark(Ui& ui, const Tape& tape, double steps) {
    Canvas& canvas = ui.canvas();
    const Theme& theme = ui.theme();
    const float u = ui.metrics().dp(1);
    if (steps > tape.ticks) {
        const float y = tape.box.y0 - 16 * u;
        arrow(canvas, {tape.box.x1 - 60 * u, y}, {tape.box.x1, y}, theme.route, 5 * u, 18 * u);
        return;
    }
    const float x = tape.x(std::max(steps, 0.0));
    const Point point[] = {
        {x, tape.box.y0 - 2 * u}, {x - 14 * u, tape.box.y0 - 26 * u}, {x + 14 * u, tape.box.y0 - 26 * u}};
    canvas.fill_polygon(point, theme.route);
    canvas.line({x, tape.box.y0}, {x, tape.box.y1}, theme.route, 4 * theme.line_scale);
}

/// The bar of the check: round in the person's units, as long as there is room for.
struct Bar {
    double mm = 0;
    std::string name;
};
Bar bar_for(const ScreenContext& context, float room_mm) {
    if (context.model.settings.us_units) {
        for (const int inches : {4, 2, 1}) {
            if (inches * mm_per_inch <= room_mm) return {inches * mm_per_inch, fmt::format("{}\u2009in", inches)};
        }
    }
    for (const int mm : {100, 50}) {
        if (static_cast<float>(mm) <= room_mm) return {static_cast<double>(mm), fmt::format("{}\u2009mm", mm)};
    }
    return {20, "20\u2009mm"};
}

void draw_bar(Ui& ui, const Rect& box, const Bar& bar) {
    Canvas& canvas = ui.canvas();
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const float y = box.y0 + m.dp(22);
    const float end = box.x0 + m.mm(static_cast<float>(bar.mm));
    canvas.fill_rect({box.x0, y - m.dp(7), end, y + m.dp(7)}, theme.route);
    for (const float x : {box.x0, end})
        canvas.fill_rect({x - (x > box.x0 ? m.dp(3) : 0), y - m.dp(20), x + (x > box.x0 ? 0 : m.dp(3)), y + m.dp(20)},
                         theme.text);
    ui.text_at({(box.x0 + end) / 2, y + m.dp(20) + m.cap_height(TextRole::row)}, bar.name,
               {TextRole::row, Weight::medium, theme.text, Align::center});
}

}  // namespace

bool has_ruler(const ScreenContext& context) {
    const auto& sheet = context.model.sheet;
    return sheet && sheet->kind == QuantityKind::small_length && context.model.settings.px_per_mm > 0;
}

void draw_ruler(ScreenContext& context, const app::Unit& unit, std::optional<std::int64_t> value, const Rect& box) {
    Ui& ui = context.ui;
    const auto card = ui.card({.rect = box, .pad = 0});
    const Tape tape = tape_in(ui.metrics(), box, unit);
    const double step = static_cast<double>(unit.step);
    const std::string now = value ? app::shown_number(*value, unit) + "\u2009" + std::string(unit.symbol) : "\u2013";
    const float reach = ui.metrics().dp(30);
    const Rect touch{tape.box.x0, tape.box.y0 - reach, tape.box.x1, tape.box.y1};
    const Interaction did =
        ui.area("sheet.ruler", context.say("sheet.ruler_at", {now}), touch, TargetClass::key, DragMode::direct);
    draw_ticks(ui, tape);
    if (value) draw_mark(ui, tape, static_cast<double>(*value) / step);
    const Rect below{tape.box.x0, tape.box.y1 + ui.metrics().gap, tape.box.x1, box.y1};
    ui.text_in(below, context.say("sheet.ruler_how"),
               {TextRole::caption, Weight::regular, ui.theme().text2, Align::left});
    if (did.steps != 0) context.act(app::SheetStep{did.steps});
    if (!did.tapped && !did.dragging) return;
    const float steps = std::clamp((did.at.x - tape.box.x0) / tape.step_px, 0.0F, static_cast<float>(tape.ticks));
    const std::int64_t canonical = std::lround(steps) * unit.step;
    if (value != canonical) context.act(app::SheetSlide{canonical});
}

void draw_scale_check(ScreenContext& context) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const double now = m.mm(1);
    ui.text(context.say("setup.scale"), TextRole::body, Weight::medium);
    ui.caption(context.say(context.model.settings.px_per_mm > 0 ? "setup.scale_checked" : "setup.scale_how"),
               "setup.scale_state");
    const Bar bar = bar_for(context, ui.remaining().width() / m.mm(1));
    ui.drawing(m.dp(44) + m.line_height(TextRole::row), bar.name,
               [&](Canvas&, const Rect& box) { draw_bar(ui, box, bar); });
    const float height = m.target_size(TargetClass::key);
    const auto cells = ui.cells({1, 1, 1}, height);
    const auto key = [&](const char* id, double to, bool repeat) {
        KeyOptions options;
        options.role = TextRole::body;
        options.repeat = repeat;
        options.rect = ui.place(height);
        if (ui.key(id, context.say(id), options)) context.act(app::SetScale{to});
    };
    key("setup.scale_shorter", now * (1 - scale_step), true);
    key("setup.scale_longer", now * (1 + scale_step), true);
    key("setup.scale_fits", now, false);
}

}  // namespace sillwalk::ui
