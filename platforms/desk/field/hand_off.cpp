// sillwalk-desk hand-off and import: files for a stick or a mail.

#include "app/sync/hand_off_files.hpp"
#include "platforms/desk/field/field_store.hpp"
#include "platforms/desk/subcommand.hpp"
#include "platforms/desk/workspace.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cstdio>
#include <fstream>

namespace sillwalk::desk {

namespace {

int cannot_write(const std::string& path) {
    fmt::print(stderr, "{}: cannot be written; is the folder there and the disk not full?\n", path);
    return exit_failed;
}

/// Writes to a new file beside it, then renames: a full stick leaves the old file whole.
int write_file_for(FieldStore& store, const std::string& visit, const std::string& path) {
    const std::string part = path + ".part";
    std::ofstream out(part, std::ios::binary | std::ios::trunc);
    if (!out) return cannot_write(path);
    const auto told = store.with([&](app::Database& database) { return app::write_hand_off(database, visit, out); });
    out.close();
    if (!told || out.fail() || std::rename(part.c_str(), path.c_str()) != 0) {
        std::remove(part.c_str());
        if (told) return cannot_write(path);
        print_error(told.error());
        return exit_failed;
    }
    fmt::print("{} revisions and {} photos in {}\n", told->revisions, told->photos, path);
    for (const app::Digest& digest : told->damaged)
        fmt::print(stderr, "{}: {}\n", app::to_hex(digest), store.language.get("sync.why.damaged"));
    return told->damaged.empty() ? exit_ok : exit_refused;
}

int tell_taken_in(const app::TakenIn& told, const std::string& path) {
    fmt::print("{} revisions, {} known already, {} photos, {} new visits, {} put aside\n", told.revisions, told.known,
               told.photos, told.visits, told.put_aside);
    for (const engine::Error& error : told.fault.errors)
        fmt::print(stderr, "{}:{}: {} {}\n", path, told.stopped_at, error.where, error.message);
    if (!told.fault.errors.empty()) return exit_bad_input;
    return told.put_aside > 0 ? exit_refused : exit_ok;
}

}  // namespace

int run_hand_off(int argc, char** argv) {
    CLI::App command{"Writes what was sealed into one file for a stick or a mail", "sillwalk-desk hand-off"};
    FieldOptions field;
    std::string output, visit;
    add_field_options(command, field);
    command.add_option("--output", output, "File to write")->required();
    command.add_option("--visit", visit, "Only this visit");
    if (const auto status = parse(command, argc, argv)) return *status;
    auto store = open_field_store(field);
    if (!store) return exit_failed;
    return write_file_for(*store, visit, output);
}

int run_import(int argc, char** argv) {
    CLI::App command{"Takes in a hand-off file", "sillwalk-desk import"};
    FieldOptions field;
    std::string path;
    app::TakeInOptions options;
    add_field_options(command, field);
    command.add_option("file", path, "The file")->required();
    command.add_flag("--accept-unknown", options.accept_unknown, "Also take what no known tablet signed");
    if (const auto status = parse(command, argc, argv)) return *status;
    std::ifstream file(path, std::ios::binary);
    if (!file) {
        fmt::print(stderr, "{}: cannot be read\n", path);
        return exit_bad_input;
    }
    auto store = open_field_store(field);
    if (!store) return exit_failed;
    options.at_ms = utc_ms();
    const auto told =
        store->with([&](app::Database& database) { return app::take_in_hand_off(database, file, options); });
    if (!told) {
        print_error(told.error());
        return exit_failed;
    }
    return tell_taken_in(*told, path);
}

}  // namespace sillwalk::desk
