#include "app/office/recompute.hpp"

#include "app/bundle/bundle_advice.hpp"
#include "app/bundle/revision.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "engine/select/assess.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace sillwalk::office {

using app::Json;

namespace {

constexpr std::size_t most_differences = 50;

std::string editions_text(std::string_view engine, std::string_view catalogue, std::string_view tables) {
    return fmt::format("engine {}, catalogue {}, tables {}", engine, catalogue, tables);
}

std::string shortened(const Json& value) {
    const std::string text = value.is_string() ? value.get<std::string>() : value.dump();
    return text.size() <= 80 ? text : text.substr(0, 80) + "…";
}

void compare(const Json& theirs, const Json& ours, const std::string& path, std::vector<std::string>& out) {
    if (out.size() >= most_differences) return;
    const Json none;
    if (theirs.is_object() && ours.is_object()) {
        std::set<std::string> names;
        for (const auto* side : {&theirs, &ours}) {
            for (const auto& [name, value] : side->items()) names.insert(name);
        }
        const auto member = [&](const Json& side, const std::string& name) -> const Json& {
            const auto found = side.find(name);
            return found == side.end() ? none : *found;
        };
        for (const std::string& name : names)
            compare(member(theirs, name), member(ours, name), app::json_path(path, name), out);
    } else if (theirs.is_array() && ours.is_array() && theirs.size() == ours.size()) {
        for (std::size_t i = 0; i < theirs.size(); ++i) compare(theirs[i], ours[i], app::json_path(path, i), out);
    } else if (theirs != ours) {
        out.push_back(fmt::format("{}: {}, here {}", path, shortened(theirs), shortened(ours)));
    }
}

}  // namespace

std::vector<std::string> advice_differences(const Json& theirs, const Json& ours) {
    std::vector<std::string> out;
    const Json none = Json::array();
    const Json& their_carts = theirs.contains("carts") ? theirs["carts"] : none;
    const Json& our_carts = ours.contains("carts") ? ours["carts"] : none;
    if (their_carts.size() != our_carts.size())
        out.push_back(fmt::format("/carts: {} carts, here {}", their_carts.size(), our_carts.size()));
    for (std::size_t i = 0; i < std::min(their_carts.size(), our_carts.size()); ++i)
        compare(their_carts[i], our_carts[i], fmt::format("/carts/{}", i), out);
    return out;
}

Recomputed recompute(const Json& revision) {
    Recomputed out;
    const auto tables = app::load_tables();
    const auto catalogue = app::load_catalogue();
    for (const auto* errors : {&tables.errors, &catalogue.errors}) {
        for (const auto& error : *errors) out.mistakes.push_back(error.where + ": " + error.message);
    }
    if (!out.mistakes.empty()) return out;
    const app::SurveyRead read = app::survey_of_revision(revision);
    for (const auto& error : app::survey_mistakes(read, catalogue.catalogue, tables.tables))
        out.mistakes.push_back(error.where + ": " + error.message);
    const Json& theirs = revision.at("editions");
    out.tablet_editions =
        editions_text(theirs.value("engine", ""), theirs.value("catalogue", ""), theirs.value("tables", ""));
    if (!out.mistakes.empty()) return out;
    const auto ours = app::make_bundle_advice(read.survey, catalogue.catalogue, tables.tables);
    out.editions = editions_text(ours.engine_version, ours.catalogue_edition, ours.tables_edition);
    out.same_editions = out.editions == out.tablet_editions;
    out.has_advice = revision.contains("advice");
    if (out.has_advice) out.differences = advice_differences(revision.at("advice"), ours.advice);
    return out;
}

}  // namespace sillwalk::office
