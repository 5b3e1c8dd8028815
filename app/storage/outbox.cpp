#include "app/storage/outbox.hpp"

#include "app/storage/rows.hpp"

namespace sillwalk::app {

using engine::Result;

namespace {

constexpr const char* state_names[] = {"queued", "sending", "parked", "done"};
constexpr const char* columns =
    "SELECT id, kind, digest, state, attempts, upload_url, upload_offset, last_status, last_error FROM outbox ";
constexpr const char* order = " ORDER BY kind='blob', id";

OutboxState state_from(const std::string& name) {
    for (int i = 0; i < 4; ++i) {
        if (name == state_names[i]) return static_cast<OutboxState>(i);
    }
    return OutboxState::parked;
}

OutboxRow row_at(const Statement& row, const Digest& digest) {
    return {row.integer(0), row.text(1) == "blob" ? OutboxKind::blob : OutboxKind::revision,
            digest,         state_from(row.text(3)),
            row.integer(4), row.text(5),
            row.integer(6), row.integer(7),
            row.text(8)};
}

Result<std::vector<OutboxRow>> read_rows(Database& database, const std::string& condition) {
    auto rows = database.prepare(columns + condition);
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<OutboxRow> out;
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return out;
        const auto digest = digest_at(*rows, 2);
        if (!digest) return engine::fail(engine::ErrorCode::disagreement, "a name in the outbox is damaged");
        out.push_back(row_at(*rows, *digest));
    }
}

Result<void> write_row(Database& database, const OutboxRow& row) {
    auto statement = database.prepare(
        "UPDATE outbox SET state=?2, attempts=?3, upload_url=?4, upload_offset=?5, last_status=?6, last_error=?7 "
        "WHERE id=?1");
    if (!statement) return tl::make_unexpected(statement.error());
    statement->bind(1, row.id).bind(2, state_names[static_cast<int>(row.state)]).bind(3, row.attempts);
    statement->bind(4, row.upload_url).bind(5, row.upload_offset).bind(6, row.last_status).bind(7, row.last_error);
    return statement->run();
}

Result<void> write_receipt(Database& database, const StoredReceipt& receipt) {
    auto statement = database.prepare(
        "INSERT INTO receipt(digest, server, seq, complete, body) VALUES(?1, ?2, ?3, ?4, ?5) "
        "ON CONFLICT(digest) DO UPDATE SET server=?2, seq=?3, complete=?4, body=?5");
    if (!statement) return tl::make_unexpected(statement.error());
    statement->bind_bytes(1, byte_view(receipt.digest)).bind(2, receipt.server).bind(3, receipt.seq);
    statement->bind(4, std::int64_t{receipt.complete}).bind_bytes(5, receipt.body);
    if (auto done = statement->run(); !done) return done;
    return run_with(database,
                    receipt.fork ? "UPDATE survey SET state='forked' WHERE state='sealed' AND base_digest=?1"
                                 : "UPDATE survey SET state='sealed' WHERE state='forked' AND base_digest=?1",
                    receipt.digest);
}

}  // namespace

Result<std::vector<OutboxRow>> list_outbox(Database& database) {
    return read_rows(database, order);
}

Result<std::optional<OutboxRow>> next_in_outbox(Database& database) {
    auto rows = read_rows(database, std::string("WHERE state IN('queued','sending')") + order + " LIMIT 1");
    if (!rows) return tl::make_unexpected(rows.error());
    if (rows->empty()) return std::optional<OutboxRow>();
    return std::optional<OutboxRow>(std::move(rows->front()));
}

Result<void> update_outbox(Database& database, const OutboxRow& row) {
    return write_row(database, row);
}

Result<void> requeue_sending(Database& database) {
    return database.execute("UPDATE outbox SET state='queued' WHERE state='sending'");
}

Result<void> requeue_parked(Database& database) {
    return database.execute("UPDATE outbox SET state='queued', attempts=0, last_error='' WHERE state='parked'");
}

Result<void> requeue_done(Database& database, OutboxKind kind, const std::vector<Digest>& digests) {
    auto transaction = database.begin();
    if (!transaction) return tl::make_unexpected(transaction.error());
    const std::string sql = std::string("UPDATE outbox SET state='queued', upload_url='', upload_offset=0 ") +
                            (kind == OutboxKind::blob ? "WHERE kind='blob'" : "WHERE kind='revision'") +
                            " AND digest=?1 AND state='done'";
    for (const Digest& digest : digests) {
        if (auto done = run_with(database, sql, digest); !done) return done;
    }
    return transaction->commit();
}

Result<OutboxCount> count_outbox(Database& database) {
    auto rows = database.prepare("SELECT state, count(*) FROM outbox GROUP BY state");
    if (!rows) return tl::make_unexpected(rows.error());
    OutboxCount count;
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return count;
        const OutboxState state = state_from(rows->text(0));
        std::int64_t& sum = state == OutboxState::done     ? count.done
                            : state == OutboxState::parked ? count.parked
                                                           : count.waiting;
        sum += rows->integer(1);
    }
}

Result<void> store_receipt(Database& database, const StoredReceipt& receipt, const OutboxRow* row) {
    auto transaction = database.begin();
    if (!transaction) return tl::make_unexpected(transaction.error());
    if (auto done = write_receipt(database, receipt); !done) return done;
    if (row != nullptr) {
        if (auto done = write_row(database, *row); !done) return done;
    }
    return transaction->commit();
}

Result<std::optional<StoredReceipt>> load_receipt(Database& database, const Digest& digest) {
    auto row = database.prepare("SELECT server, seq, complete, body FROM receipt WHERE digest=?1");
    if (!row) return tl::make_unexpected(row.error());
    row->bind_bytes(1, byte_view(digest));
    const auto found = row->step();
    if (!found) return tl::make_unexpected(found.error());
    if (!*found) return std::optional<StoredReceipt>();
    return std::optional<StoredReceipt>(
        StoredReceipt{digest, row->text(0), row->integer(1), row->integer(2) != 0, false, row->bytes(3)});
}

Result<std::vector<Digest>> incomplete_receipts(Database& database) {
    auto rows = database.prepare("SELECT digest FROM receipt WHERE complete=0 ORDER BY seq, digest");
    if (!rows) return tl::make_unexpected(rows.error());
    return read_digests(*rows);
}

}  // namespace sillwalk::app
