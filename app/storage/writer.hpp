#pragma once
/// The one thread that owns the database. Commands go in through a bounded queue and come back as acknowledgements once
/// they are on the disk; whoever submits never waits. Commands that wait together are committed together. A refused
/// batch (full disk) is kept and tried again with the next command or retry(); until then state() says so.

#include "app/storage/ballast.hpp"
#include "app/storage/keeper.hpp"
#include "app/storage/seal.hpp"
#include "app/storage/survey_store.hpp"

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace sillwalk::app {

struct WriterOptions {
    std::size_t queue_limit = 1024;
    bool own_thread = true;           ///< false where there are no threads: pump() writes
    std::function<void()> on_change;  ///< called on the writer's thread after each batch, to wake the frame loop
    bool keep = false;                ///< look after the file: open_kept(), copies after each seal, space in reserve
    std::int64_t ballast = ballast_bytes;
};

struct WriterState {
    std::uint64_t submitted = 0, durable = 0;  ///< tickets; equal when everything is on the disk
    bool refused = false;                      ///< the last batch could not be written
    engine::Error error;                       ///< why, while refused
    bool reserve_used = false;                 ///< the disk was full and the space in reserve was given back
    engine::Error backup_error{};              ///< why the last copy failed; an empty message: it did not
};

class Writer {
public:
    [[nodiscard]] static engine::Result<std::unique_ptr<Writer>> open(const std::string& path, WriterOptions options);
    /// Writes what is waiting (as far as the disk takes it) and closes.
    ~Writer();
    Writer(const Writer&) = delete;
    Writer& operator=(const Writer&) = delete;

    /// The ticket, or 0 where the queue is full: then nothing was taken.
    [[nodiscard]] std::uint64_t submit(StoreCommand command);
    [[nodiscard]] WriterState state() const;
    void retry();
    /// Seals once everything submitted is on the disk, then copies the file. Waits; storage where edits could not be
    /// written. A copy that fails is told in state() and undoes nothing.
    [[nodiscard]] engine::Result<void> seal(const SealOrder& order);
    [[nodiscard]] Found found() const { return found_; }
    /// Where a damaged file was put when this one was opened; empty: none was.
    [[nodiscard]] const std::string& aside() const { return aside_; }
    /// Waits until everything is durable or refused, at most `milliseconds`. For leaving the program or being sent to
    /// sleep.
    bool flush(int milliseconds);
    /// Without a thread of its own: writes what is waiting.
    void pump();

    // Reading runs on the writer's thread between batches; the caller waits. At start and when a visit is opened only.
    [[nodiscard]] engine::Result<std::vector<VisitRow>> visits();
    [[nodiscard]] engine::Result<StoredVisit> visit(const std::string& survey_id);
    [[nodiscard]] engine::Result<std::map<std::string, std::string>> settings();
    /// From any thread but the writer's own; it waits.
    [[nodiscard]] engine::Result<std::string> photo(const Digest& sha256);
    /// Runs `job` with the database on the writer's thread and waits: maintenance and tests.
    void with_database(const std::function<void(Database&)>& job);

private:
    Writer(KeptDatabase kept, std::string path, WriterOptions options);
    void loop();
    [[nodiscard]] engine::Result<void> write_batch(const std::vector<StoreCommand>& batch);
    [[nodiscard]] engine::Result<void> seal_and_copy(Database& database, const SealOrder& order);
    void write_waiting(std::unique_lock<std::mutex>& lock);

    WriterOptions options_;
    std::string path_;
    Found found_;
    std::string aside_;
    Ballast ballast_;  ///< writer's thread only
    Database database_;
    mutable std::mutex mutex_;
    std::condition_variable work_, idle_;
    std::deque<StoreCommand> queue_;
    std::deque<const std::function<void(Database&)>*> jobs_;
    WriterState state_;
    bool try_again_ = false, closing_ = false;
    bool writing_ = false;  ///< a batch is on its way to the disk; the old state does not tell of it
    std::thread thread_;
};

}  // namespace sillwalk::app
