#pragma once
/// "What if": other values for some readings of one cart and one crossing of its route, answered at once and never
/// written to the survey unless they are taken over.

#include "app/core/quantity.hpp"
#include "app/data/entry_tables.hpp"
#include "engine/model/survey.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace sillwalk::app {

struct WhatIfChange {
    engine::ReadingRef ref;
    std::int64_t value = 0;  ///< canonical
    friend bool operator==(const WhatIfChange&, const WhatIfChange&) = default;
};

/// What is being tried.
struct WhatIf {
    std::uint16_t cart = 0;
    std::vector<WhatIfChange> changes;  ///< never empty; in the order in which they were first moved
    engine::Survey survey;              ///< the visit's with these changes
    std::uint64_t version = 0;          ///< counts every move, over all what-ifs of a run
    std::uint64_t since = 0;            ///< the version with which it began
};

/// A reading that can be tried, and how far.
struct WhatIfRange {
    engine::ReadingRef ref;
    QuantityKind kind = QuantityKind::count;
    std::int64_t least = 0, most = 0, step = 1;  ///< canonical
};

/// Units chosen per kind of quantity: Settings::unit.
using ChosenUnits = std::array<std::uint8_t, quantity_kind_count>;

/// Crossings on the cart's route, each once, in travel order: indices in the survey.
[[nodiscard]] std::vector<std::uint16_t> crossings_of(const engine::Survey& survey, std::size_t cart);

/// Payload, speed, and at that crossing rise, gap and the minutes in the room before it. A range reaches over the usual
/// values and always holds the present one; its step is the unit's, coarser where there would be more than 150.
[[nodiscard]] std::vector<WhatIfRange> what_if_ranges(const engine::Survey& survey, const EntryTables& tables,
                                                      std::size_t cart, std::optional<std::uint16_t> crossing,
                                                      const ChosenUnits& units);
/// Nearest step inside the range.
[[nodiscard]] std::int64_t snapped(const WhatIfRange& range, std::int64_t value);

/// Sets one value; a value that is as read is no change. The changes that remain.
[[nodiscard]] std::vector<WhatIfChange> with_change(std::vector<WhatIfChange> changes, const engine::Survey& survey,
                                                    const WhatIfChange& change);
/// The survey with the change: tolerance and way of reading stay as they are, so that only the value moves.
[[nodiscard]] engine::Survey tried(engine::Survey survey, const std::vector<WhatIfChange>& changes);
/// The survey with the change taken over: known as assumed, for nobody has measured it.
[[nodiscard]] engine::Survey taken_over(engine::Survey survey, const WhatIfChange& change);

}  // namespace sillwalk::app
