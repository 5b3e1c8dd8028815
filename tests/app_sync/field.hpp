#pragma once
/// A tablet for tests: visits, sealed revisions and photos in a real database.

#include "app/bundle/canonical.hpp"
#include "app/bundle/revision.hpp"
#include "app/storage/identity.hpp"
#include "app/storage/outbox.hpp"
#include "app/storage/schema.hpp"
#include "app/storage/seal.hpp"
#include "app/storage/survey_store.hpp"
#include "app/storage/writer.hpp"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace sillwalk::test {

inline const std::string field_device_id = "018f3c1a-0000-7000-8000-00000000dddd";

inline app::DeviceIdentity field_device() {
    app::DeviceIdentity device{field_device_id, {}};
    device.seed.fill(9);
    return device;
}

inline std::string visit_uuid(int number) {
    const std::string digits = std::to_string(number);
    return "018f3c1a-0000-7000-8000-" + std::string(12 - digits.size(), '0') + digits;
}

/// Bytes that look random and are the same each time; no picture, which nothing below the screens minds.
inline std::string photo_bytes(int number, std::size_t size) {
    std::string bytes("\xFF\xD8\0\1", 4);
    std::uint32_t state = static_cast<std::uint32_t>(number) * 2654435761U + 1;
    while (bytes.size() < size) {
        state = state * 1664525U + 1013904223U;
        bytes += static_cast<char>(state >> 24);
    }
    return bytes;
}

inline app::StoreVisit plain_visit(const std::string& id) {
    return {id, "Plant", {{"/site", "\"Plant\""}}, 1};
}
inline app::StorePhoto photo_of(const std::string& bytes) {
    return {app::sha256(bytes), std::make_shared<const std::string>(bytes), 20, 10};
}

/// The order to seal `visit` as it stands, as a small revision with a note and those photos.
inline app::SealOrder seal_order(const std::string& visit, const app::VisitHead& head, const std::string& note,
                                 const std::vector<std::string>& photos = {}) {
    app::Json blobs = app::Json::array(), parents = app::Json::array();
    app::SealOrder order;
    for (const std::string& bytes : photos) {
        order.photos.push_back(app::sha256(bytes));
        blobs.push_back({{"sha256", app::to_hex(order.photos.back())},
                         {"bytes", bytes.size()},
                         {"media", "image/jpeg"},
                         {"width_px", 20},
                         {"height_px", 10}});
    }
    if (head.base) {
        order.parents.push_back(*head.base);
        parents.push_back(app::to_hex(*head.base));
    }
    order.body =
        app::canonical_json({{"format", app::revision_format},
                             {"requires", app::Json::array()},
                             {"survey_id", visit},
                             {"parents", parents},
                             {"author", {{"device_id", field_device_id}, {"role", "field"}, {"name", "Test"}}},
                             {"captured", {{"device_ms", 1}}},
                             {"editions", {{"engine", "0"}, {"catalogue", "0"}, {"tables", "0"}}},
                             {"items", {{visit_uuid(900), {{"kind", "notes"}, {"order", 0}, {"v", {{"text", note}}}}}}},
                             {"blobs", blobs}});
    order.survey_id = visit;
    order.last_edit = head.last_edit;
    order.digest = app::sha256(order.body);
    order.signature = app::sign(field_device().key(), app::revision_format, order.digest);
    order.at_ms = 5;
    return order;
}

/// Stores the visit where it is not there, and the photos; then seals.
inline engine::Result<app::Digest> seal_visit(app::Database& database, const std::string& visit,
                                              const std::string& note, const std::vector<std::string>& photos = {}) {
    std::vector<app::StoreCommand> commands;
    if (!app::load_head(database, visit)) commands.push_back(plain_visit(visit));
    for (const std::string& bytes : photos) commands.push_back(photo_of(bytes));
    if (auto done = app::apply_all(database, commands); !done) return tl::make_unexpected(done.error());
    const auto head = app::load_head(database, visit);
    if (!head) return tl::make_unexpected(head.error());
    const app::SealOrder order = seal_order(visit, *head, note, photos);
    if (auto done = app::seal(database, order); !done) return tl::make_unexpected(done.error());
    return order.digest;
}

}  // namespace sillwalk::test
