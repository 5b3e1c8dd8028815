#pragma once
/// Visits in the database: what is written (commands) and what is read back (at start and when a visit is opened).
/// A command is applied whole or not at all; a batch of commands is one transaction.

#include "app/bundle/digest.hpp"
#include "app/bundle/entries.hpp"
#include "app/storage/database.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace sillwalk::app {

enum class EditKind { edit, undo, redo };

/// One committed change of a visit: every entry it touches, in one transaction with its journal rows.
struct StoreStep {
    std::string survey_id;
    std::int64_t step = 0;  ///< number of the change within the visit; an undo or redo repeats it
    EditKind kind = EditKind::edit;
    std::string label;            ///< language key of what was done, for the audit
    std::vector<Change> changes;  ///< old and new as they apply now (already turned round for an undo)
    std::int64_t at_ms = 0;
    std::string title{};  ///< of the visit from now on; empty leaves it as it was
};
struct StoreVisit {  ///< a new visit with all its entries
    std::string survey_id, title;
    Entries entries;
    std::int64_t at_ms = 0;
};
struct StoreDraft {  ///< the keypad's buffer; an empty path means no sheet is open
    std::string survey_id, path, text;
    std::int64_t at_ms = 0;
};
struct StoreSetting {
    std::string key, value;
};
/// A picture, named by what it is; stored again, nothing changes. It is never deleted: an undo may want it back.
struct StorePhoto {
    Digest sha256{};                           ///< of bytes; load_photo() checks it
    std::shared_ptr<const std::string> bytes;  ///< a JPEG file
    std::int64_t width_px = 0, height_px = 0;
};
using StoreCommand = std::variant<StoreStep, StoreVisit, StoreDraft, StoreSetting, StorePhoto>;

struct VisitRow {
    std::string survey_id, title, state;
    std::int64_t created_ms = 0, updated_ms = 0;
    std::string customer{};  ///< empty where nobody typed one
    friend bool operator==(const VisitRow&, const VisitRow&) = default;
};
struct StoredEdit {
    std::int64_t step = 0;
    EditKind kind = EditKind::edit;
    std::string label;
    Change change;
};
struct StoredVisit {
    Entries entries;
    std::vector<StoredEdit> edits;  ///< oldest first
    std::optional<StoreDraft> draft;
};

[[nodiscard]] engine::Result<void> apply(Database& database, const StoreCommand& command);
/// All of them in one transaction.
[[nodiscard]] engine::Result<void> apply_all(Database& database, const std::vector<StoreCommand>& commands);

[[nodiscard]] engine::Result<std::vector<VisitRow>> list_visits(Database& database);  ///< last changed first
/// not_found where there is no such visit.
[[nodiscard]] engine::Result<StoredVisit> load_visit(Database& database, const std::string& survey_id);
/// not_found where there is no such picture, disagreement where its bytes are no longer those of its name.
[[nodiscard]] engine::Result<std::string> load_photo(Database& database, const Digest& sha256);
[[nodiscard]] engine::Result<std::map<std::string, std::string>> load_settings(Database& database);

}  // namespace sillwalk::app
