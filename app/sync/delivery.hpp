#pragma once
/// One thing on its way to the office: which request comes next, and what the answer makes of it. Pure.
/// A revision is one PUT. A photo up to one part is one PUT; a larger one goes in appends with the field names of the
/// IETF draft on resumable uploads (docs/reference/office.md).

#include "app/bundle/digest.hpp"
#include "app/storage/outbox.hpp"
#include "app/sync/retry.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace sillwalk::app {

inline constexpr std::int64_t first_part_bytes = std::int64_t{256} << 10;
inline constexpr std::int64_t least_part_bytes = std::int64_t{16} << 10;

struct Delivery {
    OutboxKind kind = OutboxKind::revision;
    Digest digest{};
    std::int64_t size = 0;                       ///< bytes of the whole
    std::int64_t part_bytes = first_part_bytes;  ///< at most so many in one request
    std::string upload_path{};                   ///< empty: no upload was begun
    std::int64_t offset = 0;
    bool offset_known = true;  ///< false after a cut: ask before going on
};

[[nodiscard]] Asked next_question(const Delivery& delivery);
/// `bytes` is the whole: the envelope or the photo.
[[nodiscard]] WireRequest next_request(const Delivery& delivery, std::string_view bytes, const std::string& token);

/// Takes the answer in. `back_off` also where an answer makes no sense, such as that of a guest network's log-in page.
[[nodiscard]] Fate take_answer(Delivery& delivery, Asked asked, const WireResult& result);

/// "sha-256=:<base64>:" of RFC 9530.
[[nodiscard]] std::string digest_field(const Digest& digest);

}  // namespace sillwalk::app
