#include "app/bundle/canonical.hpp"

#include "engine/base/contract.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace sillwalk::app {

namespace {

constexpr std::int64_t greatest_integer = (std::int64_t{1} << 53) - 1;

class StrictCheck : public nlohmann::json_sax<Json> {
public:
    StrictCheck(JsonErrors& errors, const StrictLimits& limits) : errors_(errors), limits_(limits) {}

    bool null() override { return node(); }
    bool boolean(bool) override { return node(); }
    bool number_integer(number_integer_t value) override {
        return node() && (value >= -greatest_integer || refuse("an integer is below -(2^53 - 1)"));
    }
    bool number_unsigned(number_unsigned_t value) override {
        return node() &&
               (value <= static_cast<std::uint64_t>(greatest_integer) || refuse("an integer is above 2^53 - 1"));
    }
    bool number_float(number_float_t, const string_t& text) override {
        return refuse("'" + text.substr(0, 40) + "' is not a whole number; the format has no others");
    }
    bool string(string_t& text) override {
        return node() && (text.size() <= limits_.string_bytes ||
                          refuse(fmt::format("a text is longer than {} bytes", limits_.string_bytes)));
    }
    bool binary(binary_t&) override { return refuse("binary values are not JSON"); }
    bool start_object(std::size_t) override {
        keys_.emplace_back();
        return node() && deeper();
    }
    bool key(string_t& name) override {
        if (name.size() > limits_.key_bytes)
            return refuse(fmt::format("a name is longer than {} bytes", limits_.key_bytes));
        const bool ascii = std::all_of(name.begin(), name.end(), [](char c) { return c >= 0x20 && c < 0x7f; });
        if (!ascii) return refuse("a member name is not plain ASCII");
        return keys_.back().insert(name).second || refuse("the member '" + name + "' stands twice in one object");
    }
    bool end_object() override {
        keys_.pop_back();
        --depth_;
        return true;
    }
    bool start_array(std::size_t) override { return node() && deeper(); }
    bool end_array() override {
        --depth_;
        return true;
    }
    bool parse_error(std::size_t position, const std::string&, const Json::exception&) override {
        return refuse(fmt::format("not JSON at byte {}", position));
    }

private:
    bool node() { return ++nodes_ <= limits_.nodes || refuse(fmt::format("more than {} values", limits_.nodes)); }
    bool deeper() {
        return ++depth_ <= limits_.depth || refuse(fmt::format("nested deeper than {} levels", limits_.depth));
    }
    bool refuse(std::string message) {
        errors_.push_back({engine::ErrorCode::bad_input, std::move(message), ""});
        return false;
    }

    JsonErrors& errors_;
    const StrictLimits& limits_;
    std::vector<std::set<std::string>> keys_;
    int depth_ = 0;
    std::size_t nodes_ = 0;
};

void write_string(const std::string& text, std::string& out) {
    out += '"';
    for (const char c : text) {
        switch (c) {
            case '"':
                out += "\\\"";
                break;
            case '\\':
                out += "\\\\";
                break;
            case '\b':
                out += "\\b";
                break;
            case '\t':
                out += "\\t";
                break;
            case '\n':
                out += "\\n";
                break;
            case '\f':
                out += "\\f";
                break;
            case '\r':
                out += "\\r";
                break;
            default:
                if (static_cast<unsigned char>(c) < 0x20) {
                    out += fmt::format("\\u{:04x}", static_cast<unsigned>(static_cast<unsigned char>(c)));
                } else {
                    out += c;
                }
        }
    }
    out += '"';
}

void write(const Json& value, std::string& out) {
    EXPECT_CONTRACT(!value.is_number_float() && !value.is_binary() && !value.is_discarded());
    if (value.is_string()) {
        write_string(value.get_ref<const std::string&>(), out);
    } else if (value.is_array()) {
        out += '[';
        for (std::size_t i = 0; i < value.size(); ++i) {
            if (i > 0) out += ',';
            write(value[i], out);
        }
        out += ']';
    } else if (value.is_object()) {
        out += '{';
        bool first = true;
        for (const auto& [key, member] : value.items()) {  // nlohmann's objects are sorted by byte
            if (!first) out += ',';
            first = false;
            write_string(key, out);
            out += ':';
            write(member, out);
        }
        out += '}';
    } else {
        out += value.dump();
    }
}

}  // namespace

std::optional<Json> parse_strict(std::string_view text, JsonErrors& errors, const StrictLimits& limits) {
    if (text.size() > limits.bytes) {
        errors.push_back({engine::ErrorCode::bad_input, fmt::format("larger than {} bytes", limits.bytes), ""});
        return std::nullopt;
    }
    StrictCheck check(errors, limits);
    if (!Json::sax_parse(text.begin(), text.end(), &check)) return std::nullopt;
    return Json::parse(text.begin(), text.end(), nullptr, false);
}

std::string canonical_json(const Json& value) {
    std::string out;
    write(value, out);
    return out;
}

}  // namespace sillwalk::app
