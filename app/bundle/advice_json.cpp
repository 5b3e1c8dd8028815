#include "app/bundle/advice_json.hpp"

#include "app/bundle/sampling_json.hpp"
#include "app/bundle/would_hold_json.hpp"
#include "app/text/show.hpp"

#include <fmt/format.h>

#include <cstdlib>

namespace sillwalk::app {

using engine::Finding;

namespace {

const char* preparation_name(engine::Preparation preparation) {
    switch (preparation) {
        case engine::Preparation::as_supplied:
            return "as-supplied";
        case engine::Preparation::degreased:
            return "degreased";
        case engine::Preparation::h1_lubricated:
            return "h1-lubricated";
    }
    return "as-supplied";
}

const char* source_status_name(engine::SourceStatus status) {
    switch (status) {
        case engine::SourceStatus::read:
            return "read";
        case engine::SourceStatus::second_hand:
            return "second_hand";
        case engine::SourceStatus::memory:
            return "memory";
        case engine::SourceStatus::practice:
            return "practice";
        case engine::SourceStatus::derived:
            return "derived";
    }
    return "memory";
}

Json paths_to_json(const auto& refs) {
    Json out = Json::array();
    for (const engine::ReadingRef& ref : refs) {
        if (ref.field != engine::Field::none) out.push_back(engine::reading_path(ref));
    }
    return out;
}

Json citation_to_json(const engine::Citation& citation) {
    return {
        {"source", citation.source}, {"locator", citation.locator}, {"status", source_status_name(citation.status)}};
}

Json citations_to_json(const Finding& finding, const engine::Tables& tables) {
    Json out = Json::array();
    const auto add = [&](engine::CitationId id) {
        if (id == 0 || id >= tables.citations.size()) return;
        Json row = citation_to_json(tables.citations[id]);
        for (const Json& known : out) {
            if (known == row) return;
        }
        out.push_back(std::move(row));
    };
    if (const engine::FormulaRow* formula = tables.formula(finding.formula)) add(formula->citation);
    for (const engine::CitationId id : finding.citations) add(id);
    return out;
}

Json findings_to_json(const std::vector<Finding>& findings, const engine::Survey& survey, const engine::Tables& tables,
                      NumberForm form) {
    Json out = Json::array();
    for (const Finding& finding : findings) out.push_back(finding_to_json(finding, survey, tables, form));
    return out;
}

struct Writer {
    const engine::Survey& survey;
    const engine::Catalogue& catalogue;
    const engine::Tables& tables;
    NumberForm form;

    [[nodiscard]] Json ranked(const engine::RankedCandidate& row) const {
        return {{"candidate", candidate_to_json(row.candidate, catalogue)},
                {"verdict", engine::verdict_name(row.verdict)},
                {"worst_use", number_to_json(row.worst_use, form)},
                {"findings", findings_to_json(row.findings, survey, tables, form)}};
    }
    [[nodiscard]] Json optional_ranked(const std::optional<engine::RankedCandidate>& row) const {
        return row ? ranked(*row) : Json(nullptr);
    }
    [[nodiscard]] Json crossings(const std::vector<engine::CrossingOutcome>& rows) const {
        Json out = Json::array();
        for (const engine::CrossingOutcome& row : rows) {
            out.push_back({{"crossing", survey.crossings[row.crossing].id.text()},
                           {"outcome", engine::outcome_name(row.outcome)},
                           {"findings", findings_to_json(row.findings, survey, tables, form)}});
        }
        return out;
    }
    [[nodiscard]] Json cart(const engine::CartAdvice& advice) const {
        Json list = Json::array();
        for (const engine::RankedCandidate& row : advice.ranked) list.push_back(ranked(row));
        Json down = Json::array();
        for (const engine::TurnedDown& row : advice.turned_down) {
            down.push_back({{"candidate", candidate_to_json(row.candidate, catalogue)},
                            {"first_failing", finding_to_json(row.first_failing, survey, tables, form)}});
        }
        Json out{{"cart", survey.carts[advice.cart].id.text()},
                 {"nothing_holds", advice.nothing_holds},
                 {"candidates", advice.candidates_total},
                 {"turned_down_total", advice.turned_down_total},
                 {"ranked", std::move(list)},
                 {"runner_up", optional_ranked(advice.runner_up)},
                 {"nearest", optional_ranked(advice.nearest)},
                 {"turned_down", std::move(down)},
                 {"present", optional_ranked(advice.present)},
                 {"crossings", crossings(advice.crossings)},
                 {"crossings_present", crossings(advice.crossings_present)},
                 {"not_read", paths_to_json(advice.not_read)}};
        if (advice.would_hold) {
            out["would_hold"] = would_hold_to_json(*advice.would_hold, survey, catalogue, tables, form);
        }
        if (advice.read_again) out["read_again"] = read_again_to_json(*advice.read_again, catalogue, form);
        if (advice.conditions) out["conditions"] = conditions_to_json(*advice.conditions, survey, form);
        return out;
    }
};

}  // namespace

Json number_to_json(double value, NumberForm form) {
    const std::string text = fmt::format("{:.9g}", value);
    if (form == NumberForm::decimal_text) return text;
    return std::strtod(text.c_str(), nullptr);
}

Json amount_to_json(const engine::Amount& amount, NumberForm form) {
    return Json{{amount_key(amount.kind), number_to_json(amount_in_key_unit(amount), form)}};
}

Json place_to_json(const engine::Place& place, const engine::Survey& survey) {
    switch (place.kind) {
        case engine::PlaceKind::room:
            return {{"room", survey.rooms[place.index].id.text()}};
        case engine::PlaceKind::crossing:
            return {{"crossing", survey.crossings[place.index].id.text()}};
        case engine::PlaceKind::washing:
            return {{"washing", survey.washings[place.index].id.text()}};
        case engine::PlaceKind::none:
            break;
    }
    return nullptr;
}

Json candidate_to_json(const engine::Candidate& candidate, const engine::Catalogue& catalogue) {
    return {{"key", engine::candidate_key(catalogue, candidate)},
            {"wheel", catalogue.wheels[candidate.wheel].id.text()},
            {"bearing", catalogue.bearings[candidate.bearing].id.text()},
            {"rig", catalogue.rigs[candidate.rig].id.text()},
            {"preparation", preparation_name(candidate.preparation)}};
}

Json finding_to_json(const Finding& finding, const engine::Survey& survey, const engine::Tables& tables,
                     NumberForm form) {
    Json out{{"check", engine::check_name(finding.check)},
             {"outcome", engine::outcome_name(finding.outcome)},
             {"statement", engine::statement_key(finding.statement)},
             {"place", place_to_json(finding.place, survey)},
             {"turns_on", finding.turns_on},
             {"conflict", finding.conflict},
             {"cross_rolling", finding.needs_rolling},
             {"assess_team", finding.needs_team},
             {"formula", finding.formula},
             {"readings", paths_to_json(finding.drivers)},
             {"missing", paths_to_json(finding.missing)},
             {"missing_maker_figure", false},
             {"sources", citations_to_json(finding, tables)}};
    for (const engine::ReadingRef& ref : finding.missing) {
        if (ref.field == engine::Field::none) out["missing_maker_figure"] = true;
    }
    if (finding.has_use) {
        out["use"] = number_to_json(finding.use, form);
        out["demand"] = amount_to_json(finding.demand, form);
        out["capacity"] = amount_to_json(finding.capacity, form);
    }
    if (finding.turns_on) {
        out["outcome_nominal"] = engine::outcome_name(finding.outcome_nominal);
        if (finding.turns_on_reading.field != engine::Field::none) {
            out["turns_on_reading"] = engine::reading_path(finding.turns_on_reading);
        }
    }
    Json numbers = Json::array();
    for (std::size_t i = 0; i < finding.number_count; ++i) numbers.push_back(amount_to_json(finding.numbers[i], form));
    out["numbers"] = std::move(numbers);
    Json assumptions = Json::array();
    for (const engine::Assumption assumption : finding.assumptions) {
        assumptions.push_back(engine::assumption_key(assumption));
    }
    out["assumptions"] = std::move(assumptions);
    return out;
}

Json advice_to_json(const engine::Advice& advice, const engine::Survey& survey, const engine::Catalogue& catalogue,
                    const engine::Tables& tables, NumberForm form) {
    const Writer writer{survey, catalogue, tables, form};
    Json carts = Json::array();
    for (const engine::CartAdvice& cart : advice.carts) carts.push_back(writer.cart(cart));
    Json out{{"format", "sillwalk-advice/1"},
             {"engine", advice.engine_version},
             {"survey", advice.survey.text()},
             {"revision", advice.revision},
             {"catalogue_edition", advice.catalogue_edition},
             {"tables_edition", advice.tables_edition},
             {"carts", std::move(carts)}};
    if (advice.site) out["site"] = site_to_json(*advice.site, survey, catalogue, form);
    return out;
}

}  // namespace sillwalk::app
