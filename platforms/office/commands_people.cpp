#include "app/office/html.hpp"
#include "app/office/qr.hpp"
#include "platforms/office/commands.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace sillwalk::office {

namespace {

/// Text that can be stored and shown: UTF-8 without control characters, not too long.
bool sensible(const std::string& name) {
    const bool plain =
        std::none_of(name.begin(), name.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; });
    const std::string written = Json(name).dump(-1, ' ', false, Json::error_handler_t::replace);
    return plain && name.size() <= 200 && Json::parse(written).get<std::string>() == name;
}

}  // namespace

CommandOutcome run_enrol(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() > 1 || (arguments.size() == 1 && !sensible(arguments.front())))
        return {2, "", "enrol [LABEL]\n"};
    const auto code = context.store.new_enrolment(arguments.empty() ? "" : arguments.front());
    if (!code) return command_failed(code.error());
    const std::string out = fmt::format("Code, good once and for 15 minutes: {}\n", *code);
    if (context.public_url.empty()) return {0, out + "With --url ADDRESS there is a QR code that holds it all.\n", ""};
    // The office's key is in the code, so that a tablet knows receipts of this office from the first one on.
    const std::string link = fmt::format("sillwalk:enrol?url={}&code={}&key={}", context.public_url, *code,
                                         app::to_hex(context.store.key().public_key));
    const auto picture = qr_text(link);
    if (!picture) return command_failed(picture.error());
    return {0, out + link + "\n" + *picture, ""};
}

CommandOutcome run_person(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() != 1 || !sensible(arguments.front())) return {2, "", "person NAME\n"};
    const auto code = context.store.new_person(arguments.front());
    if (!code) return command_failed(code.error());
    return {0, fmt::format("Login code of {}: {}\nIt is shown this once.\n", arguments.front(), *code), ""};
}

CommandOutcome run_devices(CommandContext& context, const Arguments&) {
    const auto devices = context.store.devices();
    if (!devices) return command_failed(devices.error());
    const auto people = context.store.people();
    if (!people) return command_failed(people.error());
    std::string out;
    for (const Device& row : *devices) {
        out += fmt::format("{}  tablet  {:<24} last seen {}{}\n", row.id, row.name, time_text(row.seen_ms),
                           row.revoked_ms != 0 ? "  withdrawn" : "");
    }
    for (const Person& row : *people) {
        out += fmt::format("{}  person  {:<24} since {}{}\n", row.id, row.name, time_text(row.created_ms),
                           row.revoked_ms != 0 ? "  withdrawn" : "");
    }
    return {0, out.empty() ? "Nobody yet.\n" : out, ""};
}

CommandOutcome run_revoke(CommandContext& context, const Arguments& arguments) {
    if (arguments.size() != 1) return {2, "", "revoke ID\n"};
    const auto done = context.store.revoke(arguments.front());
    if (!done) return command_failed(done.error());
    return {0, "Withdrawn. What it sent is kept.\n", ""};
}

}  // namespace sillwalk::office
