#include "app/data/table_fields.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace sillwalk::app {

using engine::Citation;
using engine::CitationId;
using engine::SourceStatus;

namespace {

bool kebab_case(const std::string& id) {
    const bool allowed = std::all_of(
        id.begin(), id.end(), [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
    return allowed && !id.empty() && id.front() != '-' && id.back() != '-';
}

}  // namespace

TableFields::TableFields(engine::Tables& tables, JsonErrors& errors) : tables_(&tables), errors_(&errors) {
    if (tables_->citations.empty()) tables_->citations.emplace_back();
}

bool TableFields::knows_source(std::string_view key) const {
    return std::any_of(tables_->sources.begin(), tables_->sources.end(),
                       [&](const engine::Source& source) { return source.key == key; });
}

CitationId TableFields::citation(JsonObject& row) {
    const auto source = row.text("source");
    const auto locator = row.text("locator");
    const auto status = row.word<SourceStatus>("status", {{"read", SourceStatus::read},
                                                          {"second_hand", SourceStatus::second_hand},
                                                          {"memory", SourceStatus::memory},
                                                          {"practice", SourceStatus::practice},
                                                          {"derived", SourceStatus::derived}});
    if (source && !knows_source(*source)) row.error("source", "'" + *source + "' is no key of sources.json");
    if (locator && locator->empty()) row.error("locator", "empty; say where in the source");
    if (!source || !locator || !status) return 0;
    const auto next = static_cast<CitationId>(tables_->citations.size());
    const auto [found, is_new] = known_.try_emplace({*source, *locator, *status}, next);
    if (is_new) tables_->citations.push_back(Citation{*source, *locator, *status});
    return found->second;
}

std::optional<TableFields::RawFigure> TableFields::raw_figure(JsonObject& row, std::string_view key, Range range,
                                                              Need need) {
    std::optional<JsonObject> object = row.object(key, need);
    if (!object) return std::nullopt;
    RawFigure raw;
    const auto value = object->number("value", range.low, range.high);
    raw.low = object->number("low", range.low, range.high, Need::optional);
    raw.high = object->number("high", range.low, range.high, Need::optional);
    raw.validity = object->text("validity", Need::optional).value_or("");
    raw.citation = citation(*object);
    object->each(
        "conflicting",
        [&](const Json& element, const std::string& path) {
            JsonObject other(element, path, *errors_);
            const auto figure = other.number("value", range.low, range.high);
            const CitationId from = citation(other);
            other.done();
            if (figure) raw.conflicting.emplace_back(*figure, from);
        },
        Need::optional);
    object->done();
    if (!value) return std::nullopt;
    raw.value = *value;
    if (raw.low && *raw.low > *value) object->error("low", fmt::format("{} is above the value {}", *raw.low, *value));
    if (raw.high && *raw.high < *value) {
        object->error("high", fmt::format("{} is below the value {}", *raw.high, *value));
    }
    return raw;
}

void each_row(JsonObject& file, std::string_view key, JsonErrors& errors,
              const std::function<void(JsonObject&, std::size_t)>& f) {
    std::size_t index = 0;
    file.each(key, [&](const Json& element, const std::string& path) {
        JsonObject row(element, path, errors);
        f(row, index++);
        row.done();
    });
}

std::string rising_id(JsonObject& row, std::string_view key, std::string& before) {
    const std::string id = row.text(key).value_or("");
    if (id.empty()) return id;
    if (!kebab_case(id)) row.error(key, "'" + id + "' is not lower-case words joined by hyphens");
    if (id == before) {
        row.error(key, "'" + id + "' stands twice");
    } else if (id < before) {
        row.error(key, "'" + id + "' must stand before '" + before + "'");
    }
    before = id;
    return id;
}

}  // namespace sillwalk::app
