#pragma once
/// One loader per table file. Each fills its part of the tables and adds what is wrong to the errors of `fields`.

#include "app/data/table_fields.hpp"

namespace sillwalk::app {

void load_materials(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_chemicals(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_floors(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_friction(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_rolling(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_film(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_bearings(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_load_factors(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_rating_classes(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_people(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_layer(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_practice(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_hygiene(JsonObject& file, TableFields& fields, engine::Tables& tables);
void load_formulas(JsonObject& file, TableFields& fields, engine::Tables& tables);

/// "urethane" and so on; other and an error where the word is unknown.
[[nodiscard]] engine::MaterialFamily read_family(JsonObject& row, std::string_view key);

}  // namespace sillwalk::app
