#pragma once
/// Sends what is in the outbox, one exchange a step. Where it stands after each step is on the disk, so it can be
/// stopped and killed at any instant. Neither clock nor random numbers of its own: both are passed in.

#include "app/storage/outbox.hpp"
#include "app/sync/delivery.hpp"
#include "app/sync/receipt.hpp"
#include "app/sync/sealed_envelope.hpp"

#include <functional>
#include <optional>
#include <set>
#include <string>

namespace sillwalk::app {

/// Runs the job where the database lives and waits: Writer::with_database, or at once.
using WithDatabase = std::function<void(const std::function<void(Database&)>&)>;

enum class SendPhase {
    all_sent,       ///< the outbox is empty but for what is parked
    busy,           ///< step again at once
    waiting,        ///< step again at `next_ms`
    not_enrolled,   ///< there is no office yet
    enrol_again,    ///< the office no longer knows this device; everything is kept
    storage_fault,  ///< the database did not take or give something
};

struct SendState {
    SendPhase phase = SendPhase::all_sent;
    std::int64_t next_ms = 0;
    std::string reason;   ///< language key of what stands in the way; empty: nothing
    engine::Error error;  ///< of a storage_fault
    std::uint64_t exchanges = 0;
};

/// A token that ends sooner is renewed once everything is sent.
inline constexpr std::int64_t renew_before_ms = std::int64_t{30} * 24 * 3600 * 1000;

struct SenderOptions {
    RetryLimits limits;
    std::function<double()> unit;  ///< uniform in [0, 1)
    std::function<std::int64_t()>
        utc_ms;  ///< the device's clock: noted beside what is put aside, and how old the token is
};

class Sender {
public:
    Sender(WithDatabase with_database, Transport& transport, SenderOptions options);

    /// At most one exchange. `now_ms` by a clock that never jumps.
    SendState step(std::int64_t now_ms);
    /// The network came up, or a person asked. A person's wish also takes up what was parked.
    void hurry(bool parked_too);

private:
    /// A row with its verified bytes and where its delivery stands.
    struct Load {
        OutboxRow row;
        Delivery delivery;
        std::string bytes;
    };

    [[nodiscard]] engine::Result<void> prepare(Database& database, bool& again);
    [[nodiscard]] engine::Result<void> open(Database& database);
    [[nodiscard]] engine::Result<void> load(Database& database, const OutboxRow& row, bool& again);
    [[nodiscard]] engine::Result<std::string> bytes_of(Database& database, const OutboxRow& row) const;
    [[nodiscard]] engine::Result<void> wanted_receipt(Database& database);
    void renew_if_old();
    SendState send_load(std::int64_t now_ms);
    SendState ask_receipt(std::int64_t now_ms);
    [[nodiscard]] std::optional<Receipt> receipt_in(const WireResult& result, const Digest& digest) const;
    [[nodiscard]] StoredReceipt stored(const Receipt& receipt, const std::string& body) const;
    /// Writes where the row stands; false where the database did not take it.
    bool write_down(const OutboxRow& row, const std::optional<Receipt>& receipt, const WireResult& result);
    SendState pause(const WireResult& result, std::int64_t now_ms, std::string reason);
    [[nodiscard]] SendState state(SendPhase phase, std::int64_t next_ms = 0) const;

    WithDatabase with_database_;
    Transport& transport_;
    SenderOptions options_;
    Pace pace_;
    bool opened_ = false, locked_out_ = false, renewal_tried_ = false;
    std::optional<DeviceIdentity> device_;
    std::optional<OfficeAccess> office_;
    std::optional<Load> load_;
    std::int64_t part_bytes_ = first_part_bytes;
    std::optional<Digest> receipt_wanted_;
    std::set<Digest> receipts_asked_;
    engine::Error storage_error_;
    std::string reason_;
    std::uint64_t exchanges_ = 0;
};

}  // namespace sillwalk::app
