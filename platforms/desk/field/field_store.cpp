#include "platforms/desk/field/field_store.hpp"

#include "app/sync/fresh_identity.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <chrono>
#include <filesystem>

namespace sillwalk::desk {

namespace {

constexpr const char* file_name = "visits.sqlite3";  // as the app names it

void tell_what_was_found(const app::Writer& writer, const app::Language& language) {
    const char* key = nullptr;
    switch (writer.found()) {
        case app::Found::clean:
            return;
        case app::Found::unclean:
            key = "storage.unclean";
            break;
        case app::Found::restored:
            key = "storage.restored";
            break;
        case app::Found::started_anew:
            key = "storage.started_anew";
            break;
    }
    fmt::print(stderr, "{}{}{}\n", language.get(key), writer.aside().empty() ? "" : " ", writer.aside());
}

}  // namespace

void add_field_options(CLI::App& command, FieldOptions& options) {
    command.add_option("--data", options.data, "Folder of the visits, as the app's --data")->required();
    command.add_option("--language", options.language, "en or es");
}

std::optional<FieldStore> open_field_store(const FieldOptions& options) {
    auto language = app::Language::load(options.language);
    if (!language) {
        fmt::print(stderr, "--language: '{}' is not there; en and es are\n", options.language);
        return std::nullopt;
    }
    std::error_code failed;
    std::filesystem::create_directories(options.data, failed);
    app::WriterOptions wanted;
    wanted.keep = true;
    wanted.own_thread = false;
    auto writer = app::Writer::open((std::filesystem::path(options.data) / file_name).string(), wanted);
    if (!writer) {
        print_error(writer.error());
        return std::nullopt;
    }
    FieldStore store{std::move(*writer), {}, std::move(*language)};
    tell_what_was_found(*store.writer, store.language);
    auto device = store.with(
        [](app::Database& database) { return app::device_identity(database, app::fresh_identity(utc_ms())); });
    if (!device) {
        print_error(device.error());
        return std::nullopt;
    }
    store.device = std::move(*device);
    return store;
}

std::int64_t utc_ms() {
    const auto now = std::chrono::system_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
}

std::int64_t steady_ms() {
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
}

void print_error(const engine::Error& error) {
    fmt::print(stderr, "{}{}{}\n", error.where, error.where.empty() ? "" : ": ", error.message);
}

}  // namespace sillwalk::desk
