#pragma once
/// What the office keeps and the rules it keeps it by: revisions, photos, devices, people. Written once for both
/// databases. Every function that changes something returns only when the change is on the disk. Any thread.

#include "app/bundle/envelope.hpp"
#include "app/office/blob_folder.hpp"
#include "app/office/sql.hpp"

#include <functional>
#include <map>
#include <mutex>

namespace sillwalk::office {

using app::Digest;
using app::Json;

struct StoreOptions {
    std::string folder;    ///< photos, the office's key, and the SQLite file where no other database is named
    std::string database;  ///< empty = SQLite in the folder; else "postgresql://…"
    std::function<std::int64_t()> now_ms;
};

struct Device {
    std::string id, name, public_key_hex;
    std::int64_t created_ms = 0, seen_ms = 0, expires_ms = 0, revoked_ms = 0;  ///< revoked_ms 0 = not revoked
};
struct Person {
    std::string id, name;
    std::int64_t created_ms = 0, revoked_ms = 0;
};
struct Enrolled {
    std::string device_id, token;
    std::int64_t expires_ms = 0;
};
enum class Access { unknown, revoked, expired, granted };
struct Caller {
    Access access = Access::unknown;
    Device device;
};

struct StoredRevision {
    bool fresh = false;   ///< false: it was there already
    std::string receipt;  ///< signed, canonical JSON (docs/reference/receipt.schema.json)
};
struct RevisionRow {
    std::string digest, survey_id, device_id;
    std::int64_t received_ms = 0, seq = 0;
    Json revision, signatures;
    std::vector<std::string> parents;
};
struct SurveyRow {
    std::string id, title;
    std::int64_t received_ms = 0, revisions = 0, missing_blobs = 0;
    std::vector<std::string> heads;
};
struct BlobRow {
    std::string digest, media;
    std::int64_t bytes = 0;
    bool stored = false;
};
struct Change {
    std::string digest, survey_id, role;
};
struct ChangeList {
    std::vector<Change> items;
    std::string next;  ///< cursor for the next call; the same one where there was nothing new
};
struct Upload {
    std::string id, digest;
    std::int64_t length = 0, received = 0, expires_ms = 0;
};
struct Verified {
    std::int64_t revisions = 0, blobs = 0;
    std::vector<std::string> faults;  ///< one line each
};

inline constexpr std::int64_t minute_ms = 60'000;
inline constexpr std::int64_t code_lifetime_ms = 15 * minute_ms;
inline constexpr std::int64_t token_lifetime_ms = 365 * 24 * 60 * minute_ms;
inline constexpr std::int64_t login_lifetime_ms = 12 * 60 * minute_ms;
inline constexpr std::int64_t upload_lifetime_ms = 7 * 24 * 60 * minute_ms;
inline constexpr std::int64_t greatest_append = std::int64_t{1} << 20;
inline constexpr std::string_view backup_format = "sillwalk-office-backup/1";

class Store {
public:
    [[nodiscard]] static Result<std::unique_ptr<Store>> open(StoreOptions options);

    [[nodiscard]] std::int64_t now_ms() const { return options_.now_ms(); }
    [[nodiscard]] const app::SigningKey& key() const { return key_; }
    [[nodiscard]] std::string key_id() const;
    [[nodiscard]] const BlobFolder& blobs() const { return blobs_; }
    [[nodiscard]] const std::string& folder() const { return options_.folder; }

    // Devices (store_devices.cpp).
    [[nodiscard]] Result<std::string> new_enrolment(const std::string& label);
    /// not_found where the code is wrong, used or too old.
    [[nodiscard]] Result<Enrolled> enrol(const std::string& code, const std::string& public_key_hex,
                                         const std::string& name);
    [[nodiscard]] Result<Caller> caller(const std::string& token);
    /// A second token; the first keeps working until the second was used once.
    [[nodiscard]] Result<Enrolled> rotate(const Device& device);
    [[nodiscard]] Result<std::vector<Device>> devices();
    [[nodiscard]] Result<void> revoke(const std::string& id);

    // People who look at the page (store_devices.cpp).
    [[nodiscard]] Result<std::string> new_person(const std::string& name);
    [[nodiscard]] Result<std::vector<Person>> people();
    /// A login for the browser; not_found where the code is wrong.
    [[nodiscard]] Result<std::string> log_in(const std::string& code);
    [[nodiscard]] Result<Person> logged_in(const std::string& login);
    [[nodiscard]] Result<void> log_out(const std::string& login);

    // Revisions (store_revisions.cpp).
    [[nodiscard]] Result<StoredRevision> put(const app::Envelope& envelope, const std::string& device_id);
    [[nodiscard]] Result<void> quarantine(std::string_view body, const std::string& why, const std::string& device_id);
    [[nodiscard]] Result<std::string> receipt(const std::string& digest);
    [[nodiscard]] Result<RevisionRow> revision(const std::string& digest);
    [[nodiscard]] Result<std::vector<std::string>> heads(const std::string& survey_id);
    [[nodiscard]] Result<ChangeList> changes(const std::string& cursor, std::int64_t limit);
    [[nodiscard]] Result<std::vector<SurveyRow>> surveys();
    [[nodiscard]] Result<std::vector<RevisionRow>> history(const std::string& survey_id);
    [[nodiscard]] app::SignatureState signature_state(const app::Envelope& envelope);

    // Photos (store_blobs.cpp).
    [[nodiscard]] Result<std::vector<std::string>> missing(const std::vector<std::string>& digests);
    /// true: new; false: it was there. disagreement where the bytes have another digest.
    [[nodiscard]] Result<bool> put_blob(const Digest& digest, std::string_view bytes);
    [[nodiscard]] Result<std::vector<BlobRow>> blobs_of(const std::string& revision_digest);
    /// Media type under which a stored photo was named by a revision; not_found else.
    [[nodiscard]] Result<BlobRow> blob(const std::string& digest);
    [[nodiscard]] Result<Upload> new_upload(const Digest& digest, std::int64_t length, const std::string& device_id);
    [[nodiscard]] Result<Upload> upload(const std::string& id, const std::string& device_id);
    /// Adds what stands at `offset`. disagreement with where = "offset" when that is not what was received so far.
    [[nodiscard]] Result<Upload> append(const std::string& id, const std::string& device_id, std::int64_t offset,
                                        std::string_view bytes);
    /// All bytes are there: checks the digest and makes it a photo.
    [[nodiscard]] Result<bool> finish(const Upload& upload);
    [[nodiscard]] Result<void> drop_upload(const std::string& id);
    [[nodiscard]] Result<void> drop_old_uploads();

    // Looking after it (store_care.cpp, store_restore.cpp).
    [[nodiscard]] Result<Verified> verify();
    [[nodiscard]] Result<Verified> backup(const std::string& to_folder);
    /// Into an office without revisions. What is damaged in the backup is among the faults and left out.
    [[nodiscard]] Result<Verified> restore(const std::string& from_folder);

private:
    Store(StoreOptions options, std::unique_ptr<Sql> sql, BlobFolder blobs, app::SigningKey key)
        : options_(std::move(options)), sql_(std::move(sql)), blobs_(std::move(blobs)), key_(key) {}

    [[nodiscard]] Result<SqlRows> query(std::string_view sql, const std::vector<SqlValue>& values = {});
    [[nodiscard]] Result<std::string> receipt_in(SqlSession& session, const std::string& digest) const;
    [[nodiscard]] Result<bool> insert_revision(SqlSession& session, const app::Envelope& envelope,
                                               const std::string& device_id, std::int64_t received_ms) const;
    // store_restore.cpp
    [[nodiscard]] Result<void> restore_line(SqlSession& session, const Json& row, const BlobFolder& from,
                                            Verified& out) const;
    [[nodiscard]] Result<void> restore_revision(SqlSession& session, const Json& row, Verified& out) const;
    [[nodiscard]] Result<void> restore_blob(SqlSession& session, const Json& row, const BlobFolder& from,
                                            Verified& out) const;
    [[nodiscard]] Result<void> new_epoch(SqlSession& session) const;
    void forget_callers();

    StoreOptions options_;
    std::unique_ptr<Sql> sql_;
    BlobFolder blobs_;
    app::SigningKey key_;
    std::mutex append_mutex_;
    std::mutex callers_mutex_;
    /// Only where no other program can change a device: token hash to device.
    std::map<std::string, Device> callers_;
};

/// The site's name; empty where the revision holds none.
[[nodiscard]] std::string title_of(const Json& revision);
/// The columns of a row in order, or not_found where there is none.
[[nodiscard]] Result<SqlRow> only_row(const Result<SqlRows>& rows, const char* what);

}  // namespace sillwalk::office
