#include "app/office/sql.hpp"

#include <condition_variable>
#include <libpq-fe.h>
#include <mutex>
#include <utility>

namespace sillwalk::office {

namespace {

using Connection = std::unique_ptr<PGconn, decltype(&PQfinish)>;
using Answer = std::unique_ptr<PGresult, decltype(&PQclear)>;

/// ?1 to $1; a question mark stands in no other place in our statements.
std::string numbered(std::string_view sql) {
    std::string out(sql);
    for (char& c : out) {
        if (c == '?') c = '$';
    }
    return out;
}

tl::unexpected<engine::Error> database_error(PGconn* connection, const PGresult* answer) {
    const char* state = answer ? PQresultErrorField(answer, PG_DIAG_SQLSTATE) : nullptr;
    const std::string_view code = state ? state : "";
    // SQLSTATE 53100 is disk_full (PostgreSQL 15 manual, appendix A).
    return engine::fail(engine::ErrorCode::storage, PQerrorMessage(connection), code == "53100" ? "full" : "busy");
}

class PostgresSession : public SqlSession {
public:
    explicit PostgresSession(PGconn* connection) : connection_(connection) {}

    Result<SqlRows> run(std::string_view sql, const std::vector<SqlValue>& values) override {
        std::vector<std::string> texts(values.size());
        std::vector<const char*> pointers(values.size(), nullptr);
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (const auto* text = std::get_if<std::string>(&values[i])) {
                pointers[i] = text->c_str();
            } else if (const auto* number = std::get_if<std::int64_t>(&values[i])) {
                texts[i] = std::to_string(*number);
                pointers[i] = texts[i].c_str();
            }
        }
        const Answer answer(PQexecParams(connection_, numbered(sql).c_str(), static_cast<int>(values.size()), nullptr,
                                         pointers.data(), nullptr, nullptr, 0),
                            &PQclear);
        const auto status = PQresultStatus(answer.get());
        if (status != PGRES_TUPLES_OK && status != PGRES_COMMAND_OK) return database_error(connection_, answer.get());
        SqlRows rows(static_cast<std::size_t>(PQntuples(answer.get())));
        for (int row = 0; row < PQntuples(answer.get()); ++row) {
            for (int column = 0; column < PQnfields(answer.get()); ++column) {
                std::optional<std::string> cell;
                if (!PQgetisnull(answer.get(), row, column)) {
                    cell.emplace(PQgetvalue(answer.get(), row, column),
                                 static_cast<std::size_t>(PQgetlength(answer.get(), row, column)));
                }
                rows[static_cast<std::size_t>(row)].push_back(std::move(cell));
            }
        }
        return rows;
    }
    bool shared() const override { return true; }

private:
    PGconn* connection_;
};

class Postgres : public Sql {
public:
    Postgres(std::string url, std::size_t connections) : url_(std::move(url)), free_(connections) {
        for (std::size_t i = 0; i < connections; ++i) idle_.emplace_back(nullptr, &PQfinish);
    }

    Result<void> transact(const SqlWork& work) override {
        Connection connection = take();
        auto result = transact_on(connection, work);
        give_back(std::move(connection));
        return result;
    }
    bool shared() const override { return true; }

private:
    /// The work is not run again where its connection broke: whether its commit arrived is not known, and a client that
    /// sends again gets the same answer.
    Result<void> transact_on(Connection& connection, const SqlWork& work) {
        if (auto begun = begin_on(connection); !begun) return begun;
        PostgresSession session(connection.get());
        if (auto done = work(session); !done) {
            (void)session.run("ROLLBACK", {});
            return done;
        }
        // A transaction in which a statement failed answers COMMIT with "ROLLBACK" and no error.
        const Answer committed(PQexec(connection.get(), "COMMIT"), &PQclear);
        if (!committed || std::string_view(PQcmdStatus(committed.get())) != "COMMIT")
            return database_error(connection.get(), committed.get());
        return {};
    }

    /// That a server went away is seen only when it is spoken to. Nothing was done yet, so a second connection may try.
    Result<void> begin_on(Connection& connection) {
        const bool open_before = connection && PQstatus(connection.get()) == CONNECTION_OK;
        if (open_before && PostgresSession(connection.get()).run("BEGIN", {})) return {};
        if (auto opened = open(connection); !opened) return opened;
        if (auto begun = PostgresSession(connection.get()).run("BEGIN", {}); !begun)
            return tl::make_unexpected(begun.error());
        return {};
    }

    Result<void> open(Connection& connection) {
        connection = Connection(PQconnectdb(url_.c_str()), &PQfinish);
        if (PQstatus(connection.get()) != CONNECTION_OK) return database_error(connection.get(), nullptr);
        PQsetNoticeProcessor(
            connection.get(), [](void*, const char*) {}, nullptr);  // "already exists" is no news
        // A server that answers before the disk has it would make receipts worthless.
        PostgresSession fresh(connection.get());
        auto safe = durable(fresh);
        if (!safe) connection.reset();
        return safe;
    }

    static Result<void> durable(PostgresSession& session) {
        for (const char* setting : {"SHOW fsync", "SHOW synchronous_commit"}) {
            auto rows = session.run(setting, {});
            if (!rows) return tl::make_unexpected(rows.error());
            const std::string value = to_text(rows->at(0).at(0));
            if (value == "off" || value == "local")
                return engine::fail(engine::ErrorCode::storage, "the database does not wait for the disk", setting);
        }
        return {};
    }

    Connection take() {
        std::unique_lock lock(mutex_);
        freed_.wait(lock, [this] { return free_ > 0; });
        --free_;
        Connection connection = std::move(idle_.back());
        idle_.pop_back();
        return connection;
    }
    void give_back(Connection connection) {
        {
            const std::lock_guard lock(mutex_);
            idle_.push_back(std::move(connection));
            ++free_;
        }
        freed_.notify_one();
    }

    std::string url_;
    std::mutex mutex_;
    std::condition_variable freed_;
    std::vector<Connection> idle_;
    std::size_t free_;
};

}  // namespace

Result<std::unique_ptr<Sql>> open_postgres(const std::string& url, std::size_t connections) {
    auto sql = std::make_unique<Postgres>(url, connections);
    if (auto reached = sql->transact([](SqlSession&) { return Result<void>(); }); !reached)
        return tl::make_unexpected(reached.error());
    return std::unique_ptr<Sql>(std::move(sql));
}

}  // namespace sillwalk::office
