#pragma once
/// A survey as a JSON tree, for those who go between survey and entries: a text between the two would only be read
/// again.

#include "app/bundle/entries.hpp"
#include "app/bundle/survey_json.hpp"
#include "app/data/json_reader.hpp"

namespace sillwalk::app {

/// What write_survey() writes.
[[nodiscard]] Json survey_document(const engine::Survey& survey);
/// As read_survey().
[[nodiscard]] SurveyRead read_document(const Json& document, UnknownMembers unknown);

/// As take_apart(). The document is an object.
[[nodiscard]] Entries entries_of_document(const Json& document);
/// What put_together() writes.
[[nodiscard]] engine::Result<Json> document_of(const Entries& entries);

}  // namespace sillwalk::app
