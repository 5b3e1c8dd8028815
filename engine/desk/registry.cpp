#include "engine/base/near_word.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/desk.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sillwalk::engine {

namespace {

std::vector<DeskCalculation> gather() {
    std::vector<DeskCalculation> all;
    for (const auto group : {load_calculations(), obstacle_calculations(), rolling_calculations(),
                             people_calculations(), contact_calculations(), heat_calculations(), bearing_calculations(),
                             stability_calculations(), chemical_calculations()}) {
        all.insert(all.end(), group.begin(), group.end());
    }
    return all;
}

const DeskKey* find_key(const DeskCalculation& calculation, std::string_view name) {
    const auto found = std::find_if(calculation.keys.begin(), calculation.keys.end(),
                                    [name](const DeskKey& key) { return key.name == name; });
    return found == calculation.keys.end() ? nullptr : &*found;
}

std::string key_names(const DeskCalculation& calculation) {
    std::string out;
    for (const DeskKey& key : calculation.keys) {
        out += out.empty() ? "" : ", ";
        out += key.name;
    }
    return out;
}

tl::unexpected<Error> unknown_key(const DeskCalculation& calculation, std::string_view name) {
    std::vector<std::string> known;
    for (const DeskKey& key : calculation.keys) {
        known.emplace_back(key.name);
    }
    const std::string nearest = nearest_words(name, std::move(known), 1).front();
    const std::string hint = edit_distance(name, nearest) <= 3 ? fmt::format("; did you mean \"{}\"?", nearest)
                                                               : fmt::format("; it takes {}", key_names(calculation));
    return bad_input(fmt::format("is no key of {}{}", calculation.name, hint), std::string(name));
}

Result<DeskArguments> read_words(const DeskCalculation& calculation, std::span<const std::string> words) {
    DeskArguments out;
    for (const std::string& word : words) {
        const std::size_t equals = word.find('=');
        if (equals == std::string::npos) {
            return bad_input("is not key=value; put a value with blanks in quotes, like \"diameter=5 1/2in\"", word);
        }
        const std::string name = word.substr(0, equals);
        if (find_key(calculation, name) == nullptr) {
            return unknown_key(calculation, name);
        }
        if (!out.emplace(name, word.substr(equals + 1)).second) {
            return bad_input("is given twice; give it once", name);
        }
    }
    return out;
}

std::optional<Error> missing_key(const DeskCalculation& calculation, const DeskArguments& arguments) {
    for (const DeskKey& key : calculation.keys) {
        if (key.required && !arguments.contains(key.name)) {
            return Error{ErrorCode::bad_input, fmt::format("is missing: {}, as {}", key.meaning, key.unit),
                         std::string(key.name)};
        }
    }
    return std::nullopt;
}

/// Puts what was typed before what is wrong with it, unless the message quotes it already.
Error with_value(Error error, const DeskArguments& arguments) {
    const auto given = arguments.find(error.where);
    if (given != arguments.end() && error.message.find('"') == std::string::npos) {
        error.message = fmt::format("\"{}\" {}", given->second, error.message);
    }
    return error;
}

bool finite(const std::vector<DeskOutput>& outputs) {
    return std::all_of(outputs.begin(), outputs.end(), [](const DeskOutput& output) {
        if (const auto* number = std::get_if<double>(&output.value)) {
            return std::isfinite(*number);
        }
        if (const auto* lists = std::get_if<std::vector<std::vector<DeskOutput>>>(&output.value)) {
            return std::all_of(lists->begin(), lists->end(), finite);
        }
        return true;
    });
}

}  // namespace

std::span<const DeskCalculation> desk_calculations() {
    static const std::vector<DeskCalculation> all = gather();
    return all;
}

const DeskCalculation* find_desk_calculation(std::string_view name) {
    const auto all = desk_calculations();
    const auto found =
        std::find_if(all.begin(), all.end(), [name](const DeskCalculation& row) { return row.name == name; });
    return found == all.end() ? nullptr : &*found;
}

Result<std::vector<DeskOutput>> solve(const DeskCalculation& calculation, std::span<const std::string> words,
                                      const Tables& tables) {
    const auto arguments = read_words(calculation, words);
    if (!arguments) {
        return tl::make_unexpected(arguments.error());
    }
    if (const auto missing = missing_key(calculation, *arguments)) {
        return tl::make_unexpected(*missing);
    }
    auto outputs = calculation.run(*arguments, tables);
    if (!outputs) {
        return tl::make_unexpected(with_value(outputs.error(), *arguments));
    }
    if (!finite(*outputs)) {
        return no_answer("These numbers are too large or too small to compute with.");
    }
    return outputs;
}

}  // namespace sillwalk::engine
