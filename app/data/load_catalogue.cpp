#include "app/data/load_catalogue.hpp"

#include "app/data/catalogue_rows.hpp"
#include "assets/embedded.hpp"

#include <fmt/format.h>

#include <map>

namespace sillwalk::app {

using namespace engine;

namespace {

constexpr std::string_view shipped = "catalogue/catalogue.json";

template <class Item>
void read_list(JsonObject& document, std::string_view key, std::vector<Item>& items, JsonErrors& errors,
               Item (*read_row)(const Json&, const std::string&, JsonErrors&)) {
    std::map<std::string, std::string> first;
    document.each(key, [&](const Json& value, const std::string& path) {
        Item item = read_row(value, path, errors);
        const std::string id = item.id.text();
        const auto [seen, fresh] = first.emplace(id, path);
        if (!fresh && !id.empty()) {
            errors.push_back(
                {ErrorCode::bad_input, fmt::format("'{}' stands already at {}", id, seen->second), path + "/id"});
        }
        items.push_back(std::move(item));
    });
}

/// Bearings that a wheel names and the catalogue does not have. Paths count in the file's order, so this runs before
/// sorting.
void check_bearings(const Catalogue& catalogue, JsonErrors& errors) {
    std::map<std::string, bool> known;
    for (const Bearing& bearing : catalogue.bearings) known[bearing.id.text()] = true;
    for (std::size_t i = 0; i < catalogue.wheels.size(); ++i) {
        const auto& named = catalogue.wheels[i].bearings;
        for (std::size_t k = 0; k < named.size(); ++k) {
            if (known.count(named[k].text()) > 0) continue;
            errors.push_back({ErrorCode::not_found,
                              fmt::format("there is no bearing '{}' in this catalogue", named[k].text()),
                              fmt::format("/wheels/{}/bearings/{}", i, k)});
        }
    }
}

}  // namespace

LoadedCatalogue read_catalogue(std::string_view text) {
    LoadedCatalogue out;
    const auto parsed = parse_json(text, out.errors);
    if (!parsed) return out;
    JsonObject document(*parsed, "", out.errors);
    read_catalogue_head(document, out.catalogue);
    read_list(document, "wheels", out.catalogue.wheels, out.errors, read_wheel);
    read_list(document, "bearings", out.catalogue.bearings, out.errors, read_bearing);
    read_list(document, "rigs", out.catalogue.rigs, out.errors, read_rig);
    document.done();
    if (out.errors.empty()) check_bearings(out.catalogue, out.errors);
    sort_catalogue(out.catalogue);
    return out;
}

LoadedCatalogue load_catalogue() {
    const auto text = assets::embedded(shipped);
    if (text) return read_catalogue(*text);
    LoadedCatalogue out;
    out.errors.push_back({ErrorCode::not_found, "the catalogue was not compiled in", std::string(shipped)});
    return out;
}

}  // namespace sillwalk::app
