#include "app/storage/writer.hpp"

#include "app/storage/schema.hpp"

#include <chrono>
#include <utility>

namespace sillwalk::app {

using engine::Result;

Result<std::unique_ptr<Writer>> Writer::open(const std::string& path, WriterOptions options) {
    auto database = Database::open(path);
    if (!database) return tl::make_unexpected(database.error());
    if (auto done = migrate(*database); !done) return tl::make_unexpected(done.error());
    return std::unique_ptr<Writer>(new Writer(std::move(*database), std::move(options)));
}

Writer::Writer(Database database, WriterOptions options)
    : options_(std::move(options)), database_(std::move(database)) {
    if (options_.own_thread) thread_ = std::thread([this] { loop(); });
}

Writer::~Writer() {
    {
        const std::lock_guard lock(mutex_);
        closing_ = true;
    }
    work_.notify_all();
    if (thread_.joinable()) {
        thread_.join();
    } else {
        pump();
    }
}

std::uint64_t Writer::submit(StoreCommand command) {
    std::uint64_t ticket = 0;
    {
        const std::lock_guard lock(mutex_);
        if (queue_.size() >= options_.queue_limit) return 0;
        queue_.push_back(std::move(command));
        ticket = ++state_.submitted;
        try_again_ = true;
    }
    work_.notify_one();
    return ticket;
}

WriterState Writer::state() const {
    const std::lock_guard lock(mutex_);
    return state_;
}

void Writer::retry() {
    {
        const std::lock_guard lock(mutex_);
        try_again_ = true;
    }
    work_.notify_one();
}

bool Writer::flush(int milliseconds) {
    if (!thread_.joinable()) pump();
    std::unique_lock lock(mutex_);
    const auto settled = [this] { return !writing_ && (queue_.empty() || (state_.refused && !try_again_)); };
    idle_.wait_for(lock, std::chrono::milliseconds(milliseconds), settled);
    return state_.durable == state_.submitted;
}

void Writer::pump() {
    std::unique_lock lock(mutex_);
    write_waiting(lock);
}

void Writer::write_waiting(std::unique_lock<std::mutex>& lock) {
    if (queue_.empty()) return;
    try_again_ = false;
    writing_ = true;
    const std::vector<StoreCommand> batch(queue_.begin(), queue_.end());
    lock.unlock();
    const auto done = apply_all(database_, batch);
    lock.lock();
    state_.refused = !done;
    state_.error = done ? engine::Error{} : done.error();
    if (done) {
        queue_.erase(queue_.begin(), queue_.begin() + static_cast<std::ptrdiff_t>(batch.size()));
        state_.durable += batch.size();
    }
    if (options_.on_change) {
        lock.unlock();
        options_.on_change();
        lock.lock();
    }
    writing_ = false;  // only now: who waits in flush() finds the change told
    idle_.notify_all();
}

void Writer::loop() {
    std::unique_lock lock(mutex_);
    for (;;) {
        work_.wait(lock, [this] { return closing_ || !jobs_.empty() || (try_again_ && !queue_.empty()); });
        if (!queue_.empty() && (try_again_ || closing_)) write_waiting(lock);
        while (!jobs_.empty()) {
            const auto* job = jobs_.front();
            lock.unlock();
            (*job)(database_);
            lock.lock();
            jobs_.pop_front();
            idle_.notify_all();
        }
        const bool stuck = state_.refused && !try_again_;
        if (closing_ && (queue_.empty() || stuck)) return;
    }
}

void Writer::with_database(const std::function<void(Database&)>& job) {
    std::unique_lock lock(mutex_);
    if (!thread_.joinable()) {
        write_waiting(lock);
        job(database_);
        return;
    }
    jobs_.push_back(&job);
    work_.notify_one();
    idle_.wait(lock, [&] {
        for (const auto* waiting : jobs_) {
            if (waiting == &job) return false;
        }
        return true;
    });
}

Result<std::vector<VisitRow>> Writer::visits() {
    Result<std::vector<VisitRow>> rows;
    with_database([&](Database& database) { rows = list_visits(database); });
    return rows;
}
Result<StoredVisit> Writer::visit(const std::string& survey_id) {
    Result<StoredVisit> stored;
    with_database([&](Database& database) { stored = load_visit(database, survey_id); });
    return stored;
}
Result<std::string> Writer::photo(const Digest& sha256) {
    Result<std::string> bytes;
    with_database([&](Database& database) { bytes = load_photo(database, sha256); });
    return bytes;
}
Result<std::map<std::string, std::string>> Writer::settings() {
    Result<std::map<std::string, std::string>> all;
    with_database([&](Database& database) { all = load_settings(database); });
    return all;
}

}  // namespace sillwalk::app
