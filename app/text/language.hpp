#pragma once
/// Every word that a person reads comes from one table per language: assets/text/en.json, es.json. Keys are dotted
/// names.

#include "engine/base/name_index.hpp"
#include "engine/base/result.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::app {

class Language {
public:
    /// code: "en" or "es". not_found for another.
    [[nodiscard]] static engine::Result<Language> load(std::string_view code);
    [[nodiscard]] static engine::Result<Language> from_text(std::string_view code, std::string_view json);

    [[nodiscard]] const std::string& code() const { return code_; }
    [[nodiscard]] bool has(std::string_view key) const { return find(key) != nullptr; }
    /// The text, or the key in angle brackets where there is none: a hole must be seen, not crash a visit.
    [[nodiscard]] std::string get(std::string_view key) const;
    /// The text with {0}, {1} … replaced.
    [[nodiscard]] std::string fill(std::string_view key, const std::vector<std::string>& arguments) const;
    /// Keys and texts in the order of the keys.
    [[nodiscard]] const std::vector<std::pair<std::string, std::string>>& words() const { return words_; }

private:
    [[nodiscard]] const std::string* find(std::string_view key) const;

    std::string code_;
    std::vector<std::pair<std::string, std::string>> words_;
    engine::NameIndex by_key_;
};

/// Replaces {0}, {1} … in a template; an argument that is not there leaves "?".
[[nodiscard]] std::string fill_template(std::string_view text, const std::vector<std::string>& arguments);

}  // namespace sillwalk::app
