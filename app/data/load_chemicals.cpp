#include "app/data/table_loaders.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace sillwalk::app {

using engine::ChemicalLevel;
using engine::ChemicalRating;
using engine::ChemicalReading;
using engine::ChemicalRow;

namespace {

ChemicalLevel read_level(JsonObject& row) {
    return row
        .word<ChemicalLevel>("level", {{"suited", ChemicalLevel::suited},
                                       {"watch", ChemicalLevel::watch},
                                       {"short_contact", ChemicalLevel::short_contact},
                                       {"unfit", ChemicalLevel::unfit}})
        .value_or(ChemicalLevel::unfit);
}

ChemicalReading read_reading(const Json& element, const std::string& path, TableFields& fields) {
    JsonObject row(element, path, fields.errors());
    ChemicalReading reading;
    reading.source = row.text("source").value_or("");
    if (!reading.source.empty() && !fields.knows_source(reading.source)) {
        row.error("source", "'" + reading.source + "' is no key of sources.json");
    }
    reading.their_value = row.text("value").value_or("");
    reading.their_scale = row.text("scale").value_or("");
    reading.strength_text = row.text("strength", Need::optional).value_or("");
    reading.temperature_text = row.text("temperature", Need::optional).value_or("");
    reading.note = row.text("note", Need::optional).value_or("");
    reading.level = read_level(row);
    const auto fit = row.word<const char*>(
        "fit",
        {{"direct", "direct"}, {"near", "near"}, {"stronger", "stronger"}, {"milder", "milder"}, {"class", "class"}});
    reading.fit = fit.value_or("");
    row.done();
    return reading;
}

ChemicalRating read_rating(JsonObject& row, TableFields& fields) {
    ChemicalRating rating;
    rating.level = read_level(row);
    const auto status = row.word<const char*>(
        "rating_status",
        {{"two sources", "two sources"}, {"read", "read"}, {"inferred", "inferred"}, {"memory", "memory"}});
    rating.status = status.value_or("");
    rating.decided_by = row.text("decided_by").value_or("");
    rating.disagreement = row.text("disagreement", Need::optional).value_or("");
    rating.note = row.text("note", Need::optional).value_or("");
    rating.evidence = row.text("evidence", Need::optional).value_or("");
    rating.citation = fields.citation(row);
    row.each(
        "readings",
        [&](const Json& element, const std::string& path) {
            rating.readings.push_back(read_reading(element, path, fields));
        },
        Need::optional);
    row.done();
    return rating;
}

ChemicalRow read_row(JsonObject& row, TableFields& fields, const std::vector<std::string>& columns) {
    ChemicalRow out;
    out.id = row.text("id").value_or("");
    out.agent = row.text("agent").value_or("");
    out.name = row.text("name").value_or("");
    out.cas = row.text("cas", Need::optional).value_or("");
    out.strength_text = row.text("strength_text").value_or("");
    out.strength = row.number("strength_share", 1e-9, 1.0, Need::optional);
    out.temperature_max = engine::celsius(row.number("temperature_max_c", -100, 300).value_or(0.0));
    out.ratings.resize(columns.size());
    std::optional<JsonObject> ratings = row.object("ratings");
    if (!ratings) return out;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        std::optional<JsonObject> rating = ratings->object(columns[i], Need::optional);
        if (rating) out.ratings[i] = read_rating(*rating, fields);
    }
    ratings->done();
    return out;
}

/// Rows stand by agent, then by rising strength; a row that holds for any strength is the only one of its agent.
void check_order(JsonObject& row, const ChemicalRow& before, const ChemicalRow& now) {
    if (now.agent < before.agent) row.error("agent", "'" + now.agent + "' must stand before '" + before.agent + "'");
    if (now.agent != before.agent) return;
    if (!before.strength || !now.strength) {
        row.error("strength_share", "missing; '" + now.agent + "' has several rows");
    } else if (*now.strength <= *before.strength) {
        row.error("strength_share", fmt::format("{} does not rise above {}", *now.strength, *before.strength));
    }
}

}  // namespace

void load_chemicals(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    engine::Chemicals& chemicals = tables.chemicals;
    chemicals.materials = file.texts("columns");
    if (std::set<std::string>(chemicals.materials.begin(), chemicals.materials.end()).size() !=
        chemicals.materials.size()) {
        file.error("columns", "a column stands twice");
    }
    std::set<std::string> ids;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        ChemicalRow next = read_row(row, fields, chemicals.materials);
        if (!next.id.empty() && !ids.insert(next.id).second) row.error("id", "'" + next.id + "' stands twice");
        if (!chemicals.rows.empty()) check_order(row, chemicals.rows.back(), next);
        chemicals.rows.push_back(std::move(next));
    });
}

}  // namespace sillwalk::app
