#pragma once
/// Reads typed values out of the words of a desk calculation and keeps the first thing that is wrong.

#include "engine/base/near_word.hpp"
#include "engine/base/numeric_text.hpp"
#include "engine/desk/desk.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::engine {

class ArgumentReader {
public:
    explicit ArgumentReader(const DeskArguments& arguments) : arguments_(arguments) {}

    template <class T>
    using Parser = Result<T> (*)(std::string_view);

    /// The value, or T{} with an error kept.
    template <class T>
    T required(std::string_view key, Parser<T> parse) {
        const std::optional<T> value = optional(key, parse);
        if (!value && !arguments_.contains(key)) {
            keep(key, "is missing");
        }
        return value.value_or(T{});
    }

    template <class T>
    std::optional<T> optional(std::string_view key, Parser<T> parse) {
        const auto found = arguments_.find(key);
        if (found == arguments_.end()) {
            return std::nullopt;
        }
        const Result<T> value = parse(found->second);
        if (!value) {
            keep(key, value.error().message);
            return std::nullopt;
        }
        return *value;
    }

    template <class T>
    using Words = std::vector<std::pair<std::string_view, T>>;

    template <class T>
    std::optional<T> optional_word(std::string_view key, const Words<T>& words) {
        const auto found = arguments_.find(key);
        if (found == arguments_.end()) {
            return std::nullopt;
        }
        std::vector<std::string> known;
        for (const auto& [word, value] : words) {
            if (word == found->second) {
                return value;
            }
            known.emplace_back(word);
        }
        keep(key, "\"" + found->second + "\" is not known; write " + joined_with_or(known));
        return std::nullopt;
    }

    template <class T>
    T required_word(std::string_view key, const Words<T>& words) {
        const std::optional<T> value = optional_word(key, words);
        if (!value && !arguments_.contains(key)) {
            keep(key, "is missing");
        }
        return value.value_or(words.front().second);
    }

    /// A force; a mass is taken as its weight under `g`.
    Force load(std::string_view key, Acceleration g = standard_gravity);
    std::optional<Force> optional_load(std::string_view key, Acceleration g = standard_gravity);
    Acceleration gravity();
    int count(std::string_view key);
    [[nodiscard]] bool has(std::string_view key) const { return arguments_.contains(key); }

    void keep(std::string_view key, std::string message);
    [[nodiscard]] bool failed() const { return error_.has_value(); }
    [[nodiscard]] tl::unexpected<Error> failure() const { return tl::make_unexpected(*error_); }

private:
    const DeskArguments& arguments_;
    std::optional<Error> error_;
};

}  // namespace sillwalk::engine
