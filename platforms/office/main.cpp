// sillwalk-office: takes in what tablets send, and looks after it.

#include "platforms/office/serve.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <chrono>
#include <filesystem>
#include <sys/stat.h>

namespace sillwalk::office {
namespace {

constexpr std::uint16_t usual_port = 8477;

std::int64_t system_ms() {
    const auto now = std::chrono::system_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
}

std::string help() {
    std::string out = "Commands:\n  serve      take in and show, on a loopback port\n";
    for (const Command& command : commands()) out += fmt::format("  {:<10} {}\n", command.name, command.help);
    return out;
}

int tell(const CommandOutcome& outcome) {
    fmt::print("{}", outcome.out);
    fmt::print(stderr, "{}", outcome.error);
    return outcome.status;
}

int run_command(const StoreOptions& options, const std::string& public_url, const Arguments& words) {
    const Command* command = find_command(words.front());
    if (command == nullptr) {
        fmt::print(stderr, "{}: there is no such command; sillwalk-office --help lists them\n", words.front());
        return 2;
    }
    const std::string here = std::filesystem::current_path().string();
    // SQLite is open in the program that serves, if one does: then that one does what is asked.
    if (options.database.empty()) {
        if (const auto served = run_in_served(options.folder, {words, here, public_url})) return tell(*served);
    }
    auto store = Store::open(options);
    if (!store) return tell(command_failed(store.error()));
    CommandContext context{**store, here, public_url};
    return tell(command->run(context, {words.begin() + 1, words.end()}));
}

int run(int argc, char** argv) {
    ::umask(0077);
    StoreOptions options{"office", "", system_ms};
    std::string public_url;
    std::uint16_t port = usual_port;
    Arguments words;
    CLI::App command{"Takes in what tablets send, and looks after it (docs/reference/office.md)", "sillwalk-office"};
    command.footer(help());
    command.add_option("--data", options.folder, "Folder of photos, key and SQLite file")
        ->envname("SILLWALK_OFFICE_DATA");
    command.add_option("--database", options.database, "postgresql://…; without it SQLite in the folder")
        ->envname("SILLWALK_OFFICE_DATABASE");
    command.add_option("--url", public_url, "Address by which tablets reach the office")
        ->envname("SILLWALK_OFFICE_URL");
    command.add_option("--port", port, "Loopback port of serve; 0 takes any free one");
    command.prefix_command();
    try {
        command.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        const int status = command.exit(error);
        return status == 0 ? 0 : 2;
    }
    words = command.remaining();
    if (words.empty()) {
        fmt::print(stderr, "a command is missing; sillwalk-office --help lists them\n");
        return 2;
    }
    if (!options.database.empty() && !options.database.starts_with("postgresql://")) {
        fmt::print(stderr, "--database: an address that starts with postgresql:// is needed\n");
        return 2;
    }
    if (words.front() != "serve") return run_command(options, public_url, words);
    auto store = Store::open(options);
    if (!store) return tell(command_failed(store.error()));
    return serve(**store, port);
}

}  // namespace
}  // namespace sillwalk::office

int main(int argc, char** argv) {
    return sillwalk::office::run(argc, argv);
}
