#pragma once
/// Survey files, format "sillwalk-survey/1": whole numbers with the unit in the key, no fractions.
/// Described in docs/reference/survey.md and docs/reference/survey.schema.json.

#include "engine/base/result.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/survey.hpp"
#include "engine/model/tables.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

inline constexpr std::string_view survey_format = "sillwalk-survey/1";

enum class UnknownMembers { refuse, ignore };

struct SurveyRead {
    engine::Survey survey;              ///< all that could be read; use it only where errors is empty
    std::vector<engine::Error> errors;  ///< every mistake of form, each with its JSON path
};

/// Reads a survey file. Never throws, never stops at the first mistake.
[[nodiscard]] SurveyRead read_survey(std::string_view text, UnknownMembers unknown = UnknownMembers::refuse);

/// Mistakes of form, then mistakes of content (engine validate), in one list. A mistake of content that only follows
/// from one of form is left out, so that each mistake is named once.
[[nodiscard]] std::vector<engine::Error> survey_mistakes(const SurveyRead& read, const engine::Catalogue& catalogue,
                                                         const engine::Tables& tables);

/// The canonical text: keys sorted, two spaces, a line end at the end. What equals what was read gives the same bytes.
/// Values are rounded to the whole unit of their key.
[[nodiscard]] std::string write_survey(const engine::Survey& survey);

}  // namespace sillwalk::app
