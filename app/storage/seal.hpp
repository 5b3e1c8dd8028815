#pragma once
/// Sealing: a state of a visit becomes a revision that never changes again, and in the same transaction it stands in
/// the outbox with its photos. What is read back is checked against its digest; what no longer agrees is an error,
/// never a value.

#include "app/bundle/digest.hpp"
#include "app/storage/database.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::app {

struct SealOrder {
    std::string survey_id;        ///< row of the visit
    std::int64_t last_edit = 0;   ///< of the visit when the revision was made from it
    std::string body;             ///< canonical text of the revision
    Digest digest{};              ///< of `body`
    std::vector<Digest> parents;  ///< the visit's base, or none
    std::vector<Digest> photos;   ///< each must be in the file
    Signature signature{};        ///< of the device's key
    std::int64_t at_ms = 0;
};

/// One transaction of its own. disagreement where the visit was changed or sealed meanwhile; not_found where the visit
/// or one of the photos is not there. Sealing the same again changes nothing.
[[nodiscard]] engine::Result<void> seal(Database& database, const SealOrder& order);

struct VisitHead {
    std::string state;           ///< draft, sealed or forked
    std::int64_t last_edit = 0;  ///< rises with every change; 0: none yet
    std::optional<Digest> base;  ///< the revision that the visit was last sealed as
};
[[nodiscard]] engine::Result<VisitHead> load_head(Database& database, const std::string& survey_id);

enum class RevisionOrigin { local, office, file };

struct StoredRevision {
    std::string survey_id;
    RevisionOrigin origin = RevisionOrigin::local;
    std::string body;       ///< canonical text of the revision; its digest was checked
    std::string signature;  ///< local: 64 bytes of the device's key; else the canonical text of the envelope's `sig`
    std::int64_t sealed_ms = 0;
};
/// not_found where there is none; disagreement where the stored bytes are no longer those of the name.
[[nodiscard]] engine::Result<StoredRevision> load_revision(Database& database, const Digest& digest);

/// A revision that came from a file or the office, with no place in the outbox. True where it is new.
[[nodiscard]] engine::Result<bool> store_foreign_revision(Database& database, const Digest& digest,
                                                          const StoredRevision& revision,
                                                          const std::vector<Digest>& parents);

/// The visit stands as that revision says, with nothing changed since.
[[nodiscard]] engine::Result<void> adopt_revision(Database& database, const std::string& survey_id,
                                                  const Digest& digest);
/// The revision names that photo, which is in the file.
[[nodiscard]] engine::Result<void> name_photo(Database& database, const Digest& revision, const Digest& photo);

/// Revisions of a visit, or of all visits where `survey_id` is empty, oldest first.
[[nodiscard]] engine::Result<std::vector<Digest>> list_revisions(Database& database, const std::string& survey_id);
/// Photos that the revision named when it was sealed.
[[nodiscard]] engine::Result<std::vector<Digest>> photos_of_revision(Database& database, const Digest& digest);

}  // namespace sillwalk::app
