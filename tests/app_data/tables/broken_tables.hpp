#pragma once
/// The shipped table files with one of them spoilt, to see what the loader says.

#include "app/data/load_tables.hpp"

#include <nlohmann/json.hpp>

#include <functional>
#include <string>

namespace sillwalk::test {

using Spoil = std::function<void(nlohmann::json&)>;

/// Loads the tables after `spoil` has changed the file at `path`.
[[nodiscard]] app::LoadedTables load_spoilt(const std::string& path, const Spoil& spoil);
/// Loads the tables with the whole text of one file replaced, or the file missing where `text` is empty.
[[nodiscard]] app::LoadedTables load_replaced(const std::string& path, const std::optional<std::string>& text);

/// All errors, one per line, as "where: message".
[[nodiscard]] std::string listing(const app::LoadedTables& loaded);

}  // namespace sillwalk::test
