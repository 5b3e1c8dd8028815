#include "app/office/sql.hpp"
#include "app/storage/database.hpp"

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <map>
#include <mutex>
#include <thread>
#include <utility>

namespace sillwalk::office {

namespace {

/// Enough to share one flush of the disk, few enough that the first does not wait long for the last.
constexpr std::size_t greatest_batch = 128;

class SqliteSession : public SqlSession {
public:
    explicit SqliteSession(app::Database& database) : database_(database) {}

    Result<SqlRows> run(std::string_view sql, const std::vector<SqlValue>& values) override {
        auto found = statements_.find(sql);
        if (found == statements_.end()) {
            auto prepared = database_.prepare(sql);
            if (!prepared) return tl::make_unexpected(prepared.error());
            found = statements_.emplace(std::string(sql), std::move(*prepared)).first;
        }
        app::Statement& statement = found->second;
        for (std::size_t i = 0; i < values.size(); ++i) bind(statement, static_cast<int>(i) + 1, values[i]);
        SqlRows rows;
        const int columns = statement.columns();
        for (;;) {
            const auto more = statement.step();
            if (!more || !*more) {
                statement.reset();
                if (!more) return tl::make_unexpected(more.error());
                return rows;
            }
            SqlRow& row = rows.emplace_back();
            for (int column = 0; column < columns; ++column) row.push_back(statement.optional_text(column));
        }
    }
    bool shared() const override { return false; }

private:
    static void bind(app::Statement& statement, int parameter, const SqlValue& value) {
        if (const auto* text = std::get_if<std::string>(&value)) {
            statement.bind(parameter, std::string_view(*text));
        } else if (const auto* number = std::get_if<std::int64_t>(&value)) {
            statement.bind(parameter, *number);
        } else {
            statement.bind_null(parameter);
        }
    }

    app::Database& database_;
    std::map<std::string, app::Statement, std::less<>> statements_;
};

class Sqlite : public Sql {
public:
    explicit Sqlite(app::Database database) : database_(std::move(database)), thread_([this] { loop(); }) {}
    ~Sqlite() override {
        {
            const std::lock_guard lock(mutex_);
            closing_ = true;
        }
        work_.notify_all();
        thread_.join();
    }

    Result<void> transact(const SqlWork& work) override {
        Job job{&work, {}, false};
        std::unique_lock lock(mutex_);
        jobs_.push_back(&job);
        work_.notify_one();
        done_.wait(lock, [&] { return job.done; });
        return job.result;
    }
    bool shared() const override { return false; }

private:
    struct Job {
        const SqlWork* work;
        Result<void> result;
        bool done;
    };

    void loop() {
        SqliteSession session(database_);
        std::unique_lock lock(mutex_);
        for (;;) {
            work_.wait(lock, [this] { return closing_ || !jobs_.empty(); });
            if (jobs_.empty()) return;
            const auto count = static_cast<std::ptrdiff_t>(std::min(jobs_.size(), greatest_batch));
            const std::vector<Job*> batch(jobs_.begin(), jobs_.begin() + count);
            jobs_.erase(jobs_.begin(), jobs_.begin() + count);
            lock.unlock();
            run_together(session, batch);
            lock.lock();
            for (Job* job : batch) job->done = true;
            done_.notify_all();
        }
    }

    /// Each job stands alone within the one transaction: a job that fails is undone and the others are kept.
    void run_together(SqliteSession& session, const std::vector<Job*>& batch) {
        auto transaction = database_.begin();
        if (!transaction) return fail_all(batch, transaction.error());
        for (Job* job : batch) {
            if (auto opened = database_.execute("SAVEPOINT job"); !opened) return fail_all(batch, opened.error());
            job->result = (*job->work)(session);
            // After a full disk the whole transaction is gone already, and with it what earlier jobs did.
            if (!database_.in_transaction()) return fail_all(batch, lost());
            const char* end = job->result ? "RELEASE job" : "ROLLBACK TO job; RELEASE job";
            if (auto closed = database_.execute(end); !closed) return fail_all(batch, closed.error());
        }
        if (auto committed = transaction->commit(); !committed) fail_all(batch, committed.error());
    }

    static engine::Error lost() { return {engine::ErrorCode::storage, "the storage refused to write", "full"}; }
    static void fail_all(const std::vector<Job*>& batch, const engine::Error& error) {
        for (Job* job : batch) job->result = tl::make_unexpected(error);
    }

    app::Database database_;
    std::mutex mutex_;
    std::condition_variable work_, done_;
    std::deque<Job*> jobs_;
    bool closing_ = false;
    std::thread thread_;
};

}  // namespace

Result<std::unique_ptr<Sql>> open_sqlite(const std::string& path) {
    auto database = app::Database::open(path);
    if (!database) return tl::make_unexpected(database.error());
    return std::unique_ptr<Sql>(new Sqlite(std::move(*database)));
}

}  // namespace sillwalk::office
