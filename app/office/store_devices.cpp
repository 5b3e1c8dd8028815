#include "app/office/secret.hpp"
#include "app/office/store.hpp"

namespace sillwalk::office {

namespace {

constexpr const char* device_columns =
    "SELECT id, name, public_key, created_ms, seen_ms, expires_ms, revoked_ms FROM device ";

Device device_of(const SqlRow& row) {
    return {to_text(row[0]),    to_text(row[1]),    to_text(row[2]),   to_integer(row[3]),
            to_integer(row[4]), to_integer(row[5]), to_integer(row[6])};
}

Person person_of(const SqlRow& row) {
    return {to_text(row[0]), to_text(row[1]), to_integer(row[2]), to_integer(row[3])};
}

Caller judged(Device device, std::int64_t now) {
    const Access access = device.revoked_ms != 0    ? Access::revoked
                          : device.expires_ms < now ? Access::expired
                                                    : Access::granted;
    return {access, std::move(device)};
}

Result<void> ignoring_rows(const Result<SqlRows>& rows) {
    if (!rows) return tl::make_unexpected(rows.error());
    return {};
}

}  // namespace

Result<std::string> Store::new_enrolment(const std::string& label) {
    const std::string code = new_code();
    auto put = query("INSERT INTO enrolment_code(hash, label, expires_ms) VALUES(?1, ?2, ?3)",
                     {secret_hash(plain_code(code)), label, now_ms() + code_lifetime_ms});
    if (!put) return tl::make_unexpected(put.error());
    return code;
}

Result<Enrolled> Store::enrol(const std::string& code, const std::string& public_key_hex, const std::string& name) {
    const std::int64_t now = now_ms();
    Enrolled out{new_id(now), new_token(), now + token_lifetime_ms};
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        // Deleting is what makes a code good for once: of two that bring it only one gets a row back.
        auto used = session.run("DELETE FROM enrolment_code WHERE hash = ?1 RETURNING expires_ms",
                                {secret_hash(plain_code(code))});
        auto row = only_row(used, "enrolment code");
        if (!row) return tl::make_unexpected(row.error());
        if (to_integer(row->at(0)) < now)
            return engine::fail(engine::ErrorCode::not_found, "the enrolment code is too old", "enrolment code");
        return ignoring_rows(
            session.run("INSERT INTO device(id, name, public_key, token_hash, created_ms, seen_ms, "
                        "expires_ms) VALUES(?1, ?2, ?3, ?4, ?5, ?5, ?6)",
                        {out.device_id, name, public_key_hex, secret_hash(out.token), now, out.expires_ms}));
    });
    if (!done) return tl::make_unexpected(done.error());
    return out;
}

Result<Caller> Store::caller(const std::string& token) {
    const std::int64_t now = now_ms();
    const std::string hash = secret_hash(token);
    {
        const std::lock_guard lock(callers_mutex_);
        const auto known = callers_.find(hash);
        if (known != callers_.end() && known->second.seen_ms + minute_ms > now) return judged(known->second, now);
    }
    Caller caller;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        auto rows = session.run(std::string(device_columns) + "WHERE token_hash = ?1 OR next_token_hash = ?1", {hash});
        if (!rows) return tl::make_unexpected(rows.error());
        if (rows->empty()) return {};
        caller = judged(device_of(rows->front()), now);
        if (caller.access != Access::granted) return {};
        if (caller.device.seen_ms + minute_ms <= now) {
            auto seen = session.run("UPDATE device SET seen_ms = ?2 WHERE id = ?1", {caller.device.id, now});
            if (!seen) return tl::make_unexpected(seen.error());
            caller.device.seen_ms = now;
        }
        // The first use of a new token ends the old one.
        return ignoring_rows(
            session.run("UPDATE device SET token_hash = ?1, next_token_hash = NULL WHERE "
                        "next_token_hash = ?1",
                        {hash}));
    });
    if (!done) return tl::make_unexpected(done.error());
    if (caller.access == Access::granted && !sql_->shared()) {
        const std::lock_guard lock(callers_mutex_);
        for (auto old = callers_.begin(); old != callers_.end();) {
            old = old->second.id == caller.device.id ? callers_.erase(old) : std::next(old);
        }
        callers_[hash] = caller.device;
    }
    return caller;
}

void Store::forget_callers() {
    const std::lock_guard lock(callers_mutex_);
    callers_.clear();
}

Result<Enrolled> Store::rotate(const Device& device) {
    Enrolled out{device.id, new_token(), now_ms() + token_lifetime_ms};
    auto put = query("UPDATE device SET next_token_hash = ?2, expires_ms = ?3 WHERE id = ?1 AND revoked_ms IS NULL",
                     {device.id, secret_hash(out.token), out.expires_ms});
    forget_callers();
    if (!put) return tl::make_unexpected(put.error());
    return out;
}

Result<std::vector<Device>> Store::devices() {
    auto rows = query(std::string(device_columns) + "ORDER BY created_ms, id");
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<Device> out;
    for (const SqlRow& row : *rows) out.push_back(device_of(row));
    return out;
}

Result<void> Store::revoke(const std::string& id) {
    bool found = false;
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        for (const char* statement : {"UPDATE device SET revoked_ms = ?2 WHERE id = ?1 RETURNING id",
                                      "UPDATE person SET revoked_ms = ?2 WHERE id = ?1 RETURNING id"}) {
            auto rows = session.run(statement, {id, now_ms()});
            if (!rows) return tl::make_unexpected(rows.error());
            found = found || !rows->empty();
        }
        return ignoring_rows(session.run("DELETE FROM login WHERE person_id = ?1", {id}));
    });
    forget_callers();
    if (!done) return done;
    if (!found) return engine::fail(engine::ErrorCode::not_found, "no device or person has this id", id);
    return {};
}

Result<std::string> Store::new_person(const std::string& name) {
    const std::string code = new_code();
    auto put = query("INSERT INTO person(id, name, code_hash, created_ms) VALUES(?1, ?2, ?3, ?4)",
                     {new_id(now_ms()), name, secret_hash(plain_code(code)), now_ms()});
    if (!put) return tl::make_unexpected(put.error());
    return code;
}

Result<std::vector<Person>> Store::people() {
    auto rows = query("SELECT id, name, created_ms, revoked_ms FROM person ORDER BY created_ms, id");
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<Person> out;
    for (const SqlRow& row : *rows) out.push_back(person_of(row));
    return out;
}

Result<std::string> Store::log_in(const std::string& code) {
    auto row = only_row(
        query("SELECT id FROM person WHERE code_hash = ?1 AND revoked_ms IS NULL", {secret_hash(plain_code(code))}),
        "login code");
    if (!row) return tl::make_unexpected(row.error());
    const std::string login = new_token();
    const std::int64_t now = now_ms();
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        auto old = session.run("DELETE FROM login WHERE expires_ms < ?1", {now});
        if (!old) return tl::make_unexpected(old.error());
        return ignoring_rows(session.run("INSERT INTO login(hash, person_id, expires_ms) VALUES(?1, ?2, ?3)",
                                         {secret_hash(login), to_text(row->at(0)), now + login_lifetime_ms}));
    });
    if (!done) return tl::make_unexpected(done.error());
    return login;
}

Result<Person> Store::logged_in(const std::string& login) {
    auto row = only_row(query("SELECT p.id, p.name, p.created_ms, p.revoked_ms FROM login l JOIN person p ON p.id = "
                              "l.person_id WHERE l.hash = ?1 AND l.expires_ms >= ?2 AND p.revoked_ms IS NULL",
                              {secret_hash(login), now_ms()}),
                        "login");
    if (!row) return tl::make_unexpected(row.error());
    return person_of(*row);
}

Result<void> Store::log_out(const std::string& login) {
    return ignoring_rows(query("DELETE FROM login WHERE hash = ?1", {secret_hash(login)}));
}

}  // namespace sillwalk::office
