#include "app/office/secret.hpp"

#include "app/bundle/digest.hpp"
#include "app/bundle/uuid.hpp"
#include "engine/base/contract.hpp"

#include <sodium.h>

#include <algorithm>

namespace sillwalk::office {

std::string random_bytes(std::size_t count) {
    EXPECT_CONTRACT(sodium_init() >= 0);
    std::string bytes(count, '\0');
    randombytes_buf(bytes.data(), bytes.size());
    return bytes;
}

std::string new_token() {
    return app::to_base64url(random_bytes(32));
}

std::string new_code() {
    constexpr std::string_view alphabet = "abcdefghijklmnopqrstuvwxyz234567";
    std::string out;
    for (const char byte : random_bytes(26)) {
        if (out.size() % 6 == 5) out += '-';
        out += alphabet[static_cast<unsigned char>(byte) % alphabet.size()];  // 256 is a multiple of 32: no bias
    }
    return out;
}

std::string plain_code(std::string_view typed) {
    std::string out;
    for (const char c : typed) {
        if (c >= 'A' && c <= 'Z') {
            out += static_cast<char>(c - 'A' + 'a');
        } else if ((c >= 'a' && c <= 'z') || (c >= '2' && c <= '7')) {
            out += c;
        }
    }
    return out;
}

std::string secret_hash(std::string_view secret) {
    return app::to_hex(app::sha256(secret));
}

std::string new_id(std::int64_t now_ms) {
    const std::string random = random_bytes(10);
    std::array<std::uint8_t, 10> bytes{};
    std::transform(random.begin(), random.end(), bytes.begin(), [](char c) { return static_cast<std::uint8_t>(c); });
    return app::uuid_v7(now_ms, bytes);
}

}  // namespace sillwalk::office
