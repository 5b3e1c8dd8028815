#include "platforms/desk/solve_text.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string_view>

namespace sillwalk::desk {

namespace {

using engine::DeskCalculation;
using engine::DeskKey;
using engine::DeskOutput;
using Json = nlohmann::ordered_json;
using Lists = std::vector<std::vector<DeskOutput>>;

Json object_of(const std::vector<DeskOutput>& outputs);

Json value_of(const engine::DeskValue& value) {
    if (const auto* lists = std::get_if<Lists>(&value)) {
        Json out = Json::array();
        for (const auto& list : *lists) {
            out.push_back(object_of(list));
        }
        return out;
    }
    if (const auto* number = std::get_if<double>(&value)) {
        return *number;
    }
    if (const auto* flag = std::get_if<bool>(&value)) {
        return *flag;
    }
    return std::get<std::string>(value);
}

Json object_of(const std::vector<DeskOutput>& outputs) {
    Json out = Json::object();
    for (const DeskOutput& output : outputs) {
        out[output.key] = value_of(output.value);
    }
    return out;
}

std::string plain_value(const engine::DeskValue& value) {
    if (const auto* number = std::get_if<double>(&value)) {
        return fmt::format("{:.6g}", *number);
    }
    if (const auto* flag = std::get_if<bool>(&value)) {
        return *flag ? "yes" : "no";
    }
    const auto& text = std::get<std::string>(value);
    return text.empty() ? "none" : text;
}

struct Line {
    std::string name, value, meaning;
};

void add_lines(const std::vector<DeskOutput>& outputs, const std::string& indent, std::vector<Line>& lines) {
    for (const DeskOutput& output : outputs) {
        const auto* lists = std::get_if<Lists>(&output.value);
        if (lists == nullptr) {
            lines.push_back({indent + output.key, plain_value(output.value), std::string(output.meaning)});
            continue;
        }
        for (std::size_t i = 0; i < lists->size(); ++i) {
            lines.push_back({fmt::format("{}{} {}", indent, output.key, i + 1), "", std::string(output.meaning)});
            add_lines((*lists)[i], indent + "  ", lines);
        }
    }
}

std::string aligned(const std::vector<Line>& lines) {
    std::size_t name_width = 0;
    std::size_t value_width = 0;
    for (const Line& line : lines) {
        name_width = std::max(name_width, line.name.size());
        value_width = std::max(value_width, line.value.size());
    }
    value_width = std::min<std::size_t>(value_width, 16);
    std::string out;
    for (const Line& line : lines) {
        out += fmt::format("{:<{}}  {:>{}}  {}\n", line.name, name_width, line.value, value_width, line.meaning);
    }
    return out;
}

std::string key_line(const DeskKey& key) {
    std::string out = fmt::format("  {}=  {}: {}", key.name, key.meaning, key.unit);
    if (!key.range.empty()) {
        out += fmt::format("; {}", key.range);
    }
    return key.required ? out + "\n" : fmt::format("{} [left out: {}]\n", out, key.fallback);
}

}  // namespace

std::string result_json(const std::vector<DeskOutput>& outputs) {
    return object_of(outputs).dump() + "\n";
}

std::string refusal_json(const std::string& reason) {
    return Json{{"refused", reason}}.dump() + "\n";
}

std::string result_text(const std::vector<DeskOutput>& outputs) {
    std::vector<Line> lines;
    add_lines(outputs, "", lines);
    return aligned(lines);
}

std::string list_text() {
    std::string out;
    for (const DeskCalculation& row : engine::desk_calculations()) {
        out += fmt::format("{:<18} {}\n", row.name, row.meaning);
    }
    return out;
}

std::string help_text(const DeskCalculation& calculation) {
    std::string out = fmt::format("{}: {}\n\nformula  {}\nsource   {}\n\nkeys in\n", calculation.name,
                                  calculation.meaning, calculation.formula, calculation.source);
    for (const DeskKey& key : calculation.keys) {
        out += key_line(key);
    }
    out += "\nkeys out\n";
    for (const DeskKey& key : calculation.outputs) {
        const std::string unit = key.unit.empty() ? "" : fmt::format(", {}", key.unit);
        out += fmt::format("  {}  {}{}\n", key.name, key.meaning, unit);
    }
    return out + fmt::format("\nexample\n  sillwalk-desk solve {} {}\n", calculation.name, calculation.example);
}

}  // namespace sillwalk::desk
