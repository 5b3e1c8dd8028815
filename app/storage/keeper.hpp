#pragma once
/// Opens the file of visits so that it is never lost: a copy before the schema changes, a check after a start that
/// found it not closed, and where it is damaged it is put aside whole and the newest sound copy takes its place.

#include "app/storage/database.hpp"

#include <string>

namespace sillwalk::app {

enum class Found {
    clean,         ///< closed properly, or new
    unclean,       ///< the last run ended without closing it; it was checked and is sound
    restored,      ///< it was damaged; a copy took its place
    started_anew,  ///< it was damaged and there was no sound copy
};

struct KeptDatabase {
    Database database;
    Found found = Found::clean;
    std::string aside;  ///< where the damaged file stands now; empty: none was
};

/// Errors are those of Database::open() and migrate(): another program has it, a newer program wrote it, the disk. They
/// leave everything as it is.
[[nodiscard]] engine::Result<KeptDatabase> open_kept(const std::string& path);

/// Until the next open_kept() the file counts as closed.
[[nodiscard]] engine::Result<void> mark_closed(Database& database);

}  // namespace sillwalk::app
