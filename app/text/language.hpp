#pragma once
/// Every word that a person reads comes from one table per language: assets/text/en.json, es.json. Keys are dotted
/// names.

#include "engine/base/result.hpp"

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

class Language {
public:
    /// code: "en" or "es". not_found for another.
    [[nodiscard]] static engine::Result<Language> load(std::string_view code);
    [[nodiscard]] static engine::Result<Language> from_text(std::string_view code, std::string_view json);

    [[nodiscard]] const std::string& code() const { return code_; }
    [[nodiscard]] bool has(std::string_view key) const { return words_.find(key) != words_.end(); }
    /// The text, or the key in angle brackets where there is none: a hole must be seen, not crash a visit.
    [[nodiscard]] std::string get(std::string_view key) const;
    /// The text with {0}, {1} … replaced.
    [[nodiscard]] std::string fill(std::string_view key, const std::vector<std::string>& arguments) const;
    [[nodiscard]] const std::map<std::string, std::string, std::less<>>& words() const { return words_; }

private:
    std::string code_;
    std::map<std::string, std::string, std::less<>> words_;
};

/// Replaces {0}, {1} … in a template; an argument that is not there leaves "?".
[[nodiscard]] std::string fill_template(std::string_view text, const std::vector<std::string>& arguments);

}  // namespace sillwalk::app
