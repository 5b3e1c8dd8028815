// The intake alone, compiled without sanitizers, for the tests of time and memory: store, protocol and server are those
// of the program.   plain_intake FOLDER    prints its port, then a device and its token; ends with its standard input

#include "app/office/api.hpp"
#include "app/office/http_server.hpp"

#include <fmt/format.h>

#include <chrono>
#include <cstdio>

using namespace sillwalk::office;

int main(int argc, char** argv) {
    if (argc != 2) return 2;
    const auto now_ms = [] {
        const auto now = std::chrono::system_clock::now().time_since_epoch();
        return std::int64_t{std::chrono::duration_cast<std::chrono::milliseconds>(now).count()};
    };
    auto store = Store::open({argv[1], "", now_ms});
    if (!store) return 1;
    const auto code = (*store)->new_enrolment("load");
    const auto device = code ? (*store)->enrol(*code, std::string(64, '0'), "Load") : tl::make_unexpected(code.error());
    if (!device) return 1;
    Api api(**store);
    auto server = HttpServer::start({}, [&](const HttpRequest& request) { return api.handle(request); });
    if (!server) return 1;
    fmt::print("{} {} {}\n", (*server)->port(), device->device_id, device->token);
    std::fflush(stdout);
    while (std::getchar() != EOF) {
    }
    return 0;
}
