#include "app/bundle/sampling_json.hpp"

#include "app/text/read_again.hpp"

namespace sillwalk::app {

using engine::AnswerRange;
using engine::FewestKinds;
using engine::KindSet;
using engine::ReadAgain;
using engine::ReadingDoubt;
using engine::ServedCart;

namespace {

/// A frequency has no amount of its own: it is a number per second.
Json value_to_json(engine::Field field, double si, NumberForm form) {
    return amount_to_json(reading_amount(field, si).value_or(engine::Amount{si, engine::Kind::number}), form);
}

Json stretch_to_json(const AnswerRange& stretch, engine::Field field, const engine::Catalogue& catalogue,
                     NumberForm form) {
    const engine::Headline& answer = stretch.answer;
    Json out{{"from", value_to_json(field, stretch.from_si, form)},
             {"to", value_to_json(field, stretch.to_si, form)},
             {"nothing_holds", answer.nothing_holds},
             {"candidate", nullptr},
             {"verdict", nullptr},
             {"differs", stretch.differs}};
    if (answer.nothing_holds) return out;
    out["candidate"] = candidate_to_json(answer.candidate, catalogue);
    out["verdict"] = engine::verdict_name(answer.verdict);
    return out;
}

Json served_to_json(const ServedCart& row, const engine::Survey& survey, const engine::Catalogue& catalogue,
                    NumberForm form) {
    Json out{{"cart", survey.carts[row.cart].id.text()},
             {"candidate", nullptr},
             {"verdict", nullptr},
             {"worst_use", nullptr},
             {"own_verdict", engine::verdict_name(row.own_verdict)},
             {"own_use", number_to_json(row.own_use, form)}};
    if (!row.served) return out;
    out["candidate"] = candidate_to_json(row.candidate, catalogue);
    out["verdict"] = engine::verdict_name(row.verdict);
    out["worst_use"] = number_to_json(row.worst_use, form);
    return out;
}

template <class Rows>
Json set_to_json(const KindSet& set, const Rows& rows, const engine::Survey& survey, const engine::Catalogue& catalogue,
                 NumberForm form) {
    Json kinds = Json::array(), carts = Json::array();
    for (const std::uint32_t kind : set.kinds) kinds.push_back(rows[kind].id.text());
    for (const ServedCart& row : set.carts) carts.push_back(served_to_json(row, survey, catalogue, form));
    return {{"kinds", std::move(kinds)},
            {"unserved", set.unserved},
            {"verdict_steps", set.verdict_steps},
            {"use_added", number_to_json(set.use_added, form)},
            {"carts", std::move(carts)}};
}

template <class Rows>
Json fewest_to_json(const FewestKinds& fewest, const Rows& rows, const engine::Survey& survey,
                    const engine::Catalogue& catalogue, NumberForm form) {
    Json fewer = Json::array();
    for (const KindSet& set : fewest.fewer) fewer.push_back(set_to_json(set, rows, survey, catalogue, form));
    return {{"own", fewest.own},
            {"fewest", set_to_json(fewest.fewest, rows, survey, catalogue, form)},
            {"fewer", std::move(fewer)}};
}

}  // namespace

Json read_again_to_json(const ReadAgain& again, const engine::Catalogue& catalogue, NumberForm form) {
    Json others = Json::array(), readings = Json::array(), missing = Json::array(), not_sampled = Json::array();
    for (const engine::OtherChoice& row : again.others) {
        others.push_back(
            {{"candidate", candidate_to_json(row.candidate, catalogue)}, {"share", number_to_json(row.share, form)}});
    }
    for (const ReadingDoubt& row : again.readings) {
        readings.push_back({{"reading", engine::reading_path(row.reading)},
                            {"missing", row.missing},
                            {"from", value_to_json(row.reading.field, row.low_si, form)},
                            {"to", value_to_json(row.reading.field, row.high_si, form)},
                            {"share", number_to_json(row.share, form)}});
    }
    for (const engine::MissingReading& row : again.missing) {
        Json ranges = Json::array();
        for (const AnswerRange& stretch : row.ranges) {
            ranges.push_back(stretch_to_json(stretch, row.reading.field, catalogue, form));
        }
        missing.push_back({{"reading", engine::reading_path(row.reading)}, {"ranges", std::move(ranges)}});
    }
    for (const engine::ReadingRef& reading : again.not_sampled) not_sampled.push_back(engine::reading_path(reading));
    return {{"draws", again.draws},
            {"seed", std::to_string(again.seed)},
            {"stays_first", number_to_json(again.stays_first, form)},
            {"standard_error", number_to_json(again.standard_error, form)},
            {"holds", number_to_json(again.holds, form)},
            {"nothing_holds", number_to_json(again.nothing_holds, form)},
            {"others", std::move(others)},
            {"readings", std::move(readings)},
            {"least_share", number_to_json(again.least_share, form)},
            {"together", number_to_json(again.together, form)},
            {"missing", std::move(missing)},
            {"not_sampled", std::move(not_sampled)}};
}

Json site_to_json(const engine::SiteAdvice& site, const engine::Survey& survey, const engine::Catalogue& catalogue,
                  NumberForm form) {
    Json nothing = Json::array();
    for (const std::uint16_t cart : site.nothing_holds) nothing.push_back(survey.carts[cart].id.text());
    return {{"nothing_holds", std::move(nothing)},
            {"wheels", fewest_to_json(site.wheels, catalogue.wheels, survey, catalogue, form)},
            {"bearings", fewest_to_json(site.bearings, catalogue.bearings, survey, catalogue, form)}};
}

}  // namespace sillwalk::app
