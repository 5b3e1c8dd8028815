#include "app/core/update.hpp"

#include <type_traits>
#include <utility>

namespace sillwalk::app {

using detail::Context;

namespace {

constexpr std::size_t most_changes = 50;

bool belongs_to_sheet(const Action& action) {
    return std::visit(
        [](const auto& one) {
            using T = std::decay_t<decltype(one)>;
            return std::is_same_v<T, SheetDigit> || std::is_same_v<T, SheetFraction> ||
                   std::is_same_v<T, SheetPlusSixteenth> || std::is_same_v<T, SheetSign> ||
                   std::is_same_v<T, SheetBackspace> || std::is_same_v<T, SheetClear> || std::is_same_v<T, SheetStep> ||
                   std::is_same_v<T, SheetUnit> || std::is_same_v<T, SheetMethod> || std::is_same_v<T, SheetPage> ||
                   std::is_same_v<T, SheetRuler> || std::is_same_v<T, SheetSlide> || std::is_same_v<T, SheetAgain> ||
                   std::is_same_v<T, SheetSameAs> || std::is_same_v<T, SheetTakeSuggestion> ||
                   std::is_same_v<T, SheetNone> || std::is_same_v<T, SheetNotAccessible>;
        },
        action);
}

bool belongs_to_settings(const Action& action) {
    return std::visit(
        [](const auto& one) {
            using T = std::decay_t<decltype(one)>;
            return std::is_same_v<T, SetTheme> || std::is_same_v<T, SetGlove> || std::is_same_v<T, SetLeftHanded> ||
                   std::is_same_v<T, SetTextPercent> || std::is_same_v<T, SetScale> || std::is_same_v<T, SetUsUnits> ||
                   std::is_same_v<T, SetLanguage> || std::is_same_v<T, SettingsLoaded>;
        },
        action);
}

engine::Verdict verdict_for(const Answer& answer, std::uint16_t cart) {
    for (const engine::CartAdvice& advice : answer.advice.carts) {
        if (advice.cart != cart) continue;
        const engine::RankedCandidate* first = headline(&advice);
        return first ? first->verdict : engine::Verdict::cannot_tell;
    }
    return engine::Verdict::cannot_tell;
}

/// Takes the answer unless a newer one is there already, and notes a changed verdict of the cart in hand with its
/// cause.
void take_answer(Context& context, const AnswerReady& ready) {
    AppModel& model = context.model;
    if (!ready.answer || (model.answer && ready.answer->version < model.answer->version)) return;
    if (model.answer && model.visit && model.visit->journal.can_undo()) {
        const engine::Verdict before = verdict_for(*model.answer, model.cart);
        const engine::Verdict now = verdict_for(*ready.answer, model.cart);
        const auto& step = model.visit->journal.done().back();
        if (before != now) model.changes.push_back({context.moment.utc_ms, step.label, "", before, now});
        if (model.changes.size() > most_changes) model.changes.erase(model.changes.begin());
    }
    model.answer = ready.answer;
}

struct Dispatch {
    Context& context;
    AppModel& model;

    void operator()(const OpenVisit& action) const { context.effects.emplace_back(LoadVisit{action.id}); }
    void operator()(const CloseVisit&) const {
        detail::close_sheet(context);
        model.choice.reset();
        model.pick.reset();
        model.castors.reset();
        model.photos = {};
        model.sending.asks_to_send = model.sending.asks_to_erase = false;
        model.toast.reset();  // there is nothing left to undo
        model.visit.reset();
        model.answer.reset();
        model.completion.reset();
        detail::forget_what_if(model);
        model.changes.clear();
        model.back.clear();
        model.spot = {};
        context.effects.emplace_back(SaveSetting{"open_visit", ""});
        context.effects.emplace_back(ListVisits{});
    }
    void operator()(const GoTo& action) const { detail::go_to(context, action.spot); }
    void operator()(const GoBack&) const { detail::go_back(context); }
    void operator()(const SelectCart& action) const {
        model.cart = action.cart;
        model.open_reason.reset();
    }
    void operator()(const ShowPresent& action) const { model.show_present = action.present; }
    void operator()(const OpenReason& action) const { model.open_reason = action.check; }

    void operator()(const OpenSheet& action) const { detail::open_sheet(context, action.ref); }
    void operator()(const CloseSheet&) const { detail::close_sheet(context); }
    void operator()(const SheetKeep& action) const { detail::keep_sheet(context, action.next); }

    void operator()(const OpenChoice& action) const {
        if (model.visit && exists(model.visit->survey, action.ref)) model.choice = ChoiceSheet{action.ref};
    }
    void operator()(const CloseChoice&) const { model.choice.reset(); }
    void operator()(const Choose& action) const { detail::choose(context, action); }

    void operator()(const Undo&) const { detail::undo(context); }
    void operator()(const Redo&) const { detail::redo(context); }
    void operator()(const BuildAction& action) const { detail::build(context, action); }
    void operator()(const PhotoAction& action) const { detail::photo(context, action); }
    void operator()(const SendAction& action) const { detail::send(context, action); }

    void operator()(const WhatIfSet& action) const { detail::set_what_if(context, action); }
    void operator()(const WhatIfForget&) const { detail::forget_what_if(model); }
    void operator()(const WhatIfTakeOver&) const { detail::take_over_what_if(context); }
    void operator()(const WhatIfAnswered& action) const { detail::take_what_if_answer(model, action); }
    void operator()(const AnswerCompleted& action) const { model.completion = action.completion; }
    void operator()(const ToggleDamage& action) const { detail::toggle_damage(context, action); }
    void operator()(const SetPresent& action) const { detail::set_present(context, action); }
    void operator()(const ShowTable& action) const { model.show_table = action.table; }

    void operator()(const DismissToast&) const { model.toast.reset(); }
    void operator()(const VisitsListed& action) const { detail::take_visits(model, action.visits); }
    void operator()(const VisitLoaded& action) const { detail::load(context, action); }
    void operator()(const StorageChanged& action) const { model.storage = action.storage; }
    void operator()(const AnswerReady& action) const { take_answer(context, action); }
    void operator()(const LoadFailed& action) const {
        model.toast = Toast{"toast.load_failed", {action.why}, false, context.moment.now};
    }

    /// Actions of the sheet and of the settings are dispatched by their own files.
    template <class T>
    void operator()(const T&) const {}
};

}  // namespace

Effects update(AppModel& model, const Action& action, const Moment& moment) {
    Context context{model, moment, {}};
    if (belongs_to_sheet(action)) {
        if (model.sheet && model.visit) detail::on_sheet(context, action);
    } else if (belongs_to_settings(action)) {
        detail::on_settings(context, action);
    } else {
        std::visit(Dispatch{context, model}, action);
    }
    return std::move(context.effects);
}

}  // namespace sillwalk::app
