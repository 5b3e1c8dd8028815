// Every sentence of the demo site's advice against the finding it is made from. What the sentence says in words
// ("takes {0}; one person may be asked {1}") must be the finding's own demand and capacity.
#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "app/text/explain.hpp"
#include "assets/embedded.hpp"
#include "engine/select/assess.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace sillwalk;
using engine::Finding;
using engine::Outcome;
using engine::Statement;

namespace {

struct Demo {
    engine::Tables tables = app::load_tables().tables;
    engine::Catalogue catalogue = app::load_catalogue().catalogue;
    engine::Survey survey;

    explicit Demo(const std::string& file) : survey(app::read_survey(*assets::embedded("demo/" + file)).survey) {}

    template <class F>
    void each_finding(F&& f) const {
        const engine::Advice advice = engine::assess(survey, catalogue, tables, {1, 1, std::nullopt});
        for (const engine::CartAdvice& cart : advice.carts) {
            for (const auto& row : cart.ranked) visit(row.findings, f);
            if (cart.nearest) visit(cart.nearest->findings, f);
            if (cart.present) visit(cart.present->findings, f);
            for (const auto& row : cart.turned_down) f(row.first_failing);
            for (const auto& crossing : cart.crossings) visit(crossing.findings, f);
            for (const auto& crossing : cart.crossings_present) visit(crossing.findings, f);
        }
    }
    template <class F>
    static void visit(const std::vector<Finding>& findings, F& f) {
        for (const Finding& finding : findings) f(finding);
    }
};

/// Statements whose texts give the demand and the capacity as {0} and {1}.
bool says_demand_then_capacity(Statement statement) {
    switch (statement) {
        case Statement::load_rating:
        case Statement::load_speed_unknown:
        case Statement::parked_rating:
        case Statement::parked_flat_spot:
        case Statement::parked_short:
        case Statement::step_tested_rise:
        case Statement::gap_slot:
        case Statement::gap_swallows:
        case Statement::cold_rated_minimum:
        case Statement::cold_impact_floor:
        case Statement::cold_brittle_struck:
        case Statement::cold_brittle_unstruck:
        case Statement::heat_rated_maximum:
        case Statement::heat_standing:
        case Statement::bond_shear:
        case Statement::bond_temperature:
        case Statement::push_start:
        case Statement::push_sustain:
        case Statement::push_crossing_rest:
        case Statement::push_crossing_rolling:
        case Statement::push_ramp:
        case Statement::push_hold_back:
        case Statement::push_team:
        case Statement::traction_start:
        case Statement::traction_crossing:
        case Statement::traction_crossing_rolling:
        case Statement::traction_ramp:
        case Statement::floor_pressure:
        case Statement::tip_stop:
        case Statement::tip_slope:
            return true;
        default:
            return false;
    }
}

bool is_push_limit(Statement statement) {
    return statement == Statement::push_jams || statement == Statement::push_crossing_rest ||
           statement == Statement::push_start || statement == Statement::push_team;
}

}  // namespace

TEST_CASE("a sentence says the numbers that decided", "[app][text]") {
    const auto file = GENERATE("quillwater.json", "quillwater-us.json", "half-read.json");
    std::set<Statement> seen;
    Demo(file).each_finding([&](const Finding& finding) {
        if (finding.outcome == Outcome::not_known || finding.outcome == Outcome::does_not_apply) return;
        INFO(file << " " << engine::statement_key(finding.statement));
        if (says_demand_then_capacity(finding.statement)) {
            seen.insert(finding.statement);
            REQUIRE(finding.number_count >= 2);
            CHECK(finding.numbers[0] == finding.demand);
            CHECK(finding.numbers[1] == finding.capacity);
        }
        if (is_push_limit(finding.statement)) {
            CHECK(finding.numbers[1] == finding.capacity);
            CHECK(finding.numbers[6].kind == engine::Kind::number);  // which limit governs
            CHECK(finding.numbers[6].si <= 2.0);
            CHECK(finding.numbers[7].si >= 1.0);  // people
        }
    });
    CHECK(seen.size() >= 8);
}

TEST_CASE("no explanation of the demo has a hole, in either language or unit system", "[app][text]") {
    const Demo demo("quillwater.json");
    for (const char* code : {"en", "es"}) {
        const auto language = app::Language::load(code);
        REQUIRE(language);
        for (const app::UnitSystem units : {app::UnitSystem::si, app::UnitSystem::us}) {
            const app::TextContext context{*language, units, demo.survey, demo.catalogue, demo.tables};
            demo.each_finding([&](const Finding& finding) {
                const app::Explanation why = app::explain(finding, context);
                std::string all = why.check + why.question + why.outcome + why.sentence + why.compared + why.inserted;
                for (const auto* lines : {&why.conditions, &why.assumptions, &why.drivers, &why.missing}) {
                    for (const std::string& line : *lines) all += line;
                }
                INFO(code << ": " << all);
                CHECK(all.find('<') == std::string::npos);
                CHECK(all.find('{') == std::string::npos);
                CHECK(why.inserted.find('?') == std::string::npos);  // a slot without a number
            });
        }
    }
}
