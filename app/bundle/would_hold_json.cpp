#include "app/bundle/would_hold_json.hpp"

namespace sillwalk::app {

namespace {

struct Writer {
    const engine::Survey& survey;
    const engine::Catalogue& catalogue;
    const engine::Tables& tables;
    NumberForm form;

    [[nodiscard]] Json limit(const engine::SolvedLimit& limit) const {
        Json out{{"driver", engine::driver_name(limit.driver)},
                 {"bound", limit.bound == engine::Bound::at_most ? "at most" : "at least"},
                 {"place", place_to_json(limit.place, survey)},
                 {"value", amount_to_json(limit.value, form)},
                 {"present", amount_to_json(limit.present, form)},
                 {"whole_check", limit.whole_check},
                 {"holds_at", place_to_json(limit.holds_at, survey)},
                 {"then", engine::verdict_name(limit.then)},
                 {"reachable", limit.reachable}};
        if (limit.reading.field != engine::Field::none) out["reading"] = engine::reading_path(limit.reading);
        if (limit.beside) out["beside"] = amount_to_json(*limit.beside, form);
        if (limit.next_size) {
            out["next_size"] = {
                {"diameter", amount_to_json({limit.next_size->diameter.si(), engine::Kind::length}, form)},
                {"candidate", candidate_to_json(limit.next_size->candidate, catalogue)},
                {"holds", limit.next_size->holds}};
        }
        return out;
    }
    [[nodiscard]] Json check(const engine::CheckLimits& check) const {
        Json limits = Json::array();
        for (const engine::SolvedLimit& row : check.limits) limits.push_back(limit(row));
        return {{"finding", finding_to_json(check.finding, survey, tables, form)},
                {"single_change", check.single_change},
                {"waits_for_readings", check.waits_for_readings},
                {"one_person", check.one_person},
                {"limits", std::move(limits)}};
    }
};

}  // namespace

Json would_hold_to_json(const std::vector<engine::FamilyLimits>& families, const engine::Survey& survey,
                        const engine::Catalogue& catalogue, const engine::Tables& tables, NumberForm form) {
    const Writer writer{survey, catalogue, tables, form};
    Json out = Json::array();
    for (const engine::FamilyLimits& family : families) {
        Json checks = Json::array();
        for (const engine::CheckLimits& check : family.checks) checks.push_back(writer.check(check));
        out.push_back({{"candidate", candidate_to_json(family.candidate, catalogue)}, {"checks", std::move(checks)}});
    }
    return out;
}

Json conditions_to_json(const std::vector<engine::Condition>& conditions, const engine::Survey& survey,
                        NumberForm form) {
    Json out = Json::array();
    for (const engine::Condition& condition : conditions) {
        Json row{{"condition", engine::condition_key(condition.kind)}};
        if (condition.place.kind != engine::PlaceKind::none) row["place"] = place_to_json(condition.place, survey);
        if (engine::names_check(condition.kind)) row["check"] = engine::check_name(condition.check);
        if (condition.reading.field != engine::Field::none) row["reading"] = engine::reading_path(condition.reading);
        Json amounts = Json::array();
        for (const engine::Amount& amount : condition.amounts) amounts.push_back(amount_to_json(amount, form));
        row["amounts"] = std::move(amounts);
        out.push_back(std::move(row));
    }
    return out;
}

}  // namespace sillwalk::app
