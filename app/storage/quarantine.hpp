#pragma once
/// Bytes that could not be trusted are put aside and never deleted, with the reason in words.

#include "app/bundle/digest.hpp"
#include "app/storage/database.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

struct QuarantineRow {
    std::int64_t id = 0, at_ms = 0;
    std::string why;               ///< language key
    std::optional<Digest> digest;  ///< the name under which the bytes were expected
    std::int64_t bytes = 0;
};

/// The same bytes for the same reason are kept once.
[[nodiscard]] engine::Result<void> put_aside(Database& database, std::string_view why,
                                             const std::optional<Digest>& digest, std::string_view bytes,
                                             std::int64_t at_ms);
/// A copy of what stands under that name among the revisions and photos.
[[nodiscard]] engine::Result<void> put_aside_damaged(Database& database, const Digest& digest, std::int64_t at_ms);
[[nodiscard]] engine::Result<std::vector<QuarantineRow>> list_quarantine(Database& database);

/// Computes the digest of every revision and photo again. What no longer agrees is put aside (a copy), and its name is
/// returned.
[[nodiscard]] engine::Result<std::vector<Digest>> scrub(Database& database, std::int64_t at_ms);

}  // namespace sillwalk::app
