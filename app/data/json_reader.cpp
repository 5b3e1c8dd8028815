#include "app/data/json_reader.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace sillwalk::app {

namespace {

constexpr std::size_t deepest = 64;

const char* type_name(const Json& value) {
    if (value.is_null()) return "null";
    if (value.is_boolean()) return "a boolean";
    if (value.is_number()) return "a number";
    if (value.is_string()) return "text";
    if (value.is_array()) return "a list";
    return "an object";
}

/// Builds the tree in one pass and refuses what the library's own builder would
/// silently accept: duplicate keys and bottomless nesting.
class TreeBuilder {
public:
    explicit TreeBuilder(JsonErrors& errors) : errors_(errors) {}
    [[nodiscard]] Json take() { return std::move(root_); }

    bool null() { return add(nullptr); }
    bool boolean(bool value) { return add(value); }
    bool number_integer(Json::number_integer_t value) { return add(value); }
    bool number_unsigned(Json::number_unsigned_t value) { return add(value); }
    bool number_float(Json::number_float_t value, const std::string& text) {
        return std::isfinite(value) ? add(value) : refuse("the number " + text + " is too large");
    }
    bool string(std::string& value) { return add(std::move(value)); }
    bool binary(Json::binary_t& value) { return add(std::move(value)); }
    bool start_object(std::size_t) { return open(Json::object()); }
    bool key(std::string& name) {
        const auto added = open_.back()->get_ptr<Json::object_t*>()->emplace(name, nullptr);
        member_ = &added.first->second;
        return added.second || refuse("the member '" + name + "' stands twice in one object");
    }
    bool end_object() { return close(); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_array() { return close(); }
    bool parse_error(std::size_t position, const std::string& token, const Json::exception&) {
        return refuse(fmt::format("not JSON at byte {} near '{}'", position, token.substr(0, 40)));
    }

private:
    /// Where the next value goes: the root, the end of the list in hand, or the
    /// member named last.
    Json& place(Json value) {
        if (open_.empty()) return root_ = std::move(value);
        if (auto* list = open_.back()->get_ptr<Json::array_t*>()) return list->emplace_back(std::move(value));
        return *member_ = std::move(value);
    }
    bool add(Json value) {
        (void)place(std::move(value));
        return true;
    }
    bool open(Json value) {
        open_.push_back(&place(std::move(value)));
        return open_.size() <= deepest || refuse(fmt::format("nested deeper than {} levels", deepest));
    }
    bool close() {
        open_.pop_back();
        return true;
    }
    bool refuse(std::string message) {
        errors_.push_back({engine::ErrorCode::bad_input, std::move(message), ""});
        return false;
    }

    JsonErrors& errors_;
    Json root_;
    std::vector<Json*> open_;  ///< lists and objects that are not at their end
    Json* member_ = nullptr;
};

}  // namespace

std::optional<Json> parse_json(std::string_view text, JsonErrors& errors) {
    TreeBuilder builder(errors);
    if (!Json::sax_parse(text.begin(), text.end(), &builder)) return std::nullopt;
    return builder.take();
}

std::string json_path(std::string_view path, std::string_view key) {
    std::string out(path);
    out += '/';
    for (const char c : key) {
        if (c == '~') {
            out += "~0";
        } else if (c == '/') {
            out += "~1";
        } else {
            out += c;
        }
    }
    return out;
}

std::string json_path(std::string_view path, std::size_t index) {
    return fmt::format("{}/{}", path, index);
}

JsonObject::JsonObject(const Json& value, std::string path, JsonErrors& errors)
    : value_(value.is_object() ? &value : nullptr), path_(std::move(path)), errors_(&errors) {
    if (value_ == nullptr) {
        errors_->push_back({engine::ErrorCode::bad_input,
                            fmt::format("{} stands where an object is needed", type_name(value)),
                            path_.empty() ? "/" : path_});
    }
}

bool JsonObject::has(std::string_view key) const {
    return value_ != nullptr && value_->contains(key);
}

void JsonObject::error(std::string_view key, std::string message) {
    errors_->push_back({engine::ErrorCode::bad_input, std::move(message), path_of(key)});
}

const Json* JsonObject::find(std::string_view key, Need need) {
    asked_.emplace(key);
    if (value_ == nullptr) return nullptr;
    const auto found = value_->find(key);
    if (found == value_->end()) {
        if (need == Need::required) error(key, "missing");
        return nullptr;
    }
    return &*found;
}

const Json* JsonObject::member(std::string_view key, Need need) {
    return find(key, need);
}

std::optional<double> JsonObject::number(std::string_view key, double low, double high, Need need) {
    const Json* found = find(key, need);
    if (found == nullptr) return std::nullopt;
    if (!found->is_number()) {
        error(key, fmt::format("{} stands where a number is needed", type_name(*found)));
        return std::nullopt;
    }
    const double value = found->get<double>();
    if (!(value >= low && value <= high)) {
        error(key, fmt::format("{} is outside {} to {}", value, low, high));
        return std::nullopt;
    }
    return value;
}

std::optional<std::int64_t> JsonObject::integer(std::string_view key, std::int64_t low, std::int64_t high, Need need) {
    const Json* found = find(key, need);
    if (found == nullptr) return std::nullopt;
    if (!found->is_number_integer()) {
        error(key, fmt::format("{} stands where a whole number is needed", type_name(*found)));
        return std::nullopt;
    }
    if (found->is_number_unsigned() && found->get<std::uint64_t>() > static_cast<std::uint64_t>(INT64_MAX)) {
        error(key, fmt::format("{} is outside {} to {}", found->get<std::uint64_t>(), low, high));
        return std::nullopt;
    }
    const auto value = found->get<std::int64_t>();
    if (value < low || value > high) {
        error(key, fmt::format("{} is outside {} to {}", value, low, high));
        return std::nullopt;
    }
    return value;
}

std::optional<bool> JsonObject::boolean(std::string_view key, Need need) {
    const Json* found = find(key, need);
    if (found == nullptr) return std::nullopt;
    if (!found->is_boolean()) {
        error(key, fmt::format("{} stands where true or false is needed", type_name(*found)));
        return std::nullopt;
    }
    return found->get<bool>();
}

std::optional<std::string> JsonObject::text(std::string_view key, Need need) {
    const Json* found = find(key, need);
    if (found == nullptr) return std::nullopt;
    if (!found->is_string()) {
        error(key, fmt::format("{} stands where text is needed", type_name(*found)));
        return std::nullopt;
    }
    return found->get<std::string>();
}

std::optional<JsonObject> JsonObject::object(std::string_view key, Need need) {
    const Json* found = find(key, need);
    if (found == nullptr) return std::nullopt;
    return JsonObject(*found, path_of(key), *errors_);
}

void JsonObject::each(std::string_view key, const std::function<void(const Json&, const std::string&)>& f, Need need) {
    const Json* found = find(key, need);
    if (found == nullptr) return;
    if (!found->is_array()) {
        error(key, fmt::format("{} stands where a list is needed", type_name(*found)));
        return;
    }
    for (std::size_t i = 0; i < found->size(); ++i) f((*found)[i], json_path(path_of(key), i));
}

std::vector<std::string> JsonObject::texts(std::string_view key, Need need) {
    std::vector<std::string> out;
    each(
        key,
        [&](const Json& element, const std::string& path) {
            if (element.is_string()) {
                out.push_back(element.get<std::string>());
            } else {
                errors_->push_back({engine::ErrorCode::bad_input,
                                    fmt::format("{} stands where text is needed", type_name(element)), path});
            }
        },
        need);
    return out;
}

std::vector<double> JsonObject::numbers(std::string_view key, double low, double high, Need need) {
    std::vector<double> out;
    each(
        key,
        [&](const Json& element, const std::string& path) {
            const double value = element.is_number() ? element.get<double>() : low - 1.0;
            if (element.is_number() && value >= low && value <= high) {
                out.push_back(value);
            } else {
                errors_->push_back(
                    {engine::ErrorCode::bad_input, fmt::format("a number from {} to {} is needed", low, high), path});
            }
        },
        need);
    return out;
}

void JsonObject::done() {
    if (value_ == nullptr) return;
    for (const auto& [key, value] : value_->items()) {
        if (!asked_.contains(key)) error(key, "is not a member this format knows");
    }
}

}  // namespace sillwalk::app
