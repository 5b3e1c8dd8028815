#pragma once
/// SQLite behind values: a Database owns the one connection, a Statement one prepared statement, a Transaction one
/// BEGIN. Nothing throws; every call that can fail returns a Result with ErrorCode::storage. Not thread-safe: one
/// thread owns a Database.

#include "engine/base/result.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace sillwalk::app {

class Database;

/// A prepared statement. Bind every parameter (from 1), then step until it returns false.
class Statement {
public:
    Statement(Statement&&) noexcept;
    Statement& operator=(Statement&&) noexcept;
    ~Statement();

    Statement& bind(int parameter, std::int64_t value);
    Statement& bind(int parameter, std::string_view text);
    Statement& bind_bytes(int parameter, std::string_view bytes);
    Statement& bind_null(int parameter);
    Statement& bind_optional(int parameter, const std::optional<std::string>& text);

    /// True while there is a row; false at the end.
    [[nodiscard]] engine::Result<bool> step();
    /// Runs to the end and makes it ready for the next bindings.
    [[nodiscard]] engine::Result<void> run();
    void reset();

    [[nodiscard]] int columns() const;
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] std::string text(int column) const;
    [[nodiscard]] std::string bytes(int column) const;
    [[nodiscard]] std::optional<std::string> optional_text(int column) const;

private:
    friend class Database;
    explicit Statement(sqlite3_stmt* handle) : handle_(handle) {}
    Statement& bound(int code);
    sqlite3_stmt* handle_ = nullptr;
    int refused_ = 0;  ///< why a value could not be bound (no memory); step() tells
};

/// Rolls back when it is destroyed without a successful commit().
class Transaction {
public:
    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;
    ~Transaction();
    [[nodiscard]] engine::Result<void> commit();

private:
    friend class Database;
    explicit Transaction(Database& database) : database_(&database) {}
    Database* database_;
};

class Database {
public:
    /// Opens or creates the file with the settings that survive a power cut: WAL, synchronous FULL (read back), foreign
    /// keys, untrusted schema. A second connection to the same file from this process is refused (a checkpoint race of
    /// SQLite before 3.51.3 needs two connections); another process is refused by an exclusive lock.
    [[nodiscard]] static engine::Result<Database> open(const std::string& path);
    /// A file that nobody writes: a backup. Nothing beside it is made or changed.
    [[nodiscard]] static engine::Result<Database> open_to_read(const std::string& path);

    Database(Database&&) noexcept;
    Database& operator=(Database&&) noexcept;
    ~Database();

    [[nodiscard]] engine::Result<void> execute(const char* sql);
    [[nodiscard]] engine::Result<Statement> prepare(std::string_view sql);
    [[nodiscard]] engine::Result<Transaction> begin();
    /// First column of the first row as a number.
    [[nodiscard]] engine::Result<std::int64_t> number(std::string_view sql);
    [[nodiscard]] bool in_transaction() const;

private:
    friend class Transaction;
    Database(sqlite3* handle, std::string path) : handle_(handle), path_(std::move(path)) {}
    void close();
    sqlite3* handle_ = nullptr;
    std::string path_;  ///< as it stands in the list of open files; empty for ":memory:"
};

/// True where the error says that the file itself is damaged or no database, not that the disk refused something.
[[nodiscard]] bool is_damage(const engine::Error& error);

}  // namespace sillwalk::app
