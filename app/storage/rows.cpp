#include "app/storage/rows.hpp"

#include <algorithm>

namespace sillwalk::app {

using engine::Result;

std::optional<Digest> digest_at(const Statement& row, int column) {
    const std::string bytes = row.bytes(column);
    Digest digest{};
    if (bytes.size() != digest.size()) return std::nullopt;
    std::transform(bytes.begin(), bytes.end(), digest.begin(), [](char c) { return static_cast<std::uint8_t>(c); });
    return digest;
}

Result<bool> has_row(Database& database, std::string_view sql, const Digest& digest) {
    auto row = database.prepare(sql);
    if (!row) return tl::make_unexpected(row.error());
    return row->bind_bytes(1, byte_view(digest)).step();
}

Result<std::vector<Digest>> read_digests(Statement& rows) {
    std::vector<Digest> digests;
    for (;;) {
        const auto more = rows.step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return digests;
        const auto digest = digest_at(rows, 0);
        if (!digest) return engine::fail(engine::ErrorCode::disagreement, "a name of 32 bytes is damaged");
        digests.push_back(*digest);
    }
}

}  // namespace sillwalk::app
