#include "app/storage/backup.hpp"

#include "app/storage/files.hpp"
#include "app/storage/schema.hpp"

#include <cstdio>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

std::string newest(const std::string& path) {
    return path + ".backup";
}
std::string older(const std::string& path) {
    return path + ".backup-older";
}

Result<void> copy_into(Database& database, const std::string& part) {
    std::remove(part.c_str());  // of a copy that was cut off
    auto copy = database.prepare("VACUUM INTO ?1");
    if (!copy) return tl::make_unexpected(copy.error());
    if (auto done = copy->bind(1, part).run(); !done) return done;
    return sync_file(part);
}

}  // namespace

Result<void> back_up(Database& database, const std::string& path) {
    const std::string part = newest(path) + ".part";
    auto done = copy_into(database, part);
    if (done) done = check_backup(part);
    if (!done) {
        std::remove(part.c_str());
        return done;
    }
    if (file_exists(newest(path))) {
        if (done = move_file(newest(path), older(path)); !done) return done;
    }
    return move_file(part, newest(path));
}

std::vector<std::string> backups_of(const std::string& path) {
    std::vector<std::string> out;
    for (const std::string& name : {newest(path), older(path)}) {
        if (file_exists(name)) out.push_back(name);
    }
    return out;
}

Result<void> check_backup(const std::string& path) {
    auto database = Database::open_to_read(path);
    if (!database) return tl::make_unexpected(database.error());
    const auto owner = database->number("PRAGMA application_id");
    const auto version = database->number("PRAGMA user_version");
    if (!owner) return tl::make_unexpected(owner.error());
    if (!version) return tl::make_unexpected(version.error());
    if (*owner != application_id || *version < 1 || *version > schema_version())
        return engine::fail(ErrorCode::storage, "this is no backup of ours", path);
    const auto faults = quick_check(*database);
    if (!faults) return tl::make_unexpected(faults.error());
    if (!faults->empty()) return engine::fail(ErrorCode::storage, faults->front(), path);
    return {};
}

Result<std::vector<std::string>> quick_check(Database& database) {
    auto rows = database.prepare("PRAGMA quick_check(20)");
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<std::string> faults;
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return faults;
        if (rows->text(0) != "ok") faults.push_back(rows->text(0));
    }
}

}  // namespace sillwalk::app
