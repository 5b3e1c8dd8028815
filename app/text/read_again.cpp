#include "app/text/read_again.hpp"

#include <fmt/format.h>

#include <cmath>

namespace sillwalk::app {

using engine::Amount;
using engine::Field;
using engine::Headline;
using engine::Kind;
using engine::ReadAgain;
using engine::ReadingDoubt;

namespace {

/// Of 100; what is neither none nor all is not rounded to it.
std::string of_hundred(double share) {
    if (share > 0.0 && share < 0.005) return "<1";
    if (share < 1.0 && share > 0.995) return ">99";
    return fmt::format("{:.0f}", 100.0 * share);
}

std::optional<Kind> kind_of(Field field) {
    switch (field) {
        case Field::room_air:
        case Field::washing_temperature:
            return Kind::temperature;
        case Field::room_humidity:
        case Field::washing_strength:
            return Kind::share;
        case Field::crossing_rise:
        case Field::crossing_lip_height:
        case Field::crossing_gap:
        case Field::crossing_slot:
        case Field::crossing_slope_length:
        case Field::cart_cg_forward_loaded:
        case Field::cart_cg_forward_empty:
        case Field::cart_cg_height_loaded:
        case Field::cart_cg_height_empty:
        case Field::cart_handle_height:
        case Field::cart_push_distance:
        case Field::cart_fork_width:
        case Field::cart_axle_diameter:
        case Field::cart_overall_height_limit:
        case Field::cart_damage_size:
            return Kind::length;
        case Field::crossing_lip_slope:
        case Field::crossing_slope:
            return Kind::slope;
        case Field::washing_contact:
        case Field::cart_parked_loaded:
        case Field::cart_stay:
            return Kind::duration;
        case Field::cart_tare:
        case Field::cart_payload:
            return Kind::mass;
        case Field::cart_speed:
            return Kind::speed;
        case Field::cart_people:
        case Field::cart_trips_per_day:
        case Field::cart_load_factor:
            return Kind::number;
        default:
            return std::nullopt;
    }
}

std::string answer_text(const Headline& answer, const engine::CartAdvice& advice, const TextContext& context) {
    if (answer.nothing_holds) return context.language.get("again.answer_nothing");
    const bool same = !advice.ranked.empty() && answer.candidate == advice.ranked.front().candidate;
    std::string key = "verdict.";
    for (const char c : std::string_view(engine::verdict_name(answer.verdict))) key += c == ' ' ? '_' : c;
    return context.language.get(key) + ": " +
           (same ? context.language.get("again.answer_same") : candidate_name(answer.candidate, context));
}

MissingText missing_text(const engine::MissingReading& missing, const engine::CartAdvice& advice,
                         const TextContext& context) {
    MissingText text;
    text.reading = reading_name(missing.reading, context);
    for (const engine::AnswerRange& stretch : missing.ranges) {
        text.lines.push_back(
            context.language.fill("again.stretch", {show_reading(missing.reading.field, stretch.from_si, context),
                                                    show_reading(missing.reading.field, stretch.to_si, context),
                                                    answer_text(stretch.answer, advice, context)}));
    }
    return text;
}

void add_readings(ReadAgainText& text, const ReadAgain& again, const TextContext& context) {
    for (const ReadingDoubt& row : again.readings) {
        if (row.share == 0.0) continue;
        text.readings.push_back(context.language.fill(row.missing ? "again.reading_missing" : "again.reading",
                                                      {reading_name(row.reading, context), of_hundred(row.share)}));
    }
    if (again.together >= again.least_share && again.together > 0.0) {
        text.readings.push_back(context.language.fill("again.together", {of_hundred(again.together)}));
    }
}

}  // namespace

std::optional<Amount> reading_amount(Field field, double si) {
    const auto kind = kind_of(field);
    if (!kind) return std::nullopt;
    return Amount{si, *kind};
}

std::string show_reading(Field field, double si, const TextContext& context) {
    if (const auto amount = reading_amount(field, si)) return show(*amount, context.units);
    const Amount an_hour{3600.0 * si, Kind::number};
    return show(an_hour, context.units) + " " + context.language.get("unit.per_hour");
}

ReadAgainText read_again_text(const ReadAgain& again, const engine::CartAdvice& advice, const TextContext& context,
                              std::size_t others) {
    const Language& words = context.language;
    ReadAgainText text;
    text.headline =
        words.fill(advice.nothing_holds ? "again.nothing_stays" : "again.stays", {of_hundred(again.stays_first)});
    if (!advice.nothing_holds) {
        text.answers.push_back(words.fill("again.holds", {of_hundred(again.holds)}));
        if (again.nothing_holds > 0.0) {
            text.answers.push_back(words.fill("again.nothing", {of_hundred(again.nothing_holds)}));
        }
    }
    for (std::size_t i = 0; i < std::min(others, again.others.size()); ++i) {
        text.answers.push_back(words.fill(
            "again.other", {of_hundred(again.others[i].share), candidate_name(again.others[i].candidate, context)}));
    }
    add_readings(text, again, context);
    for (const auto& missing : again.missing) text.missing.push_back(missing_text(missing, advice, context));
    for (const engine::ReadingRef& reading : again.not_sampled) {
        text.notes.push_back(words.fill("again.not_sampled", {reading_name(reading, context)}));
    }
    text.notes.push_back(words.fill("again.draws", {std::to_string(again.draws), std::to_string(again.seed)}));
    return text;
}

}  // namespace sillwalk::app
