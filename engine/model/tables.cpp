#include "engine/model/tables.hpp"

#include <algorithm>

namespace sillwalk::engine {

namespace {

/// Rows are sorted by id.
template <class Row>
const Row* by_id(const std::vector<Row>& rows, std::string_view id) {
    const auto found = std::lower_bound(rows.begin(), rows.end(), id,
                                        [](const Row& row, std::string_view key) { return row.id < key; });
    return found != rows.end() && found->id == id ? &*found : nullptr;
}

template <class Row, class Predicate>
const Row* first_where(const std::vector<Row>& rows, Predicate predicate) {
    const auto found = std::find_if(rows.begin(), rows.end(), predicate);
    return found != rows.end() ? &*found : nullptr;
}

}  // namespace

const Material* Tables::material(std::string_view id) const {
    return by_id(materials, id);
}

const Floor* Tables::floor(std::string_view id) const {
    return by_id(floors, id);
}

const FormulaRow* Tables::formula(std::string_view id) const {
    return by_id(formulas, id);
}

const RatingClassRow* Tables::rating(RatingClass rating_class) const {
    return first_where(rating_classes, [=](const RatingClassRow& row) { return row.rating_class == rating_class; });
}

const BearingRow* Tables::bearing(BearingKind kind) const {
    return first_where(bearings, [=](const BearingRow& row) { return row.kind == kind; });
}

const FilmRow* Tables::film_for(AirMovement movement) const {
    return first_where(film, [=](const FilmRow& row) { return row.air_movement == movement; });
}

const PushEquation* Tables::push_equation(PushAction action, PushPhase phase, Sex sex) const {
    return first_where(people.equations, [=](const PushEquation& equation) {
        return equation.action == action && equation.phase == phase && equation.sex == sex;
    });
}

std::optional<std::size_t> Tables::chemical_column(std::string_view material) const {
    const auto found = std::find(chemicals.materials.begin(), chemicals.materials.end(), material);
    if (found == chemicals.materials.end()) return std::nullopt;
    return static_cast<std::size_t>(found - chemicals.materials.begin());
}

}  // namespace sillwalk::engine
