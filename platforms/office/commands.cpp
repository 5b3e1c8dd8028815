#include "platforms/office/commands.hpp"

#include <algorithm>
#include <filesystem>

namespace sillwalk::office {

const std::vector<Command>& commands() {
    static const std::vector<Command> all{
        {"enrol", "a one-time code for a tablet, with its QR code: enrol [LABEL]", run_enrol},
        {"person", "a code for a person who looks at the page: person NAME", run_person},
        {"devices", "tablets and people who are let in", run_devices},
        {"revoke", "withdraw a tablet or a person: revoke ID", run_revoke},
        {"list", "visits with their state", run_list},
        {"show", "one revision: show DIGEST [--json=yes]", run_show},
        {"heads", "the newest states of a visit: heads VISIT", run_heads},
        {"merge", "two states into one: merge VISIT [--take=ITEM/FIELD=left|right|base] [--confirm=NAME]", run_merge},
        {"recompute", "run the engine on a revision and compare: recompute DIGEST|all", run_recompute},
        {"export", "a visit as a hand-off file: export VISIT FILE", run_export},
        {"import", "a hand-off file: import FILE [--accept-unknown=yes]", run_import},
        {"verify", "check every digest", run_verify},
        {"backup", "everything into a new folder: backup FOLDER", run_backup},
        {"restore", "a backup into an office without revisions: restore FOLDER", run_restore},
    };
    return all;
}

const Command* find_command(std::string_view name) {
    for (const Command& command : commands()) {
        if (name == command.name) return &command;
    }
    return nullptr;
}

CommandOutcome command_failed(const engine::Error& error) {
    const std::string where = error.where.empty() ? "" : error.where + ": ";
    const bool words = error.code == engine::ErrorCode::bad_input || error.code == engine::ErrorCode::not_found;
    return {words ? 2 : 1, "", where + error.message + "\n"};
}

std::string Words::option(std::string_view name) const {
    for (const auto& [known, value] : options) {
        if (known == name) return value;
    }
    return "";
}

Result<Words> split_words(const Arguments& arguments, const Arguments& options) {
    Words out;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string& word = arguments[i];
        if (!word.starts_with("--")) {
            out.plain.push_back(word);
            continue;
        }
        const auto equal = word.find('=');
        const std::string name = word.substr(2, equal == std::string::npos ? equal : equal - 2);
        if (std::find(options.begin(), options.end(), name) == options.end())
            return engine::bad_input("there is no such option", "--" + name);
        if (equal != std::string::npos) {
            out.options.emplace_back(name, word.substr(equal + 1));
        } else if (i + 1 < arguments.size()) {
            out.options.emplace_back(name, arguments[++i]);
        } else {
            return engine::bad_input("a value is missing", "--" + name);
        }
    }
    return out;
}

std::string path_from(const CommandContext& context, const std::string& name) {
    return (std::filesystem::path(context.folder) / name).string();
}

}  // namespace sillwalk::office
