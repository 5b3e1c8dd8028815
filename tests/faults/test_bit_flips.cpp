// F6: single bits turn in the file. SQLite itself sees few of them; what is read back is held against its digest.
#include "tests/app_storage/scratch.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <map>
#include <random>

using namespace sillwalk;
using namespace sillwalk::app;
using namespace sillwalk::test;

namespace {

void write_bytes(const std::string& path, const std::string& bytes) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

struct Originals {
    std::map<Digest, std::string> revisions, photos;
};

Originals fill(const std::string& path) {
    Originals originals;
    auto database = Database::open(path);
    REQUIRE(database);
    REQUIRE(migrate(*database));
    for (int number = 0; number < 20; ++number) {
        const std::string photo = photo_bytes(number, 6000);
        const auto digest = seal_visit(*database, visit_uuid(number), std::string(3000, 'n'), {photo});
        REQUIRE(digest);
        originals.revisions[*digest] = load_revision(*database, *digest)->body;
        originals.photos[sha256(photo)] = photo;
    }
    return originals;
}

struct Flips {
    int wrong_bytes = 0;    ///< bodies that plain SQL gave back changed
    int wrong_checked = 0;  ///< bodies that our reading gave back changed
};

void read_all(Database& database, const Originals& originals, Flips& flips) {
    const auto plain = [&](const char* sql, const Digest& digest, const std::string& right) {
        auto row = database.prepare(sql);
        if (!row) return;
        const auto there = row->bind_bytes(1, byte_view(digest)).step();
        if (there && *there && row->bytes(0) != right) ++flips.wrong_bytes;
    };
    for (const auto& [digest, right] : originals.revisions) {
        plain("SELECT body FROM revision WHERE digest=?1", digest, right);
        const auto read = load_revision(database, digest);
        if (read && read->body != right) ++flips.wrong_checked;
    }
    for (const auto& [digest, right] : originals.photos) {
        plain("SELECT body FROM blob_body WHERE digest=?1", digest, right);
        const auto read = load_photo(database, digest);
        if (read && *read != right) ++flips.wrong_checked;
    }
}

}  // namespace

TEST_CASE("F6 of 200 turned bits none gets past the digests", "[fault]") {
    const Scratch scratch;
    const std::string path = scratch.file("a.db");
    const Originals originals = fill(path);
    const std::string good = file_bytes(path);
    REQUIRE(good.size() > 150'000);
    std::mt19937 random(6);
    Flips flips;
    for (int flip = 0; flip < 200; ++flip) {
        std::string bad = good;
        const std::size_t bit = random() % (bad.size() * 8);
        bad[bit / 8] = static_cast<char>(bad[bit / 8] ^ (1 << (bit % 8)));
        write_bytes(path, bad);
        auto database = Database::open(path);
        if (!database) continue;  // refused whole
        read_all(*database, originals, flips);
    }
    CHECK(flips.wrong_checked == 0);
    CHECK(flips.wrong_bytes > 50);  // the control: the bits did hit bodies, and SQLite gave them back
}
