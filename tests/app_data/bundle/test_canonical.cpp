#include "app/bundle/canonical.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::app;

namespace {
std::string canonical(const std::string& text) {
    JsonErrors errors;
    const auto value = parse_strict(text, errors);
    return value ? canonical_json(*value) : "refused: " + errors.at(0).message;
}
bool refused(const std::string& text) {
    JsonErrors errors;
    return !parse_strict(text, errors) && errors.size() == 1;
}
}  // namespace

TEST_CASE("canonical text follows RFC 8785", "[app][bundle][published]") {
    // RFC 8785 §3.2.2: the string example, and member order of §3.2.3 narrowed to ASCII names.
    CHECK(canonical(R"({"string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/"})") ==
          "{\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
    CHECK(canonical(R"( { "b" : [ true , false , null ] , "a" : -0 , "B": 1 } )") ==
          R"({"B":1,"a":0,"b":[true,false,null]})");
    CHECK(canonical("9007199254740991") == "9007199254740991");
}

TEST_CASE("the strict reader refuses what could hurt or differ", "[app][bundle]") {
    CHECK(refused("1.5"));
    CHECK(refused("1e3"));
    CHECK(refused("9007199254740992"));
    CHECK(refused("-9007199254740992"));
    CHECK(refused(R"({"a":1,"a":1})"));
    CHECK(refused("{\"\u00e9\":1}"));
    CHECK(refused(R"("\ud800")"));
    CHECK(refused("[1] 2"));
    CHECK(refused(std::string(33, '[') + std::string(33, ']')));
    CHECK_FALSE(refused(std::string(32, '[') + std::string(32, ']')));
    CHECK(refused(std::string(1'000'000, '[')));
    CHECK(refused("\"" + std::string(65537, 'x') + "\""));
    CHECK(refused("{\"" + std::string(65, 'k') + "\":1}"));
    CHECK(refused("\"" + std::string(1u << 20, 'x') + "\""));
    std::string many = "[0";
    for (int i = 0; i < 100'000; ++i) many += ",0";
    CHECK(refused(many + "]"));
}

TEST_CASE("reading the canonical text again gives the same text", "[app][bundle][property]") {
    const std::string text = canonical(R"({"z":{"y":[1,"\u0001\u007f\ud83d\ude00",{"x":-5}]},"a":""})");
    CHECK(canonical(text) == text);
}
