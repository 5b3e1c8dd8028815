#pragma once
/// The tables as the programs load them, for tests.

#include "app/data/load_tables.hpp"

#include <catch2/catch.hpp>

inline const sillwalk::engine::Tables& loaded_tables() {
    static const sillwalk::app::LoadedTables loaded = sillwalk::app::load_tables();
    REQUIRE(loaded.errors.empty());
    return loaded.tables;
}
