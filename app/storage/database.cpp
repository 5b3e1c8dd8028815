#include "app/storage/database.hpp"

#include "engine/base/contract.hpp"

#include <sqlite3.h>

#include <filesystem>
#include <mutex>
#include <set>
#include <utility>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

/// Files that this process has open. The only state of its kind: it guards against a second connection.
struct OpenFiles {
    std::mutex mutex;
    std::set<std::string> paths;
};
OpenFiles& open_files() {
    static OpenFiles files;
    return files;
}

std::string absolute(const std::string& path) {
    std::error_code error;
    const auto whole = std::filesystem::weakly_canonical(std::filesystem::absolute(path, error), error);
    return error ? path : whole.string();
}

bool claim(const std::string& path) {
    const std::lock_guard lock(open_files().mutex);
    return open_files().paths.insert(path).second;
}

void release(const std::string& path) {
    const std::lock_guard lock(open_files().mutex);
    open_files().paths.erase(path);
}

tl::unexpected<engine::Error> storage_error(sqlite3* handle, int code) {
    if ((code & 0xff) == SQLITE_FULL) return engine::fail(ErrorCode::storage, "the storage is full", "full");
    const char* text = handle ? sqlite3_errmsg(handle) : sqlite3_errstr(code);
    return engine::fail(ErrorCode::storage, text ? text : "unknown", sqlite3_errstr(code));
}

constexpr const char* settings[] = {
    "PRAGMA page_size=4096",          "PRAGMA busy_timeout=2000",
    "PRAGMA locking_mode=EXCLUSIVE",  "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=FULL",        "PRAGMA foreign_keys=ON",
    "PRAGMA trusted_schema=OFF",      "PRAGMA cell_size_check=ON",
    "PRAGMA wal_autocheckpoint=1000", "PRAGMA journal_size_limit=8388608",
    "PRAGMA temp_store=MEMORY",
};
constexpr std::int64_t synchronous_full = 2;

}  // namespace

Statement::Statement(Statement&& other) noexcept
    : handle_(std::exchange(other.handle_, nullptr)), refused_(other.refused_) {}
Statement& Statement::operator=(Statement&& other) noexcept {
    std::swap(handle_, other.handle_);
    std::swap(refused_, other.refused_);
    return *this;
}
Statement::~Statement() {
    sqlite3_finalize(handle_);
}

Statement& Statement::bound(int code) {
    EXPECT_CONTRACT(code != SQLITE_RANGE && code != SQLITE_MISUSE);
    if (code != SQLITE_OK) refused_ = code;
    return *this;
}
Statement& Statement::bind(int parameter, std::int64_t value) {
    return bound(sqlite3_bind_int64(handle_, parameter, value));
}
Statement& Statement::bind(int parameter, std::string_view text) {
    const int size = static_cast<int>(text.size());
    return bound(sqlite3_bind_text(handle_, parameter, text.data(), size, SQLITE_TRANSIENT));
}
Statement& Statement::bind_bytes(int parameter, std::string_view bytes) {
    const auto size = static_cast<sqlite3_uint64>(bytes.size());
    return bound(sqlite3_bind_blob64(handle_, parameter, bytes.data(), size, SQLITE_TRANSIENT));
}
Statement& Statement::bind_null(int parameter) {
    return bound(sqlite3_bind_null(handle_, parameter));
}
Statement& Statement::bind_optional(int parameter, const std::optional<std::string>& text) {
    return text ? bind(parameter, std::string_view(*text)) : bind_null(parameter);
}

Result<bool> Statement::step() {
    if (refused_ != SQLITE_OK) return storage_error(nullptr, refused_);
    const int code = sqlite3_step(handle_);
    if (code == SQLITE_ROW) return true;
    if (code == SQLITE_DONE) return false;
    return storage_error(sqlite3_db_handle(handle_), code);
}

Result<void> Statement::run() {
    for (;;) {
        const auto more = step();
        if (!more) {
            reset();
            return tl::make_unexpected(more.error());
        }
        if (!*more) break;
    }
    reset();
    return {};
}

void Statement::reset() {
    sqlite3_reset(handle_);
    sqlite3_clear_bindings(handle_);
    refused_ = SQLITE_OK;
}

int Statement::columns() const {
    return sqlite3_column_count(handle_);
}
std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(handle_, column);
}
std::string Statement::text(int column) const {
    return optional_text(column).value_or(std::string());
}
std::string Statement::bytes(int column) const {
    const void* bytes = sqlite3_column_blob(handle_, column);
    if (!bytes) return {};
    return {static_cast<const char*>(bytes), static_cast<std::size_t>(sqlite3_column_bytes(handle_, column))};
}
std::optional<std::string> Statement::optional_text(int column) const {
    const auto* bytes = sqlite3_column_text(handle_, column);
    if (!bytes) return std::nullopt;
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(handle_, column));
    return std::string(reinterpret_cast<const char*>(bytes), size);
}

Transaction::Transaction(Transaction&& other) noexcept : database_(std::exchange(other.database_, nullptr)) {}
Transaction::~Transaction() {
    // A failed statement may have rolled back already; then there is nothing left to undo.
    if (database_ && database_->in_transaction()) (void)database_->execute("ROLLBACK");
}
Result<void> Transaction::commit() {
    auto done = database_->execute("COMMIT");
    if (done) database_ = nullptr;
    return done;
}

Database::Database(Database&& other) noexcept
    : handle_(std::exchange(other.handle_, nullptr)), path_(std::exchange(other.path_, {})) {}
Database& Database::operator=(Database&& other) noexcept {
    std::swap(handle_, other.handle_);
    std::swap(path_, other.path_);
    return *this;
}
Database::~Database() {
    close();
}

void Database::close() {
    if (handle_) sqlite3_close_v2(handle_);
    if (!path_.empty()) release(path_);
    handle_ = nullptr;
    path_.clear();
}

Result<Database> Database::open(const std::string& path) {
    const std::string claimed = path == ":memory:" ? std::string() : absolute(path);
    if (!claimed.empty() && !claim(claimed)) {
        return engine::fail(ErrorCode::storage, "the file is open already in this program; one connection only", path);
    }
    sqlite3* handle = nullptr;
    const int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX;
    const int code = sqlite3_open_v2(path.c_str(), &handle, flags, nullptr);
    Database database(handle, claimed);
    if (code != SQLITE_OK) return storage_error(handle, code);
    sqlite3_extended_result_codes(handle, 1);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    for (const char* setting : settings) {
        if (auto done = database.execute(setting); !done) return tl::make_unexpected(done.error());
    }
    const auto synchronous = database.number("PRAGMA synchronous");
    if (!synchronous) return tl::make_unexpected(synchronous.error());
    if (*synchronous != synchronous_full) {
        return engine::fail(ErrorCode::storage, "the database does not wait for the disk", path);
    }
    // The first write takes the exclusive lock, so a second program is refused here and not in the middle of a visit.
    if (auto locked = database.execute("BEGIN IMMEDIATE; COMMIT"); !locked) return tl::make_unexpected(locked.error());
    return database;
}

Result<Database> Database::open_to_read(const std::string& path) {
    sqlite3* handle = nullptr;
    const int code = sqlite3_open_v2(path.c_str(), &handle, SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX, nullptr);
    Database database(handle, {});
    if (code != SQLITE_OK) return storage_error(handle, code);
    sqlite3_extended_result_codes(handle, 1);
    for (const char* setting : {"PRAGMA trusted_schema=OFF", "PRAGMA cell_size_check=ON", "PRAGMA query_only=ON"}) {
        if (auto done = database.execute(setting); !done) return tl::make_unexpected(done.error());
    }
    return database;
}

bool is_damage(const engine::Error& error) {
    return error.code == ErrorCode::storage &&
           (error.where == sqlite3_errstr(SQLITE_CORRUPT) || error.where == sqlite3_errstr(SQLITE_NOTADB));
}

Result<void> Database::execute(const char* sql) {
    const int code = sqlite3_exec(handle_, sql, nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return storage_error(handle_, code);
    return {};
}

Result<Statement> Database::prepare(std::string_view sql) {
    sqlite3_stmt* statement = nullptr;
    const int code = sqlite3_prepare_v2(handle_, sql.data(), static_cast<int>(sql.size()), &statement, nullptr);
    if (code != SQLITE_OK) return storage_error(handle_, code);
    return Statement(statement);
}

Result<Transaction> Database::begin() {
    if (auto done = execute("BEGIN IMMEDIATE"); !done) return tl::make_unexpected(done.error());
    return Transaction(*this);
}

Result<std::int64_t> Database::number(std::string_view sql) {
    auto statement = prepare(sql);
    if (!statement) return tl::make_unexpected(statement.error());
    const auto row = statement->step();
    if (!row) return tl::make_unexpected(row.error());
    if (!*row) return engine::fail(ErrorCode::not_found, "no row", std::string(sql));
    return statement->integer(0);
}

bool Database::in_transaction() const {
    return sqlite3_get_autocommit(handle_) == 0;
}

}  // namespace sillwalk::app
