#include "app/text/language.hpp"

#include "app/data/json_reader.hpp"
#include "assets/embedded.hpp"

namespace sillwalk::app {

engine::Result<Language> Language::load(std::string_view code) {
    const auto bytes = assets::embedded("text/" + std::string(code) + ".json");
    if (!bytes) return engine::fail(engine::ErrorCode::not_found, "no words in this language", std::string(code));
    return from_text(code, *bytes);
}

engine::Result<Language> Language::from_text(std::string_view code, std::string_view json) {
    JsonErrors errors;
    const auto document = parse_json(json, errors);
    if (!document || !document->is_object()) {
        return engine::bad_input("the words must be one object of texts", std::string(code));
    }
    Language language;
    language.code_ = code;
    for (const auto& [key, value] : document->items()) {
        if (!value.is_string()) return engine::bad_input("is not text", key);
        language.by_key_.add(key, language.words_.size());
        language.words_.emplace_back(key, value.get<std::string>());
    }
    return language;
}

const std::string* Language::find(std::string_view key) const {
    const std::size_t found =
        by_key_.find(key, [this](std::size_t at) -> std::string_view { return words_[at].first; });
    return found == engine::NameIndex::none ? nullptr : &words_[found].second;
}

std::string Language::get(std::string_view key) const {
    const std::string* found = find(key);
    return found ? *found : "<" + std::string(key) + ">";
}

std::string Language::fill(std::string_view key, const std::vector<std::string>& arguments) const {
    const std::string* found = find(key);
    return found ? fill_template(*found, arguments) : get(key);
}

std::string fill_template(std::string_view text, const std::vector<std::string>& arguments) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool is_slot =
            text[i] == '{' && i + 2 < text.size() && text[i + 2] == '}' && text[i + 1] >= '0' && text[i + 1] <= '9';
        if (!is_slot) {
            out += text[i];
            continue;
        }
        const auto slot = static_cast<std::size_t>(text[i + 1] - '0');
        out += slot < arguments.size() ? arguments[slot] : "?";
        i += 2;
    }
    return out;
}

}  // namespace sillwalk::app
