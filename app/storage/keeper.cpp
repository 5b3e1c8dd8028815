#include "app/storage/keeper.hpp"

#include "app/storage/backup.hpp"
#include "app/storage/files.hpp"
#include "app/storage/schema.hpp"

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr int most_put_aside = 1000;

/// A file that is older than the program is copied before its schema changes.
Result<void> bring_up_to_date(Database& database, const std::string& path) {
    const auto version = database.number("PRAGMA user_version");
    if (!version) return tl::make_unexpected(version.error());
    const auto owner = database.number("PRAGMA application_id");
    if (owner && *owner == application_id && *version > 0 && *version < schema_version()) {
        if (auto done = back_up(database, path); !done) return done;
    }
    return migrate(database);
}

Result<bool> was_closed(Database& database) {
    const auto open = database.number("SELECT coalesce((SELECT value FROM upkeep WHERE name='open'), 0)");
    if (!open) return tl::make_unexpected(open.error());
    return *open == 0;
}

Result<void> mark(Database& database, bool open) {
    auto row =
        database.prepare("INSERT INTO upkeep(name, value) VALUES('open', ?1) ON CONFLICT(name) DO UPDATE SET value=?1");
    if (!row) return tl::make_unexpected(row.error());
    return row->bind(1, std::int64_t{open}).run();
}

/// Opened, current and, where it was not closed, sound.
Result<KeptDatabase> open_checked(const std::string& path) {
    auto database = Database::open(path);
    if (!database) return tl::make_unexpected(database.error());
    if (auto done = bring_up_to_date(*database, path); !done) return tl::make_unexpected(done.error());
    const auto closed = was_closed(*database);
    if (!closed) return tl::make_unexpected(closed.error());
    if (!*closed) {
        const auto faults = quick_check(*database);
        if (!faults) return tl::make_unexpected(faults.error());
        if (!faults->empty()) return engine::fail(ErrorCode::disagreement, faults->front(), path);
    }
    if (auto done = mark(*database, true); !done) return tl::make_unexpected(done.error());
    return KeptDatabase{std::move(*database), *closed ? Found::clean : Found::unclean, {}};
}

/// The file with its log, whole, under a name of its own.
Result<std::string> put_file_aside(const std::string& path) {
    for (int number = 1; number <= most_put_aside; ++number) {
        const std::string aside = path + ".damaged-" + std::to_string(number);
        if (file_exists(aside)) continue;
        for (const char* end : {"-wal", "-shm", "-journal"}) {
            if (!file_exists(path + end)) continue;
            if (auto done = move_file(path + end, aside + end); !done) return tl::make_unexpected(done.error());
        }
        if (auto done = move_file(path, aside); !done) return tl::make_unexpected(done.error());
        return aside;
    }
    return engine::fail(ErrorCode::storage, "too many damaged files stand beside it", path);
}

Result<KeptDatabase> rescue(const std::string& path) {
    auto aside = put_file_aside(path);
    if (!aside) return tl::make_unexpected(aside.error());
    for (const std::string& copy : backups_of(path)) {
        if (!check_backup(copy)) continue;
        if (auto done = copy_file(copy, path); !done) return tl::make_unexpected(done.error());
        auto kept = open_checked(path);
        if (!kept) return kept;
        kept->found = Found::restored;
        kept->aside = *aside;
        return kept;
    }
    auto kept = open_checked(path);
    if (!kept) return kept;
    kept->found = Found::started_anew;
    kept->aside = *aside;
    return kept;
}

}  // namespace

Result<KeptDatabase> open_kept(const std::string& path) {
    auto kept = open_checked(path);
    if (kept) return kept;
    const bool damaged = is_damage(kept.error()) || kept.error().code == ErrorCode::disagreement;
    if (damaged) return rescue(path);
    return kept;
}

Result<void> mark_closed(Database& database) {
    return mark(database, false);
}

}  // namespace sillwalk::app
