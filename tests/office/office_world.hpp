#pragma once
/// An office in a folder of its own, a clock that the test turns, and envelopes to send.

#include "app/office/store.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <string>
#include <unistd.h>

namespace sillwalk::test {

using app::Json;
using office::Store;

/// Removed with the object.
class Folder {
public:
    Folder() {
        static int count = 0;
        path_ = std::filesystem::temp_directory_path() /
                ("sillwalk-office-" + std::to_string(::getpid()) + "-" + std::to_string(count++));
        std::filesystem::create_directories(path_);
    }
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] std::string text() const { return path_.string(); }

private:
    std::filesystem::path path_;
};

template <class T>
T must(engine::Result<T> result) {
    INFO((result ? std::string() : result.error().where + ": " + result.error().message));
    REQUIRE(result.has_value());
    return std::move(*result);
}
inline void must(const engine::Result<void>& result) {
    INFO((result ? std::string() : result.error().where + ": " + result.error().message));
    REQUIRE(result.has_value());
}

struct World {
    Folder folder;
    std::int64_t now = 1'795'600'000'000;
    std::unique_ptr<Store> store = must(Store::open({folder.text(), "", [this] { return now; }}));

    void reopen() {
        store.reset();
        store = must(Store::open({folder.text(), "", [this] { return now; }}));
    }
};

inline app::SigningKey key_of(std::uint8_t seed) {
    std::array<std::uint8_t, 32> bytes{};
    bytes.fill(seed);
    return app::signing_key_from_seed(bytes);
}

inline std::string survey_id(int number) {
    std::string digits = std::to_string(number);
    return "018f3c1a-0000-7000-8000-" + std::string(12 - digits.size(), '0') + digits;
}
inline const std::string device = "018f3c1a-0000-7000-8000-00000000dddd";

struct RevisionWish {
    int survey;
    std::vector<std::string> parents;
    std::string note, device_id;
    std::vector<std::string> blobs;  ///< contents

    RevisionWish(int survey_number = 1, std::vector<std::string> parent_digests = {}, std::string text = "first",
                 std::string author = device, std::vector<std::string> blob_contents = {})
        : survey(survey_number),
          parents(std::move(parent_digests)),
          note(std::move(text)),
          device_id(std::move(author)),
          blobs(std::move(blob_contents)) {}
};

inline Json revision_json(const RevisionWish& wish) {
    Json blobs = Json::array();
    for (const std::string& bytes : wish.blobs) {
        blobs.push_back({{"sha256", app::to_hex(app::sha256(bytes))},
                         {"bytes", bytes.size()},
                         {"media", "image/jpeg"},
                         {"width_px", 20},
                         {"height_px", 10}});
    }
    return {{"format", app::revision_format},
            {"requires", Json::array()},
            {"survey_id", survey_id(wish.survey)},
            {"parents", wish.parents},
            {"author", {{"device_id", wish.device_id}, {"role", "field"}, {"name", "Test"}}},
            {"captured", {{"device_ms", 1}}},
            {"editions", {{"engine", "0"}, {"catalogue", "0"}, {"tables", "0"}}},
            {"items", {{survey_id(900), {{"kind", "notes"}, {"order", 0}, {"v", {{"text", wish.note}}}}}}},
            {"blobs", blobs}};
}

inline app::Envelope envelope(const RevisionWish& wish, const app::SigningKey* key = nullptr,
                              const std::string& key_id = {}) {
    auto read = app::read_envelope(app::make_envelope(revision_json(wish), key, key_id));
    REQUIRE(read.has_value());
    return std::move(*read);
}
inline std::string hex(const app::Envelope& envelope) {
    return app::to_hex(envelope.digest);
}
inline Json receipt_of(const office::StoredRevision& stored) {
    return Json::parse(stored.receipt).at("receipt");
}

}  // namespace sillwalk::test
