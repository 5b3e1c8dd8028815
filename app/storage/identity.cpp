#include "app/storage/identity.hpp"

#include "app/storage/rows.hpp"

#include <utility>

namespace sillwalk::app {

using engine::Result;

Result<DeviceIdentity> device_identity(Database& database, const DeviceIdentity& fresh) {
    {
        auto insert =
            database.prepare("INSERT INTO device(id, device_id, seed) VALUES(1, ?1, ?2) ON CONFLICT DO NOTHING");
        if (!insert) return tl::make_unexpected(insert.error());
        insert->bind(1, fresh.device_id).bind_bytes(2, byte_view(fresh.seed));
        if (auto done = insert->run(); !done) return tl::make_unexpected(done.error());
    }
    auto stored = load_device(database);
    if (!stored) return tl::make_unexpected(stored.error());
    if (!*stored) return engine::fail(engine::ErrorCode::storage, "the device's key was not stored");
    return std::move(**stored);
}

Result<std::optional<DeviceIdentity>> load_device(Database& database) {
    auto row = database.prepare("SELECT device_id, seed FROM device WHERE id=1");
    if (!row) return tl::make_unexpected(row.error());
    const auto found = row->step();
    if (!found) return tl::make_unexpected(found.error());
    if (!*found) return std::optional<DeviceIdentity>();
    const auto seed = digest_at(*row, 1);
    if (!seed) return engine::fail(engine::ErrorCode::disagreement, "the device's key is damaged");
    return std::optional<DeviceIdentity>(DeviceIdentity{row->text(0), *seed});
}

Result<std::optional<OfficeAccess>> load_office(Database& database) {
    auto row =
        database.prepare("SELECT url, device_id, token, expires_ms, key_id, public_key, pin FROM office WHERE id=1");
    if (!row) return tl::make_unexpected(row.error());
    const auto found = row->step();
    if (!found) return tl::make_unexpected(found.error());
    if (!*found) return std::optional<OfficeAccess>();
    const auto key = digest_at(*row, 5);
    if (!key) return engine::fail(engine::ErrorCode::disagreement, "the office's key is damaged; enrol again");
    return std::optional<OfficeAccess>(
        OfficeAccess{row->text(0), row->text(1), row->text(2), row->integer(3), row->text(4), *key, row->text(6)});
}

Result<void> store_office(Database& database, const OfficeAccess& office) {
    auto row = database.prepare(
        "INSERT INTO office(id, url, device_id, token, expires_ms, key_id, public_key, pin) "
        "VALUES(1, ?1, ?2, ?3, ?4, ?5, ?6, ?7) ON CONFLICT(id) DO UPDATE SET url=?1, device_id=?2, token=?3, "
        "expires_ms=?4, key_id=?5, public_key=?6, pin=?7");
    if (!row) return tl::make_unexpected(row.error());
    row->bind(1, office.url).bind(2, office.device_id).bind(3, office.token).bind(4, office.expires_ms);
    row->bind(5, office.key_id).bind_bytes(6, byte_view(office.public_key)).bind(7, office.pin);
    return row->run();
}

}  // namespace sillwalk::app
