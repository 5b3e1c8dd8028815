#pragma once
/// Two heads of one visit into one state: what only one side changed is taken, what both changed differently is shown
/// beside the state they come from, and a person chooses. Nothing is published without that. The values offered do not
/// depend on which side is called left.

#include "app/bundle/revision.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::office {

using app::Json;

/// One field of one item that both sides changed, each to something else. Absent = the field is not there on that side.
struct Conflict {
    std::string item;   ///< UUID
    std::string kind;   ///< "crossing"
    std::string name;   ///< of the thing, where it has one
    std::string field;  ///< member of `v`; "(order)" and "(deleted)" for the item itself
    std::optional<Json> base, left, right;
    [[nodiscard]] std::string key() const { return item + "/" + field; }
};

struct Proposal {
    Json items;  ///< with the base's value where there is a conflict
    Json blobs;  ///< of both
    std::vector<Conflict> conflicts;
};

enum class Side { base, left, right };
using Choices = std::map<std::string, Side>;  ///< by Conflict::key()

/// `base` null where the two have no common ancestor: then every difference is a conflict.
[[nodiscard]] Proposal propose_merge(const Json* base, const Json& left, const Json& right);
/// Empty where a conflict has no choice.
[[nodiscard]] std::optional<Json> merged_items(const Proposal& proposal, const Choices& choices);

/// The nearest revision that both come from: `parents` names the parents of each revision of the visit.
[[nodiscard]] std::optional<std::string> common_ancestor(const std::map<std::string, std::vector<std::string>>& parents,
                                                         const std::string& left, const std::string& right);

}  // namespace sillwalk::office
