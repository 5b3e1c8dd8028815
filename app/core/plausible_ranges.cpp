#include "app/core/plausible_ranges.hpp"

#include "app/core/plausible.hpp"

#include <algorithm>

namespace sillwalk::app {

std::vector<engine::PlausibleRange> plausible_ranges(const EntryTables& tables, const engine::Survey& survey,
                                                     const std::vector<engine::ReadingRef>& readings) {
    std::vector<engine::PlausibleRange> ranges;
    for (const engine::ReadingRef& reading : readings) {
        const Plausible* row = plausible_row(tables, survey, reading);
        if (row == nullptr) continue;
        const double low = row->zero_is_typical ? std::min(0.0, row->typical_low) : row->typical_low;
        if (low < row->typical_high) ranges.push_back({reading, low, row->typical_high});
    }
    return ranges;
}

}  // namespace sillwalk::app
