// Sheets over a screen: a choice from a closed list, and the working behind one check.

#include "app/core/quantity.hpp"
#include "app/core/reading_access.hpp"
#include "app/ui/screens/facts.hpp"

namespace sillwalk::ui {

using engine::Field;
using engine::Finding;

namespace {

/// Ids of tables and their names for the fields that choose from a table.
std::vector<std::string> table_ids(const ScreenContext& context, Field field) {
    std::vector<std::string> ids;
    if (field == Field::room_floor) {
        for (const engine::Floor& floor : context.model.data->tables.floors) ids.push_back(floor.id);
    } else if (field == Field::washing_agent) {
        for (const engine::ChemicalRow& row : context.model.data->tables.chemicals.rows) {
            if (ids.empty() || ids.back() != row.agent) ids.push_back(row.agent);
        }
    } else if (field == Field::cart_plate_pattern) {
        for (const engine::Rig& rig : context.model.data->catalogue.rigs) {
            bool known = rig.plate_pattern.empty();
            for (const std::string& id : ids) known = known || id == rig.plate_pattern;
            if (!known) ids.push_back(rig.plate_pattern);
        }
    }
    return ids;
}

const Finding* open_finding(const ScreenContext& context) {
    if (!context.model.open_reason) return nullptr;
    const engine::CheckId check = *context.model.open_reason;
    // On a crossing the working is that of the crossing and of the wheel shown there.
    if (context.model.spot.screen == app::Screen::crossing) {
        const bool present = context.model.show_present && present_wheel(context) != nullptr;
        const engine::CrossingOutcome* outcome = crossing_outcome(context, context.model.spot.index, present);
        if (!outcome) return nullptr;
        for (const Finding& finding : outcome->findings) {
            if (finding.check == check) return &finding;
        }
        return nullptr;
    }
    const engine::CartAdvice* advice = context.advice();
    const engine::RankedCandidate* first = app::headline(advice);
    if (context.model.spot.screen == app::Screen::damage) {
        first = advice && advice->present ? &*advice->present : nullptr;
    }
    if (!first) return nullptr;
    for (const Finding& finding : first->findings) {
        if (finding.check == check) return &finding;
    }
    return nullptr;
}

void lines(ScreenContext& context, const char* title, const std::vector<std::string>& texts) {
    if (texts.empty()) return;
    context.ui.caption(context.say(title));
    for (const std::string& text : texts) context.ui.text(text);
    context.ui.space(context.ui.metrics().gap);
}

void source_lines(ScreenContext& context, const std::vector<app::SourceLine>& sources) {
    if (sources.empty()) return;
    context.ui.caption(context.say("reason.sources"));
    for (const app::SourceLine& source : sources) {
        std::string text = source.title;
        if (!source.locator.empty()) text += ", " + source.locator;
        context.ui.text(text + " (" + source.status + ")", TextRole::caption);
    }
}

}  // namespace

void draw_choice_sheet(ScreenContext& context) {
    if (!context.model.choice) return;
    Ui& ui = context.ui;
    const engine::ReadingRef ref = context.model.choice->ref;
    bool closed = false;
    const std::string owner = app::owner_name(context.survey(), ref);
    {
        const auto sheet =
            ui.sheet("choice", capitalised(context.say(app::field_key(ref.field))), closed, {.subtitle = owner});
        const auto list = ui.scroll("choice.list", ui.remaining());
        const auto now = app::read_word(context.survey(), ref);
        std::vector<std::string> words = app::words_of(ref.field);
        if (words.empty()) words = table_ids(context, ref.field);
        for (const std::string& word : words) {
            RowOptions options;
            options.selected = now && now->word == word;
            if (ui.row("choice." + word, capitalised(choice_text(context, ref.field, word)), options)) {
                context.act(app::Choose{ref, word, false});
            }
        }
    }
    if (closed) context.act(app::CloseChoice{});
}

void draw_reason_sheet(ScreenContext& context) {
    const Finding* finding = open_finding(context);
    if (!finding) return;
    Ui& ui = context.ui;
    const app::Explanation why = app::explain(*finding, context.text());
    bool closed = false;
    {
        const auto sheet = ui.sheet("reason", why.check, closed, {.subtitle = why.question});
        const auto list = ui.scroll("reason.list", ui.remaining());
        if (const auto badge = badge_of(finding->outcome)) ui.badge(*badge, {}, "reason.outcome");
        ui.finding(why.sentence, "reason.sentence");
        if (!why.place.empty()) ui.caption(why.place);
        ui.space(ui.metrics().gap);
        lines(context, "reason.conditions", why.conditions);
        if (!why.compared.empty()) lines(context, "reason.compared", {why.compared});
        if (!why.formula.empty()) lines(context, "reason.formula", {why.formula, why.inserted, why.range});
        lines(context, "reason.assumptions", why.assumptions);
        if (!finding->missing.empty() || !finding->drivers.empty()) ui.caption(context.say("reason.readings"));
        for (const auto* refs : {&finding->missing, &finding->drivers}) {
            for (const engine::ReadingRef& ref : *refs) {
                RowOptions options;
                options.value = value_text(context, ref);
                options.value_role = TextRole::row;
                options.chevron = true;
                const bool number = app::quantity_of(ref.field).has_value();
                const bool word = !number && app::read_word(context.survey(), ref).has_value();
                options.touchable = number || word;
                if (options.value.empty() && options.touchable) options.badge = Badge::not_known;
                if (!ui.row("reason." + reading_id(ref, true), capitalised(app::reading_name(ref, context.text())),
                            options)) {
                    continue;
                }
                context.act(number ? app::Action(app::OpenSheet{ref}) : app::Action(app::OpenChoice{ref}));
            }
        }
        source_lines(context, why.sources);
    }
    if (closed) context.act(app::OpenReason{});
}

}  // namespace sillwalk::ui
