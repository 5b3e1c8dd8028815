#pragma once
/// What waits for the office and what became of it. Rows are made by seal() and never deleted; a row that cannot go on
/// is parked and says why.

#include "app/bundle/digest.hpp"
#include "app/storage/database.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::app {

enum class OutboxKind { revision, blob };
enum class OutboxState { queued, sending, parked, done };

struct OutboxRow {
    std::int64_t id = 0;
    OutboxKind kind = OutboxKind::revision;
    Digest digest{};
    OutboxState state = OutboxState::queued;
    std::int64_t attempts = 0;
    std::string upload_url;          ///< path of an upload that was begun at the office; empty: none
    std::int64_t upload_offset = 0;  ///< bytes that the office has of it
    std::int64_t last_status = 0;    ///< of the office's last answer; 0: none came
    std::string last_error;          ///< language key of what stands in the way; empty: nothing
    friend bool operator==(const OutboxRow&, const OutboxRow&) = default;
};

/// In the order of sending: revisions first, so that the office has the facts though photos take a day; then by age.
[[nodiscard]] engine::Result<std::vector<OutboxRow>> list_outbox(Database& database);
[[nodiscard]] engine::Result<std::optional<OutboxRow>> next_in_outbox(Database& database);
[[nodiscard]] engine::Result<void> update_outbox(Database& database, const OutboxRow& row);
/// After a start: what was on its way is queued again. Sending twice is harmless.
[[nodiscard]] engine::Result<void> requeue_sending(Database& database);
/// A person wants parked rows tried again.
[[nodiscard]] engine::Result<void> requeue_parked(Database& database);
/// The office says that it has not got these after all, though it was done.
[[nodiscard]] engine::Result<void> requeue_done(Database& database, OutboxKind kind,
                                                const std::vector<Digest>& digests);

struct OutboxCount {
    std::int64_t waiting = 0, parked = 0, done = 0;
    friend bool operator==(const OutboxCount&, const OutboxCount&) = default;
};
[[nodiscard]] engine::Result<OutboxCount> count_outbox(Database& database);

/// The office's word that it has a revision. A later one of the same revision takes its place.
struct StoredReceipt {
    Digest digest{};
    std::string server;  ///< address of the office
    std::int64_t seq = 0;
    bool complete = false;  ///< all photos are there too
    bool fork = false;      ///< another state of the visit stands beside this one; the visit's row then says so
    std::string body;       ///< as it came, with its signature, which was checked
};
/// Stores the receipt and the row's new state in one transaction.
[[nodiscard]] engine::Result<void> store_receipt(Database& database, const StoredReceipt& receipt,
                                                 const OutboxRow* row = nullptr);
[[nodiscard]] engine::Result<std::optional<StoredReceipt>> load_receipt(Database& database, const Digest& digest);
/// Revisions whose newest receipt says that photos are missing.
[[nodiscard]] engine::Result<std::vector<Digest>> incomplete_receipts(Database& database);

}  // namespace sillwalk::app
