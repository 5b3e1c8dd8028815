#pragma once
/// The usual range of readings that are not there yet, for sampling them.

#include "app/data/entry_tables.hpp"
#include "engine/model/survey.hpp"
#include "engine/select/sampling.hpp"

#include <vector>

namespace sillwalk::app {

/// The typical range of each reading that has one; where "none" is usual too, from zero on. Choices have none.
[[nodiscard]] std::vector<engine::PlausibleRange> plausible_ranges(const EntryTables& tables,
                                                                   const engine::Survey& survey,
                                                                   const std::vector<engine::ReadingRef>& readings);

}  // namespace sillwalk::app
