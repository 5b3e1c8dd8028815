#include "app/ui/screens/facts.hpp"

#include "app/core/quantity.hpp"
#include "app/core/reading_access.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace sillwalk::ui {

using app::NumberReading;
using app::QuantityKind;
using engine::Field;
using engine::Finding;
using engine::Known;
using engine::Outcome;
using engine::ReadingRef;

namespace {

const app::Unit& chosen_unit(const ScreenContext& context, QuantityKind kind) {
    return app::units_of(kind)[context.model.settings.unit[static_cast<std::size_t>(kind)]];
}

/// What is done less than once a day is told by the week: "1 a week" is read at a glance, "0.14 a day" is not.
const app::Unit& shown_unit(const ScreenContext& context, const ReadingRef& ref, const NumberReading& reading) {
    const QuantityKind kind = app::quantity_of(ref.field).value_or(QuantityKind::small_length);
    const app::Unit& unit = chosen_unit(context, kind);
    const bool seldom = kind == QuantityKind::washes && reading.value && app::in_unit(*reading.value, unit) < 1;
    return seldom ? app::units_of(kind).back() : unit;
}

std::string known_text(const ScreenContext& context, Known known) {
    constexpr const char* keys[] = {"known.measured", "known.by_eye",         "known.told",        "known.copied",
                                    "known.assumed",  "known.not_accessible", "known.not_yet_read"};
    return context.say(keys[static_cast<std::size_t>(known)]);
}

/// The way of reading in the person's language where it is one of ours, else as it was written.
std::string method_text(const ScreenContext& context, const std::string& name) {
    for (const app::Method& method : context.model.data->entry.methods) {
        if (method.name == name) return context.say("method." + method.id);
    }
    return name;
}

/// Name of a table's row; its id where a visit comes from newer tables than these.
std::string row_name(const ScreenContext& context, const std::string& key, const std::string& id) {
    return context.language.has(key) ? context.say(key) : id;
}

std::string number_detail(const ScreenContext& context, const NumberReading& reading, const app::Unit& unit) {
    if (!reading.value) return known_text(context, reading.known);
    std::string how = reading.known == Known::measured && !reading.method.empty() ? method_text(context, reading.method)
                                                                                  : known_text(context, reading.known);
    if (reading.tolerance == 0) return how;
    std::string difference = app::shown_difference(reading.tolerance, unit);
    // Beside "1:4" a bare number would be taken for a part of the ratio.
    if (unit.shape == app::UnitShape::one_to) difference += "\u2009%";
    return how.empty() ? "\u00B1\u2009" + difference : fmt::format("\u00B1\u2009{}, {}", difference, how);
}

}  // namespace

std::string capitalised(std::string text) {
    if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    return text;
}

std::string counted(const ScreenContext& context, const char* key, std::size_t count) {
    const std::string one = std::string(key) + ".one";
    if (count == 1 && context.language.has(one)) return context.say(one);
    return context.say(key, {std::to_string(count)});
}

std::string unit_text(const ScreenContext& context, const app::Unit& unit) {
    return unit.word.empty() ? std::string(unit.symbol) : context.say(unit.word);
}

std::string choice_text(const ScreenContext& context, Field field, const std::string& word) {
    if (field == Field::room_floor) return row_name(context, "floor." + word, word);
    if (field == Field::washing_agent) return row_name(context, "agent." + word, word);
    if (field == Field::cart_plate_pattern) return word;
    const std::string key = app::field_key(field);
    const std::string full = "choice." + key.substr(key.find('.') + 1) + "." + word;
    if (context.language.has(full)) return context.say(full);
    return context.say("choice." + word);
}

namespace {

ReadingLine made_line(const ScreenContext& context, const ReadingRef& ref) {
    ReadingLine line;
    line.name = capitalised(context.say(app::reading_key(ref)));
    if (const auto number = app::read_number(context.survey(), ref)) {
        const app::Unit& unit = shown_unit(context, ref, *number);
        line.known = number->known;
        line.detail = number_detail(context, *number, unit);
        if (!number->value) return line;
        line.value = app::shown_number(*number->value, unit);
        if (unit.shape == app::UnitShape::one_to) {
            line.value = *number->value == 0 ? "0" : "1:" + line.value;
        } else {
            line.unit = unit_text(context, unit);
        }
        return line;
    }
    if (const auto word = app::read_word(context.survey(), ref)) {
        line.known = word->known;
        if (word->word) line.value = choice_text(context, ref.field, *word->word);
        if (word->known != Known::measured) line.detail = known_text(context, word->known);
    }
    return line;
}

}  // namespace

const ReadingLine& reading_line(const ScreenContext& context, const ReadingRef& ref) {
    const std::uint64_t which =
        static_cast<std::uint64_t>(ref.field) << 32U | std::uint64_t{ref.index} << 16U | std::uint64_t{ref.stop};
    return context.recall(Remembered::reading_line, which, [&] { return made_line(context, ref); });
}

const std::string& sentence_of(const ScreenContext& context, const Finding& finding) {
    return context.recall_of(Remembered::sentence, finding, [&] { return app::sentence(finding, context.text()); });
}

const std::string& compared_of(const ScreenContext& context, const Finding& finding) {
    return context.recall_of(Remembered::compared, finding, [&] { return app::compared(finding, context.text()); });
}

ReadingLine pending_line(const ScreenContext& context, const ReadingRef& ref, std::int64_t canonical) {
    ReadingLine line;
    const app::Unit& unit = chosen_unit(context, app::quantity_of(ref.field).value_or(QuantityKind::small_length));
    line.name = capitalised(context.say(app::reading_key(ref)));
    line.value = app::shown_number(canonical, unit);
    line.unit = unit_text(context, unit);
    return line;
}

std::string value_text(const ScreenContext& context, const ReadingRef& ref) {
    const ReadingLine& line = reading_line(context, ref);
    if (line.value.empty() || line.unit.empty()) return line.value;
    return line.value + "\u2009" + line.unit;
}

std::string reading_id(const ReadingRef& ref, bool indexed) {
    std::string id = app::field_key(ref.field);
    if (ref.field == Field::cart_stay || ref.field == Field::cart_damage_size) id += "." + std::to_string(ref.stop);
    return indexed ? id + "." + std::to_string(ref.index) : id;
}

bool is_needed(const ScreenContext& context, const ReadingRef& ref) {
    const engine::CartAdvice* advice = context.advice();
    if (!advice) return false;
    return std::find(advice->not_read.begin(), advice->not_read.end(), ref) != advice->not_read.end();
}

void reading_row(ScreenContext& context, const ReadingRef& ref, bool needed, bool framed) {
    const ReadingLine& line = reading_line(context, ref);
    const bool is_number = app::quantity_of(ref.field).has_value();
    RowOptions options;
    options.value = line.value;
    options.unit = line.unit;
    options.detail = line.detail;
    options.framed = framed;
    options.value_role = is_number ? TextRole::value : TextRole::row;
    if (line.known == Known::by_eye) options.mark = Badge::by_eye;
    if (line.value.empty()) {
        options.dashed = true;
        options.badge = Badge::not_known;
        options.badge_word = context.say(line.known == Known::not_accessible ? "known.not_accessible_short"
                                         : needed                            ? "outcome.not_known"
                                                                             : "known.not_yet_read_short");
        if (!needed && line.known == Known::not_yet_read) options.badge.reset();
        options.detail = needed ? context.say("reading.needed") : line.detail;
    }
    if (context.ui.row(reading_id(ref, !framed), line.name, options)) {
        if (is_number) {
            context.act(app::OpenSheet{ref});
        } else {
            context.act(app::OpenChoice{ref});
        }
    }
}

std::optional<Badge> badge_of(Outcome outcome) {
    switch (outcome) {
        case Outcome::holds:
            return Badge::holds;
        case Outcome::tight:
            return Badge::tight;
        case Outcome::fails:
            return Badge::fails;
        case Outcome::not_known:
            return Badge::not_known;
        case Outcome::does_not_apply:
            break;
    }
    return std::nullopt;
}

std::string labelled(const ScreenContext& context, const std::string& name, Outcome outcome) {
    constexpr const char* keys[] = {"outcome.does_not_apply", "outcome.holds", "outcome.tight", "outcome.not_known",
                                    "outcome.fails"};
    return name + ", " + context.say(keys[static_cast<std::size_t>(outcome)]);
}

Badge badge_of(engine::Verdict verdict) {
    switch (verdict) {
        case engine::Verdict::fits:
            return Badge::holds;
        case engine::Verdict::fits_with_conditions:
            return Badge::tight;
        case engine::Verdict::does_not_fit:
            return Badge::fails;
        case engine::Verdict::cannot_tell:
            break;
    }
    return Badge::not_known;
}

std::string verdict_text(const ScreenContext& context, engine::Verdict verdict) {
    constexpr const char* keys[] = {"verdict.fits", "verdict.fits_with_conditions", "verdict.cannot_tell",
                                    "verdict.does_not_fit"};
    return context.say(keys[static_cast<std::size_t>(verdict)]);
}

std::string wheel_text(const ScreenContext& context, const engine::Wheel& wheel) {
    constexpr const char* keys[] = {"construction.one_piece_urethane", "construction.urethane_on_polyolefin",
                                    "construction.urethane_on_iron",   "construction.nylon",
                                    "construction.polyolefin",         "construction.phenolic",
                                    "construction.solid_rubber",       "construction.thermoplastic_rubber",
                                    "construction.stainless"};
    const std::string size = app::show({wheel.diameter.si(), engine::Kind::length}, context.units());
    return size + " " + context.say(keys[static_cast<std::size_t>(wheel.construction)]);
}

const engine::Wheel* present_wheel(const ScreenContext& context) {
    if (context.model.cart >= context.survey().carts.size()) return nullptr;
    const auto& id = context.survey().carts[context.model.cart].present_wheel.value;
    return id ? context.model.data->catalogue.wheel(*id) : nullptr;
}

const engine::Wheel* headline_wheel(const ScreenContext& context) {
    const engine::RankedCandidate* first = app::headline(context.advice());
    return first ? &context.model.data->catalogue.wheels[first->candidate.wheel] : nullptr;
}

std::vector<const Finding*> by_urgency(const std::vector<Finding>& findings) {
    const auto rank = [](const Finding& finding) {
        switch (finding.outcome) {
            case Outcome::fails:
                return 0;
            case Outcome::not_known:
                return 1;
            case Outcome::tight:
                return 2;
            case Outcome::holds:
                return 3;
            case Outcome::does_not_apply:
                break;
        }
        return 4;
    };
    std::vector<const Finding*> list;
    for (const Finding& finding : findings) {
        if (finding.outcome != Outcome::does_not_apply) list.push_back(&finding);
    }
    std::stable_sort(list.begin(), list.end(), [&](const Finding* a, const Finding* b) {
        if (rank(*a) != rank(*b)) return rank(*a) < rank(*b);
        return a->use > b->use;
    });
    return list;
}

const engine::CrossingOutcome* crossing_outcome(const ScreenContext& context, std::uint16_t crossing, bool present) {
    const engine::CartAdvice* advice = context.advice();
    if (!advice) return nullptr;
    for (const auto& outcome : present ? advice->crossings_present : advice->crossings) {
        if (outcome.crossing == crossing) return &outcome;
    }
    return nullptr;
}

std::string fitted(const Ui& ui, const std::string& text, float width, TextRole role, Weight weight) {
    if (ui.text_width(text, role, weight) <= width) return text;
    if (ui.text_width(text, TextRole::smallest, weight) <= width) return text;
    std::vector<std::size_t> ends;  // of what could be left of it, by words
    for (std::size_t at = text.find(' ', 1); at != std::string::npos; at = text.find(' ', at + 1)) ends.push_back(at);
    if (ends.empty()) return text;
    const auto shortened = [&](std::size_t end) {
        while (end > 0 && (text[end - 1] == ',' || text[end - 1] == ' ')) --end;
        return text.substr(0, end) + " \u2026";
    };
    const auto too_wide = [&](std::size_t end) {
        return ui.text_width(shortened(end), TextRole::smallest, weight) > width;
    };
    const auto first = std::partition_point(ends.begin(), ends.end(), [&](std::size_t end) { return !too_wide(end); });
    return shortened(first == ends.begin() ? ends.front() : *(first - 1));
}

std::string clock_text(const ScreenContext& context, std::int64_t utc_ms) {
    const std::int64_t minutes = utc_ms / 60000 + context.utc_offset_minutes;
    return fmt::format("{:02}:{:02}", (minutes / 60) % 24, minutes % 60);
}

}  // namespace sillwalk::ui
