/// Floors, what shoes find on them, and how wheels roll on them.

#include "app/data/table_loaders.hpp"

#include <fmt/format.h>

#include <set>

namespace sillwalk::app {

using engine::AirMovement;
using engine::MaterialFamily;
using engine::Wetness;

void load_floors(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    std::string before;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::Floor floor;
        floor.id = rising_id(row, "id", before);
        floor.name = row.text("name").value_or("");
        floor.rolling_surface = row.text("rolling_surface").value_or("");
        floor.textured = row.boolean("textured").value_or(false);
        floor.contact_limit = fields.figure(row, "contact_limit_pa", {1e4, 2e9}, si<engine::Pressure>, Need::optional);
        floor.modulus = fields.figure(row, "modulus_pa", {1e6, 1e12}, si<engine::Pressure>, Need::optional);
        tables.floors.push_back(std::move(floor));
    });
}

void load_friction(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    const std::initializer_list<std::pair<std::string_view, Wetness>> words = {{"dry", Wetness::dry},
                                                                               {"damp", Wetness::damp},
                                                                               {"wet", Wetness::wet},
                                                                               {"greasy", Wetness::greasy},
                                                                               {"frost", Wetness::frost},
                                                                               {"ice", Wetness::ice},
                                                                               {"melting_ice", Wetness::melting_ice}};
    std::set<std::pair<Wetness, bool>> seen;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::FrictionRow out;
        out.wetness = row.word<Wetness>("wetness", words).value_or(Wetness::dry);
        out.textured = row.boolean("textured").value_or(false);
        out.friction = fields.needed(row, "friction", {0.01, 2}, plain);
        if (!seen.insert({out.wetness, out.textured}).second)
            row.error("wetness", "this wetness and texture stand twice");
        tables.friction.push_back(std::move(out));
    });
    if (seen.size() != 2 * words.size()) {
        file.error("rows", fmt::format("{} of {} pairs of wetness and texture", seen.size(), 2 * words.size()));
    }
}

void load_rolling(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    std::set<std::pair<MaterialFamily, std::string>> seen;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::RollingRow out;
        out.tread = read_family(row, "tread");
        out.surface = row.text("surface").value_or("");
        out.lever_arm = fields.needed(row, "lever_arm_m", {1e-5, 0.1}, si<engine::Length>);
        if (!seen.insert({out.tread, out.surface}).second) row.error("tread", "this tread and surface stand twice");
        tables.rolling.push_back(std::move(out));
    });
}

void load_film(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    const std::initializer_list<std::pair<std::string_view, AirMovement>> words = {{"still", AirMovement::still},
                                                                                   {"natural", AirMovement::natural},
                                                                                   {"fans", AirMovement::fans},
                                                                                   {"blast", AirMovement::blast}};
    std::set<AirMovement> seen;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::FilmRow out;
        out.air_movement = row.word<AirMovement>("air_movement", words).value_or(AirMovement::still);
        out.film = fields.needed(row, "film_w_per_m2_k", {0.5, 500}, si<engine::FilmCoefficient>);
        if (!seen.insert(out.air_movement).second) row.error("air_movement", "stands twice");
        tables.film.push_back(std::move(out));
    });
    if (seen.size() != words.size()) {
        file.error("rows", fmt::format("{} of {} air movements", seen.size(), words.size()));
    }
}

}  // namespace sillwalk::app
