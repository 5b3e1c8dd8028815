#include "app/bundle/hand_off.hpp"
#include "platforms/office/commands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>

namespace sillwalk::office {

namespace {

std::string counted(std::size_t revisions, std::size_t photos) {
    return fmt::format("{} revision{} and {} photo{}", revisions, revisions == 1 ? "" : "s", photos,
                       photos == 1 ? "" : "s");
}

CommandOutcome told(const Result<Verified>& result, const char* what) {
    if (!result) return command_failed(result.error());
    std::string faults;
    for (const std::string& line : result->faults) faults += line + "\n";
    return {faults.empty() ? 0 : 1,
            counted(static_cast<std::size_t>(result->revisions), static_cast<std::size_t>(result->blobs)) + " " + what +
                "\n",
            faults};
}

/// Takes what a known tablet signed; puts the rest aside until a person accepts it.
CommandOutcome import_envelope(Store& store, const app::Envelope& envelope, bool accept_unknown) {
    const std::string digest = app::to_hex(envelope.digest);
    const auto state = store.signature_state(envelope);
    if (state == app::SignatureState::bad) return {3, digest + "  refused: the signature does not hold\n", ""};
    if (state != app::SignatureState::good && !accept_unknown) {
        auto kept = store.quarantine(app::envelope_text(envelope), "unknown-signature", envelope.author.device_id);
        if (!kept) return command_failed(kept.error());
        return {3, digest + "  put aside: no known tablet signed it; --accept-unknown=yes takes it\n", ""};
    }
    const auto stored = store.put(envelope, envelope.author.device_id);
    if (!stored) return command_failed(stored.error());
    return {0, digest + (stored->fresh ? "  stored\n" : "  known\n"), ""};
}

CommandOutcome import_line(Store& store, const app::HandOffLine& line, bool accept_unknown) {
    if (const auto* envelope = std::get_if<app::Envelope>(&line))
        return import_envelope(store, *envelope, accept_unknown);
    const auto& blob = std::get<app::HandOffBlob>(line);
    const auto stored = store.put_blob(blob.digest, blob.bytes);
    if (!stored) return command_failed(stored.error());
    return {0, app::to_hex(blob.digest) + (*stored ? "  photo stored\n" : "  photo known\n"), ""};
}

}  // namespace

CommandOutcome run_export(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() != 2) return {2, "", "export VISIT FILE\n"};
    const auto rows = context.store.history(arguments[0]);
    if (!rows) return command_failed(rows.error());
    if (rows->empty()) return {2, "", "no such visit\n"};
    const std::string name = path_from(context, arguments[1]);
    if (std::filesystem::exists(name)) return {2, "", name + ": there is a file already\n"};
    std::ofstream file(name, std::ios::binary);
    std::set<std::string> written;
    for (const RevisionRow& row : *rows) {
        file << app::canonical_json({{"format", app::envelope_format}, {"rev", row.revision}, {"sig", row.signatures}})
             << "\n";
        const auto blobs = context.store.blobs_of(row.digest);
        if (!blobs) return command_failed(blobs.error());
        for (const BlobRow& blob : *blobs) {
            const auto digest = app::digest_from_hex(blob.digest);
            if (!blob.stored || !digest || !written.insert(blob.digest).second) continue;
            const auto bytes = context.store.blobs().read(*digest);
            if (!bytes) return command_failed(bytes.error());
            file << app::hand_off_blob_line(*bytes);
        }
    }
    file.close();
    if (file.fail()) return {1, "", name + ": could not be written\n"};
    return {0, counted(rows->size(), written.size()) + " in " + name + "\n", ""};
}

CommandOutcome run_import(CommandContext& context, const Arguments& arguments) {
    const auto words = split_words(arguments, {"accept-unknown"});
    if (!words) return command_failed(words.error());
    if (words->plain.size() != 1) return {2, "", "import FILE [--accept-unknown=yes]\n"};
    const std::string name = path_from(context, words->plain.front());
    std::ifstream file(name, std::ios::binary);
    if (!file) return {2, "", name + ": cannot be read\n"};
    app::HandOffReader reader(file);
    CommandOutcome out;
    while (const auto line = reader.next()) {
        const CommandOutcome one = import_line(context.store, *line, words->option("accept-unknown") == "yes");
        out.status = std::max(out.status, one.status);
        out.out += one.out;
        out.error += one.error;
    }
    if (!reader.at_end()) {
        out.status = 2;
        for (const auto& error : reader.fault().errors)
            out.error += fmt::format("{}:{}: {} {}\n", name, reader.line_number(), error.where, error.message);
    }
    return out;
}

CommandOutcome run_verify(CommandContext& context, const Arguments&) {
    return told(context.store.verify(), "checked");
}

CommandOutcome run_backup(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() != 1) return {2, "", "backup FOLDER\n"};
    return told(context.store.backup(path_from(context, arguments.front())), "saved");
}

CommandOutcome run_restore(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() != 1) return {2, "", "restore FOLDER\n"};
    return told(context.store.restore(path_from(context, arguments.front())), "restored");
}

}  // namespace sillwalk::office
