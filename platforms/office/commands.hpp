#pragma once
/// What `sillwalk-office` can do with an office, as functions from words to texts, so that a command runs the same in
/// its own program and inside one that is being served (SQLite allows one program at a time).

#include "app/office/store.hpp"

#include <functional>
#include <string>
#include <vector>

namespace sillwalk::office {

struct CommandContext {
    Store& store;
    std::string folder;      ///< of the person who asks; names of files are relative to it
    std::string public_url;  ///< what tablets reach the office by; may be empty
};
struct CommandOutcome {
    int status = 0;  ///< 0 fine, 1 the storage failed or something is wrong with it, 2 bad words, 3 refused
    std::string out, error;
};
using Arguments = std::vector<std::string>;
struct Command {
    const char* name;
    const char* help;
    CommandOutcome (*run)(CommandContext&, const Arguments&);
};

[[nodiscard]] const std::vector<Command>& commands();
/// Null where there is none of this name.
[[nodiscard]] const Command* find_command(std::string_view name);

[[nodiscard]] CommandOutcome command_failed(const engine::Error& error);
/// Options as "--name=value" or "--name value"; what is left are the words.
struct Words {
    Arguments plain;
    std::vector<std::pair<std::string, std::string>> options;
    [[nodiscard]] std::string option(std::string_view name) const;
};
/// bad_input on an option that is not one of `options`.
[[nodiscard]] Result<Words> split_words(const Arguments& arguments, const Arguments& options);
[[nodiscard]] std::string path_from(const CommandContext& context, const std::string& name);

// commands_people.cpp
[[nodiscard]] CommandOutcome run_enrol(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_person(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_devices(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_revoke(CommandContext& context, const Arguments& arguments);
// commands_visits.cpp
[[nodiscard]] CommandOutcome run_list(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_show(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_heads(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_merge(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_recompute(CommandContext& context, const Arguments& arguments);
// commands_files.cpp
[[nodiscard]] CommandOutcome run_export(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_import(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_verify(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_backup(CommandContext& context, const Arguments& arguments);
[[nodiscard]] CommandOutcome run_restore(CommandContext& context, const Arguments& arguments);

}  // namespace sillwalk::office
