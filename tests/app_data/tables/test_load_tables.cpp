#include "app/data/load_tables.hpp"

#include <catch2/catch.hpp>
using namespace sillwalk;
TEST_CASE("the shipped tables load without a single error", "[tables][property]") {
    const app::LoadedTables loaded = app::load_tables();
    for (const engine::Error& error : loaded.errors) UNSCOPED_INFO(error.where << ": " << error.message);
    REQUIRE(loaded.errors.empty());
}
