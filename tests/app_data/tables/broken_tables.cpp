#include "tests/app_data/tables/broken_tables.hpp"

#include "assets/embedded.hpp"

namespace sillwalk::test {

app::LoadedTables load_replaced(const std::string& path, const std::optional<std::string>& text) {
    return app::load_tables_from([&](std::string_view asked) -> std::optional<std::string> {
        if (asked == path) return text;
        const auto bytes = assets::embedded(asked);
        if (!bytes) return std::nullopt;
        return std::string(*bytes);
    });
}

app::LoadedTables load_spoilt(const std::string& path, const Spoil& spoil) {
    nlohmann::json document = nlohmann::json::parse(assets::embedded(path).value());
    spoil(document);
    return load_replaced(path, document.dump());
}

std::string listing(const app::LoadedTables& loaded) {
    std::string out;
    for (const engine::Error& error : loaded.errors) out += error.where + ": " + error.message + "\n";
    return out;
}

}  // namespace sillwalk::test
