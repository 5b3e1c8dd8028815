#include "platforms/desk/workspace.hpp"

#include "app/bundle/survey_json.hpp"
#include "app/data/import_catalogue.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "platforms/desk/subcommand.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace sillwalk::desk {

using engine::ErrorCode;
using engine::Result;

Result<std::string> read_file(const std::string& path) {
    if (std::filesystem::is_directory(path)) return engine::bad_input("is a folder; a file is needed", path);
    std::ifstream file(path, std::ios::binary);
    if (!file)
        return engine::fail(ErrorCode::not_found, "cannot be opened: " + std::string(std::strerror(errno)), path);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

Result<std::monostate> write_file(const std::string& path, std::string_view bytes) {
    const std::string part = path + ".part";
    {
        std::ofstream file(part, std::ios::binary | std::ios::trunc);
        file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        file.flush();
        if (!file) {
            std::remove(part.c_str());
            return engine::fail(ErrorCode::storage, "cannot be written; is the folder there and the disk not full?",
                                path);
        }
    }
    std::error_code failed;
    std::filesystem::rename(part, path, failed);
    if (failed) return engine::fail(ErrorCode::storage, failed.message(), path);
    return std::monostate{};
}

void print_errors(const std::string& file, const std::vector<engine::Error>& errors) {
    for (const engine::Error& error : errors) {
        fmt::print(stderr, "{}{}{}: {}\n", file, error.where.empty() ? "" : " ", error.where, error.message);
    }
}

namespace {

bool load_survey(const WorkspaceFiles& files, Workspace& work) {
    const auto text = read_file(files.survey);
    if (!text) {
        print_errors("", {text.error()});
        return false;
    }
    app::SurveyRead read = app::read_survey(*text);
    const auto mistakes = app::survey_mistakes(read, work.catalogue, work.tables);
    print_errors(files.survey, mistakes);
    work.survey = std::move(read.survey);
    return mistakes.empty();
}

bool load_own_catalogue(const std::string& path, Workspace& work) {
    const auto text = read_file(path);
    if (!text) {
        print_errors("", {text.error()});
        return false;
    }
    app::ImportedCatalogue imported = app::import_catalogue(*text, std::filesystem::path(path).stem().string());
    for (const app::ImportProblem& problem : imported.problems) fmt::print(stderr, "{}: {}\n", path, problem.line());
    if (imported.bad_rows > 0) fmt::print(stderr, "{}: {}\n", path, imported.summary());
    if (imported.catalogue.wheels.empty()) {
        fmt::print(stderr, "{}: holds no usable wheel\n", path);
        return false;
    }
    work.catalogue = std::move(imported.catalogue);
    return true;
}

bool load_shipped_catalogue(Workspace& work) {
    app::LoadedCatalogue loaded = app::load_catalogue();
    print_errors("catalogue", loaded.errors);
    work.catalogue = std::move(loaded.catalogue);
    return loaded.errors.empty();
}

}  // namespace

std::optional<Workspace> open_workspace(const WorkspaceFiles& files) {
    auto language = app::Language::load(files.language);
    if (!language) {
        fmt::print(stderr, "--language: '{}' is not there; en and es are\n", files.language);
        return std::nullopt;
    }
    app::LoadedTables tables = app::load_tables();
    print_errors("tables", tables.errors);
    Workspace work{std::move(tables.tables),
                   {},
                   {},
                   std::move(*language),
                   files.us_units ? app::UnitSystem::us : app::UnitSystem::si};
    const bool good =
        tables.errors.empty() &&
        (files.catalogue.empty() ? load_shipped_catalogue(work) : load_own_catalogue(files.catalogue, work)) &&
        load_survey(files, work);
    if (!good) return std::nullopt;
    return work;
}

std::optional<std::size_t> find_cart(const engine::Survey& survey, const std::string& wanted) {
    std::string right;
    for (std::size_t i = 0; i < survey.carts.size(); ++i) {
        if (survey.carts[i].name == wanted || survey.carts[i].id.text() == wanted) return i;
        right += (right.empty() ? "" : ", ") + survey.carts[i].name;
    }
    fmt::print(stderr, "--cart: '{}' is not in this survey; its carts are: {}\n", wanted, right);
    return std::nullopt;
}

void add_workspace_options(CLI::App& command, WorkspaceFiles& files) {
    command.add_option("survey", files.survey, "Survey file (docs/reference/survey.md)")->required();
    command.add_option("--catalogue", files.catalogue,
                       "A catalogue of your own, JSON or CSV, in place of the shipped one");
    command.add_flag("--us-units", files.us_units, "Show US customary units");
    command.add_option("--language", files.language, "en or es");
}

std::optional<int> parse(CLI::App& command, int argc, char** argv) {
    try {  // the library reports by exceptions; they end here
        command.parse(argc, argv);
        return std::nullopt;
    } catch (const CLI::CallForHelp&) {
        fmt::print("{}", command.help());
        return exit_ok;
    } catch (const CLI::ParseError& error) {
        fmt::print(stderr, "{} (see {} --help)\n", error.what(), command.get_name());
        return exit_bad_input;
    }
}

std::size_t columns(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text) {
        if ((static_cast<unsigned char>(c) & 0xc0) != 0x80) ++count;
    }
    return count;
}

std::string cell(std::string_view text, std::size_t width) {
    const std::size_t wide = columns(text);
    if (wide <= width) return std::string(text) + std::string(width - wide, ' ');
    std::string out;
    std::size_t count = 0;
    for (const char c : text) {
        const bool starts = (static_cast<unsigned char>(c) & 0xc0) != 0x80;
        if (starts && count == width - 1) break;
        if (starts) ++count;
        out += c;
    }
    return out + "…";
}

}  // namespace sillwalk::desk
