#include "engine/base/near_word.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;

TEST_CASE("edit distance counts single letters", "[engine][base]") {
    // Levenshtein's own measure; kitten to sitting is the usual textbook pair.
    CHECK(edit_distance("kitten", "sitting") == 3);
    CHECK(edit_distance("", "abc") == 3);
    CHECK(edit_distance("abc", "") == 3);
    CHECK(edit_distance("diamter", "diameter") == 1);
    CHECK(edit_distance("same", "same") == 0);
}

TEST_CASE("the nearest words come first, each once, ties by the word", "[engine][base]") {
    CHECK(nearest_words("acetnoe", {"water", "acetone", "acetone", "ozone"}, 2) ==
          std::vector<std::string>{"acetone", "ozone"});
    CHECK(nearest_words("x", {"b", "a"}, 5) == std::vector<std::string>{"a", "b"});
    CHECK(joined_with_or({"a", "b", "c"}) == "a, b or c");
    CHECK(joined_with_or({"a"}) == "a");
    CHECK(joined_with_or({}).empty());
}
