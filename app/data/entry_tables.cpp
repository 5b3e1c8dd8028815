#include "app/data/entry_tables.hpp"

#include "app/data/json_reader.hpp"
#include "app/text/explain.hpp"
#include "assets/embedded.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace sillwalk::app {

using engine::Error;
using engine::Field;
using engine::Known;

namespace {

/// The unit at the end of a key, and what one of it is in SI.
struct KeyUnit {
    std::string_view suffix;
    double si, offset;
};
constexpr std::array<KeyUnit, 9> key_units = {{
    {"mm", 1e-3, 0},
    {"kg", 1, 0},
    {"degc", 1, 273.15},
    {"k", 1, 0},
    {"percent", 0.01, 0},
    {"min", 60, 0},
    {"m_per_s", 1, 0},
    {"per_day", 1.0 / 86400.0, 0},
    {"count", 1, 0},
}};
constexpr double widest = 1e9;

/// The member `name_<unit>`, in SI.
std::optional<double> with_unit(JsonObject& row, const std::string& name) {
    for (const KeyUnit& unit : key_units) {
        const std::string key = name + "_" + std::string(unit.suffix);
        if (!row.has(key)) continue;
        const auto value = row.number(key, -widest, widest);
        if (!value) return std::nullopt;
        return *value * unit.si + unit.offset;
    }
    return std::nullopt;
}

double needed(JsonObject& row, const std::string& name) {
    const auto value = with_unit(row, name);
    if (!value) row.error(name, "missing, with its unit in the key (_mm, _kg, _degc, _percent, _min …)");
    return value.value_or(0);
}

std::optional<Field> field_of(const std::string& name) {
    for (int i = 1; i <= static_cast<int>(engine::last_field); ++i) {
        const auto field = static_cast<Field>(i);
        if (field_key(field) == "reading." + name) return field;
    }
    return std::nullopt;
}

Method read_method(JsonObject row) {
    Method method;
    method.order = static_cast<int>(row.integer("order", 1, 1000).value_or(0));
    method.id = row.text("id").value_or("");
    method.name = row.text("name").value_or("");
    method.kinds = row.texts("kinds");
    method.units = row.texts("units", Need::optional);
    method.known =
        row.word<Known>("known", {{"measured", Known::measured}, {"by_eye", Known::by_eye}, {"told", Known::told}})
            .value_or(Known::measured);
    if (row.has("tolerance_share_percent")) {
        method.tolerance_share = row.number("tolerance_share_percent", 0, 100).value_or(0) / 100;
    } else {
        method.tolerance_si = needed(row, "tolerance");
    }
    method.resolution_si = with_unit(row, "resolution").value_or(0);
    (void)row.text("source");
    (void)row.text("locator");
    row.done();
    return method;
}

Plausible read_plausible(JsonObject row) {
    Plausible plausible;
    const std::string name = row.text("field").value_or("");
    if (const auto field = field_of(name)) {
        plausible.field = *field;
    } else {
        row.error("field", "'" + name + "' is no field of a survey");
    }
    plausible.name_has = row.texts("name_has", Need::optional);
    plausible.typical_low = needed(row, "typical_low");
    plausible.typical_high = needed(row, "typical_high");
    plausible.hard_low = needed(row, "hard_low");
    plausible.hard_high = needed(row, "hard_high");
    plausible.zero_is_typical = row.boolean("zero_is_typical", Need::optional).value_or(false);
    (void)row.text("source");
    (void)row.text("locator");
    const bool in_order = plausible.hard_low <= plausible.typical_low &&
                          plausible.typical_low < plausible.typical_high &&
                          plausible.typical_high <= plausible.hard_high;
    if (!in_order) row.error("typical_low", "the four limits must rise: hard, typical, typical, hard");
    row.done();
    return plausible;
}

template <class Row>
std::vector<Row> read_rows(std::string_view file, std::string_view text, Row (*read)(JsonObject),
                           std::vector<Error>& errors) {
    std::vector<Row> rows;
    JsonErrors found;
    if (const auto document = parse_json(text, found)) {
        JsonObject top(*document, "", found);
        (void)top.text("edition");
        top.each("rows",
                 [&](const Json& row, const std::string& path) { rows.push_back(read(JsonObject(row, path, found))); });
        top.done();
    }
    for (Error& error : found) {
        error.where = std::string(file) + error.where;
        errors.push_back(std::move(error));
    }
    return rows;
}

}  // namespace

EntryTables read_entry_tables(std::string_view methods, std::string_view plausible, std::vector<Error>& errors) {
    EntryTables tables;
    tables.methods = read_rows<Method>("tables/methods.json", methods, read_method, errors);
    std::sort(tables.methods.begin(), tables.methods.end(),
              [](const Method& a, const Method& b) { return a.order < b.order; });
    tables.plausible = read_rows<Plausible>("tables/plausible.json", plausible, read_plausible, errors);
    return tables;
}

EntryTables load_entry_tables(std::vector<Error>& errors) {
    return read_entry_tables(assets::embedded("tables/methods.json").value_or(""),
                             assets::embedded("tables/plausible.json").value_or(""), errors);
}

}  // namespace sillwalk::app
