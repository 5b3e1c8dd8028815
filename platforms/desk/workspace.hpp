#pragma once
/// What every command of the desk tool needs: the tables, a catalogue and a survey, or the list of what is wrong with
/// them.

#include "app/text/explain.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/survey.hpp"
#include "engine/model/tables.hpp"

namespace CLI {
class App;
}

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sillwalk::desk {

struct Workspace {
    engine::Tables tables;
    engine::Catalogue catalogue;
    engine::Survey survey;
    app::Language language;
    app::UnitSystem units = app::UnitSystem::si;

    [[nodiscard]] app::TextContext text() const { return {language, units, survey, catalogue, tables}; }
};

struct WorkspaceFiles {
    std::string survey;
    std::string catalogue;  ///< empty = the one that ships
    std::string language = "en";
    bool us_units = false;
};

/// Prints every mistake to standard error, one line each with its JSON path, and returns nothing.
[[nodiscard]] std::optional<Workspace> open_workspace(const WorkspaceFiles& files);

/// SURVEY, --catalogue, --units, --language.
void add_workspace_options(CLI::App& command, WorkspaceFiles& files);
/// Parses; a status where the command must end: help, or one line on what was wrong with the words.
[[nodiscard]] std::optional<int> parse(CLI::App& command, int argc, char** argv);

/// The cart whose id or name is `wanted`; prints the carts there are and returns nothing where none is.
[[nodiscard]] std::optional<std::size_t> find_cart(const engine::Survey& survey, const std::string& wanted);

[[nodiscard]] engine::Result<std::string> read_file(const std::string& path);
/// Writes to a new file beside it, then renames: a full disk leaves the old file whole.
[[nodiscard]] engine::Result<std::monostate> write_file(const std::string& path, std::string_view bytes);
void print_errors(const std::string& file, const std::vector<engine::Error>& errors);

/// Width of a text on a terminal: code points, not bytes.
[[nodiscard]] std::size_t columns(std::string_view text);
/// Padded with spaces, or cut with "…", to exactly `width` columns.
[[nodiscard]] std::string cell(std::string_view text, std::size_t width);

}  // namespace sillwalk::desk
