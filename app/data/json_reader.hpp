#pragma once
/// Typed, checked access to parsed JSON that gathers every error with its JSON path instead of stopping at the first.
///   JsonErrors errors;
///   auto document = parse_json(text, errors);             // bad text: one error, empty optional
///   JsonObject row(*document, "", errors);                 // not an object: one error, every field then absent
///   double k = row.number("conductivity_w_per_m_k", 0.0, 1000.0).value_or(0.0);
///   row.done();                                            // names every member that nobody asked for
/// Nothing throws. A wrong type, a missing required member, a value out of range each add one error.

#include "engine/base/result.hpp"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::app {

using Json = nlohmann::json;
using JsonErrors = std::vector<engine::Error>;

enum class Need { required, optional };

/// Parses UTF-8 JSON, refusing duplicate keys and nesting deeper than 64. Errors name line and column where known.
[[nodiscard]] std::optional<Json> parse_json(std::string_view text, JsonErrors& errors);

/// "path/key" with RFC 6901 escapes.
[[nodiscard]] std::string json_path(std::string_view path, std::string_view key);
[[nodiscard]] std::string json_path(std::string_view path, std::size_t index);

class JsonObject {
public:
    JsonObject(const Json& value, std::string path, JsonErrors& errors);

    [[nodiscard]] bool has(std::string_view key) const;
    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] std::string path_of(std::string_view key) const { return json_path(path_, key); }

    // Absent and optional: empty, no error. Absent and required, wrong type or out of range: empty, one error.
    [[nodiscard]] std::optional<double> number(std::string_view key, double low, double high,
                                               Need need = Need::required);
    [[nodiscard]] std::optional<std::int64_t> integer(std::string_view key, std::int64_t low, std::int64_t high,
                                                      Need need = Need::required);
    [[nodiscard]] std::optional<bool> boolean(std::string_view key, Need need = Need::required);
    [[nodiscard]] std::optional<std::string> text(std::string_view key, Need need = Need::required);
    [[nodiscard]] std::optional<JsonObject> object(std::string_view key, Need need = Need::required);
    /// The raw member; it counts as asked for.
    [[nodiscard]] const Json* member(std::string_view key, Need need = Need::required);
    /// Calls f(element, path) for each element of an array.
    void each(std::string_view key, const std::function<void(const Json&, const std::string&)>& f,
              Need need = Need::required);
    [[nodiscard]] std::vector<std::string> texts(std::string_view key, Need need = Need::required);
    [[nodiscard]] std::vector<double> numbers(std::string_view key, double low, double high,
                                              Need need = Need::required);

    /// One of a closed list of words. The error lists the words.
    template <class E>
    [[nodiscard]] std::optional<E> word(std::string_view key,
                                        std::initializer_list<std::pair<std::string_view, E>> words,
                                        Need need = Need::required) {
        const std::optional<std::string> found = text(key, need);
        if (!found) return std::nullopt;
        std::string right;
        for (const auto& [name, value] : words) {
            if (*found == name) return value;
            right += right.empty() ? "" : ", ";
            right += name;
        }
        error(key, "'" + *found + "' is not one of: " + right);
        return std::nullopt;
    }

    void error(std::string_view key, std::string message);
    /// Adds an error for each member that was never asked for.
    void done();

private:
    const Json* find(std::string_view key, Need need);

    const Json* value_;  ///< null where the value was no object
    std::string path_;
    JsonErrors* errors_;
    std::set<std::string, std::less<>> asked_;
};

}  // namespace sillwalk::app
