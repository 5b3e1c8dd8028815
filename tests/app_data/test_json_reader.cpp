#include "app/data/json_reader.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::app;

TEST_CASE("the reader lists every error with its path", "[app][data]") {
    JsonErrors errors;
    const auto document = parse_json(R"({"a": "x", "b": -1, "list": [1, "no"], "extra": 0, "word": "blue"})", errors);
    REQUIRE(document);
    REQUIRE(errors.empty());
    JsonObject row(*document, "/rows/3", errors);
    CHECK_FALSE(row.number("a", 0, 1));
    CHECK_FALSE(row.number("b", 0, 1));
    CHECK_FALSE(row.text("c"));
    CHECK(row.numbers("list", 0, 9).size() == 1);
    CHECK_FALSE(row.word<int>("word", {{"red", 1}, {"green", 2}}));
    CHECK_FALSE(row.text("absent", Need::optional));
    row.done();
    std::vector<std::string> where;
    for (const auto& error : errors) where.push_back(error.where);
    CHECK(where == std::vector<std::string>{"/rows/3/a", "/rows/3/b", "/rows/3/c", "/rows/3/list/1", "/rows/3/word",
                                            "/rows/3/extra"});
}

TEST_CASE("the parser refuses what a tree parser would swallow", "[app][data]") {
    // RFC 8259 leaves duplicate names open; here they are an error, since one of the two values would be lost.
    const auto refused = [](const std::string& text) {
        JsonErrors errors;
        return !parse_json(text, errors) && errors.size() == 1;
    };
    CHECK(refused(R"({"a": 1, "a": 2})"));
    CHECK(refused(R"({"a": 1)"));
    CHECK(refused("\"\xff\""));
    CHECK(refused("1e999"));
    CHECK(refused(std::string(100000, '[')));
    CHECK(refused(""));
}
