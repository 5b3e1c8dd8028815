#pragma once
/// A finding as a customer reads it: one short sentence, and behind it the formula, the numbers, the range and the
/// sources.

#include "app/text/language.hpp"
#include "app/text/show.hpp"
#include "engine/model/advice.hpp"
#include "engine/model/tables.hpp"

#include <string>
#include <vector>

namespace sillwalk::app {

struct TextContext {
    const Language& language;
    UnitSystem units = UnitSystem::si;
    const engine::Survey& survey;
    const engine::Catalogue& catalogue;
    const engine::Tables& tables;
};

struct SourceLine {
    std::string title;    ///< of the publication, or "common practice, no published source"
    std::string locator;  ///< place in it; may be empty
    std::string status;   ///< "read", "second-hand", "from memory", "practice", "derived"
};

struct Explanation {
    std::string check;     ///< "Step"
    std::string question;  ///< "Does the rise exceed what such wheels are tested for?"
    std::string outcome;   ///< "fails"
    std::string place;     ///< "Freezer door sill"; empty where the whole route decides
    std::string sentence;  ///< at most 25 words
    std::string compared;  ///< "38 mm of 6.25 mm"; empty where nothing is compared
    std::string formula, range;
    std::string inserted;  ///< the numbers that went in, named
    std::vector<std::string> conditions, assumptions, drivers, missing;
    std::vector<SourceLine> sources;
};

[[nodiscard]] Explanation explain(const engine::Finding& finding, const TextContext& context);

/// "1 200 of 300 N", "19 mm of 6.3 mm"; empty where the finding compares nothing.
[[nodiscard]] std::string compared(const engine::Finding& finding, const TextContext& context);
/// The one sentence.
[[nodiscard]] std::string sentence(const engine::Finding& finding, const TextContext& context);
/// "rise of Freezer door sill".
[[nodiscard]] std::string reading_name(const engine::ReadingRef& ref, const TextContext& context);
[[nodiscard]] std::string place_name(const engine::Place& place, const engine::Survey& survey);
/// "200 mm one-piece urethane, precision ball bearing, swivel, degreased".
[[nodiscard]] std::string candidate_name(const engine::Candidate& candidate, const TextContext& context);
/// Word key of a castor's function: "function.rigid".
[[nodiscard]] const char* function_key(engine::CastorFunction function);
/// Word key of a field: "reading.crossing_rise".
[[nodiscard]] std::string field_key(engine::Field field);

}  // namespace sillwalk::app
