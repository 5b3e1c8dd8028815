#pragma once
/// Taking a visit off this tablet once the office has all of it.

#include "app/storage/database.hpp"

#include <string>

namespace sillwalk::app {

/// The visit, its journal, its versions with their receipts, and its photos where no other visit names them; one
/// transaction. no_answer where the office does not have all of it: it was changed since, waits, needs attention, or
/// came in a file. not_found where there is no such visit. Older copies of the file still hold it.
[[nodiscard]] engine::Result<void> erase_visit(Database& database, const std::string& survey_id);

}  // namespace sillwalk::app
