#pragma once
/// Random texts that give access, and the digests of them that are stored in their place.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace sillwalk::office {

/// 256 random bits, base64url.
[[nodiscard]] std::string new_token();
/// 128 random bits in groups that can be read aloud: 26 characters of the alphabet of RFC 4648 §6 in lower case.
[[nodiscard]] std::string new_code();
/// Lower case, without spaces and hyphens: what a person typed as new_code() made it.
[[nodiscard]] std::string plain_code(std::string_view typed);
/// SHA-256 in hex. The secrets have 128 bits or more, so no slow hash is needed.
[[nodiscard]] std::string secret_hash(std::string_view secret);
/// A UUID of version 7.
[[nodiscard]] std::string new_id(std::int64_t now_ms);
[[nodiscard]] std::string random_bytes(std::size_t count);

}  // namespace sillwalk::office
