#include "app/bundle/photos.hpp"
#include "app/bundle/survey_entries.hpp"
#include "app/core/survey_texts.hpp"
#include "app/core/update.hpp"

#include <algorithm>
#include <utility>

namespace sillwalk::app::detail {

using engine::Survey;

namespace {

enum class Taken { nothing, photos, survey };

/// Survey and photos are always read back from the entries, so that the screen shows what a restart would show.
Taken take_over(AppModel& model, Entries entries) {
    auto photos = photos_of(entries);
    auto survey = survey_of(entries);
    if (!survey || !photos) return Taken::nothing;
    model.visit->photos = std::move(*photos);
    if (*survey == model.visit->survey) {
        model.visit->entries = std::move(entries);
        return Taken::photos;  // the answer does not depend on them
    }
    // The answer counts rooms, crossings and carts; where they stand otherwise it speaks of other ones.
    const auto text = [](const Entries& all, const char* path) {
        const auto found = all.find(path);
        return found == all.end() ? std::string() : found->second;
    };
    const auto order_differs = [&](const char* path) {
        return text(entries, path) != text(model.visit->entries, path);
    };
    constexpr const char* orders[] = {"/rooms", "/crossings", "/washings", "/carts"};
    if (std::any_of(std::begin(orders), std::end(orders), order_differs)) model.answer.reset();
    model.visit->entries = std::move(entries);
    model.visit->survey = std::move(*survey);
    ++model.version;
    forget_what_if(model);  // it was tried on what stood there before
    return Taken::survey;
}

void finish_step(Context& context, Taken taken, const JournalStep& step, int kind, std::vector<Change> changes) {
    AppModel& model = context.model;
    mark_changed(model, context.moment.utc_ms);
    context.effects.emplace_back(SaveEdit{model.visit->id.text(), step.number, kind, step.label, std::move(changes),
                                          context.moment.utc_ms, visit_title(model.visit->survey)});
    if (taken == Taken::survey) context.effects.emplace_back(Assess{model.version});
}

void commit_entries(Context& context, Entries entries, std::string label) {
    AppModel& model = context.model;
    auto changes = difference(model.visit->entries, entries);
    if (changes.empty()) return;
    const Taken taken = take_over(model, std::move(entries));
    if (taken == Taken::nothing) return;
    const std::int64_t number = model.visit->journal.add(label, changes);
    finish_step(context, taken, {number, std::move(label), {}}, 0, std::move(changes));
}

}  // namespace

void stay_on_the_map(AppModel& model) {
    const Survey& survey = model.visit->survey;
    const auto gone = [&](const Spot& spot) {
        switch (spot.screen) {
            case Screen::room:
                return spot.index >= survey.rooms.size();
            case Screen::crossing:
            case Screen::what_if:
                return spot.index >= survey.crossings.size();
            case Screen::cart:
                return spot.index >= survey.carts.size();
            case Screen::washing_step:
                return spot.index >= survey.washings.size();
            case Screen::photo:
                return spot.index >= model.visit->photos.size();
            default:
                return false;
        }
    };
    std::erase_if(model.back, gone);
    if (gone(model.spot)) {
        const Screen screen = model.spot.screen;
        model.spot = {screen == Screen::cart           ? Screen::loads
                      : screen == Screen::washing_step ? Screen::washing
                      : screen == Screen::photo        ? Screen::evidence
                                                       : Screen::places,
                      0};
    }
    if (model.cart >= survey.carts.size()) model.cart = 0;
    if (model.castors && model.castors->cart >= survey.carts.size()) model.castors.reset();
    model.pick.reset();
}

void commit(Context& context, Survey survey, std::string label) {
    AppModel& model = context.model;
    if (!model.visit) return;
    Entries entries = entries_of(survey);
    for (const auto& [path, value] : model.visit->entries) {
        if (is_photo_entry(path)) entries[path] = value;
    }
    commit_entries(context, std::move(entries), std::move(label));
}

void commit_photos(Context& context, const std::vector<VisitPhoto>& photos, std::string label) {
    AppModel& model = context.model;
    if (!model.visit) return;
    Entries entries = photo_entries(photos);
    for (const auto& [path, value] : model.visit->entries) {
        if (!is_photo_entry(path)) entries[path] = value;
    }
    commit_entries(context, std::move(entries), std::move(label));
}

void undo(Context& context) {
    AppModel& model = context.model;
    if (!model.visit) return;
    const auto step = model.visit->journal.undo();
    if (!step) return;
    auto changes = turned_round(step->changes);
    Entries entries = model.visit->entries;
    apply_changes(entries, changes);
    const Taken taken = take_over(model, std::move(entries));
    if (taken == Taken::nothing) return;
    stay_on_the_map(model);
    model.toast = Toast{"toast.undone", {step->label}, false, context.moment.now};
    finish_step(context, taken, *step, 1, std::move(changes));
}

void redo(Context& context) {
    AppModel& model = context.model;
    if (!model.visit) return;
    const auto step = model.visit->journal.redo();
    if (!step) return;
    Entries entries = model.visit->entries;
    apply_changes(entries, step->changes);
    const Taken taken = take_over(model, std::move(entries));
    if (taken == Taken::nothing) return;
    stay_on_the_map(model);
    model.toast = Toast{"toast.redone", {step->label}, false, context.moment.now};
    finish_step(context, taken, *step, 2, step->changes);
}

void load(Context& context, const VisitLoaded& loaded) {
    AppModel& model = context.model;
    auto survey = survey_of(loaded.entries);
    if (!survey) {
        model.toast = Toast{"toast.load_failed", {survey.error().message}, false, context.moment.now};
        return;
    }
    if (loaded.follow_up) return follow_up(context, std::move(*survey));
    auto photos = photos_of(loaded.entries);
    if (!photos) {
        model.toast = Toast{"toast.load_failed", {photos.error().message}, false, context.moment.now};
        return;
    }
    Visit visit{engine::SurveyId(loaded.id), loaded.entries, std::move(*survey), {}, std::move(*photos)};
    for (const StoredEditRow& row : loaded.edits) {
        if (row.kind == 0) visit.journal.replay_edit(row.step, row.label, row.change);
        if (row.kind == 1) visit.journal.replay_undo(row.step);
        if (row.kind == 2) visit.journal.replay_redo(row.step);
    }
    show_visit(context, std::move(visit), {Screen::route, 0});
    if (loaded.draft_path.empty()) return;
    // A text that was being typed when the battery died is kept as it stands.
    if (const auto text = find_text(model.visit->survey, loaded.draft_path)) {
        Survey with_text = model.visit->survey;
        if (write_text(with_text, *text, loaded.draft)) commit(context, std::move(with_text), "done.text");
        context.effects.emplace_back(SaveDraft{loaded.id, "", "", context.moment.utc_ms});
        return;
    }
    if (const auto text = find_photo_text(model.visit->photos, loaded.draft_path)) {
        return photo(context, SetPhotoText{*text, loaded.draft});
    }
    // The sheet that was open when the battery died opens again with its keys.
    if (const auto ref = find_reading(model.visit->survey, loaded.draft_path)) {
        open_sheet(context, *ref);
        if (model.sheet) restore_draft(*model.sheet, loaded.draft);
    }
}

}  // namespace sillwalk::app::detail
