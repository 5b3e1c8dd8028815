/// Bearings, load factors, rating classes, the contact of bonded treads, and the formulas as a person reads them.

#include "app/data/table_loaders.hpp"

#include <fmt/format.h>

#include <set>

namespace sillwalk::app {

using engine::BearingKind;
using engine::MovedBy;
using engine::RatingClass;

void load_bearings(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    const std::initializer_list<std::pair<std::string_view, BearingKind>> words = {
        {"plain_acetal", BearingKind::plain_acetal},
        {"roller", BearingKind::roller},
        {"stainless_roller", BearingKind::stainless_roller},
        {"precision_ball", BearingKind::precision_ball},
        {"stainless_precision_ball", BearingKind::stainless_precision_ball}};
    std::set<BearingKind> seen;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        const Need may = Need::optional;
        engine::BearingRow out;
        out.kind = row.word<BearingKind>("kind", words).value_or(BearingKind::plain_acetal);
        out.friction = fields.needed(row, "friction", {1e-4, 1}, plain);
        out.pressure_limit = fields.figure(row, "pressure_limit_pa", {1e5, 1e9}, si<engine::Pressure>, may);
        out.pv_limit = fields.figure(row, "pv_limit_pa_m_per_s", {1e3, 1e8}, si<engine::PressureVelocity>, may);
        out.speed_limit = fields.figure(row, "speed_limit_m_per_s", {0.01, 50}, si<engine::Speed>, may);
        out.temperature_max = fields.figure(row, "temperature_max_c", {20, 400}, degrees_celsius, may);
        out.static_safety = fields.figure(row, "static_safety", {0.5, 10}, plain, may);
        out.rating_share = fields.figure(row, "rating_share", {0.1, 1}, plain, may);
        out.end_play = fields.figure(row, "end_play_m", {0, 0.01}, si<engine::Length>, may);
        const auto seal = fields.needed(row, "seal_coefficient", {0, 0.1}, plain);
        out.seal_coefficient = seal.value;
        out.seal_citation = seal.citation;
        if (!seen.insert(out.kind).second) row.error("kind", "stands twice");
        tables.bearings.push_back(std::move(out));
    });
    if (seen.size() != words.size()) {
        file.error("rows", fmt::format("{} of {} kinds of bearing", seen.size(), words.size()));
    }
}

void load_load_factors(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    std::set<std::pair<MovedBy, bool>> seen;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::LoadFactorRow out;
        out.moved_by =
            row.word<MovedBy>("moved_by", {{"hand", MovedBy::hand}, {"tug", MovedBy::tug}}).value_or(MovedBy::hand);
        out.over_five_percent = row.boolean("over_five_percent").value_or(false);
        out.from_hole = row.boolean("from_hole").value_or(false);
        out.note = row.text("note", Need::optional).value_or("");
        out.factor = fields.needed(row, "factor", {1, 10}, plain);
        if (!seen.insert({out.moved_by, out.over_five_percent}).second) row.error("moved_by", "this case stands twice");
        tables.load_factors.push_back(std::move(out));
    });
    if (seen.size() != 4) file.error("rows", fmt::format("{} of 4 cases", seen.size()));
}

void load_rating_classes(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    const std::initializer_list<std::pair<std::string_view, RatingClass>> words = {
        {"institutional", RatingClass::institutional},
        {"industrial_soft", RatingClass::industrial_soft},
        {"industrial_hard", RatingClass::industrial_hard},
        {"drum_fixed", RatingClass::drum_fixed},
        {"furniture", RatingClass::furniture}};
    std::set<RatingClass> seen;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::RatingClassRow out;
        out.rating_class = row.word<RatingClass>("rating_class", words).value_or(RatingClass::institutional);
        out.name = row.text("name").value_or("");
        out.test_speed = fields.needed(row, "test_speed_m_per_s", {0.05, 20}, si<engine::Speed>);
        out.obstacle_share = fields.figure(row, "obstacle_share", {0.001, 0.5}, plain, Need::optional);
        out.obstacle_height =
            fields.figure(row, "obstacle_height_m", {0.0005, 0.1}, si<engine::Length>, Need::optional);
        out.static_factor = fields.needed(row, "static_factor", {1, 10}, plain);
        if (out.obstacle_share.has_value() == out.obstacle_height.has_value()) {
            row.error("obstacle_share", "needs either obstacle_share or obstacle_height_m");
        }
        if (!seen.insert(out.rating_class).second) row.error("rating_class", "stands twice");
        tables.rating_classes.push_back(std::move(out));
    });
    if (seen.size() != words.size()) {
        file.error("rows", fmt::format("{} of {} rating classes", seen.size(), words.size()));
    }
}

namespace {

bool rises(const std::vector<double>& numbers) {
    for (std::size_t i = 1; i < numbers.size(); ++i) {
        if (numbers[i] <= numbers[i - 1]) return false;
    }
    return !numbers.empty();
}

std::vector<double> read_curve(JsonObject& row, std::string_view key, std::size_t size) {
    std::vector<double> curve = row.numbers(key, 1, 1000);
    if (curve.size() != size) row.error(key, fmt::format("needs {} numbers, has {}", size, curve.size()));
    if (!rises(curve)) row.error(key, "does not rise");
    return curve;
}

}  // namespace

void load_layer(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    engine::LayerTable& layer = tables.layer;
    layer.contact_over_thickness = file.numbers("contact_over_thickness", 0.01, 100);
    if (!rises(layer.contact_over_thickness)) file.error("contact_over_thickness", "does not rise");
    layer.citation = fields.citation(file);
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::LayerTable::Row out;
        out.poisson = row.number("poisson", 0.1, 0.5).value_or(0.0);
        out.load_factor = read_curve(row, "load_factor", layer.contact_over_thickness.size());
        out.pressure_factor = read_curve(row, "pressure_factor", layer.contact_over_thickness.size());
        if (!layer.rows.empty() && out.poisson >= layer.rows.back().poisson) {
            row.error("poisson", "does not fall below the row before");
        }
        layer.rows.push_back(std::move(out));
    });
    if (layer.rows.empty()) file.error("rows", "no row");
}

void load_formulas(JsonObject& file, TableFields& fields, engine::Tables& tables) {
    std::string before;
    each_row(file, "rows", fields.errors(), [&](JsonObject& row, std::size_t) {
        engine::FormulaRow out;
        out.id = rising_id(row, "id", before);
        out.text = row.text("text").value_or("");
        out.range = row.text("range").value_or("");
        out.citation = fields.citation(row);
        tables.formulas.push_back(std::move(out));
    });
}

}  // namespace sillwalk::app
