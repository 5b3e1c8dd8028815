#pragma once
/// A survey to entries and back, exactly.

#include "app/bundle/entries.hpp"
#include "engine/model/survey.hpp"

namespace sillwalk::app {

[[nodiscard]] Entries entries_of(const engine::Survey& survey);
/// bad_input with all errors in one message where the entries do not make a survey.
[[nodiscard]] engine::Result<engine::Survey> survey_of(const Entries& entries);

}  // namespace sillwalk::app
