// "The answer turns on …" against brute force: every reading moved to both ends of its tolerance, all others as read.
// An answer turns where it may be worse than what was read says.
#include "app/core/reading_access.hpp"
#include "app/shell/work_out.hpp"
#include "tests/app_screens/app_host.hpp"

#include <algorithm>
#include <map>

using namespace sillwalk;
using engine::CheckId;

namespace {

/// All numbers of the survey that have a tolerance, by reference; of the carts those of the one alone.
std::map<engine::ReadingRef, app::NumberReading> open_numbers(const engine::Survey& survey, std::size_t cart) {
    std::map<engine::ReadingRef, app::NumberReading> found;
    for (int field = 1; field <= static_cast<int>(engine::last_field); ++field) {
        for (std::uint16_t index = 0; index < 64; ++index) {
            for (std::uint16_t stop = 0; stop < 32; ++stop) {
                const engine::ReadingRef ref{static_cast<engine::Field>(field), index, stop};
                const bool by_stop = ref.field == engine::Field::cart_stay || ref.field == engine::Field::cart_castors;
                const bool of_other = app::owner_of(ref.field) == app::Owner::cart && index != cart;
                if (of_other || (stop > 0 && !by_stop) || !app::exists(survey, ref)) break;
                const auto reading = app::read_number(survey, ref);
                if (reading && reading->value && reading->tolerance > 0) found.emplace(ref, *reading);
            }
        }
    }
    return found;
}

std::map<CheckId, engine::Finding> present_findings(const engine::Survey& survey, std::size_t cart) {
    const app::Answer answer = app::work_out(survey, *test::shared_data(), 1, cart);
    std::map<CheckId, engine::Finding> findings;
    for (const engine::CartAdvice& advice : answer.advice.carts) {
        if (advice.cart != cart || !advice.present) continue;
        for (const engine::Finding& finding : advice.present->findings) findings.emplace(finding.check, finding);
    }
    return findings;
}

/// Outcomes of the wheel on the cart when one reading alone lies at an end of its tolerance.
struct BruteForce {
    std::map<CheckId, engine::Finding> nominal;
    std::map<CheckId, std::map<engine::ReadingRef, bool>> worse;
    std::size_t impossible = 0;
};

BruteForce brute_force(engine::Survey survey, std::size_t cart) {
    const auto numbers = open_numbers(survey, cart);
    for (const auto& [ref, reading] : numbers) {
        app::NumberReading exact = reading;
        exact.tolerance = 0;
        REQUIRE(app::write_number(survey, ref, exact));
    }
    BruteForce out;
    out.nominal = present_findings(survey, cart);
    for (const auto& [ref, reading] : numbers) {
        for (const std::int64_t way : {-reading.tolerance, reading.tolerance}) {
            engine::Survey moved = survey;
            app::NumberReading end = reading;
            end.tolerance = 0;
            end.as_entered.clear();  // it no longer says what was typed
            // A tolerance does not lead below nothing.
            end.value = *reading.value >= 0 ? std::max<std::int64_t>(0, *reading.value + way) : *reading.value + way;
            REQUIRE(app::write_number(moved, ref, end));
            INFO(engine::reading_path(ref) << " moved by " << way);
            const auto findings = present_findings(moved, cart);
            if (findings.empty()) {  // it would contradict another reading: no site is so
                ++out.impossible;
                continue;
            }
            REQUIRE(findings.size() == out.nominal.size());
            for (const auto& [check, finding] : findings) {
                if (finding.outcome > out.nominal.at(check).outcome) out.worse[check][ref] = true;
            }
        }
    }
    return out;
}

}  // namespace

TEST_CASE("A15 the reading that an answer turns on changes it alone, and no other answer is turned by one reading",
          "[acceptance]") {
    test::AppHost host;
    const engine::Survey survey = host.shell().model().visit->survey;
    std::size_t turning = 0;
    std::size_t steady = 0;
    // Two carts are enough for the time that it takes: the tray rack, and one whose answer turns on a single reading.
    for (const std::size_t cart : {std::size_t{0}, std::size_t{5}}) {
        const BruteForce tried = brute_force(survey, cart);
        CHECK(tried.impossible <= survey.crossings.size());  // a slope where there is no length
        for (const auto& [check, finding] : present_findings(survey, cart)) {
            INFO("cart " << cart << ", " << engine::check_name(check));
            const auto found = tried.worse.find(check);
            CHECK(finding.outcome_nominal == tried.nominal.at(check).outcome);
            if (!finding.turns_on) {
                ++steady;
                CHECK(found == tried.worse.end());
            } else if (finding.turns_on_reading.field != engine::Field::none) {
                ++turning;
                INFO(engine::reading_path(finding.turns_on_reading));
                const bool changes = found != tried.worse.end() && found->second.count(finding.turns_on_reading) == 1;
                CHECK(changes);
            }
        }
    }
    CHECK(turning > 0);
    CHECK(steady > 20);
}
