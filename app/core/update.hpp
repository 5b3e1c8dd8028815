#pragma once
/// The whole behaviour of the app: one model, one action, what follows. No clock, no file, no window.

#include "app/core/action.hpp"
#include "app/core/effect.hpp"
#include "app/core/model.hpp"

namespace sillwalk::app {

[[nodiscard]] Effects update(AppModel& model, const Action& action, const Moment& moment);

// ---- parts, each in its own file
namespace detail {

struct Context {
    AppModel& model;
    const Moment& moment;
    Effects effects;
};
/// Puts `survey` in place of the visit's survey as one undoable step; nothing where nothing changed.
void commit(Context& context, engine::Survey survey, std::string label);
/// The same for the photos.
void commit_photos(Context& context, const std::vector<VisitPhoto>& photos, std::string label);
void undo(Context& context);
void redo(Context& context);
void load(Context& context, const VisitLoaded& loaded);
/// Where the screen shows something that is no longer there, it falls back to the list.
void stay_on_the_map(AppModel& model);

void build(Context& context, const BuildAction& action);
void photo(Context& context, const PhotoAction& action);
void send(Context& context, const SendAction& action);
/// What was typed in an earlier run.
void load_sending(AppModel& model, const std::map<std::string, std::string>& settings);
/// Unsent ones first. A visit that was changed while the list was read is not sent, whatever the list says.
void take_visits(AppModel& model, std::vector<VisitLine> visits);
/// The visit in hand, just now.
void mark_changed(AppModel& model, std::int64_t at_ms);
void new_visit(Context& context);
/// The loaded visit as a new one, open and stored.
void follow_up(Context& context, engine::Survey survey);
/// Shows the survey, without history, on that screen.
void show_visit(Context& context, Visit visit, const Spot& spot);
/// A distance of the castor sheet; false where it cannot be.
bool keep_castor_distance(Context& context, const engine::ReadingRef& ref, std::int64_t nm);
[[nodiscard]] std::optional<NumberReading> castor_distance(const AppModel& model, const engine::ReadingRef& ref);

void open_sheet(Context& context, const engine::ReadingRef& ref);
void close_sheet(Context& context);
void keep_sheet(Context& context, bool next);
void on_sheet(Context& context, const Action& action);  ///< the actions named Sheet…
void choose(Context& context, const Choose& choice);

void set_what_if(Context& context, const WhatIfSet& action);
void forget_what_if(AppModel& model);
void take_over_what_if(Context& context);
void take_what_if_answer(AppModel& model, const WhatIfAnswered& news);
void set_present(Context& context, const SetPresent& action);
void toggle_damage(Context& context, const ToggleDamage& action);

void go_to(Context& context, const Spot& spot);
void go_back(Context& context);
void on_settings(Context& context, const Action& action);

}  // namespace detail
}  // namespace sillwalk::app
