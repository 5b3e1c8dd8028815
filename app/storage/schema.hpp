#pragma once
/// The database's tables and how an older file becomes a current one. Each step runs in one transaction with its
/// version bump, so a file is old or new, never between.

#include "app/storage/database.hpp"

#include <cstdint>
#include <span>

namespace sillwalk::app {

inline constexpr std::int64_t application_id = 0x53574C4B;  ///< "SWLK"

struct Migration {
    std::int64_t to_version;
    const char* sql;
};
/// In rising order; the last one's version is the current schema.
[[nodiscard]] std::span<const Migration> migrations();
[[nodiscard]] std::int64_t schema_version();

/// Brings the file up to date. ErrorCode::too_new where a later program wrote it, ErrorCode::storage for a foreign
/// file.
[[nodiscard]] engine::Result<void> migrate(Database& database);

}  // namespace sillwalk::app
