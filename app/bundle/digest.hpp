#pragma once
/// SHA-256, Ed25519 and the texts they travel in (libsodium). No key or random number is made here: both are passed in.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace sillwalk::app {

using Digest = std::array<std::uint8_t, 32>;
using Signature = std::array<std::uint8_t, 64>;
struct SigningKey {
    std::array<std::uint8_t, 32> public_key{};
    std::array<std::uint8_t, 64> secret_key{};
};

[[nodiscard]] Digest sha256(std::string_view bytes);

/// Lower-case hex; from_hex takes exactly that, nothing else.
[[nodiscard]] std::string to_hex(std::string_view bytes);
[[nodiscard]] std::string to_hex(const Digest& digest);
[[nodiscard]] std::optional<Digest> digest_from_hex(std::string_view hex);

/// Base64 with padding (RFC 4648 §4), and the URL-safe form without (§5).
[[nodiscard]] std::string to_base64(std::string_view bytes);
[[nodiscard]] std::optional<std::string> from_base64(std::string_view text);
[[nodiscard]] std::string to_base64url(std::string_view bytes);
[[nodiscard]] std::optional<std::string> from_base64url(std::string_view text);

/// The same 32 seed bytes always give the same pair.
[[nodiscard]] SigningKey signing_key_from_seed(const std::array<std::uint8_t, 32>& seed);
/// Signs `context` || 0x00 || digest, so that a signature made for one purpose cannot serve another.
[[nodiscard]] Signature sign(const SigningKey& key, std::string_view context, const Digest& digest);
[[nodiscard]] bool verify(const std::array<std::uint8_t, 32>& public_key, std::string_view context,
                          const Digest& digest, const Signature& signature);

/// Any byte container as a view.
template <class Bytes>
[[nodiscard]] std::string_view byte_view(const Bytes& bytes) {
    return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

}  // namespace sillwalk::app
