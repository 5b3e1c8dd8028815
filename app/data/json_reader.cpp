#include "app/data/json_reader.hpp"

#include <fmt/format.h>

#include <cmath>

namespace sillwalk::app {

namespace {

constexpr int deepest = 64;

const char* type_name(const Json& value) {
    if (value.is_null()) return "null";
    if (value.is_boolean()) return "a boolean";
    if (value.is_number()) return "a number";
    if (value.is_string()) return "text";
    if (value.is_array()) return "a list";
    return "an object";
}

/// Refuses what the tree parser would silently accept: duplicate keys and bottomless nesting.
class ShapeCheck : public nlohmann::json_sax<Json> {
public:
    explicit ShapeCheck(JsonErrors& errors) : errors_(errors) {}
    bool null() override { return true; }
    bool boolean(bool) override { return true; }
    bool number_integer(number_integer_t) override { return true; }
    bool number_unsigned(number_unsigned_t) override { return true; }
    bool number_float(number_float_t value, const string_t& text) override {
        return std::isfinite(value) || refuse("the number " + text + " is too large");
    }
    bool string(string_t&) override { return true; }
    bool binary(binary_t&) override { return true; }
    bool start_object(std::size_t) override {
        keys_.emplace_back();
        return deeper();
    }
    bool key(string_t& name) override {
        return keys_.back().insert(name).second || refuse("the member '" + name + "' stands twice in one object");
    }
    bool end_object() override {
        keys_.pop_back();
        --depth_;
        return true;
    }
    bool start_array(std::size_t) override { return deeper(); }
    bool end_array() override {
        --depth_;
        return true;
    }
    bool parse_error(std::size_t position, const std::string& token, const Json::exception&) override {
        return refuse(fmt::format("not JSON at byte {} near '{}'", position, token.substr(0, 40)));
    }

private:
    bool deeper() { return ++depth_ <= deepest || refuse(fmt::format("nested deeper than {} levels", deepest)); }
    bool refuse(std::string message) {
        errors_.push_back({engine::ErrorCode::bad_input, std::move(message), ""});
        return false;
    }

    JsonErrors& errors_;
    std::vector<std::set<std::string>> keys_;
    int depth_ = 0;
};

}  // namespace

std::optional<Json> parse_json(std::string_view text, JsonErrors& errors) {
    ShapeCheck check(errors);
    if (!Json::sax_parse(text.begin(), text.end(), &check)) return std::nullopt;
    return Json::parse(text.begin(), text.end(), nullptr, false);
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
