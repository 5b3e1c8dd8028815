// Answers many desk calculations in one process: each line in is a JSON array ["step", "load=300N", …], each line out
// one object, {"exit": 0, "printed": {…}}, exit as the command line gives it. With --registry it prints the registry
// of desk calculations and ends, with --units what one of each unit is in SI. Loading the tables once is what makes
// grids of hundreds of points affordable.

#include "app/data/load_tables.hpp"
#include "engine/base/numeric_text.hpp"
#include "engine/desk/desk.hpp"
#include "platforms/desk/solve_text.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cstdio>
#include <iostream>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace {

using sillwalk::engine::DeskCalculation;
using sillwalk::engine::DeskKey;
using Json = nlohmann::ordered_json;

Json rows_of(std::span<const DeskKey> keys) {
    Json out = Json::array();
    for (const DeskKey& key : keys) {
        out.push_back({{"name", key.name},
                       {"meaning", key.meaning},
                       {"unit", key.unit},
                       {"range", key.range},
                       {"required", key.required},
                       {"fallback", key.fallback}});
    }
    return out;
}

Json registry() {
    Json out = Json::array();
    for (const DeskCalculation& row : sillwalk::engine::desk_calculations()) {
        out.push_back({{"name", row.name},
                       {"meaning", row.meaning},
                       {"formula", row.formula},
                       {"source", row.source},
                       {"example", row.example},
                       {"keys", rows_of(row.keys)},
                       {"outputs", rows_of(row.outputs)}});
    }
    return out;
}

/// The words after "write one of " in the refusal of a bare number: the units as the parser itself lists them.
std::vector<std::string> listed_units(const std::string& refusal) {
    const std::string before = "write one of ";
    const std::size_t start = refusal.find(before);
    std::vector<std::string> words;
    std::string word;
    for (const char c : start == std::string::npos ? std::string() : refusal.substr(start + before.size()) + " ") {
        if (c != ' ' && c != ',') {
            word += c;
        } else if (!word.empty()) {
            if (word != "or") words.push_back(word);
            word.clear();
        }
    }
    return words;
}

template <class Quantity>
Json units_of(const char* quantity, sillwalk::engine::Result<Quantity> (*parse)(std::string_view)) {
    Json rows = Json::array();
    for (const std::string& unit : listed_units(parse("1").error().message)) {
        const auto one = parse("1" + unit);
        if constexpr (requires { one->kelvin(); }) {
            rows.push_back({{"unit", unit}, {"si", one->kelvin()}});
        } else {
            rows.push_back({{"unit", unit}, {"si", one->si()}});
        }
    }
    return {{"quantity", quantity}, {"units", rows}};
}

Json units() {
    namespace e = sillwalk::engine;
    return {units_of("length", e::parse_length),
            units_of("area", e::parse_area),
            units_of("mass", e::parse_mass),
            units_of("force", e::parse_force),
            units_of("pressure", e::parse_pressure),
            units_of("temperature", e::parse_temperature),
            units_of("duration", e::parse_duration),
            units_of("speed", e::parse_speed),
            units_of("acceleration", e::parse_acceleration),
            units_of("conductivity", e::parse_conductivity),
            units_of("density", e::parse_density),
            units_of("specific heat", e::parse_specific_heat),
            units_of("film coefficient", e::parse_film)};
}

Json answer(const std::vector<std::string>& words, const sillwalk::engine::Tables& tables) {
    const DeskCalculation* calculation =
        words.empty() ? nullptr : sillwalk::engine::find_desk_calculation(words.front());
    if (calculation == nullptr) {
        return {{"exit", 2}, {"printed", "no such calculation"}};
    }
    const auto outputs = sillwalk::engine::solve(*calculation, std::span(words).subspan(1), tables);
    if (outputs) {
        return {{"exit", 0}, {"printed", Json::parse(sillwalk::desk::result_json(*outputs))}};
    }
    const bool refused = outputs.error().code == sillwalk::engine::ErrorCode::no_answer;
    return {{"exit", refused ? 3 : 2}, {"printed", outputs.error().message}};
}

}  // namespace

int main(int argc, char** argv) {
    if (argc > 1 && std::string(argv[1]) == "--registry") {
        std::cout << registry().dump() << "\n";
        return 0;
    }
    if (argc > 1 && std::string(argv[1]) == "--units") {
        std::cout << units().dump() << "\n";
        return 0;
    }
    const sillwalk::app::LoadedTables loaded = sillwalk::app::load_tables();
    if (!loaded.errors.empty()) {
        fmt::print(stderr, "{}: {}\n", loaded.errors.front().where, loaded.errors.front().message);
        return 1;
    }
    std::string line;
    while (std::getline(std::cin, line)) {
        std::cout << answer(Json::parse(line).get<std::vector<std::string>>(), loaded.tables).dump() << "\n";
    }
    return 0;
}
