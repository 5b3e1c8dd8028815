#include "app/sync/retry.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <charconv>

namespace sillwalk::app {

namespace {

constexpr std::uint32_t most_doublings = 30;

bool is_later(int status) {
    return status == 408 || status == 425 || status == 429 || status >= 500;
}

bool is_redirect(int status) {
    return status >= 300 && status < 400;
}

/// The body was changed on the way: the office says so, and the next try brings it whole.
bool changed_on_the_way(const WireResponse& response) {
    return response.status == 422 && response.body.find("digest-mismatch") != std::string::npos &&
           response.body.find("\"retry\":\"later\"") != std::string::npos;
}

Fate fate_of_success(Asked asked, int status) {
    switch (asked) {
        case Asked::begin_upload:
            return status == 201 ? Fate::go_on : Fate::stored;
        case Asked::append:
            return status == 201 ? Fate::stored : Fate::go_on;
        case Asked::upload_state:
            return Fate::seek;
        case Asked::revision:
        case Asked::whole_blob:
        case Asked::receipt:
            return status == 204 ? Fate::back_off : Fate::stored;
    }
    return Fate::back_off;
}

}  // namespace

std::int64_t wait_ms(const RetryLimits& limits, std::uint32_t failures, double unit,
                     std::optional<std::int64_t> asked_s) {
    EXPECT_CONTRACT(failures >= 1 && unit >= 0 && unit < 1);
    const std::uint32_t doublings = std::min(failures - 1, most_doublings);
    const std::int64_t longest = std::min(limits.most_ms, limits.first_ms << doublings);
    const auto jitter = static_cast<std::int64_t>(unit * static_cast<double>(longest));
    return jitter + 1000 * std::clamp<std::int64_t>(asked_s.value_or(0), 0, limits.most_asked_s);
}

std::optional<std::int64_t> retry_after_s(std::string_view header) {
    std::int64_t seconds = 0;
    const auto end = std::from_chars(header.data(), header.data() + header.size(), seconds);
    if (header.empty() || end.ec != std::errc() || end.ptr != header.data() + header.size() || seconds < 0) return {};
    return seconds;
}

void Pace::failed(std::int64_t now_ms, double unit, std::optional<std::int64_t> asked_s) {
    ++failures_;
    not_before_ms_ = now_ms + wait_ms(limits_, failures_, unit, asked_s);
}

void Pace::succeeded() {
    failures_ = 0;
    not_before_ms_ = 0;
}

void Pace::hurry() {
    succeeded();
}

Fate fate_of(Asked asked, const WireResult& result) {
    if (!result) return Fate::back_off;
    const int status = result->status;
    const bool of_upload = asked == Asked::append || asked == Asked::upload_state;
    if (status == 412 && !of_upload) return Fate::stored;
    if (status >= 200 && status < 300) return fate_of_success(asked, status);
    if (is_later(status) || is_redirect(status) || changed_on_the_way(*result)) return Fate::back_off;
    if (status == 401) return Fate::enrol_again;
    if (status == 409 && asked == Asked::append) return Fate::seek;
    if ((status == 404 || status == 410) && of_upload) return Fate::begin_anew;
    if (status == 413 && (asked == Asked::append || asked == Asked::whole_blob)) return Fate::smaller;
    return Fate::park;
}

const char* reason_of(Asked asked, const WireResult& result) {
    if (!result) {
        switch (result.error()) {
            case WireFault::unreachable:
                return "sync.why.offline";
            case WireFault::broken:
                return "sync.why.cut_off";
            case WireFault::untrusted:
                return "sync.why.untrusted";
        }
    }
    const int status = result->status;
    if (status == 507) return "sync.why.office_full";
    if (is_redirect(status)) return "sync.why.elsewhere";
    if (is_later(status) || changed_on_the_way(*result)) return "sync.why.busy";
    if (status == 401) return "sync.why.enrol_again";
    if (status == 403) return "sync.why.not_yours";
    if (status == 413) return "sync.why.too_large";
    return fate_of(asked, result) == Fate::park ? "sync.why.refused" : "";
}

}  // namespace sillwalk::app
