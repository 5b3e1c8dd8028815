#include "app/text/explain.hpp"

#include <fmt/format.h>

#include <cmath>

namespace sillwalk::app {

using engine::Citation;
using engine::Field;
using engine::Finding;
using engine::Outcome;
using engine::Statement;

namespace {

const char* const field_names[] = {"none",
                                   "room_air",
                                   "room_humidity",
                                   "room_air_movement",
                                   "room_wetness",
                                   "room_floor",
                                   "room_hygiene",
                                   "room_cleanroom",
                                   "crossing_kind",
                                   "crossing_rise",
                                   "crossing_lip_slope",
                                   "crossing_lip_height",
                                   "crossing_gap",
                                   "crossing_slot",
                                   "crossing_slope",
                                   "crossing_slope_length",
                                   "crossing_wetness",
                                   "washing_agent",
                                   "washing_strength",
                                   "washing_temperature",
                                   "washing_contact",
                                   "washing_frequency",
                                   "washing_rinsed",
                                   "cart_tare",
                                   "cart_payload",
                                   "cart_sharing",
                                   "cart_moved_by",
                                   "cart_people",
                                   "cart_cg_forward_loaded",
                                   "cart_cg_forward_empty",
                                   "cart_cg_height_loaded",
                                   "cart_cg_height_empty",
                                   "cart_handle_height",
                                   "cart_speed",
                                   "cart_push_distance",
                                   "cart_push_rate",
                                   "cart_parked_loaded",
                                   "cart_trips_per_day",
                                   "cart_load_factor",
                                   "cart_fork_width",
                                   "cart_axle_diameter",
                                   "cart_overall_height_limit",
                                   "cart_plate_pattern",
                                   "cart_static_ask",
                                   "cart_non_marking",
                                   "cart_castors",
                                   "cart_route",
                                   "cart_stay",
                                   "cart_damage_size"};
static_assert(std::size(field_names) == static_cast<std::size_t>(engine::last_field) + 1);

enum class Owner { none, room, crossing, washing, cart };
Owner owner_of(Field field) {
    if (field == Field::none) return Owner::none;
    if (field <= Field::room_cleanroom) return Owner::room;
    if (field <= Field::crossing_wetness) return Owner::crossing;
    if (field <= Field::washing_rinsed) return Owner::washing;
    return Owner::cart;
}

template <class List>
std::string name_at(const List& list, std::size_t index) {
    return index < list.size() ? list[index].name : std::string();
}

std::string owner_name(const engine::ReadingRef& ref, const engine::Survey& survey) {
    switch (owner_of(ref.field)) {
        case Owner::room:
            return name_at(survey.rooms, ref.index);
        case Owner::crossing:
            return name_at(survey.crossings, ref.index);
        case Owner::washing:
            return name_at(survey.washings, ref.index);
        case Owner::cart:
            return name_at(survey.carts, ref.index);
        case Owner::none:
            break;
    }
    return {};
}

const char* status_key(engine::SourceStatus status) {
    switch (status) {
        case engine::SourceStatus::read:
            return "status.read";
        case engine::SourceStatus::second_hand:
            return "status.second_hand";
        case engine::SourceStatus::memory:
            return "status.memory";
        case engine::SourceStatus::practice:
            return "status.practice";
        case engine::SourceStatus::derived:
            return "status.derived";
    }
    return "status.memory";
}

SourceLine source_line(const Citation& citation, const TextContext& context) {
    SourceLine line{citation.source, citation.locator, context.language.get(status_key(citation.status))};
    for (const engine::Source& source : context.tables.sources) {
        if (source.key == citation.source) line.title = source.title;
    }
    return line;
}

void add_source(std::vector<SourceLine>& lines, engine::CitationId id, const TextContext& context) {
    if (id == 0 || id >= context.tables.citations.size()) return;
    SourceLine line = source_line(context.tables.citations[id], context);
    for (const SourceLine& known : lines) {
        if (known.title == line.title && known.locator == line.locator) return;
    }
    lines.push_back(std::move(line));
}

/// Numbers of a statement that stand for a word: which argument, and the key under which the words are.
struct CodedNumber {
    Statement statement;
    std::size_t argument;
    const char* key;
};
constexpr CodedNumber coded_numbers[] = {
    {Statement::chemical_level, 1, "part."},        {Statement::corrosion_rusts, 0, "part."},
    {Statement::corrosion_rusts, 1, "moisture."},   {Statement::hygiene_crevice, 0, "feature."},
    {Statement::push_start, 6, "governs."},         {Statement::push_sustain, 6, "governs."},
    {Statement::push_crossing_rest, 6, "governs."}, {Statement::push_crossing_rolling, 6, "governs."},
    {Statement::push_ramp, 6, "governs."},          {Statement::push_hold_back, 6, "governs."},
    {Statement::push_team, 6, "governs."},          {Statement::push_jams, 6, "governs."},
};

std::string number_word(const Finding& finding, std::size_t argument, const TextContext& context) {
    const engine::Amount& amount = finding.numbers[argument];
    const std::string number = std::to_string(std::lround(amount.si));
    if (amount.kind == engine::Kind::level) return context.language.get("level." + number);
    for (const CodedNumber& coded : coded_numbers) {
        if (coded.statement == finding.statement && coded.argument == argument) {
            return context.language.get(coded.key + number);
        }
    }
    return show(amount, context.units);
}

std::vector<std::string> arguments_of(const Finding& finding, const TextContext& context) {
    std::vector<std::string> out;
    for (std::size_t i = 0; i < finding.number_count; ++i) out.push_back(number_word(finding, i, context));
    return out;
}

std::string joined(const std::vector<std::string>& parts) {
    std::string out;
    for (const std::string& part : parts) out += (out.empty() ? "" : ", ") + part;
    return out;
}

std::string key_word(const char* name) {
    std::string key;
    for (const char c : std::string_view(name)) key += c == ' ' ? '_' : c;
    return key;
}

std::vector<std::string> names(const auto& refs, const TextContext& context) {
    std::vector<std::string> out;
    for (const engine::ReadingRef& ref : refs) out.push_back(reading_name(ref, context));
    return out;
}

const char* bearing_kind_key(engine::BearingKind kind) {
    switch (kind) {
        case engine::BearingKind::plain_acetal:
            return "bearing_kind.plain_acetal";
        case engine::BearingKind::roller:
            return "bearing_kind.roller";
        case engine::BearingKind::stainless_roller:
            return "bearing_kind.stainless_roller";
        case engine::BearingKind::precision_ball:
            return "bearing_kind.precision_ball";
        case engine::BearingKind::stainless_precision_ball:
            return "bearing_kind.stainless_precision_ball";
    }
    return "bearing_kind.plain_acetal";
}

/// "{0} of {1}" with what the statement's numbers are called, where the words have a line for it.
std::string inserted_numbers(const Finding& finding, const TextContext& context) {
    const std::string key = std::string("numbers.") + engine::statement_key(finding.statement);
    if (!context.language.has(key)) return {};
    return context.language.fill(key, arguments_of(finding, context));
}

}  // namespace

const char* function_key(engine::CastorFunction function) {
    switch (function) {
        case engine::CastorFunction::swivel:
            return "function.swivel";
        case engine::CastorFunction::rigid:
            return "function.rigid";
        case engine::CastorFunction::total_lock:
            return "function.total_lock";
    }
    return "function.swivel";
}

std::string field_key(Field field) {
    return std::string("reading.") + field_names[static_cast<std::size_t>(field)];
}

std::string place_name(const engine::Place& place, const engine::Survey& survey) {
    switch (place.kind) {
        case engine::PlaceKind::room:
            return name_at(survey.rooms, place.index);
        case engine::PlaceKind::crossing:
            return name_at(survey.crossings, place.index);
        case engine::PlaceKind::washing:
            return name_at(survey.washings, place.index);
        case engine::PlaceKind::none:
            break;
    }
    return {};
}

std::string reading_name(const engine::ReadingRef& ref, const TextContext& context) {
    if (ref.field == Field::none) return context.language.get("reading.maker_figure");
    const std::string what = context.language.get(field_key(ref.field));
    if (ref.field == Field::cart_stay && ref.index < context.survey.carts.size()) {
        const engine::Cart& cart = context.survey.carts[ref.index];
        if (ref.stop < cart.route.size()) {
            for (const engine::Room& room : context.survey.rooms) {
                if (room.id == cart.route[ref.stop].room) {
                    return context.language.fill("reading.of", {what, room.name});
                }
            }
        }
    }
    return context.language.fill("reading.of", {what, owner_name(ref, context.survey)});
}

std::string candidate_name(const engine::Candidate& candidate, const TextContext& context) {
    const Language& words = context.language;
    const engine::Rig& rig = context.catalogue.rigs[candidate.rig];
    std::vector<std::string> parts{
        context.catalogue.wheels[candidate.wheel].description,
        words.get(bearing_kind_key(context.catalogue.bearings[candidate.bearing].kind)),
        words.fill("rig.named", {words.get(function_key(rig.function)),
                                 words.get(rig.finish == engine::RigFinish::stainless ? "finish.stainless"
                                                                                      : "finish.zinc_plated")})};
    if (candidate.preparation == engine::Preparation::degreased) {
        parts.push_back(words.get("preparation.degreased"));
    } else if (candidate.preparation == engine::Preparation::h1_lubricated) {
        parts.push_back(words.get("preparation.h1_lubricated"));
    }
    return joined(parts);
}

std::string compared(const Finding& finding, const TextContext& context) {
    const bool is_scale = finding.demand.kind == engine::Kind::number || finding.demand.kind == engine::Kind::level;
    const bool has_answer = finding.outcome != Outcome::does_not_apply && finding.outcome != Outcome::not_known;
    if (!finding.has_use || !has_answer || is_scale) return {};
    return context.language.fill("compare.of",
                                 {show(finding.demand, context.units), show(finding.capacity, context.units)});
}

std::string sentence(const Finding& finding, const TextContext& context) {
    if (finding.outcome == Outcome::not_known) {
        const auto missing = names(finding.missing, context);
        if (missing.empty()) return context.language.get("finding.needs_figure");
        const std::size_t others = missing.size() - 1;
        const char* key = others == 0 ? "finding.needs" : others == 1 ? "finding.needs_two" : "finding.needs_several";
        return context.language.fill(key, {missing.front(), std::to_string(others)});
    }
    const std::string base = std::string("finding.") + engine::statement_key(finding.statement);
    const std::string by_outcome = base + "." + key_word(engine::outcome_name(finding.outcome));
    const auto arguments = arguments_of(finding, context);
    return context.language.fill(context.language.has(by_outcome) ? by_outcome : base, arguments);
}

Explanation explain(const Finding& finding, const TextContext& context) {
    const Language& words = context.language;
    Explanation out;
    out.check = words.get(std::string("check.") + engine::check_name(finding.check));
    out.question = words.get(std::string("question.") + engine::check_name(finding.check));
    out.outcome = words.get("outcome." + key_word(engine::outcome_name(finding.outcome)));
    out.place = place_name(finding.place, context.survey);
    out.sentence = sentence(finding, context);
    out.compared = compared(finding, context);
    out.inserted = inserted_numbers(finding, context);
    if (const engine::FormulaRow* formula = context.tables.formula(finding.formula)) {
        // A formula with words in it, and every range, stands in the language; bare mathematics is the same in all.
        const auto in_words = [&](const std::string& key, const std::string& text) {
            return words.has(key) ? words.get(key) : text;
        };
        out.formula = in_words("formula." + formula->id, formula->text);
        out.range = in_words("formula_range." + formula->id, formula->range);
        add_source(out.sources, formula->citation, context);
    }
    for (const engine::CitationId id : finding.citations) add_source(out.sources, id, context);
    const bool tight = finding.outcome == Outcome::tight;
    if (finding.needs_rolling && tight) out.conditions.push_back(words.get("condition.rolling"));
    if (finding.needs_team && tight) out.conditions.push_back(words.get("condition.team"));
    if (finding.turns_on) {
        out.conditions.push_back(
            finding.turns_on_reading.field == Field::none
                ? words.get("condition.turns_on_several")
                : words.fill("condition.turns_on", {reading_name(finding.turns_on_reading, context)}));
    }
    if (finding.conflict) out.conditions.push_back(words.get("condition.conflict"));
    for (const engine::Assumption assumption : finding.assumptions) {
        out.assumptions.push_back(words.get(std::string("assumption.") + engine::assumption_key(assumption)));
    }
    out.drivers = names(finding.drivers, context);
    out.missing = names(finding.missing, context);
    return out;
}

}  // namespace sillwalk::app
