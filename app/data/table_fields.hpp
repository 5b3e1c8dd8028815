#pragma once
/// Reads figures with their citations out of the table files. A figure is an object:
///   {"value": 1410, "low": 1410, "high": 1420, "source": "key", "locator": "Table 1.8", "status": "read",
///    "validity": "dry", "conflicting": [{"value": …, "source": …, "locator": …, "status": …}]}
/// The unit is in the name of the member that holds it. Every error is gathered with its path.

#include "app/data/json_reader.hpp"
#include "engine/model/tables.hpp"

#include <map>
#include <tuple>

namespace sillwalk::app {

struct Range {
    double low = 0, high = 0;
};

// From the number in the file to the quantity.
template <class Q>
[[nodiscard]] Q si(double value) {
    return Q::from_si(value);
}
[[nodiscard]] inline double plain(double value) {
    return value;
}
[[nodiscard]] inline engine::Temperature degrees_celsius(double value) {
    return engine::celsius(value);
}
[[nodiscard]] inline engine::Temperature degrees_fahrenheit(double value) {
    return engine::fahrenheit(value);
}
[[nodiscard]] inline engine::Duration days(double value) {
    return value * engine::day;
}
[[nodiscard]] inline engine::Duration minutes(double value) {
    return value * engine::minute;
}
[[nodiscard]] inline engine::Slope tangent(double value) {
    return engine::Slope::from_tangent(value);
}

class TableFields {
public:
    /// Appends to `tables.citations`; index 0 is "no source given".
    TableFields(engine::Tables& tables, JsonErrors& errors);

    /// The members source, locator and status of `row`, as one citation. An unknown source key is an error.
    [[nodiscard]] engine::CitationId citation(JsonObject& row);

    /// The figure at `key`. Its value, low, high and conflicting values must lie in `range`, and low <= value <= high.
    template <class Make>
    [[nodiscard]] auto figure(JsonObject& row, std::string_view key, Range range, Make make, Need need = Need::required)
        -> std::optional<engine::Figure<decltype(make(0.0))>> {
        const std::optional<RawFigure> raw = raw_figure(row, key, range, need);
        if (!raw) return std::nullopt;
        engine::Figure<decltype(make(0.0))> out;
        out.value = make(raw->value);
        if (raw->low) out.low = make(*raw->low);
        if (raw->high) out.high = make(*raw->high);
        out.citation = raw->citation;
        out.validity = raw->validity;
        for (const auto& [value, citation] : raw->conflicting) out.conflicting.push_back({make(value), citation});
        return out;
    }
    /// A figure that must be there; a default one and an error where it is not.
    template <class Make>
    [[nodiscard]] auto needed(JsonObject& row, std::string_view key, Range range, Make make)
        -> engine::Figure<decltype(make(0.0))> {
        return figure(row, key, range, make).value_or(engine::Figure<decltype(make(0.0))>{});
    }

    [[nodiscard]] bool knows_source(std::string_view key) const;
    [[nodiscard]] JsonErrors& errors() { return *errors_; }

private:
    struct RawFigure {
        double value = 0;
        std::optional<double> low, high;
        engine::CitationId citation = 0;
        std::string validity;
        std::vector<std::pair<double, engine::CitationId>> conflicting;
    };
    std::optional<RawFigure> raw_figure(JsonObject& row, std::string_view key, Range range, Need need);

    engine::Tables* tables_;
    JsonErrors* errors_;
    std::map<std::tuple<std::string, std::string, engine::SourceStatus>, engine::CitationId> known_;
};

/// One file of rows: calls f(object, index) for each row, then names the members that nobody asked for.
void each_row(JsonObject& file, std::string_view key, JsonErrors& errors,
              const std::function<void(JsonObject&, std::size_t)>& f);

/// The id of a row, which must be lower-case words joined by hyphens and stand after the id before it.
[[nodiscard]] std::string rising_id(JsonObject& row, std::string_view key, std::string& before);

}  // namespace sillwalk::app
