#include "platforms/office/serve.hpp"

#include "app/office/api.hpp"
#include "app/office/http_server.hpp"
#include "app/office/page.hpp"
#include "app/office/secret.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <filesystem>

namespace sillwalk::office {

namespace {

constexpr std::string_view scheme = "Bearer ";

/// Port and token of the program that serves; readable by its own user only.
std::string note_path(const std::string& data) {
    return data + "/serving.json";
}

HttpResponse answer_command(Store& store, const HttpRequest& request, const std::string& token_hash) {
    const std::string_view authorization = request.header("authorization");
    // Digests are compared, so that the time it takes tells nothing about the token.
    const bool known =
        authorization.starts_with(scheme) && secret_hash(authorization.substr(scheme.size())) == token_hash;
    app::JsonErrors errors;
    const auto document = known && request.method == "POST" ? app::parse_strict(request.body, errors) : std::nullopt;
    if (!document) return not_found();
    app::JsonObject object(*document, "", errors);
    const Arguments words = object.texts("arguments");
    CommandContext context{store, object.text("folder").value_or(""), object.text("public_url").value_or("")};
    const Command* command = words.empty() ? nullptr : find_command(words.front());
    if (!errors.empty() || command == nullptr) return not_found();
    const CommandOutcome outcome = command->run(context, {words.begin() + 1, words.end()});
    const Json told{{"status", outcome.status}, {"out", outcome.out}, {"error", outcome.error}};
    return {200, {{"Content-Type", "application/json"}}, told.dump(-1, ' ', true, Json::error_handler_t::replace), {}};
}

int failed_start(const engine::Error& error) {
    fmt::print(stderr, "{}: {}\n", error.where, error.message);
    return 1;
}

}  // namespace

int serve(Store& store, std::uint16_t port) {
    if (auto dropped = store.drop_old_uploads(); !dropped) return failed_start(dropped.error());
    Api api(store);
    Page page(store);
    const std::string token = new_token();
    const std::string token_hash = secret_hash(token);
    HttpOptions options;
    options.port = port;
    auto server = HttpServer::start(options, [&](const HttpRequest& request) {
        if (request.path.starts_with("/v1/")) return api.handle(request);
        if (request.path == "/commands") return answer_command(store, request, token_hash);
        return page.handle(request);
    });
    if (!server) return failed_start(server.error());
    const Json note{{"port", (*server)->port()}, {"token", token}};
    if (auto written = write_whole(note_path(store.folder()), note.dump()); !written)
        return failed_start(written.error());
    fmt::print("Serving on 127.0.0.1:{}\n", (*server)->port());
    std::fflush(stdout);
    (*server)->wait_for_signal();
    std::error_code ignored;
    std::filesystem::remove(note_path(store.folder()), ignored);
    return 0;
}

std::optional<CommandOutcome> run_in_served(const std::string& data, const CommandRequest& request) {
    const auto note = read_whole(note_path(data));
    if (!note) return std::nullopt;
    app::JsonErrors errors;
    const auto document = app::parse_strict(*note, errors);
    if (!document) return std::nullopt;
    app::JsonObject object(*document, "", errors);
    const auto port = object.integer("port", 1, 65535);
    const auto token = object.text("token");
    if (!port || !token) return std::nullopt;
    const Json body{{"arguments", request.arguments}, {"folder", request.folder}, {"public_url", request.public_url}};
    const HttpRequest post{"POST",
                           "/commands",
                           "",
                           {{"authorization", std::string(scheme) + *token}},
                           body.dump(-1, ' ', true, Json::error_handler_t::replace)};
    const auto answer = http_request_here(static_cast<std::uint16_t>(*port), post);
    if (!answer) return std::nullopt;
    const Json told = Json::parse(answer->body, nullptr, false);
    if (answer->status != 200 || !told.is_object())
        return CommandOutcome{1, "", "The office that is being served did not take the command.\n"};
    return CommandOutcome{told.value("status", 1), told.value("out", ""), told.value("error", "")};
}

}  // namespace sillwalk::office
