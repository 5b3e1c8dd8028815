#pragma once
/// Copies of the database beside it: "<file>.backup" and the one before, "<file>.backup-older". A copy counts once it
/// was opened and checked; until then the older ones stay as they are.

#include "app/storage/database.hpp"

#include <string>
#include <vector>

namespace sillwalk::app {

/// Copies, waits for the disk, checks the copy, and only then renames. Where it fails the older copies stay.
[[nodiscard]] engine::Result<void> back_up(Database& database, const std::string& path);

/// Names of the copies that are there, newest first.
[[nodiscard]] std::vector<std::string> backups_of(const std::string& path);

/// Ours, of a schema that this program knows, and sound by SQLite's own check.
[[nodiscard]] engine::Result<void> check_backup(const std::string& path);

/// SQLite's check of the whole file in words; empty: sound.
[[nodiscard]] engine::Result<std::vector<std::string>> quick_check(Database& database);

}  // namespace sillwalk::app
