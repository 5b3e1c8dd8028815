#pragma once
/// Short forms for statements about digests, used by the files of this folder.

#include "app/bundle/digest.hpp"
#include "app/storage/database.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace sillwalk::app {

/// Binds the digests from parameter 1 on and runs to the end.
template <class... Digests>
[[nodiscard]] engine::Result<void> run_with(Database& database, std::string_view sql, const Digests&... digests) {
    auto statement = database.prepare(sql);
    if (!statement) return tl::make_unexpected(statement.error());
    int parameter = 0;
    (statement->bind_bytes(++parameter, byte_view(digests)), ...);
    return statement->run();
}

/// True where the query about one digest has a row.
[[nodiscard]] engine::Result<bool> has_row(Database& database, std::string_view sql, const Digest& digest);

/// The first column of every row. disagreement where one is no digest.
[[nodiscard]] engine::Result<std::vector<Digest>> read_digests(Statement& rows);

/// The 32 bytes of a column; nothing where they are not 32.
[[nodiscard]] std::optional<Digest> digest_at(const Statement& row, int column);

}  // namespace sillwalk::app
