#include "app/sync/sender.hpp"

#include "app/storage/quarantine.hpp"
#include "app/storage/survey_store.hpp"
#include "app/sync/enrol.hpp"

#include <utility>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr const char* why_damaged = "sync.why.damaged";
constexpr const char* why_no_receipt = "sync.why.no_receipt";
constexpr const char* why_lost = "sync.why.office_lost";

/// What a fault of the disk is, and not of what was stored.
bool is_of_the_disk(const engine::Error& error) {
    return error.code == ErrorCode::storage && !is_damage(error);
}

}  // namespace

Sender::Sender(WithDatabase with_database, Transport& transport, SenderOptions options)
    : with_database_(std::move(with_database)),
      transport_(transport),
      options_(std::move(options)),
      pace_(options_.limits) {}

SendState Sender::step(std::int64_t now_ms) {
    if (!pace_.may_try(now_ms)) return state(SendPhase::waiting, pace_.not_before_ms());
    bool again = false;
    Result<void> done;
    with_database_([&](Database& database) { done = prepare(database, again); });
    if (!done) {
        storage_error_ = done.error();
        pace_.failed(now_ms, options_.unit());
        return state(SendPhase::storage_fault, pace_.not_before_ms());
    }
    if (!office_) return state(SendPhase::not_enrolled);
    if (locked_out_) return state(SendPhase::enrol_again);
    if (again) return state(SendPhase::busy, now_ms);
    if (load_) return send_load(now_ms);
    if (receipt_wanted_) return ask_receipt(now_ms);
    reason_.clear();
    renew_if_old();
    return state(SendPhase::all_sent);
}

void Sender::renew_if_old() {
    if (renewal_tried_ || office_->expires_ms - options_.utc_ms() > renew_before_ms) return;
    renewal_tried_ = true;  // where it fails the present one still serves, and the next run tries again
    ++exchanges_;
    const auto fresh = renew_token(transport_, *office_);
    if (!fresh) return;
    Result<void> done;
    with_database_([&](Database& database) { done = store_office(database, *fresh); });
    if (done) office_ = *fresh;
}

void Sender::hurry(bool parked_too) {
    pace_.hurry();
    locked_out_ = false;
    opened_ = false;  // the office may be another one by now
    receipts_asked_.clear();
    if (!parked_too) return;
    with_database_([](Database& database) { (void)requeue_parked(database); });
}

Result<void> Sender::open(Database& database) {
    if (auto done = requeue_sending(database); !done) return done;
    auto device = load_device(database);
    if (!device) return tl::make_unexpected(device.error());
    auto office = load_office(database);
    if (!office) return tl::make_unexpected(office.error());
    device_ = std::move(*device);
    office_ = std::move(*office);
    load_.reset();
    opened_ = true;
    return {};
}

Result<void> Sender::prepare(Database& database, bool& again) {
    if (!opened_) {
        if (auto done = open(database); !done) return done;
    }
    if (!office_ || locked_out_) return {};
    const auto row = next_in_outbox(database);
    if (!row) return tl::make_unexpected(row.error());
    if (!*row) {
        load_.reset();
        return wanted_receipt(database);
    }
    if (load_ && load_->row.id == (*row)->id) return {};
    return load(database, **row, again);
}

Result<std::string> Sender::bytes_of(Database& database, const OutboxRow& row) const {
    if (row.kind == OutboxKind::blob) return load_photo(database, row.digest);
    const auto revision = load_revision(database, row.digest);
    if (!revision) return tl::make_unexpected(revision.error());
    return envelope_of(row.digest, *revision, device_.value_or(DeviceIdentity{}), office_);
}

Result<void> Sender::load(Database& database, const OutboxRow& row, bool& again) {
    load_.reset();
    auto bytes = bytes_of(database, row);
    if (!bytes && is_of_the_disk(bytes.error())) return tl::make_unexpected(bytes.error());
    OutboxRow changed = row;
    if (!bytes) {  // damaged on the disk: it must not reach the office, and it must not be lost
        (void)put_aside_damaged(database, row.digest, options_.utc_ms());
        changed.state = OutboxState::parked;
        changed.last_error = why_damaged;
        again = true;
        return update_outbox(database, changed);
    }
    changed.state = OutboxState::sending;
    if (auto done = update_outbox(database, changed); !done) return done;
    const auto size = static_cast<std::int64_t>(bytes->size());
    Delivery delivery{
        row.kind, row.digest, size, part_bytes_, row.upload_url, row.upload_offset, row.upload_url.empty()};
    if (delivery.offset >= size) {
        delivery.upload_path.clear();
        delivery.offset = 0;
        delivery.offset_known = true;
    }
    load_ = Load{std::move(changed), std::move(delivery), std::move(*bytes)};
    return {};
}

Result<void> Sender::wanted_receipt(Database& database) {
    receipt_wanted_.reset();
    const auto incomplete = incomplete_receipts(database);
    if (!incomplete) return tl::make_unexpected(incomplete.error());
    for (const Digest& digest : *incomplete) {
        if (receipts_asked_.count(digest) != 0) continue;
        receipt_wanted_ = digest;
        break;
    }
    return {};
}

std::optional<Receipt> Sender::receipt_in(const WireResult& result, const Digest& digest) const {
    if (!result) return std::nullopt;
    auto receipt = read_receipt(result->body, digest, office_->key_id, office_->public_key);
    if (!receipt) return std::nullopt;
    return std::move(*receipt);
}

StoredReceipt Sender::stored(const Receipt& receipt, const std::string& body) const {
    return {receipt.digest, office_->url, receipt.seq, receipt.complete, receipt.fork, body};
}

SendState Sender::send_load(std::int64_t now_ms) {
    Delivery& delivery = load_->delivery;
    const Asked asked = next_question(delivery);
    const WireResult result = transport_.send(next_request(delivery, load_->bytes, office_->token));
    ++exchanges_;
    Fate fate = take_answer(delivery, asked, result);
    part_bytes_ = delivery.part_bytes;
    std::string reason = reason_of(asked, result);
    std::optional<Receipt> receipt;
    if (fate == Fate::stored && asked == Asked::revision) {
        receipt = receipt_in(result, delivery.digest);
        if (!receipt) fate = Fate::back_off;
    }
    if (fate == Fate::back_off && reason.empty()) reason = why_no_receipt;

    OutboxRow row = load_->row;
    ++row.attempts;
    row.last_status = result ? result->status : 0;
    row.last_error = fate == Fate::stored ? std::string() : reason;
    row.upload_url = delivery.upload_path;
    row.upload_offset = delivery.offset;
    if (fate == Fate::stored) row.state = OutboxState::done;
    if (fate == Fate::park) row.state = OutboxState::parked;
    if (fate == Fate::enrol_again) row.state = OutboxState::queued;
    load_->row = row;
    if (!write_down(row, receipt, result)) {
        load_.reset();  // what the disk says counts; sending again is harmless
        pace_.failed(now_ms, options_.unit());
        return state(SendPhase::storage_fault, pace_.not_before_ms());
    }
    if (row.state != OutboxState::sending) load_.reset();

    if (fate == Fate::enrol_again) {
        locked_out_ = true;
        reason_ = reason;
        return state(SendPhase::enrol_again);
    }
    const bool anew = fate == Fate::begin_anew || (fate == Fate::seek && asked == Asked::append);
    if (fate == Fate::back_off || anew) return pause(result, now_ms, std::move(reason));
    pace_.succeeded();
    reason_.clear();
    return state(SendPhase::busy, now_ms);
}

bool Sender::write_down(const OutboxRow& row, const std::optional<Receipt>& receipt, const WireResult& result) {
    Result<void> done;
    with_database_([&](Database& database) {
        done = receipt ? store_receipt(database, stored(*receipt, result->body), &row) : update_outbox(database, row);
    });
    if (!done) storage_error_ = done.error();
    return done.has_value();
}

SendState Sender::ask_receipt(std::int64_t now_ms) {
    const Digest digest = *receipt_wanted_;
    const WireResult result =
        transport_.send({"GET", "/v1/receipts/" + to_hex(digest), {{"Authorization", "Bearer " + office_->token}}, {}});
    ++exchanges_;
    const Fate fate = fate_of(Asked::receipt, result);
    if (fate == Fate::enrol_again) {
        locked_out_ = true;
        reason_ = reason_of(Asked::receipt, result);
        return state(SendPhase::enrol_again);
    }
    const bool unknown = result && result->status == 404;
    const auto receipt = fate == Fate::stored ? receipt_in(result, digest) : std::nullopt;
    if (!receipt && !unknown) {
        std::string reason = reason_of(Asked::receipt, result);
        return pause(result, now_ms, reason.empty() ? why_no_receipt : std::move(reason));
    }
    receipts_asked_.insert(digest);
    Result<void> done;
    with_database_([&](Database& database) {
        if (unknown) {  // the office was set back to an older state: it gets the revision again
            done = requeue_done(database, OutboxKind::revision, {digest});
            return;
        }
        done = store_receipt(database, stored(*receipt, result->body));
        if (done && !receipt->missing_blobs.empty())
            done = requeue_done(database, OutboxKind::blob, receipt->missing_blobs);
    });
    receipt_wanted_.reset();
    if (!done) {
        storage_error_ = done.error();
        pace_.failed(now_ms, options_.unit());
        return state(SendPhase::storage_fault, pace_.not_before_ms());
    }
    pace_.succeeded();
    reason_ = unknown ? why_lost : "";
    return state(SendPhase::busy, now_ms);
}

SendState Sender::pause(const WireResult& result, std::int64_t now_ms, std::string reason) {
    const auto asked_s = result ? retry_after_s(result->header("Retry-After")) : std::nullopt;
    pace_.failed(now_ms, options_.unit(), asked_s);
    reason_ = std::move(reason);
    return state(SendPhase::waiting, pace_.not_before_ms());
}

SendState Sender::state(SendPhase phase, std::int64_t next_ms) const {
    return {phase, next_ms, reason_, phase == SendPhase::storage_fault ? storage_error_ : engine::Error{}, exchanges_};
}

}  // namespace sillwalk::app
