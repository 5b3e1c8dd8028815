#include "app/storage/writer.hpp"

#include "app/storage/backup.hpp"
#include "app/storage/schema.hpp"

#include <chrono>
#include <utility>

namespace sillwalk::app {

using engine::Result;

namespace {

Result<KeptDatabase> open_plain(const std::string& path) {
    auto database = Database::open(path);
    if (!database) return tl::make_unexpected(database.error());
    if (auto done = migrate(*database); !done) return tl::make_unexpected(done.error());
    return KeptDatabase{std::move(*database), Found::clean, {}};
}

}  // namespace

Result<std::unique_ptr<Writer>> Writer::open(const std::string& path, WriterOptions options) {
    options.keep = options.keep && path != ":memory:";
    auto kept = options.keep ? open_kept(path) : open_plain(path);
    if (!kept) return tl::make_unexpected(kept.error());
    return std::unique_ptr<Writer>(new Writer(std::move(*kept), path, std::move(options)));
}

Writer::Writer(KeptDatabase kept, std::string path, WriterOptions options)
    : options_(std::move(options)),
      path_(std::move(path)),
      found_(kept.found),
      aside_(std::move(kept.aside)),
      ballast_(path_, options_.ballast),
      database_(std::move(kept.database)) {
    if (options_.keep) ballast_.keep();
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
    // Where the disk refuses even this, the next start checks the file: more than needed, never less.
    if (options_.keep) (void)mark_closed(database_);
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
    const auto done = write_batch(batch);
    lock.lock();
    state_.reserve_used = options_.keep && !ballast_.there();
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

Result<void> Writer::write_batch(const std::vector<StoreCommand>& batch) {
    auto done = apply_all(database_, batch);
    const bool full = !done && done.error().where == "full";
    if (full && options_.keep && ballast_.drop()) done = apply_all(database_, batch);
    return done;
}

Result<void> Writer::seal_and_copy(Database& database, const SealOrder& order) {
    {
        const std::lock_guard lock(mutex_);
        if (state_.durable != state_.submitted)
            return engine::fail(engine::ErrorCode::storage, "the last readings are not on the disk yet", path_);
    }
    auto done = app::seal(database, order);
    const bool full = !done && done.error().where == "full";
    if (full && options_.keep && ballast_.drop()) done = app::seal(database, order);
    if (!done || !options_.keep) return done;
    const auto copied = back_up(database, path_);
    const bool reserve = ballast_.keep();  // there may be room again
    const std::lock_guard lock(mutex_);
    state_.backup_error = copied ? engine::Error{} : copied.error();
    state_.reserve_used = !reserve;
    return done;
}

Result<void> Writer::seal(const SealOrder& order) {
    Result<void> done;
    with_database([&](Database& database) { done = seal_and_copy(database, order); });
    return done;
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
        lock.unlock();
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
