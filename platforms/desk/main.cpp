// sillwalk-desk: the command line. Picks the subcommand; each lives in its own file.

#include "platforms/desk/field/field_store.hpp"
#include "platforms/desk/subcommand.hpp"

#include <cstdio>
#include <string_view>

namespace {

struct Subcommand {
    const char* name;
    const char* help;
    int (*run)(int argc, char** argv);
};

constexpr Subcommand subcommands[] = {
    {"assess", "advice for the carts of a survey: assess SURVEY.json [--cart NAME] [--json]",
     sillwalk::desk::run_assess},
    {"explain", "the reason behind one check: explain SURVEY.json --cart NAME --check NAME",
     sillwalk::desk::run_explain},
    {"bundle", "the visit with its advice as one file: bundle SURVEY.json --output FILE", sillwalk::desk::run_bundle},
    {"seal", "a visit becomes a revision and waits in the outbox: seal --data FOLDER SURVEY.json [--photo FILE]",
     sillwalk::desk::run_seal},
    {"enrol", "take this device in at an office: enrol --data FOLDER --server URL --code CODE",
     sillwalk::desk::run_enrol},
    {"send", "send what is in the outbox: send --data FOLDER", sillwalk::desk::run_send},
    {"outbox", "what waits and what became of it: outbox --data FOLDER", sillwalk::desk::run_outbox},
    {"hand-off", "what was sealed as one file: hand-off --data FOLDER --output FILE", sillwalk::desk::run_hand_off},
    {"import", "take in a hand-off file: import --data FOLDER FILE", sillwalk::desk::run_import},
    {"solve", "one desk calculation: solve NAME key=value... [--json]; solve --list", sillwalk::desk::run_solve},
};

void print_usage(std::FILE* out) {
    std::fputs("sillwalk-desk SUBCOMMAND ...\n\n", out);
    for (const Subcommand& row : subcommands) {
        std::fprintf(out, "  %-10s %s\n", row.name, row.help);
    }
}

const Subcommand* find(std::string_view name) {
    for (const Subcommand& row : subcommands) {
        if (name == row.name) {
            return &row;
        }
    }
    return nullptr;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 2) {
        print_usage(stderr);
        return sillwalk::desk::exit_bad_input;
    }
    const std::string_view name = argv[1];
    if (name == "--help" || name == "-h" || name == "help") {
        print_usage(stdout);
        return sillwalk::desk::exit_ok;
    }
    const Subcommand* row = find(name);
    if (row == nullptr) {
        std::fprintf(stderr, "%s: there is no such subcommand; sillwalk-desk --help lists them\n", argv[1]);
        return sillwalk::desk::exit_bad_input;
    }
    return row->run(argc - 1, argv + 1);
}
