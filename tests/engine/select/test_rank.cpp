#include "engine/select/assess.hpp"
#include "engine/select/rank.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace sillwalk::engine;

namespace {

std::vector<Finding> findings_of(std::initializer_list<Outcome> outcomes) {
    std::vector<Finding> findings;
    for (const Outcome outcome : outcomes) {
        findings.emplace_back();
        findings.back().outcome = outcome;
    }
    return findings;
}

struct Entry {
    Score score;
    Candidate candidate;
};

/// Few different values, so that every tie is met.
Entry random_entry(std::mt19937& random) {
    const auto up_to = [&](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
    Entry entry;
    entry.score.counts = {up_to(1), up_to(1), up_to(2)};
    entry.score.worst_use = 100 * up_to(2);
    entry.score.sum_of_uses = 100 * up_to(2);
    entry.score.conditions = up_to(1);
    entry.candidate = {static_cast<std::uint32_t>(up_to(1)), static_cast<std::uint32_t>(up_to(1)),
                       static_cast<std::uint32_t>(up_to(1)), static_cast<Preparation>(up_to(2))};
    return entry;
}

}  // namespace

TEST_CASE("verdict: any failing check, else any unknown, else any tight one decides", "[verdict]") {
    using enum Outcome;
    CHECK(verdict_of(findings_of({})) == Verdict::fits);
    CHECK(verdict_of(findings_of({holds, does_not_apply})) == Verdict::fits);
    CHECK(verdict_of(findings_of({holds, tight})) == Verdict::fits_with_conditions);
    CHECK(verdict_of(findings_of({tight, not_known})) == Verdict::cannot_tell);
    CHECK(verdict_of(findings_of({not_known, fails, tight})) == Verdict::does_not_fit);
    CHECK(verdict_of(findings_of({fails})) == Verdict::does_not_fit);
}

TEST_CASE("rank: verdict, worst use, sum, conditions, then the name", "[rank]") {
    const Candidate first{0, 0, 0, Preparation::as_supplied}, second{1, 0, 0, Preparation::as_supplied};
    Score fits, tight;
    fits.worst_use = 800;
    tight.counts.tight = 1;
    tight.worst_use = 100;
    CHECK(ranks_before(fits, second, tight, first));
    Score lighter = fits;
    lighter.worst_use = 700;
    lighter.sum_of_uses = 9000;
    CHECK(ranks_before(lighter, second, fits, first));
    Score more_in_sum = fits;
    more_in_sum.sum_of_uses = 1;
    CHECK(ranks_before(fits, second, more_in_sum, first));
    CHECK(ranks_before(fits, first, fits, second));
    CHECK_FALSE(ranks_before(fits, first, fits, first));
}

TEST_CASE("rank: uses that differ in the last bit are the same", "[rank]") {
    CHECK(quantised_use(0.8500000001) == quantised_use(0.8499999999));
    CHECK(quantised_use(0.8494) == 849);
    CHECK(quantised_use(1e9) == 1000000);
}

TEST_CASE("rank: both orders are total", "[rank][property]") {
    std::mt19937 random(20261125);
    for (int round = 0; round < 20000; ++round) {
        const Entry a = random_entry(random), b = random_entry(random), c = random_entry(random);
        for (const auto before : {ranks_before, nearer_to_holding}) {
            const auto less = [&](const Entry& x, const Entry& y) {
                return before(x.score, x.candidate, y.score, y.candidate);
            };
            REQUIRE_FALSE(less(a, a));
            REQUIRE_FALSE((less(a, b) && less(b, a)));
            if (!(a.candidate == b.candidate)) REQUIRE((less(a, b) || less(b, a)));
            if (less(a, b) && less(b, c)) REQUIRE(less(a, c));
        }
    }
}
