#include "app/bundle/survey_entries.hpp"
#include "app/core/update.hpp"

#include <utility>

namespace sillwalk::app::detail {

using engine::Survey;

namespace {

/// The survey is always read back from the entries, so that the screen shows what a restart would show.
bool take_over(AppModel& model, Entries entries) {
    auto survey = survey_of(entries);
    if (!survey) return false;
    model.visit->entries = std::move(entries);
    model.visit->survey = std::move(*survey);
    ++model.version;
    return true;
}

/// An undo may remove what is on the screen; then the screen falls back to the list it came from.
void stay_on_the_map(AppModel& model) {
    const Survey& survey = model.visit->survey;
    const auto gone = [&](const Spot& spot) {
        switch (spot.screen) {
            case Screen::room:
                return spot.index >= survey.rooms.size();
            case Screen::crossing:
                return spot.index >= survey.crossings.size();
            case Screen::cart:
                return spot.index >= survey.carts.size();
            case Screen::washing_step:
                return spot.index >= survey.washings.size();
            default:
                return false;
        }
    };
    if (gone(model.spot)) model.spot = {Screen::route, 0};
    std::erase_if(model.back, gone);
    if (model.cart >= survey.carts.size()) model.cart = 0;
}

void finish_step(Context& context, const JournalStep& step, int kind, std::vector<Change> changes) {
    AppModel& model = context.model;
    context.effects.emplace_back(
        SaveEdit{model.visit->id.text(), step.number, kind, step.label, std::move(changes), context.moment.utc_ms});
    context.effects.emplace_back(Assess{model.version});
}

}  // namespace

void commit(Context& context, Survey survey, std::string label) {
    AppModel& model = context.model;
    if (!model.visit) return;
    Entries entries = entries_of(survey);
    auto changes = difference(model.visit->entries, entries);
    if (changes.empty()) return;
    if (!take_over(model, std::move(entries))) return;
    const std::int64_t number = model.visit->journal.add(label, changes);
    finish_step(context, {number, std::move(label), {}}, 0, std::move(changes));
}

void undo(Context& context) {
    AppModel& model = context.model;
    if (!model.visit) return;
    const auto step = model.visit->journal.undo();
    if (!step) return;
    auto changes = turned_round(step->changes);
    Entries entries = model.visit->entries;
    apply_changes(entries, changes);
    if (!take_over(model, std::move(entries))) return;
    stay_on_the_map(model);
    model.toast = Toast{"toast.undone", {step->label}, false, context.moment.now};
    finish_step(context, *step, 1, std::move(changes));
}

void redo(Context& context) {
    AppModel& model = context.model;
    if (!model.visit) return;
    const auto step = model.visit->journal.redo();
    if (!step) return;
    Entries entries = model.visit->entries;
    apply_changes(entries, step->changes);
    if (!take_over(model, std::move(entries))) return;
    stay_on_the_map(model);
    model.toast = Toast{"toast.redone", {step->label}, false, context.moment.now};
    finish_step(context, *step, 2, step->changes);
}

void load(Context& context, const VisitLoaded& loaded) {
    AppModel& model = context.model;
    auto survey = survey_of(loaded.entries);
    if (!survey) {
        model.toast = Toast{"toast.load_failed", {survey.error().message}, false, context.moment.now};
        return;
    }
    Visit visit{engine::SurveyId(loaded.id), loaded.entries, std::move(*survey), {}};
    for (const StoredEditRow& row : loaded.edits) {
        if (row.kind == 0) visit.journal.replay_edit(row.step, row.label, row.change);
        if (row.kind == 1) visit.journal.replay_undo(row.step);
        if (row.kind == 2) visit.journal.replay_redo(row.step);
    }
    model.visit = std::move(visit);
    model.sheet.reset();
    model.choice.reset();
    model.open_reason.reset();
    model.answer.reset();
    model.changes.clear();
    ++model.version;
    model.back.clear();
    model.spot = {Screen::route, 0};
    model.cart = 0;
    context.effects.emplace_back(SaveSetting{"open_visit", loaded.id});
    context.effects.emplace_back(Assess{model.version});
    if (loaded.draft_path.empty()) return;
    // The sheet that was open when the battery died opens again with its keys.
    if (const auto ref = find_reading(model.visit->survey, loaded.draft_path)) {
        open_sheet(context, *ref);
        if (model.sheet) restore_draft(*model.sheet, loaded.draft);
    }
}

}  // namespace sillwalk::app::detail
