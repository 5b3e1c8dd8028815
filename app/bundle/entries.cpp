#include "app/bundle/entries.hpp"

#include "app/bundle/survey_document.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace sillwalk::app {

using engine::Result;

namespace {

/// Members of a survey that are lists of things with an id, each in order.
constexpr std::array<const char*, 5> collections = {"rooms", "crossings", "washings", "carts", "photos"};

bool is_collection(std::string_view name) {
    for (const char* one : collections) {
        if (name == one) return true;
    }
    return false;
}

/// What a person typed may be no UTF-8; it is stored all the same.
std::string text_of(const Json& value) {
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

void take_apart_collection(const std::string& path, const Json& items, Entries& entries) {
    Json order = Json::array();
    for (const Json& item : items) {
        const std::string id = item.value("id", std::string());
        order.push_back(id);
        const std::string item_path = json_path(path, id);
        for (const auto& [name, value] : item.items()) {
            if (name != "id") entries[json_path(item_path, name)] = text_of(value);
        }
    }
    entries[path] = text_of(order);
}

std::string unescaped(std::string_view part) {
    std::string text;
    for (std::size_t i = 0; i < part.size(); ++i) {
        if (part[i] == '~' && i + 1 < part.size()) {
            text += part[++i] == '1' ? '/' : '~';
        } else {
            text += part[i];
        }
    }
    return text;
}

std::vector<std::string> parts_of(std::string_view path) {
    std::vector<std::string> parts;
    std::size_t start = 1;
    while (start <= path.size()) {
        const std::size_t end = std::min(path.find('/', start), path.size());
        parts.push_back(unescaped(path.substr(start, end - start)));
        start = end + 1;
    }
    return parts;
}

std::string joined(const JsonErrors& errors) {
    std::string text;
    for (const engine::Error& error : errors) text += (text.empty() ? "" : "; ") + error.where + ": " + error.message;
    return text;
}

bool is_order(const Json& order) {
    const auto is_text = [](const Json& id) { return id.is_string(); };
    return order.is_array() && std::all_of(order.begin(), order.end(), is_text);
}

/// The items of one collection in their order, from the entries below its path.
Json put_together_collection(const Json& order, const std::map<std::string, Json>& items) {
    Json list = Json::array();
    for (const Json& id : order) {
        const auto found = items.find(id.get<std::string>());
        Json item = found == items.end() ? Json::object() : found->second;
        item["id"] = id;
        list.push_back(std::move(item));
    }
    return list;
}

}  // namespace

Result<Entries> take_apart(std::string_view survey_json) {
    JsonErrors errors;
    const auto document = parse_json(survey_json, errors);
    if (!document || !document->is_object()) return engine::bad_input(joined(errors));
    return entries_of_document(*document);
}

Entries entries_of_document(const Json& document) {
    Entries entries;
    for (const auto& [name, value] : document.items()) {
        const std::string path = json_path("", name);
        if (is_collection(name) && value.is_array()) {
            take_apart_collection(path, value, entries);
        } else {
            entries[path] = text_of(value);
        }
    }
    return entries;
}

Result<std::string> put_together(const Entries& entries) {
    const auto document = document_of(entries);
    if (!document) return tl::make_unexpected(document.error());
    return document->dump();
}

Result<Json> document_of(const Entries& entries) {
    Json document = Json::object();
    std::map<std::string, std::map<std::string, Json>> items;
    for (const auto& [path, text] : entries) {
        JsonErrors errors;
        auto value = parse_json(text, errors);
        if (!value) return engine::bad_input(joined(errors), path);
        const auto parts = parts_of(path);
        if (parts.size() == 1) {
            document[parts[0]] = std::move(*value);
        } else if (parts.size() == 3) {
            items[parts[0]][parts[1]][parts[2]] = std::move(*value);
        } else {
            return engine::bad_input("not the path of an entry", path);
        }
    }
    for (const char* name : collections) {
        if (!document.contains(name)) continue;
        if (!is_order(document[name])) return engine::bad_input("a list of ids is wanted", json_path("", name));
        document[name] = put_together_collection(document[name], items[name]);
    }
    return document;
}

std::string text_of_entry(std::string_view entry) {
    JsonErrors errors;
    const auto value = parse_json(entry, errors);
    return value && value->is_string() ? value->get<std::string>() : std::string();
}

std::vector<Change> difference(const Entries& before, const Entries& now) {
    std::vector<Change> changes;
    auto a = before.begin();
    auto b = now.begin();
    while (a != before.end() || b != now.end()) {
        if (b == now.end() || (a != before.end() && a->first < b->first)) {
            changes.push_back({a->first, a->second, std::nullopt});
            ++a;
        } else if (a == before.end() || b->first < a->first) {
            changes.push_back({b->first, std::nullopt, b->second});
            ++b;
        } else {
            if (a->second != b->second) changes.push_back({a->first, a->second, b->second});
            ++a, ++b;
        }
    }
    return changes;
}

void apply_changes(Entries& entries, const std::vector<Change>& changes) {
    for (const Change& change : changes) {
        if (change.now) {
            entries[change.path] = *change.now;
        } else {
            entries.erase(change.path);
        }
    }
}

std::vector<Change> turned_round(std::vector<Change> changes) {
    for (Change& change : changes) std::swap(change.before, change.now);
    return changes;
}

}  // namespace sillwalk::app
