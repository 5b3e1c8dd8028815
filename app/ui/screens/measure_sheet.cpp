#include "app/core/sheet.hpp"
#include "app/ui/draw/strokes.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/measure_plan.hpp"
#include "app/ui/screens/pictures.hpp"
#include "app/ui/screens/ruler.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

using app::Hint;
using app::HintKind;
using app::Plausible;
using app::QuantityKind;
using app::Sheet;
using app::Unit;
using engine::Field;

namespace {

struct SheetView {
    const Sheet& sheet;
    const Unit& unit;
    const Plausible* usual;
    Hint hint;
    std::optional<std::int64_t> value;
    std::vector<const app::Method*> methods;
    std::optional<engine::ReadingRef> next;
    std::vector<engine::ReadingRef> same;
};

SheetView view_of(const ScreenContext& context) {
    const Sheet& sheet = *context.model.sheet;
    const app::EntryTables& tables = context.model.data->entry;
    const Unit& unit = app::unit_of(sheet);
    return {sheet,
            unit,
            app::plausible_row(tables, context.survey(), sheet.ref),
            app::hint_of(sheet, tables, context.survey()),
            app::canonical_of(sheet.entry, unit),
            app::methods_for(tables, sheet.kind, unit),
            app::next_reading(context.survey(), sheet.ref),
            app::same_as(context.survey(), sheet.ref)};
}

/// The other system's unit, to show beside what is typed.
const Unit* other_unit(const Sheet& sheet) {
    const auto units = app::units_of(sheet.kind);
    if (units.size() < 2) return nullptr;
    return &units[sheet.unit == 0 ? 1 : 0];
}

std::string whole_part(const app::Entry& entry) {
    const std::string sign = entry.negative ? "\u2212" : "";
    const bool only_fraction = entry.sixteenths != 0 && (entry.digits.empty() || entry.digits == "0");
    return only_fraction ? sign : sign + entry.digits;
}

/// What is typed, large: digits, a stacked fraction, the unit. Returns its right end.
float draw_typed(ScreenContext& context, const SheetView& view, Point left_baseline, TextRole role, float height) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    float x = left_baseline.x;
    std::string whole = whole_part(view.sheet.entry);
    const bool empty = view.sheet.entry.empty();
    if (empty && whole.empty()) whole = "\u2013";
    if (view.unit.shape == app::UnitShape::one_to) whole = "1:" + (empty ? std::string("\u2013") : whole);
    const Color ink = empty ? theme.disabled_text : theme.text;
    if (!whole.empty()) {
        x = ui.text_at({x, left_baseline.y}, whole, {role, Weight::medium, ink, Align::left}, 0, "sheet.typed") +
            m.dp(10);
    }
    if (view.sheet.entry.sixteenths != 0) {
        const app::Fraction f = app::reduced(view.sheet.entry.sixteenths);
        const bool tall = height >= 2.4F * m.text_size(TextRole::digit);
        const TextRole fraction_role = tall ? TextRole::digit : TextRole::body;
        const float width =
            stacked_fraction_width(ui.canvas(), f.numerator, f.denominator, fraction_role, Weight::medium);
        const float middle = left_baseline.y - m.cap_height(role) / 2;
        stacked_fraction(ui.canvas(), {x + width / 2, middle}, f.numerator, f.denominator,
                         {fraction_role, Weight::medium, theme.text, Align::center});
        x += width + m.dp(12);
    }
    const std::string symbol = view.unit.shape == app::UnitShape::one_to ? "" : unit_text(context, view.unit);
    if (symbol.empty()) return x;
    return ui.text_at({x + m.dp(4), left_baseline.y}, symbol,
                      {TextRole::row, Weight::regular, theme.text2, Align::left});
}

/// Usual values as a band, the impossible hatched, the typed value as a mark.
void draw_range(ScreenContext& context, const SheetView& view, const Rect& box) {
    if (!view.usual || view.unit.shape != app::UnitShape::linear) return;
    Ui& ui = context.ui;
    Canvas& canvas = ui.canvas();
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const auto in_unit = [&](double si) { return app::in_unit(app::to_canonical(si, view.sheet.kind), view.unit); };
    const double low = in_unit(view.usual->typical_low);
    const double high = in_unit(view.usual->typical_high);
    const double span = high - low;
    double left = std::max(low - span * 0.5, in_unit(view.usual->hard_low) - span * 0.1);
    double right = std::min(high + span, in_unit(view.usual->hard_high) + span * 0.1);
    if (view.value) {
        const double now = app::in_unit(*view.value, view.unit);
        left = std::min(left, now - span * 0.05);
        right = std::max(right, now + span * 0.05);
    }
    const auto x_of = [&](double value) {
        return box.x0 + box.width() * static_cast<float>(std::clamp((value - left) / (right - left), 0.0, 1.0));
    };
    const float u = design_unit(context);
    const float y = box.center().y;
    RangeStrip strip;
    strip.least = left;
    strip.most = right;
    strip.typical_low = low;
    strip.typical_high = high;
    if (in_unit(view.usual->hard_high) < right) strip.impossible_from = in_unit(view.usual->hard_high);
    if (view.value) strip.value = app::in_unit(*view.value, view.unit);
    draw_range_strip(canvas, theme, box.x0, box.x1, y, strip);
    // With large letters on a phone the band stands alone, clear of what is typed.
    if (y - 30 * u - m.cap_height(TextRole::caption) >= box.y0) {
        ui.text_at({box.x0, y - 30 * u}, context.say("sheet.usual"),
                   {TextRole::caption, Weight::regular, theme.text2, Align::left}, box.width());
    }
    // The ends of what is usual are round in one system only.
    const auto number = [&](double si) {
        if (view.unit.sixteenths) return fmt::format("{:.3g}", std::round(in_unit(si) * 100) / 100);
        return app::shown_number(app::to_canonical(si, view.sheet.kind), view.unit);
    };
    const float base = y + 18 * u + m.cap_height(TextRole::caption);
    const std::string low_text = number(view.usual->typical_low);
    const std::string high_text = number(view.usual->typical_high) + "\u2009" + unit_text(context, view.unit);
    const TextStyle style{TextRole::caption, Weight::regular, theme.text2, Align::center};
    const auto half_of = [&](const std::string& text) { return ui.text_width(text, style.role, style.weight) / 2; };
    const float high_x = std::min(x_of(high), box.x1 - half_of(high_text));
    if (high_x - x_of(low) < half_of(low_text) + half_of(high_text) + m.dp(8)) {
        const std::string both = context.say("hand_over.from_to", {low_text, high_text});
        const float x = std::clamp(x_of(low), box.x0 + half_of(both), std::max(box.x0, box.x1 - half_of(both)));
        ui.text_at({x, base}, both, style);
        return;
    }
    ui.text_at({x_of(low), base}, low_text, style);
    ui.text_at({high_x, base}, high_text, style);
}

struct ReadoutParts {
    Rect typed, range;  ///< the second holds the hint where there is no better place for it
};

ReadoutParts readout_parts(const Metrics& m, const Rect& box) {
    const Rect inner = box.inset(m.pad + m.dp(4), m.dp(10));
    if (m.compact()) {
        Rect rest = inner;
        const float fraction = 2.2F * m.text_size(TextRole::body);
        const Rect typed = rest.cut_top(std::max(m.line_height(TextRole::value), fraction));
        return {typed, rest};
    }
    const float share = m.width_class == WidthClass::expanded ? 0.40F : 0.46F;
    const float middle = inner.x0 + inner.width() * share;
    return {{inner.x0, inner.y0, middle, inner.y1}, {middle + m.dp(44), inner.y0, inner.x1, inner.y1}};
}

void draw_readout(ScreenContext& context, const SheetView& view, const Rect& box, bool with_range) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const Theme& theme = ui.theme();
    const auto card = ui.card({.rect = box, .pad = 0});
    const ReadoutParts parts = readout_parts(m, box);
    const Rect& typed = parts.typed;
    const Unit* other = other_unit(view.sheet);
    std::string also;
    if (view.value && other) {
        also = app::shown_number(*view.value, *other);
        if (other->shape == app::UnitShape::one_to) also = "1:" + also;
    }
    const auto draw_other = [&](float right, float base, TextRole role) {
        if (also.empty()) return;
        const std::string symbol = other->shape == app::UnitShape::one_to ? "" : unit_text(context, *other);
        ui.value_at({right, base}, also, symbol, role, "sheet.other");
    };
    const TextRole role = m.compact() ? TextRole::value : TextRole::readout;
    const float base = typed.center().y + m.cap_height(role) / 2;
    const float end = draw_typed(context, view, {typed.x0, base}, role, typed.height());
    if (m.compact()) {
        const float room = typed.x1 - end - ui.text_width("0000", TextRole::caption, Weight::regular);
        for (const TextRole smaller : {TextRole::section, TextRole::caption}) {
            if (ui.text_width(also, smaller, Weight::medium) > room) continue;
            draw_other(typed.x1, base, smaller);
            break;
        }
    } else if (typed.x1 - end > ui.text_width(also, TextRole::section, Weight::medium) + m.dp(90)) {
        ui.canvas().line({end + m.dp(24), typed.y0 + m.dp(12)}, {end + m.dp(24), typed.y1 - m.dp(12)}, theme.hairline,
                         m.hairline);
        draw_other(typed.x1 + m.dp(14), base, TextRole::section);
    }
    if (with_range) draw_range(context, view, parts.range);
}

void draw_units(ScreenContext& context, const SheetView& view, const Rect& rect) {
    const auto units = app::units_of(view.sheet.kind);
    std::vector<ChoiceItem> items;
    for (const Unit& unit : units) {
        std::string id(unit.name.empty() ? "number" : unit.name);
        for (char& c : id) c = c == ' ' || c == '/' ? '_' : c == '%' ? 'p' : c == ':' ? 'r' : c;
        items.push_back({id, unit.shape == app::UnitShape::one_to ? "1:n" : unit_text(context, unit), {}, true});
    }
    if (items.size() == 1 && items[0].label.empty()) return;
    if (context.ui.metrics().compact() && items.size() > 1) {
        // One key that steps through them, as for the ways of reading.
        const std::size_t next = (view.sheet.unit + 1) % items.size();
        if (context.ui.button("sheet.unit", items[view.sheet.unit].label, {.role = TextRole::body, .rect = rect}))
            context.act(app::SheetUnit{next});
        return;
    }
    const auto hit = context.ui.choice("sheet.unit", items, static_cast<int>(view.sheet.unit), {.rect = rect});
    if (hit) context.act(app::SheetUnit{*hit});
}

std::string tolerance_text(const ScreenContext& context, const SheetView& view, const app::Method& method) {
    if (method.tolerance_share > 0)
        return "\u00B1\u2009" +
               app::shown_difference(static_cast<std::int64_t>(method.tolerance_share * 1e6),
                                     app::units_of(QuantityKind::share)[0]) +
               "\u2009%";
    if (method.tolerance_si == 0) return context.say("sheet.exact");
    const std::string difference =
        app::shown_difference(app::to_canonical(method.tolerance_si, view.sheet.kind), view.unit);
    return "\u00B1\u2009" + difference + (view.unit.shape == app::UnitShape::one_to ? "\u2009%" : "");
}

void draw_methods(ScreenContext& context, const SheetView& view, const Rect& rect) {
    if (view.methods.empty()) return;
    std::vector<ChoiceItem> items;
    for (const app::Method* method : view.methods) {
        items.push_back(
            {method->id, tolerance_text(context, view, *method), context.say("method." + method->id), true});
    }
    const std::size_t now = std::min(view.sheet.method, items.size() - 1);
    if (context.ui.metrics().compact()) {
        // One key that steps through the ways of reading: four beside each other would be too small for a glove.
        ButtonOptions options;
        options.detail = items[now].detail;
        options.rect = rect;
        options.role = TextRole::body;
        if (context.ui.button("sheet.method", items[now].label, options)) {
            context.act(app::SheetMethod{(now + 1) % items.size()});
        }
        return;
    }
    const auto hit = context.ui.choice("sheet.method", items, static_cast<int>(now), {.rect = rect});
    if (hit) context.act(app::SheetMethod{*hit});
}

bool may_be_negative(QuantityKind kind) {
    return kind == QuantityKind::temperature || kind == QuantityKind::slope;
}

void draw_digits(ScreenContext& context, const SheetView& view, const MeasurePlan& plan) {
    constexpr const char* labels[] = {"1", "2", "3", "4", "5", "6", "7", "8", "9", "\u00B1", "0", "."};
    constexpr const char* ids[] = {"1", "2", "3", "4", "5", "6", "7", "8", "9", "sign", "0", "point"};
    for (std::size_t i = 0; i < plan.digits.size(); ++i) {
        if (plan.digits[i].empty()) continue;
        KeyOptions options;
        options.rect = plan.digits[i];
        const char key = i == 9 ? '-' : labels[i][0];
        options.shortcut = static_cast<char32_t>(key);
        options.enabled = i != 9 || may_be_negative(view.sheet.kind);
        options.selected = i == 9 && view.sheet.entry.negative;
        if (!context.ui.key(std::string("sheet.key.") + ids[i], labels[i], options)) continue;
        if (i == 9) {
            context.act(app::SheetSign{});
        } else {
            context.act(app::SheetDigit{key});
        }
    }
}

void draw_fractions(ScreenContext& context, const SheetView& view, MeasurePlan& plan) {
    const bool phone = context.ui.metrics().compact();
    const std::string none = context.say("sheet.no_fraction");
    for (std::size_t i = 0; i < plan.fractions.size(); ++i) {
        if (plan.fractions[i].empty() || (phone && i > 8)) continue;
        KeyOptions options;
        options.rect = plan.fractions[i];
        if (phone && i == 7) {
            if (context.ui.key("sheet.fraction.plus", "+\u20091/16", {.role = TextRole::row, .rect = options.rect})) {
                context.act(app::SheetPlusSixteenth{});
            }
            continue;
        }
        const int last = phone ? 8 : 15;
        const int sixteenths = static_cast<int>(i) == last ? 0
                               : phone                     ? 2 * (static_cast<int>(i) + 1)
                                                           : static_cast<int>(i) + 1;
        options.selected = sixteenths != 0 && view.sheet.entry.sixteenths == sixteenths;
        if (context.ui.fraction_key("sheet.fraction." + std::to_string(sixteenths), sixteenths, none, options)) {
            context.act(app::SheetFraction{sixteenths});
        }
    }
    if (phone && !plan.fractions[11].empty()) {
        plan.picture = {plan.fractions[9].x0, plan.fractions[9].y0, plan.fractions[11].x1, plan.fractions[11].y1};
    }
}

void draw_operations(ScreenContext& context, const SheetView& view, const MeasurePlan& plan) {
    Ui& ui = context.ui;
    KeyOptions back{.icon = Icon::backspace, .rect = plan.backspace};
    back.on_hold = [&context] { context.act(app::SheetClear{}); };
    if (ui.key("sheet.backspace", context.say("sheet.backspace"), back)) context.act(app::SheetBackspace{});
    const bool steps = view.unit.step > 0;
    if (!plan.plus.empty()) {
        if (ui.key("sheet.plus", "+", {.icon = Icon::plus, .enabled = steps, .rect = plan.plus}))
            context.act(app::SheetStep{1});
        if (ui.key("sheet.minus", "\u2212", {.icon = Icon::minus, .enabled = steps, .rect = plan.minus})) {
            context.act(app::SheetStep{-1});
        }
    }
    KeyOptions next{.primary = true, .role = TextRole::row, .rect = plan.next};
    next.enabled = view.hint.kind != HintKind::impossible;
    const std::string field = view.next ? context.say(app::reading_key(*view.next)) : "";
    if (context.ui.metrics().compact()) {
        const std::string label = view.next ? context.say("sheet.next_named", {field}) : context.say("sheet.done");
        if (ui.key("sheet.next", label, next)) context.act(app::SheetKeep{true});
        return;
    }
    // The name of the next reading only where the key is wide enough for it.
    if (context.ui.text_width(field, TextRole::caption, Weight::regular) <=
        plan.next.width() - context.ui.metrics().dp(14)) {
        next.detail = field;
    }
    if (ui.key("sheet.next", context.say(view.next ? "sheet.next" : "sheet.done"), next))
        context.act(app::SheetKeep{true});
}

void draw_side_buttons(ScreenContext& context, const SheetView& view, const MeasurePlan& plan) {
    Ui& ui = context.ui;
    if (plan.done.empty()) return;
    const bool wide = ui.metrics().width_class == WidthClass::expanded;
    const Align align = wide ? Align::left : Align::center;
    const auto options = [&](const Rect& rect, bool enabled, Align side) {
        ButtonOptions o;
        o.rect = rect;
        o.enabled = enabled;
        o.align = side;
        o.role = TextRole::body;
        return o;
    };
    if (ui.button("sheet.again", context.say("sheet.again"),
                  options(plan.again, view.value || view.sheet.before.value, align))) {
        context.act(app::SheetAgain{});
    }
    const bool can_copy = !view.same.empty();
    ButtonOptions same = options(plan.same, can_copy, align);
    if (can_copy) {
        const std::string owner = app::owner_name(context.survey(), view.same.front());
        const float room = plan.same.width() - 2 * ui.metrics().pad;
        const std::string shown = fitted(ui, owner, room, TextRole::caption, Weight::regular);
        if (ui.text_width(shown, TextRole::smallest, Weight::regular) <= room) same.detail = shown;
    }
    if (ui.button("sheet.same", context.say("sheet.same"), same)) context.act(app::SheetSameAs{view.same.front()});
    const bool zero_means_none = view.usual && view.usual->zero_is_typical;
    if (ui.button("sheet.none", context.say("sheet.none"), options(plan.none, zero_means_none, Align::center))) {
        context.act(app::SheetNone{});
    }
    if (ui.button("sheet.not_accessible", context.say("known.not_accessible_short"),
                  options(plan.not_accessible, true, Align::center))) {
        context.act(app::SheetNotAccessible{});
    }
    const bool can_keep = view.hint.kind != HintKind::impossible;
    if (ui.button("sheet.done", context.say("sheet.done_close"), options(plan.done, can_keep, align))) {
        context.act(app::SheetKeep{false});
    }
}

std::string hint_text(const ScreenContext& context, const SheetView& view) {
    if (app::disagrees(view.sheet, context.model.data->entry)) return context.say("hint.disagree");
    switch (view.hint.kind) {
        case HintKind::impossible:
            return context.say("hint.impossible");
        case HintKind::unusual_low:
        case HintKind::unusual_high:
            return context.say("hint.unusual");
        case HintKind::finer_than_tool:
            return context.say("hint.finer");
        case HintKind::none:
            break;
    }
    return "";
}

/// What is odd about the value, and the likelier one where there is one.
struct HintTexts {
    std::string odd, meant;
};

HintTexts hint_texts(const ScreenContext& context, const SheetView& view) {
    HintTexts texts{hint_text(context, view), {}};
    if (texts.odd.empty() || !view.hint.suggestion) return texts;
    const Unit& unit = app::units_of(view.sheet.kind)[view.hint.suggestion->unit];
    texts.meant = context.say("hint.did_you_mean", {app::as_entered(view.hint.suggestion->entry, unit)});
    return texts;
}

float hint_height(const Ui& ui, const HintTexts& texts, float width) {
    const Metrics& m = ui.metrics();
    const float inner = width - 2 * m.pad;
    const float odd = ui.text_height(texts.odd, TextRole::caption, Weight::regular, inner);
    if (texts.meant.empty()) return odd + m.dp(20);
    const float meant = ui.text_height(texts.meant, TextRole::body, Weight::medium, inner);
    return std::max(m.target_size(TargetClass::row), odd + meant + m.dp(12));
}

/// A button that takes the likelier value; where it would be too small for a finger, the words alone.
void draw_hint(ScreenContext& context, const HintTexts& texts, const Rect& box) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    if (!texts.meant.empty() && box.height() >= m.target_size(TargetClass::row)) {
        if (ui.button("sheet.suggestion", texts.meant,
                      {.detail = texts.odd, .align = Align::left, .role = TextRole::body, .rect = box})) {
            context.act(app::SheetTakeSuggestion{});
        }
        return;
    }
    const std::string all = texts.meant.empty() ? texts.odd : texts.odd + " " + texts.meant;
    ui.text_in(box, all, {TextRole::caption, Weight::regular, ui.theme().text, Align::left}, "sheet.hint");
}

/// The first place that has room for all of the hint; beside what is typed where none has.
Rect hint_place(const Ui& ui, const HintTexts& texts, const MeasurePlan& plan) {
    for (const Rect& box : {plan.picture, plan.aside}) {
        if (!box.empty() && hint_height(ui, texts, box.width()) <= box.height()) return box;
    }
    return readout_parts(ui.metrics(), plan.readout).range;
}

bool has_sketch(const SheetView& view) {
    return app::owner_of(view.sheet.ref.field) == app::Owner::crossing;
}

/// The sketch of what is measured; other readings than those of a crossing have none.
void draw_sketch(ScreenContext& context, const SheetView& view, const Rect& box) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    if (box.height() < m.dp(60) || !has_sketch(view)) return;
    const auto card = ui.card({.rect = box, .pad = 0});
    // The sketch follows the keys: wheel and obstacle to one scale say at once whether the number can be right.
    engine::Crossing crossing = context.survey().crossings[view.sheet.ref.index];
    if (view.value && view.sheet.kind == QuantityKind::small_length) {
        const auto length = engine::measured(static_cast<double>(*view.value) * engine::nanometre);
        if (view.sheet.ref.field == Field::crossing_rise) crossing.rise = length;
        if (view.sheet.ref.field == Field::crossing_gap) crossing.gap = length;
        if (view.sheet.ref.field == Field::crossing_lip_height) crossing.lip_height = length;
        if (view.sheet.ref.field == Field::crossing_slot) crossing.slot = length;
    }
    const CrossingSection section = section_of(crossing, present_wheel(context));
    const Rect inner = box.inset(2);
    const float ground = inner.height() * 0.26F;
    const Rect air{inner.x0, inner.y0, inner.x1, inner.y1 - ground};
    draw_crossing_section(ui.canvas(), ui.theme(), inner, air.y1, section_scale(air, section, m.dp(1)), section);
}

struct TitleTexts {
    std::string name, owner, was;
};

TitleTexts reading_title(const ScreenContext& context, const SheetView& view) {
    TitleTexts texts{capitalised(context.say(app::reading_key(view.sheet.ref))),
                     app::owner_name(context.survey(), view.sheet.ref),
                     {}};
    if (context.ui.metrics().compact()) return texts;  // no room for it
    const std::string before = value_text(context, view.sheet.ref);
    texts.was = before.empty() ? context.say("sheet.before_none") : context.say("sheet.before", {before});
    return texts;
}

/// A long name is drawn smaller before it takes a second line.
TextRole title_role(const Ui& ui, const std::string& name, float width) {
    return ui.text_width(name, TextRole::section, Weight::medium) <= width ? TextRole::section : TextRole::body;
}

float title_height(const Ui& ui, const TitleTexts& texts, float width) {
    const auto caption = [&](const std::string& text) {
        return text.empty() ? 0 : ui.text_height(text, TextRole::caption, Weight::regular, width);
    };
    return ui.text_height(texts.name, title_role(ui, texts.name, width), Weight::medium, width) + caption(texts.owner) +
           caption(texts.was);
}

void draw_title(ScreenContext& context, const TitleTexts& texts, const MeasurePlan& plan) {
    Ui& ui = context.ui;
    const Color grey = ui.theme().text2;
    {
        const auto column = ui.column(plan.title, 0);
        ui.text(texts.name, title_role(ui, texts.name, plan.title.width()), Weight::medium, {}, "sheet.title");
        if (!texts.owner.empty()) ui.text(texts.owner, TextRole::caption, Weight::regular, grey);
        if (!texts.was.empty()) ui.text(texts.was, TextRole::caption, Weight::regular, grey);
    }
    if (plan.close.empty()) return;
    if (ui.button("sheet.close", "", {.style = ButtonStyle::quiet, .icon = Icon::close, .rect = plan.close})) {
        context.act(app::SheetKeep{false});
    }
}

/// Two keys beside each other would be too small for a glove: one leads to the other page.
void draw_pages(ScreenContext& context, const SheetView& view, const Rect& rect) {
    if (rect.empty()) return;
    const char* other = view.sheet.fraction_page ? "123" : "\u215B";
    if (context.ui.button("sheet.page", other, {.rect = rect})) context.act(app::SheetPage{!view.sheet.fraction_page});
}

/// Leads from the keys to the ruler and back.
void draw_ruler_key(ScreenContext& context, const SheetView& view, const Rect& rect) {
    if (rect.empty()) return;
    const bool on = view.sheet.ruler_page;
    if (context.ui.button("sheet.ruler_key", on ? "123" : context.say("sheet.ruler"),
                          {.role = TextRole::body, .rect = rect})) {
        context.act(app::SheetRuler{!on});
    }
}

}  // namespace

void draw_measure_sheet(ScreenContext& context, const Rect& area) {
    const SheetView view = view_of(context);
    const TitleTexts title = reading_title(context, view);
    const HintTexts hint = hint_texts(context, view);
    MeasureNeeds needs{view.unit.sixteenths,
                       view.sheet.fraction_page,
                       false,
                       false,
                       has_sketch(view),
                       app::units_of(view.sheet.kind).size()};
    needs.can_rule = has_ruler(context);
    needs.rules = needs.can_rule && view.sheet.ruler_page;
    const Metrics& metrics = context.ui.metrics();
    const MeasurePlan empty = measure_plan(metrics, area, needs);
    needs.title_height = title_height(context.ui, title, empty.title.width());
    if (!hint.odd.empty()) {
        const float width = readout_parts(metrics, empty.readout).range.width();
        needs.hint_height = hint_height(context.ui, hint, width) + metrics.dp(20);
    }
    MeasurePlan plan = measure_plan(metrics, area, needs);
    const Rect where = hint.odd.empty() ? Rect{} : hint_place(context.ui, hint, plan);
    draw_title(context, title, plan);
    draw_readout(context, view, plan.readout, where.empty() || !plan.readout.overlaps(where));
    draw_units(context, view, plan.units);
    draw_methods(context, view, plan.methods);
    draw_pages(context, view, plan.pages);
    draw_ruler_key(context, view, plan.ruler_key);
    if (!plan.ruler.empty()) draw_ruler(context, view.unit, view.value, plan.ruler);
    draw_digits(context, view, plan);
    draw_fractions(context, view, plan);
    draw_operations(context, view, plan);
    draw_side_buttons(context, view, plan);
    if (!where.empty()) draw_hint(context, hint, where);
    // Where there are no fractions the sketch gets their place: the comparison of sizes is the message.
    const bool roomy = plan.aside.height() > metrics.dp(128);
    const Rect& sketch = roomy ? plan.aside : plan.picture;
    if (where.empty() || !sketch.overlaps(where)) draw_sketch(context, view, sketch);
}

}  // namespace sillwalk::ui
