#include "app/core/update.hpp"

#include <utility>

namespace sillwalk::app::detail {

using engine::Known;
using engine::ReadingRef;
using engine::Survey;

namespace {

/// Every key goes to the disk: a dead battery costs one key at most.
void journal_keys(Context& context) {
    const AppModel& model = context.model;
    if (!model.visit || !model.sheet) return;
    context.effects.emplace_back(SaveDraft{model.visit->id.text(), draft_path(model.sheet->ref),
                                           draft_text(*model.sheet), context.moment.utc_ms});
}

void forget_keys(Context& context) {
    if (!context.model.visit) return;
    context.effects.emplace_back(SaveDraft{context.model.visit->id.text(), "", "", context.moment.utc_ms});
}

/// Another unit: what was typed is turned into it where it is exact enough to type, else the keys stay as they are.
void change_unit(Context& context, std::size_t unit) {
    Sheet& sheet = *context.model.sheet;
    const auto units = units_of(sheet.kind);
    if (unit >= units.size() || unit == sheet.unit) return;
    const auto value = canonical_of(sheet.entry, units[sheet.unit]);
    const Method* method = method_of(sheet, context.model.data->entry);
    sheet.unit = unit;
    if (value) sheet.entry = entry_for(*value, units[unit]);
    if (!units[unit].sixteenths) sheet.fraction_page = false;
    context.model.settings.unit[static_cast<std::size_t>(sheet.kind)] = static_cast<std::uint8_t>(unit);
    context.effects.emplace_back(
        SaveSetting{"unit." + std::string(quantity_name(sheet.kind)), std::string(units[unit].name)});
    const auto offered = methods_for(context.model.data->entry, sheet.kind, units[unit]);
    for (std::size_t i = 0; i < offered.size(); ++i) {
        if (method && offered[i]->id == method->id) sheet.method = i;
    }
    if (sheet.method >= offered.size()) sheet.method = 0;
}

/// An entry from somewhere else (suggestion, stepper, another place) that reads as `canonical` in the sheet's unit.
void type_value(Sheet& sheet, std::int64_t canonical) {
    sheet.entry = entry_for(canonical, unit_of(sheet));
    sheet.copied_from.clear();
}

void step(Sheet& sheet, int steps) {
    const Unit& unit = unit_of(sheet);
    const std::int64_t now = canonical_of(sheet.entry, unit).value_or(sheet.before.value.value_or(0));
    if (unit.step > 0) type_value(sheet, now + steps * unit.step);
}

void take_from(Context& context, const ReadingRef& from) {
    Sheet& sheet = *context.model.sheet;
    const Survey& survey = context.model.visit->survey;
    const auto other = read_number(survey, from);
    if (!other || !other->value) return;
    type_value(sheet, *other->value);
    sheet.copied_from = owner_name(survey, from);
}

void keep_without_value(Context& context, Known known, std::string label) {
    AppModel& model = context.model;
    Survey survey = model.visit->survey;
    NumberReading reading;
    reading.known = known;
    if (!write_number(survey, model.sheet->ref, reading)) return;
    model.sheet.reset();
    forget_keys(context);
    commit(context, std::move(survey), std::move(label));
}

struct SheetDispatch {
    Context& context;
    Sheet& sheet;

    void operator()(const SheetDigit& action) const {
        sheet.copied_from.clear();
        press_digit(sheet.entry, action.key);
    }
    void operator()(const SheetFraction& action) const {
        if (!unit_of(sheet).sixteenths || sheet.entry.digits.find('.') != std::string::npos) return;
        sheet.copied_from.clear();
        sheet.entry.sixteenths = action.sixteenths;
        // "no fraction" on an empty sheet types a zero: there is nothing, and that was measured.
        if (action.sixteenths == 0 && sheet.entry.digits.empty()) sheet.entry.digits = "0";
    }
    void operator()(const SheetPlusSixteenth&) const {
        if (unit_of(sheet).sixteenths && sheet.entry.sixteenths < 15) ++sheet.entry.sixteenths;
    }
    void operator()(const SheetSign&) const { sheet.entry.negative = !sheet.entry.negative; }
    void operator()(const SheetBackspace&) const { press_backspace(sheet.entry); }
    void operator()(const SheetClear&) const { sheet.entry = {}; }
    void operator()(const SheetStep& action) const { step(sheet, action.steps); }
    void operator()(const SheetUnit& action) const { change_unit(context, action.unit); }
    void operator()(const SheetMethod& action) const { sheet.method = action.method; }
    void operator()(const SheetPage& action) const { sheet.fraction_page = action.fractions; }
    void operator()(const SheetRuler& action) const { sheet.ruler_page = action.on; }
    void operator()(const SheetSlide& action) const { type_value(sheet, action.canonical); }
    void operator()(const SheetAgain&) const {
        const auto typed = canonical_of(sheet.entry, unit_of(sheet));
        const auto first = typed ? typed : sheet.before.value;
        if (!first) return;
        sheet.first_value = first;
        sheet.first_entered = typed ? as_entered(sheet.entry, unit_of(sheet)) : sheet.before.as_entered;
        sheet.entry = {};
    }
    void operator()(const SheetSameAs& action) const { take_from(context, action.from); }
    void operator()(const SheetTakeSuggestion&) const {
        const Hint hint = hint_of(sheet, context.model.data->entry, context.model.visit->survey);
        if (!hint.suggestion) return;
        sheet.unit = hint.suggestion->unit;
        sheet.entry = hint.suggestion->entry;
    }
    void operator()(const SheetNone&) const {
        sheet.entry = {};
        sheet.entry.digits = "0";
        sheet.copied_from.clear();
    }
    template <class T>
    void operator()(const T&) const {}
};

}  // namespace

void open_sheet(Context& context, const ReadingRef& ref) {
    AppModel& model = context.model;
    if (!model.visit) return;
    const bool distance = is_castor_distance(ref);
    const auto kind = distance ? std::optional(QuantityKind::small_length) : quantity_of(ref.field);
    const auto before = distance ? castor_distance(model, ref) : read_number(model.visit->survey, ref);
    if (!kind || !before) return;
    Sheet sheet;
    sheet.ref = ref;
    sheet.kind = *kind;
    sheet.before = *before;
    sheet.unit = model.settings.unit[static_cast<std::size_t>(*kind)];
    // A freezer's air begins with the minus sign: the commonest slip there is a missing one.
    if (const Plausible* row = plausible_row(model.data->entry, model.visit->survey, ref)) {
        sheet.entry.negative = *kind == QuantityKind::temperature && row->typical_high < 273.15;
    }
    const auto offered = methods_for(model.data->entry, *kind, unit_of(sheet));
    for (std::size_t i = 0; i < offered.size(); ++i) {
        if (offered[i]->name == before->method) sheet.method = i;
    }
    model.choice.reset();
    model.sheet = std::move(sheet);
    journal_keys(context);
}

void close_sheet(Context& context) {
    if (!context.model.sheet) return;
    context.model.sheet.reset();
    forget_keys(context);
}

void keep_sheet(Context& context, bool next) {
    AppModel& model = context.model;
    if (!model.sheet || !model.visit) return;
    const ReadingRef ref = model.sheet->ref;
    const auto reading = reading_of(*model.sheet, model.data->entry);
    if (reading) {
        const Hint hint = hint_of(*model.sheet, model.data->entry, model.visit->survey);
        if (hint.kind == HintKind::impossible) return;
        if (is_castor_distance(ref)) {
            if (!keep_castor_distance(context, ref, *reading->value)) return;
            close_sheet(context);
        } else {
            Survey survey = model.visit->survey;
            if (!write_number(survey, ref, *reading)) return;
            close_sheet(context);
            commit(context, std::move(survey), "done.reading");
        }
    } else {
        close_sheet(context);
    }
    const auto following = next ? next_reading(model.visit->survey, ref) : std::nullopt;
    if (following) open_sheet(context, *following);
}

void on_sheet(Context& context, const Action& action) {
    AppModel& model = context.model;
    if (std::holds_alternative<SheetNotAccessible>(action)) {
        keep_without_value(context, Known::not_accessible, "done.not_accessible");
        return;
    }
    std::visit(SheetDispatch{context, *model.sheet}, action);
    journal_keys(context);
}

void choose(Context& context, const Choose& choice) {
    AppModel& model = context.model;
    if (!model.visit) return;
    Survey survey = model.visit->survey;
    const WordReading word{choice.word, choice.by_eye ? Known::by_eye : Known::measured};
    model.choice.reset();
    if (write_word(survey, choice.ref, word)) commit(context, std::move(survey), "done.reading");
}

}  // namespace sillwalk::app::detail
