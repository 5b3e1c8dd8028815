#pragma once
/// From a visit in the database to a revision that can be sealed.

#include "app/storage/identity.hpp"
#include "app/storage/seal.hpp"
#include "app/storage/survey_store.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/tables.hpp"

#include <string>

namespace sillwalk::app {

struct SealContext {
    const engine::Catalogue& catalogue;
    const engine::Tables& tables;
    const DeviceIdentity& device;
    std::string author;      ///< name of the person
    std::int64_t at_ms = 0;  ///< the device's clock, UTC
};

/// Works out the advice and makes the revision, signed by the device's key. no_answer where nothing has changed since
/// the visit was sealed; bad_input where the survey contradicts itself or is too large for the format.
[[nodiscard]] engine::Result<SealOrder> make_seal_order(const std::string& survey_id, const StoredVisit& visit,
                                                        const VisitHead& head, const SealContext& context);

}  // namespace sillwalk::app
