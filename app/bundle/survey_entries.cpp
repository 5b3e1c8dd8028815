#include "app/bundle/survey_entries.hpp"

#include "app/bundle/survey_json.hpp"
#include "engine/base/contract.hpp"

#include <utility>

namespace sillwalk::app {

using engine::Result;
using engine::Survey;

Entries entries_of(const Survey& survey) {
    auto entries = take_apart(write_survey(survey));
    EXPECT_CONTRACT(entries);  // the writer makes JSON objects
    return std::move(*entries);
}

Result<Survey> survey_of(const Entries& entries) {
    const auto text = put_together(entries);
    if (!text) return tl::make_unexpected(text.error());
    auto read = read_survey(*text, UnknownMembers::ignore);
    if (read.errors.empty()) return std::move(read.survey);
    std::string all;
    for (const engine::Error& error : read.errors)
        all += (all.empty() ? "" : "; ") + error.where + ": " + error.message;
    return engine::bad_input(std::move(all));
}

}  // namespace sillwalk::app
