#pragma once
/// A survey as a map of entries: the JSON path of a reading and that reading's JSON text. It is what the database
/// stores, what undo turns back and what an edit is recorded as. "/crossings/<id>/rise" holds one reading; "/crossings"
/// holds the ids in order;
/// "/site" and the like hold the survey's own members.

#include "engine/base/result.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

using Entries = std::map<std::string, std::string>;

/// One entry before and after; empty means that it is not there.
struct Change {
    std::string path;
    std::optional<std::string> before, now;
    friend bool operator==(const Change&, const Change&) = default;
};

/// Takes the text of a survey file apart; bad_input where it is no JSON object.
[[nodiscard]] engine::Result<Entries> take_apart(std::string_view survey_json);
/// The text of the survey file, members in the order of their names.
[[nodiscard]] engine::Result<std::string> put_together(const Entries& entries);

/// The text that an entry holds; empty where it holds none.
[[nodiscard]] std::string text_of_entry(std::string_view entry);

/// What changes `before` into `now`, sorted by path.
[[nodiscard]] std::vector<Change> difference(const Entries& before, const Entries& now);
void apply_changes(Entries& entries, const std::vector<Change>& changes);
/// The changes that lead back.
[[nodiscard]] std::vector<Change> turned_round(std::vector<Change> changes);

}  // namespace sillwalk::app
