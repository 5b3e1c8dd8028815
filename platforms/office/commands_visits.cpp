#include "app/office/html.hpp"
#include "app/office/merge_store.hpp"
#include "app/office/recompute.hpp"
#include "platforms/office/commands.hpp"

#include <fmt/format.h>

namespace sillwalk::office {

namespace {

std::string shown(const std::optional<Json>& value) {
    return value ? value->dump() : "not there";
}

std::string conflicts_text(const MergeCase& merge) {
    std::string out = fmt::format("left  {}\nright {}\nbase  {}\n", merge.left.digest, merge.right.digest,
                                  merge.base.empty() ? "none in common" : merge.base);
    for (const Conflict& row : merge.proposal.conflicts) {
        out += fmt::format("\n{}  ({} {})\n  base  {}\n  left  {}\n  right {}\n", row.key(), row.kind, row.name,
                           shown(row.base), shown(row.left), shown(row.right));
    }
    return out;
}

Result<Choices> choices_of(const Words& words) {
    Choices out;
    for (const auto& [name, value] : words.options) {
        if (name != "take") continue;
        const auto equal = value.rfind('=');
        const std::string side = equal == std::string::npos ? "" : value.substr(equal + 1);
        if (side != "left" && side != "right" && side != "base")
            return engine::bad_input("a choice is ITEM/FIELD=left, right or base", value);
        out[value.substr(0, equal)] = side == "left" ? Side::left : side == "right" ? Side::right : Side::base;
    }
    return out;
}

std::string recomputed_text(const std::string& digest, const Recomputed& result) {
    std::string out = digest + "\n";
    for (const std::string& line : result.mistakes) out += "  cannot be judged: " + line + "\n";
    if (!result.mistakes.empty()) return out;
    if (!result.has_advice) return out + "  carries no advice\n";
    if (!result.same_editions) {
        out +=
            fmt::format("  other editions: the tablet had {}; here are {}\n", result.tablet_editions, result.editions);
    }
    for (const std::string& line : result.differences) out += "  differs: " + line + "\n";
    return out + (result.differences.empty() ? "  same advice\n" : "");
}

}  // namespace

CommandOutcome run_list(CommandContext& context, const Arguments&) {
    const auto rows = context.store.surveys();
    if (!rows) return command_failed(rows.error());
    std::string out;
    for (const SurveyRow& row : *rows) {
        const std::string state = row.heads.size() > 1    ? fmt::format("{} states", row.heads.size())
                                  : row.missing_blobs > 0 ? fmt::format("{} photos missing", row.missing_blobs)
                                                          : "complete";
        out += fmt::format("{}  {}  {:<16} {}\n", row.id, time_text(row.received_ms), state, row.title);
    }
    return {0, out.empty() ? "No visit yet.\n" : out, ""};
}

CommandOutcome run_show(CommandContext& context, const Arguments& arguments) {
    const auto words = split_words(arguments, {"json"});
    if (!words) return command_failed(words.error());
    if (words->plain.size() != 1) return {2, "", "show DIGEST [--json=yes]\n"};
    const auto row = context.store.revision(words->plain.front());
    if (!row) return command_failed(row.error());
    if (!words->option("json").empty()) return {0, row->revision.dump(2) + "\n", ""};
    const auto blobs = context.store.blobs_of(row->digest);
    if (!blobs) return command_failed(blobs.error());
    std::string out = fmt::format("revision {}\nvisit    {}\nauthor   {}\narrived  {}\n", row->digest, row->survey_id,
                                  row->revision.at("author").value("name", ""), time_text(row->received_ms));
    for (const std::string& parent : row->parents) out += "parent   " + parent + "\n";
    for (const BlobRow& blob : *blobs)
        out += fmt::format("photo    {}{}\n", blob.digest, blob.stored ? "" : " missing");
    return {0, out, ""};
}

CommandOutcome run_heads(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() != 1) return {2, "", "heads VISIT\n"};
    const auto heads = context.store.heads(arguments.front());
    if (!heads) return command_failed(heads.error());
    std::string out;
    for (const std::string& head : *heads) out += head + "\n";
    return {0, out, ""};
}

CommandOutcome run_merge(CommandContext& context, const Arguments& arguments) {
    const auto words = split_words(arguments, {"take", "confirm"});
    if (!words) return command_failed(words.error());
    if (words->plain.size() != 1) return {2, "", "merge VISIT [--take=ITEM/FIELD=SIDE] [--confirm=NAME]\n"};
    const auto merge = merge_case(context.store, words->plain.front());
    if (!merge) return command_failed(merge.error());
    const auto choices = choices_of(*words);
    if (!choices) return command_failed(choices.error());
    const std::string person = words->option("confirm");
    if (person.empty())
        return {0, conflicts_text(*merge) + "\nNothing was changed. Choose with --take, then --confirm=NAME.\n", ""};
    const auto stored = confirm_merge(context.store, *merge, *choices, person);
    if (!stored) return {3, conflicts_text(*merge), stored.error().message + "\n"};
    return {0, stored->receipt + "\n", ""};
}

CommandOutcome run_recompute(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() != 1) return {2, "", "recompute DIGEST|all\n"};
    Arguments digests{arguments.front()};
    if (arguments.front() == "all") {
        digests.clear();
        const auto rows = context.store.surveys();
        if (!rows) return command_failed(rows.error());
        for (const SurveyRow& row : *rows) digests.insert(digests.end(), row.heads.begin(), row.heads.end());
    }
    CommandOutcome out;
    for (const std::string& digest : digests) {
        const auto row = context.store.revision(digest);
        if (!row) return command_failed(row.error());
        const Recomputed result = recompute(row->revision);
        if (!result.mistakes.empty() || !result.differences.empty()) out.status = 3;
        out.out += recomputed_text(digest, result);
    }
    return out;
}

}  // namespace sillwalk::office
