// sillwalk-desk solve: one desk calculation.

#include "app/data/load_tables.hpp"
#include "engine/base/near_word.hpp"
#include "engine/desk/desk.hpp"
#include "platforms/desk/solve_text.hpp"
#include "platforms/desk/subcommand.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <string>
#include <vector>

namespace sillwalk::desk {

namespace {

struct Request {
    std::string name;
    std::vector<std::string> words;
    bool json = false, list = false, help = false;
};

Request read_request(int argc, char** argv) {
    Request out;
    for (int i = 1; i < argc; ++i) {
        const std::string word = argv[i];
        if (word == "--json") {
            out.json = true;
        } else if (word == "--list") {
            out.list = true;
        } else if (word == "--help" || word == "-h") {
            out.help = true;
        } else if (out.name.empty()) {
            out.name = word;
        } else {
            out.words.push_back(word);
        }
    }
    return out;
}

int bad(const std::string& line) {
    fmt::print(stderr, "{}\n", line);
    return exit_bad_input;
}

int print_general_help() {
    fmt::print(
        "solve NAME key=value... [--json]   one calculation\n"
        "solve NAME --help                  its formula, keys, ranges, source and an example\n"
        "solve --list                       all calculations\n\n{}",
        list_text());
    return exit_ok;
}

int unknown_calculation(const std::string& name) {
    std::vector<std::string> names;
    for (const engine::DeskCalculation& row : engine::desk_calculations()) {
        names.emplace_back(row.name);
    }
    return bad(fmt::format("{}: there is no such calculation; the nearest are {}; solve --list shows all", name,
                           engine::joined_with_or(engine::nearest_words(name, std::move(names), 3))));
}

int print_error(const engine::Error& error, bool json) {
    if (error.code != engine::ErrorCode::no_answer) {
        return bad(error.where.empty() ? error.message : error.where + ": " + error.message);
    }
    fmt::print("{}", json ? refusal_json(error.message) : "refused: " + error.message + "\n");
    return exit_refused;
}

int compute(const engine::DeskCalculation& calculation, const Request& request) {
    const app::LoadedTables loaded = app::load_tables();
    for (const engine::Error& error : loaded.errors) {
        fmt::print(stderr, "{}: {}\n", error.where, error.message);
    }
    if (!loaded.errors.empty()) {
        return exit_failed;
    }
    const auto outputs = engine::solve(calculation, request.words, loaded.tables);
    if (!outputs) {
        return print_error(outputs.error(), request.json);
    }
    fmt::print("{}", request.json ? result_json(*outputs) : result_text(*outputs));
    return exit_ok;
}

}  // namespace

int run_solve(int argc, char** argv) {
    const Request request = read_request(argc, argv);
    if (request.list) {
        fmt::print("{}", list_text());
        return exit_ok;
    }
    if (request.name.empty()) {
        return request.help ? print_general_help() : bad("solve: give a calculation; solve --list shows all");
    }
    const engine::DeskCalculation* calculation = engine::find_desk_calculation(request.name);
    if (calculation == nullptr) {
        return unknown_calculation(request.name);
    }
    if (request.help) {
        fmt::print("{}", help_text(*calculation));
        return exit_ok;
    }
    return compute(*calculation, request);
}

}  // namespace sillwalk::desk
