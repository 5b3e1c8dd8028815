#pragma once
/// The office's database behind values, so that intake is written once for SQLite and PostgreSQL. Statements use ?1,
/// ?2… and only what both engines know. Every value goes through a parameter, never into the text of a statement.

#include "engine/base/result.hpp"

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sillwalk::office {

using engine::Result;

using SqlValue = std::variant<std::monostate, std::int64_t, std::string>;
using SqlRow = std::vector<std::optional<std::string>>;
using SqlRows = std::vector<SqlRow>;

/// One open transaction.
class SqlSession {
public:
    virtual ~SqlSession() = default;
    [[nodiscard]] virtual Result<SqlRows> run(std::string_view sql, const std::vector<SqlValue>& values = {}) = 0;
    /// Other programs write at the same time: rows must be locked.
    [[nodiscard]] virtual bool shared() const = 0;
};

using SqlWork = std::function<Result<void>(SqlSession&)>;

class Sql {
public:
    virtual ~Sql() = default;
    /// Runs `work` in a transaction and returns once it is on the disk; an error of `work` undoes it. Any thread.
    [[nodiscard]] virtual Result<void> transact(const SqlWork& work) = 0;
    [[nodiscard]] virtual bool shared() const = 0;
};

/// One connection, one writer thread, transactions that wait together committed together. Fails where another program
/// has the file open.
[[nodiscard]] Result<std::unique_ptr<Sql>> open_sqlite(const std::string& path);
/// A pool of connections; a lost one is opened anew. `url`: "postgresql://…".
[[nodiscard]] Result<std::unique_ptr<Sql>> open_postgres(const std::string& url, std::size_t connections = 8);

/// Makes the tables, or checks that they are of a version this program knows.
[[nodiscard]] Result<void> migrate(Sql& sql);

/// Values of a row, where the statement's columns are known to hold them.
[[nodiscard]] std::int64_t to_integer(const std::optional<std::string>& value);
[[nodiscard]] std::string to_text(const std::optional<std::string>& value);

}  // namespace sillwalk::office
