// The published cases, through the same registry that the command line uses.

#include "engine/desk/desk.hpp"
#include "tests/engine/desk/loaded_tables.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

using namespace sillwalk::engine;
using nlohmann::json;

namespace {

const DeskValue* value_at(const std::vector<DeskOutput>& outputs, const std::string& path) {
    const std::size_t dot = path.find('.');
    const std::string head = path.substr(0, dot);
    for (const DeskOutput& output : outputs) {
        if (output.key != head) {
            continue;
        }
        if (dot == std::string::npos) {
            return &output.value;
        }
        const auto* lists = std::get_if<std::vector<std::vector<DeskOutput>>>(&output.value);
        const std::size_t second = path.find('.', dot + 1);
        const std::size_t index = std::stoul(path.substr(dot + 1, second - dot - 1));
        return lists != nullptr && index < lists->size() ? value_at((*lists)[index], path.substr(second + 1)) : nullptr;
    }
    return nullptr;
}

double allowed(const std::string& tolerance, double expected) {
    std::istringstream in(tolerance.rfind("abs ", 0) == 0 ? tolerance.substr(4) : tolerance);
    double value = 0;
    in >> value;
    return tolerance.rfind("abs ", 0) == 0 ? value : std::max(value, 1e-9) * std::abs(expected);
}

void check_value(const DeskValue& got, const json& expected, const std::string& tolerance) {
    if (expected.is_boolean()) {
        CHECK(std::get<bool>(got) == expected.get<bool>());
    } else if (expected.is_string()) {
        CHECK(std::get<std::string>(got) == expected.get<std::string>());
    } else {
        const double number = std::get<double>(got);
        const double wanted = expected.get<double>();
        CAPTURE(number, wanted, tolerance);
        CHECK(std::abs(number - wanted) <= allowed(tolerance, wanted));
    }
}

void check_case(const json& row) {
    const DeskCalculation* calculation = find_desk_calculation(row.at("solve").get<std::string>());
    REQUIRE(calculation != nullptr);
    const auto words = row.at("args").get<std::vector<std::string>>();
    const auto outputs = solve(*calculation, words, loaded_tables());
    const int exit = row.value("exit", 0);
    if (exit != 0) {
        REQUIRE_FALSE(outputs);
        CHECK((outputs.error().code == ErrorCode::no_answer) == (exit == 3));
        CHECK_FALSE(outputs.error().message.empty());
        return;
    }
    INFO((outputs ? std::string() : outputs.error().where + ": " + outputs.error().message));
    REQUIRE(outputs);
    for (const auto& [path, expected] : row.at("expect").items()) {
        INFO(path);
        const DeskValue* got = value_at(*outputs, path);
        REQUIRE(got != nullptr);
        check_value(*got, expected, row.at("tolerance").get<std::string>());
    }
}

void check_file(const std::string& name) {
    std::ifstream file(std::string(SILLWALK_TEST_DATA) + name);
    const json cases = json::parse(file).at("cases");
    REQUIRE(cases.size() > 50);
    for (const json& row : cases) {
        DYNAMIC_SECTION(row.at("id").get<std::string>() << ": " << row.at("source").get<std::string>() << " ["
                                                        << row.at("status").get<std::string>() << "]") {
            check_case(row);
        }
    }
}

}  // namespace

TEST_CASE("the desk calculations give what the sources print", "[engine][desk][published]") {
    check_file("/desk_cases/cases.json");
}

TEST_CASE("the wider set of published and derived cases holds", "[engine][desk][published]") {
    check_file("/validation/cases.json");
}
