#pragma once
/// The office's signed word that it has a revision (docs/reference/receipt.schema.json).

#include "app/bundle/digest.hpp"
#include "app/bundle/envelope.hpp"
#include "engine/base/result.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

inline constexpr std::string_view receipt_format = "sillwalk-receipt/1";

struct Receipt {
    Digest digest{};
    std::string survey_id;
    std::int64_t stored_at_ms = 0;  ///< the office's clock
    std::int64_t seq = 0;
    std::vector<Digest> missing_blobs;
    bool complete = false;
    std::vector<Digest> heads;
    bool fork = false;
};

/// bad_input where it is no receipt; disagreement where it is of another revision or not signed by that key.
[[nodiscard]] engine::Result<Receipt> read_receipt(std::string_view text, const Digest& expected,
                                                   const std::string& key_id, const PublicKey& key);

}  // namespace sillwalk::app
