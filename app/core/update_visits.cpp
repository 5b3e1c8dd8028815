#include "app/bundle/survey_entries.hpp"
#include "app/core/ids.hpp"
#include "app/core/survey_texts.hpp"
#include "app/core/update.hpp"

#include <utility>

namespace sillwalk::app::detail {

using engine::Survey;
using engine::SurveyId;

namespace {

/// Stores a survey that the database does not have yet, and opens it.
void open_new(Context& context, Survey survey) {
    const SurveyId id = survey.id;
    Entries entries = entries_of(survey);
    context.effects.emplace_back(SaveVisit{id.text(), visit_title(survey), entries, context.moment.utc_ms});
    show_visit(context, Visit{id, std::move(entries), std::move(survey), {}}, {Screen::about, 0});
}

}  // namespace

void new_visit(Context& context) {
    Survey survey;
    survey.id = SurveyId(IdMaker(context.moment).next());
    survey.made_ms = context.moment.utc_ms;
    open_new(context, std::move(survey));
}

void follow_up(Context& context, Survey survey) {
    survey.id = SurveyId(IdMaker(context.moment).next());
    survey.revision = 0;
    survey.made_ms = context.moment.utc_ms;
    open_new(context, std::move(survey));
}

void show_visit(Context& context, Visit visit, const Spot& spot) {
    AppModel& model = context.model;
    model.visit = std::move(visit);
    model.sheet.reset();
    model.choice.reset();
    model.pick.reset();
    model.castors.reset();
    model.photos = {};
    model.sending.asks_to_send = model.sending.asks_to_erase = false;
    model.open_reason.reset();
    model.answer.reset();
    model.completion.reset();
    forget_what_if(model);
    model.changes.clear();
    ++model.version;
    model.back.clear();
    model.spot = spot;
    model.cart = 0;
    context.effects.emplace_back(SaveSetting{"open_visit", model.visit->id.text()});
    context.effects.emplace_back(Assess{model.version});
}

}  // namespace sillwalk::app::detail
