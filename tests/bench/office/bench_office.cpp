// How fast the office takes revisions, and what reading and writing an envelope costs.
//   bench_office load PORT TOKEN DEVICE CONNECTIONS BODY_BYTES COUNT    durable answers a second, p50, p99 in ms
//   bench_office codec ENVELOPE                                         beside parse and dump of the JSON library alone
// run_bench.py starts the office and puts the raw disk and the raw databases beside it.

#include "app/bundle/envelope.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <arpa/inet.h>
#include <chrono>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/socket.h>
#include <thread>
#include <unistd.h>
#include <vector>

using namespace sillwalk::app;
using Clock = std::chrono::steady_clock;

namespace {

double milliseconds(Clock::duration duration) {
    return std::chrono::duration<double, std::milli>(duration).count();
}

std::string request_of(const std::string& token, const std::string& device, std::size_t number, std::size_t bytes) {
    const std::string note = fmt::format("{} {}", number, std::string(bytes, 'x'));
    const Json items{
        {"018f3c1a-0000-7000-8000-000000000900", {{"kind", "notes"}, {"order", 0}, {"v", {{"text", note}}}}}};
    const Json revision{{"format", revision_format},
                        {"requires", Json::array()},
                        {"survey_id", fmt::format("018f3c1a-0000-7000-8000-{:012d}", number)},
                        {"parents", Json::array()},
                        {"author", {{"device_id", device}, {"role", "field"}, {"name", "bench"}}},
                        {"captured", {{"device_ms", 1}}},
                        {"editions", {{"engine", "0"}, {"catalogue", "0"}, {"tables", "0"}}},
                        {"items", items},
                        {"blobs", Json::array()}};
    const std::string body = make_envelope(revision);
    return fmt::format(
        "PUT /v1/revisions/{} HTTP/1.1\r\nHost: bench\r\nAuthorization: Bearer {}\r\nContent-Type: "
        "application/json\r\nContent-Length: {}\r\n\r\n{}",
        to_hex(revision_digest(revision)), token, body.size(), body);
}

/// Sends one request and reads one answer; false on anything but 201.
bool answered(int connection, const std::string& request) {
    std::size_t sent = 0;
    while (sent < request.size()) {
        const auto count = ::send(connection, request.data() + sent, request.size() - sent, MSG_NOSIGNAL);
        if (count <= 0) return false;
        sent += static_cast<std::size_t>(count);
    }
    std::string answer;
    std::size_t wanted = 0;
    char buffer[8192];
    while (wanted == 0 || answer.size() < wanted) {
        const auto count = ::recv(connection, buffer, sizeof buffer, 0);
        if (count <= 0) return false;
        answer.append(buffer, static_cast<std::size_t>(count));
        const auto end = answer.find("\r\n\r\n");
        const auto length = answer.find("Content-Length: ");
        if (end != std::string::npos && length < end) wanted = end + 4 + std::stoul(answer.substr(length + 16, 12));
    }
    return answer.starts_with("HTTP/1.1 201");
}

int load(const std::vector<std::string>& words) {
    const auto port = static_cast<std::uint16_t>(std::stoul(words[0]));
    const std::size_t connections = std::stoul(words[3]), bytes = std::stoul(words[4]), count = std::stoul(words[5]);
    std::vector<std::string> requests;
    const auto first = static_cast<std::size_t>(Clock::now().time_since_epoch().count() % 1'000'000'000);
    for (std::size_t i = 0; i < count; ++i) requests.push_back(request_of(words[1], words[2], first + i, bytes));
    std::vector<std::vector<double>> times(connections);
    std::vector<std::size_t> failed(connections, 0);
    std::vector<std::thread> threads;
    const auto start = Clock::now();
    for (std::size_t index = 0; index < connections; ++index) {
        threads.emplace_back([&, index] {
            sockaddr_in address{};
            address.sin_family = AF_INET;
            address.sin_port = htons(port);
            address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
            const int connection = ::socket(AF_INET, SOCK_STREAM, 0);
            if (::connect(connection, reinterpret_cast<const sockaddr*>(&address), sizeof address) != 0)
                failed[index] = 1;
            for (std::size_t i = index; i < count && failed[index] == 0; i += connections) {
                const auto before = Clock::now();
                if (!answered(connection, requests[i])) failed[index] = 1;
                times[index].push_back(milliseconds(Clock::now() - before));
            }
            ::close(connection);
        });
    }
    for (auto& thread : threads) thread.join();
    const double seconds = milliseconds(Clock::now() - start) / 1000;
    std::vector<double> all;
    for (const auto& some : times) all.insert(all.end(), some.begin(), some.end());
    std::sort(all.begin(), all.end());
    const bool whole = std::all_of(failed.begin(), failed.end(), [](std::size_t fault) { return fault == 0; });
    if (!whole || all.empty()) return 1;
    fmt::print("{:.0f} {:.1f} {:.1f}\n", static_cast<double>(all.size()) / seconds, all[all.size() / 2],
               all[all.size() * 99 / 100]);
    return 0;
}

template <class Work>
double each_ms(const Work& work) {
    constexpr int rounds = 20;
    std::vector<double> times;
    for (int i = 0; i < rounds; ++i) {
        const auto before = Clock::now();
        work();
        times.push_back(milliseconds(Clock::now() - before));
    }
    std::sort(times.begin(), times.end());
    return times[rounds / 2];
}

int codec(const std::string& name) {
    std::ifstream file(name, std::ios::binary);
    std::ostringstream read;
    read << file.rdbuf();
    const std::string text = read.str();
    const auto envelope = read_envelope(text);
    if (!envelope) return 1;
    const Json parsed = Json::parse(text);
    std::size_t kept = 0;  // so that no work can be left out
    fmt::print("{} bytes; median in ms\n", text.size());
    fmt::print("  library parse          {:.2f}\n", each_ms([&] { kept += Json::parse(text).size(); }));
    fmt::print("  read_envelope          {:.2f}\n", each_ms([&] { kept += read_envelope(text)->canonical.size(); }));
    fmt::print("  library dump           {:.2f}\n", each_ms([&] { kept += parsed.dump().size(); }));
    fmt::print("  envelope_text          {:.2f}\n", each_ms([&] { kept += envelope_text(*envelope).size(); }));
    return kept == 0 ? 1 : 0;
}

}  // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    if (words.size() == 7 && words[0] == "load") return load({words.begin() + 1, words.end()});
    if (words.size() == 2 && words[0] == "codec") return codec(words[1]);
    fmt::print(stderr, "bench_office load PORT TOKEN DEVICE CONNECTIONS BODY_BYTES COUNT | codec ENVELOPE\n");
    return 2;
}
