#pragma once
/// The list of visits as the database has it.

#include "app/core/model.hpp"
#include "app/storage/database.hpp"

namespace sillwalk::app {

/// Last changed first.
[[nodiscard]] engine::Result<std::vector<VisitLine>> visit_lines(Database& database);

}  // namespace sillwalk::app
