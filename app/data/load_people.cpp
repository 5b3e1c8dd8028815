#include "app/data/table_loaders.hpp"

#include <fmt/format.h>

#include <set>

namespace sillwalk::app {

using engine::Force;
using engine::PeopleLimits;
using engine::PushAction;
using engine::PushEquation;
using engine::PushPhase;
using engine::Sex;

namespace {

/// The equations are published with divisors; a term that an equation lacks has none.
double inverse(JsonObject& row, std::string_view key) {
    const auto divisor = row.number(key, -1e5, 1e5, Need::optional);
    if (!divisor) return 0.0;
    if (*divisor == 0.0) {
        row.error(key, "a divisor of 0");
        return 0.0;
    }
    return 1.0 / *divisor;
}

void read_factors(JsonObject& row, PushEquation& equation) {
    if (auto height = row.object("height")) {
        equation.height_constant = height->number("constant", -10, 10).value_or(0.0);
        equation.height_linear = inverse(*height, "divisor");
        equation.height_square = inverse(*height, "square_divisor");
        height->done();
    }
    if (auto distance = row.object("distance")) {
        equation.distance_constant = distance->number("constant", -10, 10).value_or(0.0);
        equation.distance_linear = inverse(*distance, "divisor");
        equation.distance_square = inverse(*distance, "square_divisor");
        equation.distance_log = inverse(*distance, "log_divisor");
        distance->done();
    }
    if (auto rate = row.object("rate")) {
        equation.rate_constant = rate->number("constant", -10, 10).value_or(0.0);
        equation.rate_log = inverse(*rate, "log_divisor");
        equation.rate_log_square = inverse(*rate, "log_square_divisor");
        rate->done();
    }
}

PushEquation read_equation(JsonObject& row, TableFields& fields) {
    PushEquation equation;
    equation.action = row.word<PushAction>("action", {{"push", PushAction::push}, {"pull", PushAction::pull}})
                          .value_or(PushAction::push);
    equation.phase = row.word<PushPhase>("phase", {{"start", PushPhase::start}, {"sustain", PushPhase::sustain}})
                         .value_or(PushPhase::start);
    equation.sex = row.word<Sex>("sex", {{"female", Sex::female}, {"male", Sex::male}}).value_or(Sex::female);
    equation.reference_kgf = row.number("reference_kgf", 1, 200).value_or(0.0);
    equation.variation = row.number("variation", 0.01, 1).value_or(0.0);
    equation.citation = fields.citation(row);
    read_factors(row, equation);
    return equation;
}

template <class Make>
auto read_pair(JsonObject& row, std::string_view key, Range range, Make make) -> std::array<decltype(make(0.0)), 2> {
    const std::vector<double> pair = row.numbers(key, range.low, range.high);
    if (pair.size() != 2 || !(pair[0] < pair[1])) {
        row.error(key, "needs two numbers, the least and the greatest");
        return {};
    }
    return {make(pair[0]), make(pair[1])};
}

void read_ranges(JsonObject& file, TableFields& fields, PeopleLimits& people) {
    std::optional<JsonObject> row = file.object("ranges");
    if (!row) return;
    const auto per_minute = [](double value) { return value * engine::per_minute; };
    const auto metres_per_minute = [](std::optional<double> value) {
        return engine::Speed::from_si(value.value_or(0.0) / 60.0);
    };
    engine::PushRanges& ranges = people.ranges;
    ranges.height_female = read_pair(*row, "height_female_m", {0.1, 2.5}, si<engine::Length>);
    ranges.height_male = read_pair(*row, "height_male_m", {0.1, 2.5}, si<engine::Length>);
    ranges.distance = read_pair(*row, "distance_m", {0.1, 1000}, si<engine::Length>);
    ranges.rate = read_pair(*row, "rate_per_min", {1e-4, 60}, per_minute);
    ranges.distance_rate_max = metres_per_minute(row->number("distance_rate_max_m_per_min", 1, 1000));
    ranges.caution_female = metres_per_minute(row->number("caution_female_m_per_min", 1, 1000));
    ranges.caution_male = metres_per_minute(row->number("caution_male_m_per_min", 1, 1000));
    ranges.citation = fields.citation(*row);
    row->done();
}

void read_biomechanical(JsonObject& file, TableFields& fields, PeopleLimits& people) {
    std::optional<JsonObject> table = file.object("biomechanical");
    if (!table) return;
    people.biomechanical_citation = fields.citation(*table);
    each_row(*table, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::PushHeightRow out;
        out.height = row.number("height_in", 1, 100).value_or(0.0) * engine::inch;
        out.push = row.number("push_lbf", 1, 500).value_or(0.0) * engine::pound_force;
        out.pull = row.number("pull_lbf", 1, 500).value_or(0.0) * engine::pound_force;
        if (!people.biomechanical.empty() && !(out.height > people.biomechanical.back().height)) {
            row.error("height_in", "does not rise above the row before");
        }
        people.biomechanical.push_back(out);
    });
    table->done();
}

}  // namespace

void load_people(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    PeopleLimits& people = tables.people;
    std::set<std::tuple<PushAction, PushPhase, Sex>> seen;
    each_row(file, "equations", fields.errors(), [&](JsonObject& row, std::size_t) {
        const PushEquation equation = read_equation(row, fields);
        if (!seen.insert({equation.action, equation.phase, equation.sex}).second) {
            row.error("action", "this action, phase and sex stand twice");
        }
        people.equations.push_back(equation);
    });
    if (seen.size() != 8) file.error("equations", fmt::format("{} of the 8 equations", seen.size()));
    read_ranges(file, fields, people);
    read_biomechanical(file, fields, people);
    const Range force{10, 2000}, share{0.01, 1};
    people.upper = fields.needed(file, "upper_n", force, si<Force>);
    people.guide_start_female = fields.needed(file, "guide_start_female_n", force, si<Force>);
    people.guide_start_male = fields.needed(file, "guide_start_male_n", force, si<Force>);
    people.guide_keep_female = fields.needed(file, "guide_keep_female_n", force, si<Force>);
    people.guide_keep_male = fields.needed(file, "guide_keep_male_n", force, si<Force>);
    people.body_mass = fields.needed(file, "body_mass_kg", {20, 200}, si<engine::Mass>);
    people.traction_reserve = fields.needed(file, "traction_reserve", share, plain);
    people.cold_chill = fields.needed(file, "cold_chill", share, plain);
    people.cold_freezer = fields.needed(file, "cold_freezer", share, plain);
    people.cold_pull_gloves = fields.needed(file, "cold_pull_gloves", share, plain);
    people.design_share = fields.needed(file, "design_share", share, plain);
}

}  // namespace sillwalk::app
