#include "app/core/open_readings.hpp"

#include "app/core/quantity.hpp"

#include <algorithm>

namespace sillwalk::app {

namespace {

double share_of(const engine::CartAdvice& advice, const engine::ReadingRef& ref) {
    if (!advice.read_again) return 0;
    for (const engine::ReadingDoubt& doubt : advice.read_again->readings) {
        if (doubt.reading == ref) return doubt.share;
    }
    return 0;
}

}  // namespace

std::vector<OpenReading> open_readings(const engine::CartAdvice& advice) {
    std::vector<OpenReading> open;
    const engine::RankedCandidate* first = headline(&advice);
    for (const engine::ReadingRef& ref : advice.not_read) {
        OpenReading reading{ref, {}};
        if (first) {
            for (const engine::Finding& finding : first->findings) {
                const bool waits =
                    finding.outcome == engine::Outcome::not_known &&
                    std::find(finding.missing.begin(), finding.missing.end(), ref) != finding.missing.end();
                if (waits) reading.checks.push_back(finding.check);
            }
        }
        open.push_back(std::move(reading));
    }
    std::stable_sort(open.begin(), open.end(), [&](const OpenReading& a, const OpenReading& b) {
        const double share_a = share_of(advice, a.ref);
        const double share_b = share_of(advice, b.ref);
        if (share_a != share_b) return share_a > share_b;
        return a.checks.size() > b.checks.size();
    });
    return open;
}

Action action_for(const engine::ReadingRef& ref) {
    if (ref.field == engine::Field::cart_route) return GoTo{{Screen::plan, 0}};
    if (ref.field == engine::Field::cart_castors) return BuildAction{OpenCastors{ref.index}};
    if (quantity_of(ref.field)) return OpenSheet{ref};
    return OpenChoice{ref};
}

}  // namespace sillwalk::app
