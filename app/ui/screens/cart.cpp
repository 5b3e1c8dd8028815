#include "app/core/reading_access.hpp"
#include "app/ui/draw/strokes.hpp"
#include "app/ui/screens/drawings/plan.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"
#include "app/ui/screens/pictures.hpp"

#include <array>

namespace sillwalk::ui {

using engine::CheckId;
using engine::Field;
using engine::Finding;
using engine::Outcome;

namespace {

constexpr std::array<Field, 22> cart_fields = {Field::cart_tare,
                                               Field::cart_payload,
                                               Field::cart_people,
                                               Field::cart_moved_by,
                                               Field::cart_sharing,
                                               Field::cart_cg_height_loaded,
                                               Field::cart_cg_forward_loaded,
                                               Field::cart_cg_height_empty,
                                               Field::cart_cg_forward_empty,
                                               Field::cart_handle_height,
                                               Field::cart_speed,
                                               Field::cart_push_distance,
                                               Field::cart_push_rate,
                                               Field::cart_trips_per_day,
                                               Field::cart_parked_loaded,
                                               Field::cart_fork_width,
                                               Field::cart_axle_diameter,
                                               Field::cart_overall_height_limit,
                                               Field::cart_plate_pattern,
                                               Field::cart_static_ask,
                                               Field::cart_non_marking,
                                               Field::cart_load_factor};

const Finding* load_finding(const ScreenContext& context) {
    const engine::RankedCandidate* first = app::headline(app::cart_advice(context.model));
    if (!first) return nullptr;
    for (const Finding& finding : first->findings) {
        if (finding.check == CheckId::load && finding.outcome != Outcome::does_not_apply) return &finding;
    }
    return nullptr;
}

void load_bar(ScreenContext& context, const Rect& box, const Finding& finding) {
    Ui& ui = context.ui;
    const Theme& theme = ui.theme();
    const Metrics& m = ui.metrics();
    const auto badge = badge_of(finding.outcome);
    const float middle = box.center().y;
    const std::string name = context.say("cart.one_castor");
    const Interaction did = ui.area("check.load", labelled(context, name, finding.outcome), box);
    if (did.tapped) context.act(app::OpenReason{CheckId::load});
    // On a narrow screen the finding above says what the bar is.
    const float words = m.compact() ? 0.0F : box.width() * 0.22F;
    if (words > 0) {
        ui.text_in({box.x0, box.y0, box.x0 + words, box.y1}, name,
                   {TextRole::body, Weight::regular, theme.text, Align::left});
    }
    if (badge) ui.badge_at({box.x1, middle}, *badge, Align::right);
    // Without numbers there is no bar; the finding above says why.
    if (!finding.has_use || !badge || finding.outcome == Outcome::not_known) return;
    const float left = box.x0 + words + m.dp(2);
    const float right = box.x1 - ui.badge_width(m.compact() ? *badge : Badge::not_known) - m.dp(m.compact() ? 10 : 24);
    const double widest = std::max(finding.demand.si, finding.capacity.si) * 1.18;
    const auto x_of = [&](double si) { return left + (right - left) * static_cast<float>(si / widest); };
    Canvas& canvas = ui.canvas();
    const float half = m.dp(14);
    const float end = x_of(finding.demand.si);
    const float limit = x_of(finding.capacity.si);
    const bool over = end > limit;
    canvas.fill_rect({left, middle - half - m.dp(12), std::min(end, limit), middle + half - m.dp(12)}, theme.route);
    if (over) {
        canvas.fill_rect({limit, middle - half - m.dp(12), end, middle + half - m.dp(12)}, theme.line_of(Badge::fails));
    }
    canvas.fill_rect({left - m.dp(1), middle - half - m.dp(20), left + m.dp(1), middle + half - m.dp(4)}, theme.text);
    canvas.fill_rect({limit - m.dp(2.2F), middle - half - m.dp(22), limit + m.dp(2.2F), middle + half - m.dp(2)},
                     theme.text);
    const float base = middle + half + m.cap_height(TextRole::caption) + m.dp(4);
    const TextStyle style{TextRole::caption, Weight::medium, theme.text, Align::left};
    const std::string demand = app::show(finding.demand, context.units());
    const std::string capacity = context.say("cart.limit", {app::show(finding.capacity, context.units())});
    const float width = ui.text_width(capacity, style.role, style.weight);
    const float at = std::min(limit - width / 2, right - width);
    if (at < left + ui.text_width(demand, style.role, style.weight) + m.dp(14)) {
        ui.text_at({left, base}, compared_of(context, finding), style, right - left);
        return;
    }
    ui.text_at({left, base}, demand, style);
    ui.text_at({at, base}, capacity, style);
}

void picture(ScreenContext& context, const Rect& rect) {
    Ui& ui = context.ui;
    const Metrics& m = ui.metrics();
    const engine::Cart& cart = context.survey().carts[context.model.spot.index];
    const auto card = ui.card({.rect = rect, .pad = 0});
    Rect rest = rect.inset(m.pad + m.dp(4), m.dp(12));
    const Finding* load = load_finding(context);
    {
        const std::string finding = load ? sentence_of(context, *load) : context.say("cart.no_load");
        const float height = ui.text_height(finding, TextRole::row, Weight::medium, rest.width());
        const auto column = ui.column(rest.cut_top(height + m.line_height(TextRole::row) * 0.4F, 6));
        ui.finding(finding, "cart.finding");
    }
    if (load) load_bar(context, rest.cut_bottom(m.target_size(TargetClass::row), 8), *load);
    const PlanShape shape = plan_of(context, cart);
    if (shape.castors.empty()) {
        const auto column = ui.column(rest);
        ui.text(context.say("cart.no_castors"));
        if (ui.button("cart.castors", context.say("castors.title"), {.icon = Icon::plus})) {
            do_build(context, app::OpenCastors{context.model.spot.index});
        }
        return;
    }
    PlanWords words;
    words.mass = [&context](double kg) { return app::show({kg, engine::Kind::mass}, context.units()); };
    words.length = [&context](double mm) { return app::show({mm / 1000, engine::Kind::length}, context.units()); };
    words.centre = context.say("cart.centre");
    std::string described;
    for (const double one : castor_loads(shape)) described += (described.empty() ? "" : ", ") + words.mass(one);
    const auto column = ui.column(rest);
    ui.drawing(rest.height(), described,
               [&](Canvas& canvas, const Rect& box) { draw_plan(canvas, ui.theme(), box, shape, words); });
}

void stays(ScreenContext& context, std::uint16_t index) {
    const engine::Cart& cart = context.survey().carts[index];
    context.ui.text(context.say("cart.stays"), TextRole::row, Weight::medium);
    const auto stops = static_cast<std::uint16_t>(cart.route.size());
    for (std::uint16_t stop = 0; stop < stops; ++stop) {
        context.ui.block([&] {
            const engine::ReadingRef ref{Field::cart_stay, index, stop};
            const ReadingLine& line = reading_line(context, ref);
            std::string room;
            for (const engine::Room& one : context.survey().rooms) {
                if (one.id == cart.route[stop].room) room = one.name;
            }
            RowOptions options;
            options.value = line.value;
            options.unit = line.unit;
            options.detail = context.say(cart.route[stop].loaded ? "cart.loaded" : "cart.empty");
            options.dashed = line.value.empty();
            if (line.value.empty()) options.badge = Badge::not_known;
            if (context.ui.row(reading_id(ref), room, options)) context.act(app::OpenSheet{ref});
        });
    }
}

void castor_row(ScreenContext& context, std::uint16_t index) {
    const engine::Cart& cart = context.survey().carts[index];
    const bool needed = is_needed(context, {Field::cart_castors, index, 0});
    RowOptions options;
    options.chevron = true;
    options.dashed = cart.castors.empty();
    if (!cart.castors.empty()) {
        options.value = std::to_string(cart.castors.size());
        options.detail =
            value_text(context, app::wheelbase_ref(index)) + " \u00D7 " + value_text(context, app::track_ref(index));
    } else {
        options.detail = context.say(needed ? "reading.needed" : "known.not_yet_read");
        if (needed) options.badge = Badge::not_known;
    }
    if (context.ui.row("reading.cart_castors", context.say("castors.title"), options)) {
        do_build(context, app::OpenCastors{index});
    }
}

void readings(ScreenContext& context, std::uint16_t index) {
    context.ui.block([&] { castor_row(context, index); });
    for (const Field field : cart_fields) {
        const engine::ReadingRef ref{field, index, 0};
        context.ui.block([&] { reading_row(context, ref, is_needed(context, ref)); });
    }
    stays(context, index);
    context.ui.block([&] { part_end(context, app::Part::cart, index); });
}

}  // namespace

void draw_cart(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const std::uint16_t index = context.model.spot.index;
    if (ui.metrics().width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {744, 360}, true);
        ui.kept("cart.picture", [&] { picture(context, columns[0]); });
        Rect right = columns[1];
        const Rect button = right.cut_top(ui.metrics().target_size(TargetClass::row), ui.metrics().gap);
        if (ui.button("cart.route", context.say("cart.route"), {.icon = Icon::route, .rect = button})) {
            context.act(app::GoTo{{app::Screen::plan, 0}});
        }
        const auto list = ui.scroll("cart.readings", right);
        readings(context, index);
        return;
    }
    const auto list = ui.scroll("cart.readings", area);
    const Metrics& m = ui.metrics();
    const float larger = m.text_size(TextRole::caption) / m.text_size(TextRole::smallest);
    ui.block([&] { picture(context, ui.place(area.width() * 0.92F * larger)); });
    ui.block([&] {
        if (ui.button("cart.route", context.say("cart.route"), {.icon = Icon::route})) {
            context.act(app::GoTo{{app::Screen::plan, 0}});
        }
    });
    readings(context, index);
}

}  // namespace sillwalk::ui
