#include "app/driver/script.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <map>

namespace sillwalk::driver {

namespace {

struct Arity {
    std::size_t least;
    std::size_t most;
};

/// Number of words after the step's own.
const std::map<std::string, Arity, std::less<>>& steps() {
    static const std::map<std::string, Arity, std::less<>> known = {
        {"tap", {1, 1}},        {"hold", {1, 1}}, {"drag", {3, 3}},   {"type", {2, 2}},       {"clear", {1, 1}},
        {"key", {1, 1}},        {"wait", {1, 1}}, {"expect", {2, 3}}, {"expect-not", {2, 3}}, {"screen", {2, 2}},
        {"screen-not", {2, 2}}, {"shot", {1, 1}}, {"size", {2, 2}},   {"theme", {1, 1}},      {"set", {2, 2}},
        {"restart", {0, 0}},    {"print", {0, 0}}};
    return known;
}

engine::Result<std::vector<std::string>> split(std::string_view line) {
    std::vector<std::string> words;
    std::size_t i = 0;
    while (i < line.size()) {
        if (line[i] == ' ' || line[i] == '\t' || line[i] == '\r') {
            ++i;
            continue;
        }
        if (line[i] == '#') break;
        std::string word;
        if (line[i] != '"') {
            while (i < line.size() && line[i] != ' ' && line[i] != '\t' && line[i] != '\r') word += line[i++];
            words.push_back(word);
            continue;
        }
        ++i;
        while (i < line.size() && line[i] != '"') {
            if (line[i] == '\\' && i + 1 < line.size()) {
                ++i;
                word += line[i] == 'n' ? '\n' : line[i];
            } else {
                word += line[i];
            }
            ++i;
        }
        if (i >= line.size()) return engine::bad_input("A quote is opened and not closed.");
        ++i;
        words.push_back(word);
    }
    return words;
}

engine::Result<void> check(const std::vector<std::string>& words) {
    const auto found = steps().find(words.front());
    if (found == steps().end()) return engine::bad_input(fmt::format("\"{}\" is no step of a script.", words.front()));
    const std::size_t count = words.size() - 1;
    if (count >= found->second.least && count <= found->second.most) return {};
    return engine::bad_input(fmt::format("\"{}\" takes {} to {} words after it, not {}.", words.front(),
                                         found->second.least, found->second.most, count));
}

}  // namespace

engine::Result<Script> parse_script(std::string_view text) {
    Script script;
    int number = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        ++number;
        auto words = split(text.substr(at, end - at));
        const std::string where = fmt::format("line {}", number);
        if (!words.has_value()) return engine::bad_input(words.error().message, where);
        if (!words->empty()) {
            const auto checked = check(*words);
            if (!checked.has_value()) return engine::bad_input(checked.error().message, where);
            script.push_back({number, std::move(*words)});
        }
        at = end + 1;
    }
    return script;
}

}  // namespace sillwalk::driver
