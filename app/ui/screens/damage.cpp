// What the present wheels show, and whether the computation supports a cause.

#include "app/text/damage.hpp"

#include "app/bundle/survey_words.hpp"
#include "app/ui/screens/answer_parts.hpp"
#include "app/ui/screens/facts.hpp"

namespace sillwalk::ui {

using engine::DamageKind;
using engine::DamageReading;
using engine::Support;

namespace {

constexpr const char* part_keys[] = {"wheel", "bearing", "rig"};

const engine::Cart& cart_of(const ScreenContext& context) {
    return context.survey().carts[context.model.cart];
}

const std::vector<DamageReading>& readings_of(const ScreenContext& context) {
    static const std::vector<DamageReading> none;
    const app::Answer* answer = context.model.answer.get();
    if (!answer || !app::answer_is_current(context.model) || context.model.cart >= answer->damage.size()) return none;
    return answer->damage[context.model.cart];
}

Badge badge_of_support(Support support) {
    if (support == Support::supported) return Badge::fails;
    return support == Support::not_supported ? Badge::holds : Badge::not_known;
}

bool is_seen(const engine::Cart& cart, DamageKind kind) {
    for (const engine::Damage& damage : cart.damage) {
        if (damage.kind == kind) return true;
    }
    return false;
}

/// Chips: a tap says that it is seen, another takes it back.
void seen_chips(ScreenContext& context) {
    context.ui.text(context.say("damage.what_is_seen"), TextRole::row, Weight::medium);
    const auto& items = context.recall(Remembered::damage_chips, 0, [&] {
        std::vector<ChipItem> chips;
        for (const std::string_view word : app::WordsOf<DamageKind>::list) {
            const DamageKind kind = *app::value_of_word<DamageKind>(word);
            const bool seen = is_seen(cart_of(context), kind);
            chips.push_back({std::string(word), app::damage_name(kind, context.language), seen});
        }
        return chips;
    });
    if (const auto hit = context.ui.chips("damage.seen", items)) {
        context.act(app::ToggleDamage{context.model.cart, static_cast<DamageKind>(*hit)});
    }
}

std::string described(const ScreenContext& context, std::size_t part) {
    const engine::Cart& cart = cart_of(context);
    const engine::Catalogue& catalogue = context.model.data->catalogue;
    const auto& id = part == 0   ? cart.present_wheel.value
                     : part == 1 ? cart.present_bearing.value
                                 : cart.present_rig.value;
    if (!id) return "";
    if (part == 0) return catalogue.wheel(*id) ? catalogue.wheel(*id)->description : *id;
    if (part == 1) return catalogue.bearing(*id) ? catalogue.bearing(*id)->description : *id;
    return catalogue.rig(*id) ? catalogue.rig(*id)->description : *id;
}

/// The three parts of the present wheel: without all of them nothing can be computed for it.
void present_rows(ScreenContext& context) {
    context.ui.text(context.say("damage.present"), TextRole::row, Weight::medium);
    for (std::size_t part = 0; part < 3; ++part) {
        RowOptions options;
        options.detail = described(context, part);
        options.chevron = true;
        options.dashed = options.detail.empty();
        if (options.dashed) options.badge = Badge::not_known;
        const std::string key = std::string("damage.part.") + part_keys[part];
        if (context.ui.row(key, context.say(key), options)) context.scratch.present_part = static_cast<int>(part);
    }
}

void cause_row(ScreenContext& context, const std::string& id, const engine::DamageCause& cause,
               const app::DamageCauseText& text) {
    RowOptions options;
    options.framed = false;
    options.badge = badge_of_support(cause.support);
    options.badge_word = text.support;
    options.detail = text.sentence;
    options.touchable = cause.finding.has_value();
    const std::string name = text.place.empty() ? text.check : text.check + ", " + text.place;
    if (context.ui.row(id, name, options)) context.act(app::OpenReason{cause.check});
}

/// One damage: what is computed for each of its causes.
void damage_card(ScreenContext& context, const DamageReading& damage, std::size_t number) {
    Ui& ui = context.ui;
    const app::DamageText& text =
        context.recall_of(Remembered::damage, damage, [&] { return app::damage_text(damage, context.text()); });
    const auto card = ui.card({.pad = ui.metrics().dp(6)});
    const std::string id = "damage." + std::string(app::word_of(damage.kind)) + "." + std::to_string(number);
    RowOptions head;
    head.framed = false;
    head.touchable = false;
    head.badge = badge_of_support(damage.support);
    head.badge_word = text.support;
    ui.block([&] {
        ui.row(id, text.kind, head);
        ui.space(-ui.metrics().gap);
    });
    for (std::size_t i = 0; i < text.causes.size(); ++i) {
        ui.block([&] { cause_row(context, id + ".cause." + std::to_string(i), damage.causes[i], text.causes[i]); });
    }
    ui.block([&] {
        for (const std::string& note : text.notes) ui.caption(note);
        const std::string& seen = cart_of(context).damage[number].note;
        if (!seen.empty()) ui.caption(context.say("damage.noted", {seen}));
        const engine::ReadingRef size{engine::Field::cart_damage_size, context.model.cart,
                                      static_cast<std::uint16_t>(number)};
        reading_row(context, size, false, false);
    });
}

void findings(ScreenContext& context) {
    Ui& ui = context.ui;
    const auto& readings = readings_of(context);
    if (cart_of(context).damage.empty()) return ui.finding(context.say("damage.nothing_seen"), "damage.finding");
    if (readings.size() != cart_of(context).damage.size()) {
        return ui.finding(context.say("answer.working"), "damage.finding");
    }
    std::size_t supported = 0;
    for (const DamageReading& damage : readings) supported += damage.support == Support::supported ? 1U : 0U;
    ui.finding(context.say("damage.finding", {std::to_string(supported), std::to_string(readings.size())}),
               "damage.finding");
    ui.caption(context.say("damage.legend"));
    for (std::size_t i = 0; i < readings.size(); ++i) damage_card(context, readings[i], i);
}

template <class Rows>
void part_list(ScreenContext& context, const Rows& rows, std::size_t part) {
    const std::string now = described(context, part);
    for (const auto& row : rows) {
        context.ui.block([&] {
            RowOptions options;
            options.selected = !now.empty() && row.description == now;
            if (!context.ui.row("damage.choose." + row.id.text(), row.description, options)) return;
            context.act(app::SetPresent{context.model.cart, static_cast<std::uint8_t>(part), row.id.text()});
            context.scratch.present_part = -1;
        });
    }
}

}  // namespace

void draw_present_sheet(ScreenContext& context) {
    if (context.scratch.present_part < 0 || context.model.spot.screen != app::Screen::damage) return;
    Ui& ui = context.ui;
    const auto part = static_cast<std::size_t>(context.scratch.present_part);
    bool closed = false;
    {
        const auto sheet = ui.sheet("present", context.say(std::string("damage.part.") + part_keys[part]), closed,
                                    {.subtitle = cart_of(context).name});
        const auto list = ui.scroll("present.list", ui.remaining());
        const engine::Catalogue& catalogue = context.model.data->catalogue;
        if (part == 0) part_list(context, catalogue.wheels, part);
        if (part == 1) part_list(context, catalogue.bearings, part);
        if (part == 2) part_list(context, catalogue.rigs, part);
    }
    if (closed) context.scratch.present_part = -1;
}

void draw_damage(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    if (ui.metrics().width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {664, 440}, true);
        {
            const auto list = ui.scroll("damage.findings", columns[0]);
            findings(context);
        }
        const auto list = ui.scroll("damage", columns[1]);
        ui.block([&] { seen_chips(context); });
        ui.block([&] { present_rows(context); });
    } else {
        const auto list = ui.scroll("damage", area);
        ui.block([&] { seen_chips(context); });
        findings(context);
        ui.block([&] { present_rows(context); });
    }
}

}  // namespace sillwalk::ui
