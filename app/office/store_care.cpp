// Checking and saving what the office keeps. The backup is the same for both databases, so it also moves an office from
// one to the other: office.ndjson (one JSON text a line), blobs/ and office.key.

#include "app/office/store.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>

namespace sillwalk::office {

namespace {

constexpr std::int64_t page_rows = 200;

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
                out.faults.push_back("revision " + digest + ": " + other_content);
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
                out.faults.push_back("photo " + last + ": " + other_content);
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
            "SELECT seq, device_id, received_ms, body, signatures, digest FROM revision WHERE seq > ?1 ORDER BY "
            "seq LIMIT ?2",
            {after, page_rows});
        if (!rows) return tl::make_unexpected(rows.error());
        if (rows->empty()) break;
        for (const SqlRow& row : *rows) {
            after = to_integer(row[0]);
            if (app::to_hex(app::sha256(to_text(row[3]))) != to_text(row[5])) {
                out.faults.push_back("revision " + to_text(row[5]) + ": " + other_content);
                continue;
            }
            ++out.revisions;
            line({{"revision", Json::parse(to_text(row[3]), nullptr, false)},
                  {"digest", to_text(row[5])},
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
        auto copied = digest ? blobs_.copy(*digest, *to) : Result<void>(engine::bad_input("that is no digest", hex));
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
    if (file.fail()) return engine::fail(engine::ErrorCode::storage, "the backup was not written", to_folder);
    // The name appears only when all of it is on the disk.
    if (auto kept = settle(temporary, to_folder + "/office.ndjson"); !kept) return tl::make_unexpected(kept.error());
    return out;
}

}  // namespace sillwalk::office
