#pragma once
/// The words nearest to one that was not found, to name them in an error.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::engine {

/// Least number of single letters to insert, delete or replace.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// At most `most` of the words, nearest first, ties by the word itself; each word once.
[[nodiscard]] std::vector<std::string> nearest_words(std::string_view word, std::vector<std::string> words,
                                                     std::size_t most);

/// "a", "a or b", "a, b or c".
[[nodiscard]] std::string joined_with_or(const std::vector<std::string>& words);

}  // namespace sillwalk::engine
