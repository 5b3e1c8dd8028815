#include "app/core/what_if.hpp"

#include "app/core/plausible.hpp"
#include "app/core/reading_access.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::app {

using engine::Field;
using engine::ReadingRef;
using engine::Survey;

namespace {

constexpr std::int64_t most_steps = 150;

/// The unit's own step, or the first of 2, 5, 10, 20 … of them with few enough steps.
std::int64_t step_for(std::int64_t span, std::int64_t unit_step) {
    std::int64_t step = std::max<std::int64_t>(unit_step, 1);
    for (std::int64_t ten = 1; span / step > most_steps; ten *= 10) {
        for (const std::int64_t times : {2, 5, 10}) {
            step = std::max<std::int64_t>(unit_step, 1) * ten * times;
            if (span / step <= most_steps) break;
        }
    }
    return step;
}

std::optional<WhatIfRange> range_of(const Survey& survey, const EntryTables& tables, const ReadingRef& ref,
                                    const ChosenUnits& units) {
    const auto kind = quantity_of(ref.field);
    const auto reading = read_number(survey, ref);
    const Plausible* row = plausible_row(tables, survey, ref);
    if (!kind || !reading || row == nullptr) return std::nullopt;
    WhatIfRange range{ref, *kind, 0, to_canonical(row->typical_high, *kind), 1};
    if (!row->zero_is_typical) range.least = to_canonical(row->typical_low, *kind);
    if (reading->value) {
        const std::int64_t far = std::max(*reading->value * 5 / 2, range.most / 2);
        range.most = std::max(std::min(range.most, far), *reading->value);
        range.least = std::min(range.least, *reading->value);
    }
    const Unit& unit = units_of(*kind)[units[static_cast<std::size_t>(*kind)]];
    range.step = step_for(range.most - range.least, unit.step);
    return range;
}

/// The stay in the room from which the cart first meets that crossing.
std::optional<ReadingRef> stay_before(const Survey& survey, std::size_t cart, std::uint16_t crossing) {
    const auto& route = survey.carts[cart].route;
    for (std::size_t stop = 0; stop < route.size(); ++stop) {
        if (route[stop].leaves_by != survey.crossings[crossing].id) continue;
        return ReadingRef{Field::cart_stay, static_cast<std::uint16_t>(cart), static_cast<std::uint16_t>(stop)};
    }
    return std::nullopt;
}

}  // namespace

std::vector<std::uint16_t> crossings_of(const Survey& survey, std::size_t cart) {
    std::vector<std::uint16_t> found;
    if (cart >= survey.carts.size()) return found;
    for (const engine::Stop& stop : survey.carts[cart].route) {
        for (std::size_t i = 0; i < survey.crossings.size(); ++i) {
            const auto index = static_cast<std::uint16_t>(i);
            if (stop.leaves_by != survey.crossings[i].id) continue;
            if (std::find(found.begin(), found.end(), index) == found.end()) found.push_back(index);
        }
    }
    return found;
}

std::vector<WhatIfRange> what_if_ranges(const Survey& survey, const EntryTables& tables, std::size_t cart,
                                        std::optional<std::uint16_t> crossing, const ChosenUnits& units) {
    std::vector<WhatIfRange> ranges;
    if (cart >= survey.carts.size()) return ranges;
    const auto add = [&](const ReadingRef& ref) {
        if (const auto range = range_of(survey, tables, ref, units)) ranges.push_back(*range);
    };
    const auto index = static_cast<std::uint16_t>(cart);
    if (crossing && *crossing < survey.crossings.size()) {
        add({Field::crossing_rise, *crossing, 0});
        add({Field::crossing_gap, *crossing, 0});
    }
    add({Field::cart_payload, index, 0});
    add({Field::cart_speed, index, 0});
    if (crossing && *crossing < survey.crossings.size()) {
        if (const auto stay = stay_before(survey, cart, *crossing)) add(*stay);
    }
    return ranges;
}

std::int64_t snapped(const WhatIfRange& range, std::int64_t value) {
    const auto steps = std::llround(static_cast<double>(value - range.least) / static_cast<double>(range.step));
    return std::clamp(range.least + static_cast<std::int64_t>(steps) * range.step, range.least, range.most);
}

std::vector<WhatIfChange> with_change(std::vector<WhatIfChange> changes, const Survey& survey,
                                      const WhatIfChange& change) {
    const auto reading = read_number(survey, change.ref);
    if (!reading) return changes;
    const auto at = std::find_if(changes.begin(), changes.end(),
                                 [&](const WhatIfChange& other) { return other.ref == change.ref; });
    if (reading->value == change.value) {
        if (at != changes.end()) changes.erase(at);
    } else if (at != changes.end()) {
        at->value = change.value;
    } else {
        changes.push_back(change);
    }
    return changes;
}

Survey tried(Survey survey, const std::vector<WhatIfChange>& changes) {
    for (const WhatIfChange& change : changes) {
        auto reading = read_number(survey, change.ref);
        if (!reading) continue;
        // What was not there yet has no way of reading: it is assumed.
        if (!reading->value) reading->known = engine::Known::assumed;
        reading->value = change.value;
        reading->as_entered.clear();
        (void)write_number(survey, change.ref, *reading);
    }
    return survey;
}

Survey taken_over(Survey survey, const WhatIfChange& change) {
    auto reading = read_number(survey, change.ref);
    if (!reading) return survey;
    reading->value = change.value;
    reading->known = engine::Known::assumed;
    reading->as_entered.clear();
    reading->method.clear();
    (void)write_number(survey, change.ref, *reading);
    return survey;
}

}  // namespace sillwalk::app
