#include "app/bundle/digest.hpp"

#include "engine/base/contract.hpp"

#include <sodium.h>

#include <algorithm>

namespace sillwalk::app {

namespace {

const unsigned char* bytes_of(std::string_view text) {
    return reinterpret_cast<const unsigned char*>(text.data());
}

/// libsodium picks its code paths once; calling it again is harmless.
void ready() {
    EXPECT_CONTRACT(sodium_init() >= 0);
}

std::string encode(std::string_view bytes, int variant) {
    ready();
    std::string out(sodium_base64_encoded_len(bytes.size(), variant), '\0');
    sodium_bin2base64(out.data(), out.size(), bytes_of(bytes), bytes.size(), variant);
    out.pop_back();  // the terminating zero
    return out;
}

std::optional<std::string> decode(std::string_view text, int variant) {
    ready();
    std::string out(text.size(), '\0');
    std::size_t size = 0;
    const char* end = nullptr;
    if (sodium_base642bin(reinterpret_cast<unsigned char*>(out.data()), out.size(), text.data(), text.size(), nullptr,
                          &size, &end, variant) != 0 ||
        end != text.data() + text.size()) {
        return std::nullopt;
    }
    out.resize(size);
    return out;
}

std::string signed_bytes(std::string_view context, const Digest& digest) {
    std::string message(context);
    message += '\0';
    message += byte_view(digest);
    return message;
}

}  // namespace

Digest sha256(std::string_view bytes) {
    Digest digest{};
    crypto_hash_sha256(digest.data(), bytes_of(bytes), bytes.size());
    return digest;
}

std::string to_hex(std::string_view bytes) {
    std::string out(bytes.size() * 2 + 1, '\0');
    sodium_bin2hex(out.data(), out.size(), bytes_of(bytes), bytes.size());
    out.pop_back();
    return out;
}
std::string to_hex(const Digest& digest) {
    return to_hex(byte_view(digest));
}

std::optional<Digest> digest_from_hex(std::string_view hex) {
    const bool lower_hex =
        std::all_of(hex.begin(), hex.end(), [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); });
    if (hex.size() != 64 || !lower_hex) return std::nullopt;
    Digest digest{};
    sodium_hex2bin(digest.data(), digest.size(), hex.data(), hex.size(), nullptr, nullptr, nullptr);
    return digest;
}

std::string to_base64(std::string_view bytes) {
    return encode(bytes, sodium_base64_VARIANT_ORIGINAL);
}
std::optional<std::string> from_base64(std::string_view text) {
    return decode(text, sodium_base64_VARIANT_ORIGINAL);
}
std::string to_base64url(std::string_view bytes) {
    return encode(bytes, sodium_base64_VARIANT_URLSAFE_NO_PADDING);
}
std::optional<std::string> from_base64url(std::string_view text) {
    return decode(text, sodium_base64_VARIANT_URLSAFE_NO_PADDING);
}

SigningKey signing_key_from_seed(const std::array<std::uint8_t, 32>& seed) {
    ready();
    SigningKey key;
    crypto_sign_seed_keypair(key.public_key.data(), key.secret_key.data(), seed.data());
    return key;
}

Signature sign(const SigningKey& key, std::string_view context, const Digest& digest) {
    ready();
    const std::string message = signed_bytes(context, digest);
    Signature signature{};
    crypto_sign_detached(signature.data(), nullptr, bytes_of(message), message.size(), key.secret_key.data());
    return signature;
}

bool verify(const std::array<std::uint8_t, 32>& public_key, std::string_view context, const Digest& digest,
            const Signature& signature) {
    ready();
    const std::string message = signed_bytes(context, digest);
    return crypto_sign_verify_detached(signature.data(), bytes_of(message), message.size(), public_key.data()) == 0;
}

}  // namespace sillwalk::app
