#pragma once
/// When to try again, and what an answer means for the thing that was sent. Pure: no clock and no random numbers here,
/// both are passed in.

#include "app/sync/transport.hpp"

#include <cstdint>
#include <optional>
#include <string_view>

namespace sillwalk::app {

struct RetryLimits {
    std::int64_t first_ms = 2'000;       ///< the longest first wait
    std::int64_t most_ms = 900'000;      ///< no wait is longer, but for what the office asks
    std::int64_t most_asked_s = 86'400;  ///< a Retry-After beyond this counts as this
};

/// Full jitter: a uniform share of min(most, first * 2^(failures - 1)). What the office asked for is a floor, with the
/// jitter on top, so that a hundred tablets do not come back in the same second.
/// failures >= 1, unit in [0, 1).
[[nodiscard]] std::int64_t wait_ms(const RetryLimits& limits, std::uint32_t failures, double unit,
                                   std::optional<std::int64_t> asked_s = std::nullopt);

/// Whole seconds of a Retry-After; nothing for a date or anything else, which is then not heeded.
[[nodiscard]] std::optional<std::int64_t> retry_after_s(std::string_view header);

/// When the next exchange may begin, by a clock that never jumps.
class Pace {
public:
    explicit Pace(RetryLimits limits = {}) : limits_(limits) {}
    void failed(std::int64_t now_ms, double unit, std::optional<std::int64_t> asked_s = std::nullopt);
    void succeeded();
    /// The network came up, or a person asked: at once, and the count of failures starts anew.
    void hurry();
    [[nodiscard]] bool may_try(std::int64_t now_ms) const { return now_ms >= not_before_ms_; }
    [[nodiscard]] std::int64_t not_before_ms() const { return not_before_ms_; }
    [[nodiscard]] std::uint32_t failures() const { return failures_; }

private:
    RetryLimits limits_;
    std::uint32_t failures_ = 0;
    std::int64_t not_before_ms_ = 0;
};

/// What was asked of the office.
enum class Asked { revision, whole_blob, begin_upload, upload_state, append, receipt };

enum class Fate {
    stored,       ///< it is on the office's disk
    go_on,        ///< a part of it is; the rest follows
    seek,         ///< go on from the offset that the office names
    begin_anew,   ///< the office no longer knows the upload
    smaller,      ///< the part was too large
    back_off,     ///< nothing wrong with it: later
    enrol_again,  ///< nothing may be sent until a person enrolled the device again
    park,         ///< it will never be taken as it is: a person must look
};

[[nodiscard]] Fate fate_of(Asked asked, const WireResult& result);

/// Language key of what a person is told of it; empty where nothing stands in the way.
[[nodiscard]] const char* reason_of(Asked asked, const WireResult& result);

}  // namespace sillwalk::app
