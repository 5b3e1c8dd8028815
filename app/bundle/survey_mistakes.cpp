#include "app/bundle/survey_json.hpp"
#include "engine/select/assess.hpp"

#include <algorithm>

namespace sillwalk::app {

namespace {

/// Whether one path is the other or lies inside it.
bool related(std::string_view a, std::string_view b) {
    if (a == "/" || b == "/") return true;
    const std::string_view shorter = a.size() < b.size() ? a : b;
    const std::string_view longer = a.size() < b.size() ? b : a;
    return longer.substr(0, shorter.size()) == shorter &&
           (longer.size() == shorter.size() || longer[shorter.size()] == '/');
}

/// Whether a whole list could not be read; then nothing is said of references into it.
bool list_lost(const std::vector<engine::Error>& errors) {
    return std::any_of(errors.begin(), errors.end(), [](const engine::Error& error) {
        return error.where == "/rooms" || error.where == "/crossings";
    });
}

}  // namespace

std::vector<engine::Error> survey_mistakes(const SurveyRead& read, const engine::Catalogue& catalogue,
                                           const engine::Tables& tables) {
    std::vector<engine::Error> out = read.errors;
    const bool lost = list_lost(read.errors);
    for (engine::Error& error : engine::validate(read.survey, catalogue, tables)) {
        const bool follows = std::any_of(read.errors.begin(), read.errors.end(), [&](const engine::Error& earlier) {
            return related(error.where, earlier.where);
        });
        if (!follows && !(lost && error.code == engine::ErrorCode::not_found)) out.push_back(std::move(error));
    }
    return out;
}

}  // namespace sillwalk::app
