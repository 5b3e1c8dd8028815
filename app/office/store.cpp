#include "app/office/store.hpp"

#include "app/office/secret.hpp"

#include <algorithm>
#include <filesystem>

namespace sillwalk::office {

namespace {

constexpr std::size_t seed_bytes = 32;

/// The office's key signs receipts and merges. Made at the first start; kept beside the photos, readable by us only.
Result<app::SigningKey> load_key(const std::string& folder) {
    const std::string path = folder + "/office.key";
    if (!std::filesystem::exists(path)) {
        // Of two offices that start at once on one folder, the first link counts and both read that key.
        const std::string made = path + "." + app::to_hex(random_bytes(8));
        if (auto written = write_whole(made, random_bytes(seed_bytes)); !written)
            return tl::make_unexpected(written.error());
        std::error_code taken;
        std::filesystem::create_hard_link(made, path, taken);
        std::filesystem::remove(made, taken);
    }
    auto bytes = read_whole(path);
    if (!bytes) return tl::make_unexpected(bytes.error());
    if (bytes->size() != seed_bytes) return engine::fail(engine::ErrorCode::storage, "the key is damaged", path);
    std::array<std::uint8_t, seed_bytes> seed{};
    std::transform(bytes->begin(), bytes->end(), seed.begin(), [](char c) { return static_cast<std::uint8_t>(c); });
    return app::signing_key_from_seed(seed);
}

}  // namespace

Result<std::unique_ptr<Store>> Store::open(StoreOptions options) {
    std::error_code error;
    std::filesystem::create_directories(options.folder, error);
    if (error) return engine::fail(engine::ErrorCode::storage, error.message(), options.folder);
    auto sql =
        options.database.empty() ? open_sqlite(options.folder + "/office.sqlite") : open_postgres(options.database);
    if (!sql) return tl::make_unexpected(sql.error());
    if (auto made = migrate(**sql); !made) return tl::make_unexpected(made.error());
    auto blobs = BlobFolder::open(options.folder);
    if (!blobs) return tl::make_unexpected(blobs.error());
    auto key = load_key(options.folder);
    if (!key) return tl::make_unexpected(key.error());
    std::unique_ptr<Store> store(new Store(std::move(options), std::move(*sql), std::move(*blobs), *key));
    auto epoch = store->sql_->transact([&](SqlSession& session) -> Result<void> {
        auto known = session.run("SELECT value FROM setting WHERE name = 'epoch'");
        if (!known) return tl::make_unexpected(known.error());
        return known->empty() ? store->new_epoch(session) : Result<void>();
    });
    if (!epoch) return tl::make_unexpected(epoch.error());
    return store;
}

std::string Store::key_id() const {
    return "office-" + app::to_hex(app::sha256(app::byte_view(key_.public_key))).substr(0, 16);
}

Result<SqlRows> Store::query(std::string_view sql, const std::vector<SqlValue>& values) {
    Result<SqlRows> rows;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        rows = session.run(sql, values);
        if (!rows) return tl::make_unexpected(rows.error());
        return {};
    });
    if (!done) return tl::make_unexpected(done.error());
    return rows;
}

Result<void> Store::new_epoch(SqlSession& session) const {
    auto put = session.run(
        "INSERT INTO setting(name, value) VALUES('epoch', ?1) ON CONFLICT(name) DO UPDATE SET value = excluded.value",
        {app::to_hex(random_bytes(8))});
    if (!put) return tl::make_unexpected(put.error());
    return {};
}

Result<SqlRow> only_row(const Result<SqlRows>& rows, const char* what) {
    if (!rows) return tl::make_unexpected(rows.error());
    if (rows->empty()) return engine::fail(engine::ErrorCode::not_found, std::string("no such ") + what, what);
    return rows->front();
}

}  // namespace sillwalk::office
