#include "app/office/merge.hpp"

#include <algorithm>
#include <deque>
#include <set>

namespace sillwalk::office {

namespace {

constexpr const char* order_field = "(order)";
constexpr const char* deleted_field = "(deleted)";
constexpr const char* kind_field = "(kind)";

using Fields = std::map<std::string, Json>;

/// An item as a flat map; an item that is not there is one that is deleted and has no fields.
Fields fields_of(const Json* items, const std::string& uuid) {
    Fields out;
    const auto found = items == nullptr ? Json::const_iterator() : items->find(uuid);
    if (items == nullptr || found == items->end()) {
        out[deleted_field] = true;
        return out;
    }
    for (const auto& [name, value] : found->at("v").items()) out[name] = value;
    out[order_field] = found->at("order");
    out[kind_field] = found->at("kind");
    out[deleted_field] = found->value("deleted", false);
    return out;
}

std::optional<Json> field(const Fields& fields, const std::string& name) {
    const auto found = fields.find(name);
    return found == fields.end() ? std::nullopt : std::optional<Json>(found->second);
}

void put_field(Json& items, const std::string& uuid, const std::string& name, const std::optional<Json>& value) {
    Json& item = items[uuid];
    if (!item.is_object()) item = {{"v", Json::object()}, {"order", 0}, {"kind", "unknown"}};
    if (name == deleted_field) {
        item.erase("deleted");
        if (value && *value == Json(true)) item["deleted"] = true;
    } else if (name == order_field || name == kind_field) {
        if (value) item[name == order_field ? "order" : "kind"] = *value;
    } else if (value) {
        item["v"][name] = *value;
    } else {
        item["v"].erase(name);
    }
}

std::string text_of(const std::optional<Json>& value) {
    return value && value->is_string() ? value->get<std::string>() : std::string();
}

class Merger {
public:
    Merger(const Json* base, const Json& left, const Json& right) : base_(base), left_(left), right_(right) {}

    void item(const std::string& uuid, Proposal& out) const {
        const Fields base = fields_of(base_, uuid);
        const Fields left = fields_of(&left_, uuid);
        const Fields right = fields_of(&right_, uuid);
        std::set<std::string> names;
        for (const Fields* side : {&base, &left, &right}) {
            for (const auto& [name, value] : *side) names.insert(name);
        }
        // Deletion against change is a question for a person, not "the field is gone on one side".
        const bool gone_left = field(left, deleted_field) == Json(true) && field(base, deleted_field) != Json(true);
        const bool gone_right = field(right, deleted_field) == Json(true) && field(base, deleted_field) != Json(true);
        if (gone_left != gone_right) return deletion(uuid, base, gone_left ? right : left, gone_left, out);
        for (const std::string& name : names) {
            one_field(uuid, name, {field(base, name), field(left, name), field(right, name)}, base, left, right, out);
        }
    }

private:
    struct Values {
        std::optional<Json> base, left, right;
    };

    static Conflict conflict(const std::string& uuid, const std::string& name, const Values& values,
                             std::initializer_list<const Fields*> named) {
        Conflict out{uuid, {}, {}, name, values.base, values.left, values.right};
        for (const Fields* fields : named) {
            if (out.kind.empty()) out.kind = text_of(field(*fields, kind_field));
            if (out.name.empty()) out.name = text_of(field(*fields, "name"));
        }
        return out;
    }

    static void one_field(const std::string& uuid, const std::string& name, const Values& values, const Fields& base,
                          const Fields& left, const Fields& right, Proposal& out) {
        if (values.left == values.right || values.right == values.base) {
            put_field(out.items, uuid, name, values.left);
        } else if (values.left == values.base) {
            put_field(out.items, uuid, name, values.right);
        } else {
            put_field(out.items, uuid, name, values.base);
            out.conflicts.push_back(conflict(uuid, name, values, {&base, &left, &right}));
        }
    }

    static void deletion(const std::string& uuid, const Fields& base, const Fields& kept, bool gone_left,
                         Proposal& out) {
        for (const auto& [name, value] : kept) put_field(out.items, uuid, name, value);
        if (kept == base) return put_field(out.items, uuid, deleted_field, Json(true));
        const Json gone(gone_left), still(!gone_left);
        out.conflicts.push_back(conflict(uuid, deleted_field, {Json(false), gone, still}, {&base, &kept}));
    }

    const Json* base_;
    const Json& left_;
    const Json& right_;
};

Json blobs_of_both(const Json& left, const Json& right) {
    std::map<std::string, Json> rows;  // by their whole text, so that order and side do not matter
    for (const Json* side : {&left, &right}) {
        for (const Json& blob : *side) rows[blob.dump()] = blob;
    }
    Json out = Json::array();
    for (auto& [text, blob] : rows) out.push_back(std::move(blob));
    return out;
}

std::map<std::string, std::size_t> distances(const std::map<std::string, std::vector<std::string>>& parents,
                                             const std::string& from) {
    std::map<std::string, std::size_t> out{{from, 0}};
    std::deque<std::string> waiting{from};
    while (!waiting.empty()) {
        const std::string digest = waiting.front();
        waiting.pop_front();
        const auto found = parents.find(digest);
        if (found == parents.end()) continue;
        for (const std::string& parent : found->second) {
            if (out.emplace(parent, out[digest] + 1).second) waiting.push_back(parent);
        }
    }
    return out;
}

}  // namespace

Proposal propose_merge(const Json* base, const Json& left, const Json& right) {
    Proposal out{Json::object(), blobs_of_both(left.at("blobs"), right.at("blobs")), {}};
    std::set<std::string> uuids;
    for (const Json* side : {base, &left, &right}) {
        if (side == nullptr) continue;
        for (const auto& [uuid, item] : side->at("items").items()) uuids.insert(uuid);
    }
    const Json* base_items = base == nullptr ? nullptr : &base->at("items");
    const Merger merger(base_items, left.at("items"), right.at("items"));
    for (const std::string& uuid : uuids) merger.item(uuid, out);
    return out;
}

std::optional<Json> merged_items(const Proposal& proposal, const Choices& choices) {
    Json items = proposal.items;
    for (const Conflict& conflict : proposal.conflicts) {
        const auto choice = choices.find(conflict.key());
        if (choice == choices.end()) return std::nullopt;
        const auto& value = choice->second == Side::left    ? conflict.left
                            : choice->second == Side::right ? conflict.right
                                                            : conflict.base;
        put_field(items, conflict.item, conflict.field, value);
    }
    return items;
}

std::optional<std::string> common_ancestor(const std::map<std::string, std::vector<std::string>>& parents,
                                           const std::string& left, const std::string& right) {
    const auto from_left = distances(parents, left);
    std::optional<std::string> best;
    std::size_t best_sum = 0;
    for (const auto& [digest, distance] : distances(parents, right)) {
        const auto found = from_left.find(digest);
        if (found == from_left.end() || !parents.contains(digest)) continue;
        const std::size_t sum = distance + found->second;
        if (!best || sum < best_sum) {
            best = digest;
            best_sum = sum;
        }
    }
    return best;
}

}  // namespace sillwalk::office
