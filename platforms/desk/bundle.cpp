// sillwalk-desk bundle SURVEY.json: the visit with its advice as one file, as the office gets it.

#include "app/bundle/bundle_advice.hpp"
#include "app/bundle/revision.hpp"
#include "platforms/desk/subcommand.hpp"
#include "platforms/desk/workspace.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <string>

namespace sillwalk::desk {

namespace {

/// The desk is no enrolled device: its bundles carry this id and no signature.
constexpr const char* desk_device = "00000000-0000-0000-0000-000000000000";

app::Json revision_of(const Workspace& work) {
    const app::BundleAdvice made = app::make_bundle_advice(work.survey, work.catalogue, work.tables);
    app::RevisionInput input{.survey = work.survey,
                             .parents = {},
                             .author = {desk_device, "office", "sillwalk-desk"},
                             .captured_ms = work.survey.made_ms,
                             .advice = made.advice,
                             .engine_version = made.engine_version,
                             .catalogue_edition = made.catalogue_edition,
                             .tables_edition = made.tables_edition,
                             .blobs = {}};
    return app::make_revision(input);
}

}  // namespace

int run_bundle(int argc, char** argv) {
    CLI::App command{"The visit with its advice as one canonical file (docs/reference/bundle.md)",
                     "sillwalk-desk bundle"};
    WorkspaceFiles files;
    std::string output;
    add_workspace_options(command, files);
    command.add_option("--output", output, "File to write; without it the bundle is printed");
    if (const auto status = parse(command, argc, argv)) return *status;
    const auto work = open_workspace(files);
    if (!work) return exit_bad_input;
    const app::Json revision = revision_of(*work);
    const std::string envelope = app::make_envelope(revision) + "\n";
    if (output.empty()) {
        fmt::print("{}", envelope);
        return exit_ok;
    }
    if (const auto written = write_file(output, envelope); !written) {
        fmt::print(stderr, "{}: {}\n", written.error().where, written.error().message);
        return exit_bad_input;
    }
    fmt::print("{}  {}\n", app::to_hex(app::revision_digest(revision)), output);
    return exit_ok;
}

}  // namespace sillwalk::desk
