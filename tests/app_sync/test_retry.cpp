// The table of results is that of docs/how-to/send-and-hand-off.md; full jitter is the scheme of that name in M.
// Brooker, "Exponential Backoff And Jitter", AWS Architecture Blog, 2015 (from memory). Statuses: RFC 9110.
#include "app/sync/retry.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::app;

namespace {
WireResult answer(int status, std::string body = "{}") {
    return WireResponse{status, {}, std::move(body)};
}
WireResult fault(WireFault what) {
    return tl::make_unexpected(what);
}
}  // namespace

TEST_CASE("waits double up to the limit and are a share of it", "[sync]") {
    const RetryLimits limits{2000, 900000, 86400};
    CHECK(wait_ms(limits, 1, 0.0) == 0);
    CHECK(wait_ms(limits, 1, 0.5) == 1000);
    CHECK(wait_ms(limits, 2, 0.5) == 2000);
    CHECK(wait_ms(limits, 3, 0.25) == 2000);
    CHECK(wait_ms(limits, 9, 0.5) == 256000);
    CHECK(wait_ms(limits, 10, 0.5) == 450000);  // 2 s * 2^9 is over the 15 minutes
    CHECK(wait_ms(limits, 4000000000U, 0.5) == 450000);
    for (std::uint32_t failures = 1; failures < 40; ++failures) CHECK(wait_ms(limits, failures, 0.999999) < 900000);
}

TEST_CASE("what the office asks for is a floor with the jitter on top", "[sync]") {
    CHECK(wait_ms({}, 1, 0.5, 7) == 8000);
    CHECK(wait_ms({}, 1, 0.0, 7) == 7000);
    CHECK(wait_ms({}, 1, 0.0, 1000000) == 86400000);
    CHECK(retry_after_s("7") == 7);
    CHECK(retry_after_s("0") == 0);
    for (const char* wrong :
         {"", " 7", "7 ", "-1", "+7", "7.5", "Fri, 31 Dec 1999 23:59:59 GMT", "99999999999999999999"})
        CHECK_FALSE(retry_after_s(wrong));
}

TEST_CASE("a pace waits after failures and is reset by a success or a person", "[sync]") {
    Pace pace;
    CHECK(pace.may_try(0));
    pace.failed(1000, 0.5);
    CHECK_FALSE(pace.may_try(1999));
    CHECK(pace.may_try(2000));
    pace.failed(2000, 0.5);
    CHECK(pace.not_before_ms() == 4000);
    pace.hurry();
    CHECK(pace.may_try(2001));
    CHECK(pace.failures() == 0);
    pace.failed(5000, 0.5);
    CHECK(pace.not_before_ms() == 6000);
}

TEST_CASE("every answer has one meaning", "[sync]") {
    for (const int status : {200, 201, 412}) {
        CHECK(fate_of(Asked::revision, answer(status)) == Fate::stored);
        CHECK(fate_of(Asked::whole_blob, answer(status)) == Fate::stored);
    }
    for (const Asked asked : {Asked::revision, Asked::whole_blob, Asked::begin_upload, Asked::upload_state,
                              Asked::append, Asked::receipt}) {
        for (const int status : {408, 425, 429, 500, 502, 503, 504, 507, 301, 302, 307})
            CHECK(fate_of(asked, answer(status)) == Fate::back_off);
        CHECK(fate_of(asked, answer(401)) == Fate::enrol_again);
        for (const int status : {400, 403, 415, 422}) CHECK(fate_of(asked, answer(status)) == Fate::park);
        for (const WireFault what : {WireFault::unreachable, WireFault::broken, WireFault::untrusted})
            CHECK(fate_of(asked, fault(what)) == Fate::back_off);
    }
    CHECK(fate_of(Asked::append, answer(409)) == Fate::seek);
    CHECK(fate_of(Asked::append, answer(404)) == Fate::begin_anew);
    CHECK(fate_of(Asked::upload_state, answer(410)) == Fate::begin_anew);
    CHECK(fate_of(Asked::append, answer(413)) == Fate::smaller);
    CHECK(fate_of(Asked::revision, answer(413)) == Fate::park);
    CHECK(fate_of(Asked::begin_upload, answer(413)) == Fate::park);
    CHECK(fate_of(Asked::begin_upload, answer(201)) == Fate::go_on);
    CHECK(fate_of(Asked::append, answer(204)) == Fate::go_on);
    CHECK(fate_of(Asked::append, answer(201)) == Fate::stored);
    CHECK(fate_of(Asked::revision, answer(404)) == Fate::park);
}

TEST_CASE("a body that was changed on the way is sent again, one that is wrong is not", "[sync]") {
    const char* on_the_way = R"({"retry":"later","type":"urn:sillwalk:problem:digest-mismatch"})";
    const char* wrong = R"({"retry":"never","type":"urn:sillwalk:problem:digest-mismatch"})";
    CHECK(fate_of(Asked::revision, answer(422, on_the_way)) == Fate::back_off);
    CHECK(fate_of(Asked::revision, answer(422, wrong)) == Fate::park);
    CHECK(fate_of(Asked::revision,
                  answer(422, R"({"retry":"later","type":"urn:sillwalk:problem:unsupported-format"})")) == Fate::park);
}

TEST_CASE("whatever stands in the way has words", "[sync]") {
    CHECK(std::string(reason_of(Asked::revision, fault(WireFault::unreachable))) == "sync.why.offline");
    CHECK(std::string(reason_of(Asked::revision, answer(503))) == "sync.why.busy");
    CHECK(std::string(reason_of(Asked::revision, answer(507))) == "sync.why.office_full");
    CHECK(std::string(reason_of(Asked::revision, answer(302))) == "sync.why.elsewhere");
    CHECK(std::string(reason_of(Asked::revision, answer(422))) == "sync.why.refused");
    CHECK(std::string(reason_of(Asked::revision, answer(201))).empty());
}
