#pragma once
/// Small demands and tables for the walk's tests, built by hand.

#include "engine/walk/walk.hpp"

#include <string>
#include <utility>
#include <vector>

namespace sillwalk::test {

using namespace engine;

inline Figure<FilmCoefficient> film_figure(double value, double high) {
    Figure<FilmCoefficient> figure;
    figure.value = value * watt_per_square_metre_kelvin;
    figure.high = high * watt_per_square_metre_kelvin;
    return figure;
}

inline Material heat_material(std::string id, MaterialFamily family, double k, double density, double heat) {
    Material material;
    material.id = std::move(id);
    material.family = family;
    material.conductivity = Figure<Conductivity>{k * watt_per_metre_kelvin, {}, {}, 0, {}};
    material.density = Figure<Density>{density * kilogram_per_cubic_metre, {}, {}, 0, {}};
    material.specific_heat = Figure<SpecificHeat>{heat * joule_per_kilogram_kelvin, {}, {}, 0, {}};
    return material;
}

/// Film coefficients: still air 9.37, wind 34 W/m2K ([ashrae-refrigeration-2014], chapter 24, second-hand).
inline Tables walk_tables() {
    Tables tables;
    tables.materials = {heat_material("cast-iron", MaterialFamily::iron, 50, 7200, 490),
                        heat_material("nylon", MaterialFamily::nylon, 0.25, 1140, 1670),
                        heat_material("urethane", MaterialFamily::urethane, 0.21, 1150, 1800)};
    tables.film = {{AirMovement::still, film_figure(7, 9.37)},
                   {AirMovement::natural, film_figure(9.37, 9.4)},
                   {AirMovement::fans, film_figure(19, 27.5)},
                   {AirMovement::blast, film_figure(34, 34)}};
    return tables;
}

template <class T, class Tolerance>
Input<T> ranged(T value, Tolerance half, ReadingRef ref = {}) {
    return {true, value - half, value, value + half, ref, Known::measured};
}

struct Room {
    double air_C = 0, minutes = 0;
    AirMovement movement = AirMovement::natural;
    double air_tolerance_K = 0, minutes_tolerance = 0;
};

/// A loop through the rooms with a crossing after each stop.
inline CartDemand walk_through(const std::vector<Room>& rooms) {
    CartDemand demand;
    for (std::size_t k = 0; k < rooms.size(); ++k) {
        const auto index = static_cast<std::uint16_t>(k);
        StopDemand stop;
        stop.room = index;
        stop.air = ranged(celsius(rooms[k].air_C), rooms[k].air_tolerance_K * kelvin_step, {Field::room_air, index, 0});
        stop.stay =
            ranged(rooms[k].minutes * minute, rooms[k].minutes_tolerance * minute, {Field::cart_stay, 0, index});
        stop.air_movement = {true, rooms[k].movement, {Field::room_air_movement, index, 0}, Known::measured};
        demand.stops.push_back(stop);
        CrossingDemand crossing;
        crossing.crossing = index;
        crossing.after_stop = index;
        demand.crossings.push_back(crossing);
    }
    return demand;
}

inline WalkKey one_piece(const Tables& tables, double diameter_mm, double width_mm) {
    const Material* urethane = tables.material("urethane");
    return {diameter_mm / 1e3, width_mm / 1e3, 0, 0, urethane, urethane};
}

inline double difference_K(Temperature a, Temperature b) {
    return abs(a - b).in(kelvin_step);
}

}  // namespace sillwalk::test
