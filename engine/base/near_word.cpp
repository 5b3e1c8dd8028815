#include "engine/base/near_word.hpp"

#include <algorithm>

namespace sillwalk::engine {

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
        }
    }
    return row[b.size()];
}

std::vector<std::string> nearest_words(std::string_view word, std::vector<std::string> words, std::size_t most) {
    const auto nearer = [word](const std::string& a, const std::string& b) {
        const std::size_t distance_a = edit_distance(word, a);
        const std::size_t distance_b = edit_distance(word, b);
        return distance_a != distance_b ? distance_a < distance_b : a < b;
    };
    std::sort(words.begin(), words.end(), nearer);
    words.erase(std::unique(words.begin(), words.end()), words.end());
    if (words.size() > most) {
        words.resize(most);
    }
    return words;
}

std::string joined_with_or(const std::vector<std::string>& words) {
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) {
            out += i + 1 == words.size() ? " or " : ", ";
        }
        out += words[i];
    }
    return out;
}

}  // namespace sillwalk::engine
