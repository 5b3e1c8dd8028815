// fill_tablet FOLDER REVISIONS PHOTOS BYTES: a tablet with sealed visits and photos that wait, for the delivery test.
#include "tests/app_sync/field.hpp"

#include <cstdio>
#include <cstdlib>

using namespace sillwalk;
using namespace sillwalk::app;
using namespace sillwalk::test;

int main(int argc, char** argv) {
    if (argc != 5) return 2;
    const int revisions = std::atoi(argv[2]), photos = std::atoi(argv[3]);
    const auto bytes = static_cast<std::size_t>(std::atoi(argv[4]));
    auto database = Database::open(std::string(argv[1]) + "/visits.sqlite3");
    if (!database || !migrate(*database)) return 1;
    if (!device_identity(*database, field_device())) return 1;
    for (int number = 0; number < revisions; ++number) {
        // Twenty visits, each sealed again and again, so that a revision has the one before as its parent.
        std::vector<std::string> own;
        if (number < photos) own.push_back(photo_bytes(number, bytes));
        const auto digest = seal_visit(*database, visit_uuid(number % 20), "state " + std::to_string(number), own);
        if (!digest) {
            std::fprintf(stderr, "%s\n", digest.error().message.c_str());
            return 1;
        }
        std::printf("revision %s\n", to_hex(*digest).c_str());
        for (const std::string& photo : own) std::printf("photo %s\n", to_hex(sha256(photo)).c_str());
    }
    return 0;
}
