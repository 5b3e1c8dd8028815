#pragma once
/// The invented demo site, and a plain way to give readings other values, for the tests of sampling.

#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "assets/embedded.hpp"
#include "engine/base/random.hpp"
#include "engine/select/assess.hpp"
#include "engine/select/sampling.hpp"
#include "tests/engine/desk/loaded_tables.hpp"

#include <string>
#include <vector>

namespace sillwalk::engine::test {

inline Survey demo_survey(const std::string& file) {
    const app::SurveyRead read = app::read_survey(*assets::embedded("demo/" + file));
    REQUIRE(read.errors.empty());
    return read.survey;
}

/// Every `every`-th wheel of the shipped catalogue.
inline Catalogue thinned_catalogue(std::size_t every) {
    app::LoadedCatalogue loaded = app::load_catalogue();
    REQUIRE(loaded.errors.empty());
    Catalogue catalogue = loaded.catalogue;
    catalogue.wheels.clear();
    for (std::size_t i = 0; i < loaded.catalogue.wheels.size(); i += every) {
        catalogue.wheels.push_back(loaded.catalogue.wheels[i]);
    }
    return catalogue;
}

/// Calls f(reading, may be negative) for every number of the survey that one cart's checks can look at.
template <class F>
void for_each_number(Survey& survey, std::size_t cart_index, F&& f) {
    for (Room& room : survey.rooms) f(room.air, true), f(room.humidity, false);
    for (Crossing& crossing : survey.crossings) {
        f(crossing.rise, false), f(crossing.lip_slope, false), f(crossing.lip_height, false), f(crossing.gap, false);
        f(crossing.slot, false), f(crossing.slope, true), f(crossing.slope_length, false);
    }
    for (Washing& washing : survey.washings) {
        f(washing.strength, false), f(washing.temperature, true), f(washing.contact, false);
        f(washing.frequency, false);
    }
    Cart& cart = survey.carts[cart_index];
    f(cart.tare, false), f(cart.payload, false), f(cart.people, false), f(cart.cg_forward_loaded, true);
    f(cart.cg_forward_empty, true), f(cart.cg_height_loaded, false), f(cart.cg_height_empty, false);
    f(cart.handle_height, false), f(cart.speed, false), f(cart.push_distance, false), f(cart.push_rate, false);
    f(cart.parked_loaded, false), f(cart.trips_per_day, false), f(cart.load_factor, false);
    f(cart.fork_width, false), f(cart.axle_diameter, false), f(cart.overall_height_limit, false);
    for (Stop& stop : cart.route) f(stop.stay, false);
}

inline Headline headline_by_assess(const Survey& survey, const Catalogue& catalogue, std::size_t cart) {
    const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {1, 0, cart}).carts.front();
    Headline headline;
    headline.nothing_holds = advice.nothing_holds;
    if (advice.nothing_holds) return headline;
    headline.candidate = advice.ranked.front().candidate;
    headline.verdict = advice.ranked.front().verdict;
    return headline;
}

/// Usual ranges for what half-read.json lacks (assets/tables/plausible.json, common practice).
inline const PlausibleRange freezer_air{{Field::room_air, 0, 0}, 233.15, 258.15};
inline const PlausibleRange door_rise{{Field::crossing_rise, 1, 0}, 0.0, 0.040};

}  // namespace sillwalk::engine::test
