#pragma once
/// The desk calculations: one registry of named calculations over physics/, with the meaning, unit, range and source of
/// each key. The command line, the app and the docs all read this list.

#include "engine/base/result.hpp"
#include "engine/model/tables.hpp"

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sillwalk::engine {

struct DeskKey {
    std::string_view name;     ///< "diameter"
    std::string_view meaning;  ///< "wheel diameter"
    std::string_view unit;     ///< "length", or the words allowed: "all | all-but-one | diagonal"
    std::string_view range;    ///< "over 0"
    bool required = true;
    std::string_view fallback = {};  ///< what is taken when an optional key is absent
};

struct DeskOutput;
using DeskValue = std::variant<double, bool, std::string, std::vector<std::vector<DeskOutput>>>;
struct DeskOutput {
    std::string key;  ///< ends in its SI unit: "force_N"
    DeskValue value;
    std::string_view meaning;
};

using DeskArguments = std::map<std::string, std::string, std::less<>>;
struct DeskCalculation {
    std::string_view name, meaning, formula, source;
    std::span<const DeskKey> keys;
    std::span<const DeskKey> outputs;  ///< the deciding one first; `required` false where it depends on the keys given
    Result<std::vector<DeskOutput>> (*run)(const DeskArguments& arguments, const Tables& tables);
    std::string_view example;  ///< words that work: "load=300N diameter=500mm rise=100mm"
};

[[nodiscard]] std::span<const DeskCalculation> desk_calculations();
[[nodiscard]] const DeskCalculation* find_desk_calculation(std::string_view name);

/// Parses "key=value" words, checks keys against the calculation and runs it. In an error of bad input `where` is the
/// key and `message` says what was given, what was wrong and what would be right. no_answer also where a result is not
/// finite.
[[nodiscard]] Result<std::vector<DeskOutput>> solve(const DeskCalculation& calculation,
                                                    std::span<const std::string> words, const Tables& tables);

}  // namespace sillwalk::engine
