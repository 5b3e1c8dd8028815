#pragma once
/// The subcommands of sillwalk-desk. Each gets its own words only: argv[0] is the subcommand's name.

namespace sillwalk::desk {

/// Exit statuses that every subcommand keeps to.
enum ExitStatus : int {
    exit_ok = 0,
    exit_failed = 1,     ///< the program's own files or a disk
    exit_bad_input = 2,  ///< one line on the error stream: what was wrong and what would be right
    exit_refused = 3,    ///< the question has no answer; the reason is printed
};

int run_assess(int argc, char** argv);
int run_bundle(int argc, char** argv);
int run_explain(int argc, char** argv);
int run_solve(int argc, char** argv);

}  // namespace sillwalk::desk
