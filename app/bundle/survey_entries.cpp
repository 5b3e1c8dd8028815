#include "app/bundle/survey_entries.hpp"

#include "app/bundle/survey_document.hpp"

#include <utility>

namespace sillwalk::app {

using engine::Result;
using engine::Survey;

Entries entries_of(const Survey& survey) {
    return entries_of_document(survey_document(survey));
}

Result<Survey> survey_of(const Entries& entries) {
    const auto document = document_of(entries);
    if (!document) return tl::make_unexpected(document.error());
    auto read = read_document(*document, UnknownMembers::ignore);
    if (read.errors.empty()) return std::move(read.survey);
    std::string all;
    for (const engine::Error& error : read.errors)
        all += (all.empty() ? "" : "; ") + error.where + ": " + error.message;
    return engine::bad_input(std::move(all));
}

}  // namespace sillwalk::app
