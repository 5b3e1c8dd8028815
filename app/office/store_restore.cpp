// A backup (store_care.cpp) into an office without revisions. What is damaged in it is told and left out, so that the
// rest comes back; what is no backup is refused whole.

#include "app/office/store.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>

namespace sillwalk::office {

namespace {

/// A line holds a revision with its signatures, so a little more than an envelope may.
app::StrictLimits line_limits() {
    return {std::size_t{4} << 20, 34, 110'000, 64, std::size_t{2} << 20};
}

constexpr const char* insert_device =
    "INSERT INTO device(id, name, public_key, token_hash, created_ms, seen_ms, expires_ms, revoked_ms) VALUES(?1, ?2, "
    "?3, ?4, ?5, ?6, ?7, ?8)";
constexpr const char* insert_person =
    "INSERT INTO person(id, name, code_hash, created_ms, revoked_ms) VALUES(?1, ?2, ?3, ?4, ?5)";

Result<void> restore_values(SqlSession& session, const char* sql, const Json& row) {
    std::vector<SqlValue> values;
    for (const Json& value : row) values.push_back(value.is_string() ? SqlValue(value.get<std::string>()) : SqlValue());
    auto put = session.run(sql, values);
    if (!put) return tl::make_unexpected(put.error());
    return {};
}

Result<Json> backup_line(const std::string& text, const std::string& folder, std::size_t number) {
    app::JsonErrors errors;
    auto row = app::parse_strict(text, errors, line_limits());
    if (!row || !row->is_object())
        return engine::bad_input("not a line of a backup", fmt::format("{}:{}", folder, number));
    if (number > 1) return std::move(*row);
    const auto format = app::JsonObject(*row, "", errors).text("format");
    if (format != backup_format)
        return engine::fail(engine::ErrorCode::too_new, "not a backup of a known format", folder);
    return std::move(*row);
}

}  // namespace

Result<void> Store::restore_revision(SqlSession& session, const Json& row, Verified& out) const {
    app::JsonErrors errors;
    app::JsonObject object(row, "", errors);
    const Json *revision = object.member("revision"), *signatures = object.member("sig");
    const std::string digest = object.text("digest").value_or(""), device = object.text("device").value_or("");
    const auto received_ms = object.integer("received_ms", 0, std::int64_t{1} << 52);
    const auto left_out = [&](const std::string& why) {
        out.faults.push_back("revision " + digest + ": " + why);
        return Result<void>();
    };
    if (!errors.empty()) return left_out(errors.front().where + ": " + errors.front().message);
    const auto envelope = app::read_envelope(
        app::canonical_json({{"format", app::envelope_format}, {"rev", *revision}, {"sig", *signatures}}));
    if (!envelope)
        return left_out(envelope.error().errors.front().where + ": " + envelope.error().errors.front().message);
    if (app::to_hex(envelope->digest) != digest) return left_out(other_content);
    auto put = insert_revision(session, *envelope, device, *received_ms);
    if (!put) return tl::make_unexpected(put.error());
    ++out.revisions;
    return {};
}

Result<void> Store::restore_blob(SqlSession& session, const Json& row, const BlobFolder& from, Verified& out) const {
    const auto digest = row.is_string() ? app::digest_from_hex(row.get<std::string>()) : std::nullopt;
    const auto copied =
        digest ? from.copy(*digest, blobs_) : Result<void>(engine::bad_input("its name is no digest", "blob"));
    if (!copied) {
        out.faults.push_back("photo " + row.dump() + ": " + copied.error().message);
        return {};
    }
    const auto bytes = static_cast<std::int64_t>(std::filesystem::file_size(blobs_.path(*digest)));
    auto put = session.run("INSERT INTO blob(digest, bytes, stored_ms) VALUES(?1, ?2, ?3) ON CONFLICT DO NOTHING",
                           {app::to_hex(*digest), bytes, now_ms()});
    if (!put) return tl::make_unexpected(put.error());
    ++out.blobs;
    return {};
}

Result<void> Store::restore_line(SqlSession& session, const Json& row, const BlobFolder& from, Verified& out) const {
    if (row.contains("revision")) return restore_revision(session, row, out);
    if (row.contains("blob")) return restore_blob(session, row["blob"], from, out);
    if (row.contains("device")) return restore_values(session, insert_device, row["device"]);
    if (row.contains("person")) return restore_values(session, insert_person, row["person"]);
    return {};
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
    auto done = sql_->transact([&](SqlSession& session) -> Result<void> {
        std::string text;
        for (std::size_t number = 1; std::getline(file, text); ++number) {
            const auto row = backup_line(text, from_folder, number);
            if (!row) return tl::make_unexpected(row.error());
            if (auto put = restore_line(session, *row, *from, out); !put) return put;
        }
        return new_epoch(session);
    });
    if (!done) return tl::make_unexpected(done.error());
    // Tablets know the office by this key; it comes back last, when all the rest is there.
    if (auto kept = write_whole(options_.folder + "/office.key", *key); !kept) return tl::make_unexpected(kept.error());
    return out;
}

}  // namespace sillwalk::office
