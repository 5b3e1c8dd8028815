#include "engine/base/name_index.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <string>

using sillwalk::engine::NameIndex;

TEST_CASE("name index: finds what a map finds", "[base][property]") {
    std::vector<std::string> names;
    std::map<std::string, std::size_t> expected;
    NameIndex index;
    const auto name_at = [&](std::size_t at) { return std::string_view(names[at]); };
    CHECK(index.find("", name_at) == NameIndex::none);
    for (int i = 0; i < 3000; ++i) {
        // Many that differ in one byte, or in length alone.
        const std::string name = std::string(static_cast<std::size_t>(i % 23), 'a') + std::to_string(i * 7919 % 3001);
        const auto [known, is_new] = expected.emplace(name, names.size());
        CHECK(index.find(name, name_at) == (is_new ? NameIndex::none : known->second));
        if (!is_new) continue;
        index.add(name, names.size());
        names.push_back(name);
    }
    for (const auto& [name, at] : expected) CHECK(index.find(name, name_at) == at);
    index.clear();
    CHECK(index.find(names.front(), name_at) == NameIndex::none);
}
