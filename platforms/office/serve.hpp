#pragma once
/// `sillwalk-office serve`: the protocol, the page, and the commands of this machine on one loopback port.

#include "platforms/office/commands.hpp"

#include <optional>

namespace sillwalk::office {

/// Returns after SIGINT or SIGTERM, with the program's exit status.
[[nodiscard]] int serve(Store& store, std::uint16_t port);

struct CommandRequest {
    Arguments arguments;
    std::string folder, public_url;
};
/// Runs the command in the program that serves the office of `data`; nothing where none does.
[[nodiscard]] std::optional<CommandOutcome> run_in_served(const std::string& data, const CommandRequest& request);

}  // namespace sillwalk::office
