#include "app/text/would_hold.hpp"

#include <cmath>

namespace sillwalk::app {

using engine::Amount;
using engine::Bound;
using engine::CheckLimits;
using engine::Condition;
using engine::Driver;
using engine::Kind;
using engine::SolvedLimit;

namespace {

/// What one shown unit is in SI, and the finest step that is shown; step 0: by the size of the number.
struct Scale {
    double unit = 1, offset = 0, step = 0;
};

Scale length_scale(double metres, bool us) {
    constexpr double inch = 0.0254;
    if (us && metres < 3.0) return {inch, 0, metres < inch ? 1.0 / 64.0 : 1.0 / 16.0};
    if (metres < 3.0) return {1e-3};
    return us ? Scale{0.3048} : Scale{};
}

Scale duration_scale(double seconds) {
    if (seconds >= 2 * 86400.0) return {86400.0};
    if (seconds >= 2 * 3600.0) return {3600.0};
    return seconds >= 60.0 ? Scale{60.0} : Scale{};
}

Scale scale_of(const Amount& amount, UnitSystem units) {
    const bool us = units == UnitSystem::us;
    switch (amount.kind) {
        case Kind::length:
            return length_scale(amount.si, us);
        case Kind::duration:
            return duration_scale(amount.si);
        case Kind::mass:
            return us ? Scale{0.45359237} : Scale{};
        case Kind::speed:
            return us ? Scale{0.44704} : Scale{};
        case Kind::slope:
            return {0.01, 0, 0.1};
        case Kind::temperature:
            return us ? Scale{1.0 / 1.8, 273.15 - 32.0 / 1.8, 0.1} : Scale{1.0, 273.15, 0.1};
        default:
            return {};
    }
}

/// Three significant digits, whole numbers from 100 on: as show() writes them.
double step_for(double size) {
    return size >= 100.0 ? 1.0 : size >= 10.0 ? 0.1 : size >= 1.0 ? 0.01 : 0.001;
}

std::string then_key(engine::Verdict verdict) {
    std::string key = "limit.then.";
    for (const char c : std::string_view(engine::verdict_name(verdict))) key += c == ' ' ? '_' : c;
    return key;
}

std::string limit_key(const SolvedLimit& limit) {
    std::string key = std::string("limit.") + engine::driver_name(limit.driver);
    for (char& c : key) {
        if (c == '-') c = '_';
    }
    if (limit.driver == Driver::stay) return key + (limit.bound == Bound::at_most ? ".at_most" : ".at_least");
    if (limit.value.si == 0.0) return key + ".none";
    return limit.driver == Driver::slope && limit.beside ? key + ".length" : key;
}

std::string limit_line(const SolvedLimit& limit, const TextContext& context) {
    const Language& words = context.language;
    std::string line =
        words.fill(limit_key(limit), {show_limit(limit.value, limit.bound, context.units),
                                      show(limit.present, context.units), place_name(limit.place, context.survey),
                                      limit.beside ? show(*limit.beside, context.units) : std::string()});
    if (!limit.whole_check) line += " " + words.fill("limit.at_place", {place_name(limit.holds_at, context.survey)});
    if (!limit.reachable) return line + " " + words.get("limit.no_size");
    if (limit.next_size) {
        const Amount size{limit.next_size->diameter.si(), Kind::length};
        line += " " + words.fill(limit.next_size->holds ? "limit.next_holds" : "limit.next_fails",
                                 {show(size, context.units)});
    }
    return line + " " + words.get(then_key(limit.then));
}

std::string check_word(engine::CheckId check, const TextContext& context) {
    return context.language.get(std::string("check.") + engine::check_name(check));
}

std::string condition_line(const Condition& condition, const TextContext& context) {
    std::string key = std::string("use.") + engine::condition_key(condition.kind);
    std::vector<std::string> arguments;
    if (engine::names_check(condition.kind)) arguments.push_back(check_word(condition.check, context));
    if (condition.place.kind != engine::PlaceKind::none) {
        key += ".place";
        arguments.push_back(place_name(condition.place, context.survey));
    }
    if (condition.reading.field != engine::Field::none) {
        key += ".reading";
        arguments.push_back(reading_name(condition.reading, context));
    }
    for (const Amount& amount : condition.amounts) arguments.push_back(show(amount, context.units));
    return context.language.fill(key, arguments);
}

}  // namespace

std::string show_limit(const Amount& value, Bound bound, UnitSystem units) {
    const Scale scale = scale_of(value, units);
    const double shown = (value.si - scale.offset) / scale.unit;
    const double step = scale.step > 0.0 ? scale.step : step_for(std::fabs(shown));
    const double hair = 1e-6 * std::fabs(shown) / step;  // a limit of 1:2 is found as 0.4999999999
    const double steps = bound == Bound::at_most ? std::floor(shown / step + hair) : std::ceil(shown / step - hair);
    return show({scale.offset + scale.unit * step * steps, value.kind}, units);
}

CheckLimitsText check_limits_text(const CheckLimits& check, const TextContext& context) {
    CheckLimitsText text;
    text.check = check_word(check.finding.check, context);
    text.place = place_name(check.finding.place, context.survey);
    text.compared = compared(check.finding, context);
    if (text.compared.empty()) text.compared = sentence(check.finding, context);
    for (const SolvedLimit& limit : check.limits) text.limits.push_back(limit_line(limit, context));
    if (check.waits_for_readings) text.notes.push_back(context.language.get("limit.waits"));
    if (!check.single_change && !check.waits_for_readings) {
        text.notes.push_back(context.language.get("limit.no_single"));
    }
    if (check.one_person && !check.limits.empty()) text.notes.push_back(context.language.get("limit.one_person"));
    return text;
}

std::vector<FamilyLimitsText> would_hold_text(const std::vector<engine::FamilyLimits>& families,
                                              const TextContext& context) {
    std::vector<FamilyLimitsText> texts;
    for (const engine::FamilyLimits& family : families) {
        FamilyLimitsText text;
        text.candidate = candidate_name(family.candidate, context);
        for (const CheckLimits& check : family.checks) text.checks.push_back(check_limits_text(check, context));
        texts.push_back(std::move(text));
    }
    return texts;
}

std::vector<std::string> conditions_text(const std::vector<Condition>& conditions, const TextContext& context) {
    std::vector<std::string> lines;
    for (const Condition& condition : conditions) lines.push_back(condition_line(condition, context));
    return lines;
}

}  // namespace sillwalk::app
