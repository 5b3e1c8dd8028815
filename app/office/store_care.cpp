// Checking, saving and restoring what the office keeps. The backup is the same for both databases, so it also moves an
// office from one to the other: office.ndjson (one JSON text a line), blobs/ and office.key.

#include "app/office/store.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>

namespace sillwalk::office {

namespace {

constexpr std::int64_t page_rows = 200;
constexpr std::string_view backup_format = "sillwalk-office-backup/1";

app::StrictLimits backup_limits() {
    return {std::size_t{4} << 20, 34, 110'000, 64, std::size_t{2} << 20};
}

std::optional<app::Envelope> envelope_of(const Json& revision, const Json& signatures, std::string& why) {
    auto read = app::read_envelope(
        app::canonical_json({{"format", app::envelope_format}, {"rev", revision}, {"sig", signatures}}));
    if (read) return std::move(*read);
    for (const auto& error : read.error().errors) why += error.where + ": " + error.message + "; ";
    return std::nullopt;
}

Result<void> copy_blob(const BlobFolder& from, const BlobFolder& to, const Digest& digest) {
    auto bytes = from.read(digest);
    if (!bytes) return tl::make_unexpected(bytes.error());
    if (app::sha256(*bytes) != digest)
        return engine::fail(engine::ErrorCode::disagreement, "the content does not match its digest");
    return to.store(digest, *bytes);
}

}  // namespace

Result<Verified> Store::verify() {
    Verified out;
    std::int64_t after = 0;
    for (;;) {
        auto rows = query("SELECT digest, body, signatures, seq FROM revision WHERE seq > ?1 ORDER BY seq LIMIT ?2",
                          {after, page_rows});
        if (!rows) return tl::make_unexpected(rows.error());
        if (rows->empty()) break;
        for (const SqlRow& row : *rows) {
            after = to_integer(row[3]);
            ++out.revisions;
            const std::string digest = to_text(row[0]);
            if (app::to_hex(app::sha256(to_text(row[1]))) != digest)
                out.faults.push_back("revision " + digest + ": the content does not match its digest");
        }
    }
    std::string last;
    for (;;) {
        auto rows = query("SELECT digest FROM blob WHERE digest > ?1 ORDER BY digest LIMIT ?2", {last, page_rows});
        if (!rows) return tl::make_unexpected(rows.error());
        if (rows->empty()) break;
        for (const SqlRow& row : *rows) {
            last = to_text(row[0]);
            ++out.blobs;
            const auto digest = app::digest_from_hex(last);
            const auto computed = digest ? blobs_.computed(*digest) : Result<Digest>(Digest{});
            if (!computed) {
                out.faults.push_back("photo " + last + ": " + computed.error().message);
            } else if (!digest || *computed != *digest) {
                out.faults.push_back("photo " + last + ": the content does not match its digest");
            }
        }
    }
    auto loose =
        query("SELECT h.digest FROM head h LEFT JOIN revision r ON r.digest = h.digest WHERE r.digest IS NULL");
    if (!loose) return tl::make_unexpected(loose.error());
    for (const SqlRow& row : *loose) out.faults.push_back("head " + to_text(row[0]) + ": there is no such revision");
    return out;
}

Result<Verified> Store::backup(const std::string& to_folder) {
    if (std::filesystem::exists(to_folder + "/office.ndjson"))
        return engine::bad_input("there is a backup already; name a new folder", to_folder);
    auto to = BlobFolder::open(to_folder);
    if (!to) return tl::make_unexpected(to.error());
    Verified out;
    const std::string temporary = to_folder + "/office.ndjson.part";
    std::ofstream file(temporary, std::ios::binary | std::ios::trunc);
    const auto line = [&](const Json& value) { file << app::canonical_json(value) << "\n"; };
    line({{"format", backup_format}});
    const std::pair<const char*, const char*> lists[] = {
        {"device", "SELECT id, name, public_key, token_hash, created_ms, seen_ms, expires_ms, revoked_ms FROM device"},
        {"person", "SELECT id, name, code_hash, created_ms, revoked_ms FROM person"}};
    for (const auto& [name, sql] : lists) {
        auto rows = query(sql);
        if (!rows) return tl::make_unexpected(rows.error());
        for (const SqlRow& row : *rows) {
            Json values = Json::array();
            for (const auto& value : row) values.push_back(value ? Json(*value) : Json());
            line({{name, std::move(values)}});
        }
    }
    std::int64_t after = 0;
    for (;;) {
        auto rows = query(
            "SELECT seq, device_id, received_ms, body, signatures FROM revision WHERE seq > ?1 ORDER BY "
            "seq LIMIT ?2",
            {after, page_rows});
        if (!rows) return tl::make_unexpected(rows.error());
        if (rows->empty()) break;
        for (const SqlRow& row : *rows) {
            after = to_integer(row[0]);
            ++out.revisions;
            line({{"revision", Json::parse(to_text(row[3]), nullptr, false)},
                  {"sig", Json::parse(to_text(row[4]), nullptr, false)},
                  {"device", to_text(row[1])},
                  {"received_ms", to_integer(row[2])}});
        }
    }
    auto rows = query("SELECT digest FROM blob ORDER BY digest");
    if (!rows) return tl::make_unexpected(rows.error());
    for (const SqlRow& row : *rows) {
        const std::string hex = to_text(row[0]);
        const auto digest = app::digest_from_hex(hex);
        auto copied = digest ? copy_blob(blobs_, *to, *digest) : Result<void>();
        if (!copied) {
            out.faults.push_back("photo " + hex + ": " + copied.error().message);
            continue;
        }
        ++out.blobs;
        line({{"blob", hex}});
    }
    file.close();
    auto key = read_whole(options_.folder + "/office.key");
    if (!key) return tl::make_unexpected(key.error());
    if (auto kept = write_whole(to_folder + "/office.key", *key); !kept) return tl::make_unexpected(kept.error());
    // Once more through our own writer, which waits for the disk: the name appears only when all of it is there.
    auto whole = read_whole(temporary);
    if (file.fail() || !whole) return engine::fail(engine::ErrorCode::storage, "the backup was not written", to_folder);
    if (auto kept = write_whole(to_folder + "/office.ndjson", *whole); !kept) return tl::make_unexpected(kept.error());
    std::filesystem::remove(temporary);
    return out;
}

Result<Verified> Store::restore(const std::string& from_folder) {
    auto count = only_row(query("SELECT count(*) FROM revision"), "count");
    if (!count) return tl::make_unexpected(count.error());
    if (to_integer(count->at(0)) != 0)
        return engine::bad_input("this office has revisions already; restore into a new folder", options_.folder);
    std::ifstream file(from_folder + "/office.ndjson", std::ios::binary);
    if (!file) return engine::fail(engine::ErrorCode::not_found, "there is no office.ndjson", from_folder);
    auto key = read_whole(from_folder + "/office.key");
    if (!key) return tl::make_unexpected(key.error());
    auto from = BlobFolder::open(from_folder);
    if (!from) return tl::make_unexpected(from.error());
    Verified out;
    const auto restore_line = [&](SqlSession& session, const Json& row) -> Result<void> {
        for (const auto& [name, sql] :
             {std::pair("device",
                        "INSERT INTO device(id, name, public_key, token_hash, created_ms, seen_ms, expires_ms, "
                        "revoked_ms) VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)"),
              std::pair("person",
                        "INSERT INTO person(id, name, code_hash, created_ms, revoked_ms) VALUES(?1, ?2, ?3, "
                        "?4, ?5)")}) {
            if (!row.contains(name) || row.contains("revision")) continue;
            std::vector<SqlValue> values;
            for (const Json& value : row.at(name))
                values.push_back(value.is_string() ? SqlValue(value.get<std::string>()) : SqlValue());
            auto put = session.run(sql, values);
            if (!put) return tl::make_unexpected(put.error());
        }
        if (row.contains("revision")) {
            std::string why;
            const auto envelope = envelope_of(row.at("revision"), row.at("sig"), why);
            if (!envelope) return engine::bad_input("a revision is damaged: " + why, from_folder);
            ++out.revisions;
            auto put = insert_revision(session, *envelope, row.at("device").get<std::string>(),
                                       row.at("received_ms").get<std::int64_t>());
            if (!put) return tl::make_unexpected(put.error());
        }
        if (row.contains("blob")) {
            const auto digest = app::digest_from_hex(row.at("blob").get<std::string>());
            if (!digest) return engine::bad_input("no digest of a photo", from_folder);
            if (auto copied = copy_blob(*from, blobs_, *digest); !copied) {
                out.faults.push_back("photo " + app::to_hex(*digest) + ": " + copied.error().message);
                return {};
            }
            auto bytes = static_cast<std::int64_t>(std::filesystem::file_size(blobs_.path(*digest)));
            auto put =
                session.run("INSERT INTO blob(digest, bytes, stored_ms) VALUES(?1, ?2, ?3) ON CONFLICT DO NOTHING",
                            {app::to_hex(*digest), bytes, now_ms()});
            if (!put) return tl::make_unexpected(put.error());
            ++out.blobs;
        }
        return {};
    };
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        std::string text;
        for (std::size_t number = 1; std::getline(file, text); ++number) {
            app::JsonErrors errors;
            const auto row = app::parse_strict(text, errors, backup_limits());
            if (!row || !row->is_object())
                return engine::bad_input("not a line of a backup", fmt::format("{}:{}", from_folder, number));
            if (number == 1 && row->value("format", "") != backup_format)
                return engine::fail(engine::ErrorCode::too_new, "not a backup of a known format", from_folder);
            if (auto put = restore_line(session, *row); !put) return put;
        }
        return new_epoch(session);
    });
    if (!done) return tl::make_unexpected(done.error());
    // Tablets know the office by this key; it comes back last, when all the rest is there.
    if (auto kept = write_whole(options_.folder + "/office.key", *key); !kept) return tl::make_unexpected(kept.error());
    return out;
}

}  // namespace sillwalk::office
