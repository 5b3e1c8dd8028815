#pragma once
/// What one cart asks of a wheel on its route: the survey's readings resolved to ranges, in travel order.
/// Built once per cart; copied to try another value.

#include "engine/model/finding.hpp"
#include "engine/model/survey.hpp"
#include "engine/model/tables.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace sillwalk::engine {

/// A reading's range. Where `given` is false there is no value and `ref` names what is missing.
template <class T>
struct Input {
    bool given = false;
    T low{}, nominal{}, high{};
    ReadingRef ref;
    Known known = Known::not_yet_read;
};
template <class E>
struct ChoiceInput {
    bool given = false;
    E value{};
    ReadingRef ref;
    Known known = Known::not_yet_read;
};

struct StopDemand {
    std::uint16_t room = 0;  ///< index in the survey
    Input<Temperature> air;
    Input<double> humidity;
    Input<Duration> stay;
    ChoiceInput<AirMovement> air_movement;
    ChoiceInput<Wetness> wetness;
    ChoiceInput<const Floor*> floor;
    ChoiceInput<HygieneZone> hygiene;
    ChoiceInput<int> cleanroom_class;
    bool loaded = true;
};

/// A crossing as this cart meets it: slope counts positive up in the direction of travel.
struct CrossingDemand {
    std::uint16_t crossing = 0;  ///< index in the survey
    std::uint16_t after_stop = 0;
    bool loaded = true;
    bool reversed = false;  ///< travelled from `to` to `from`
    ChoiceInput<CrossingKind> kind;
    Input<Length> rise, lip_height, gap, slot, slope_length;
    Input<Slope> lip_slope, slope;
    ChoiceInput<Wetness> run_up;      ///< the crossing's own, else the wetter of both rooms
    ChoiceInput<const Floor*> floor;  ///< of the room it comes from
    bool heated = false;
};

struct WashingDemand {
    std::uint16_t washing = 0;  ///< index in the survey
    ChoiceInput<std::string> agent;
    Input<double> strength;
    Input<Temperature> temperature;
    Input<Duration> contact;
    Input<Frequency> frequency;
    ChoiceInput<bool> rinsed;
};

struct CartDemand {
    std::uint16_t cart = 0;  ///< index in the survey
    Input<Mass> tare, payload;
    std::vector<CastorPosition> castors;
    ReadingRef castors_ref;
    ChoiceInput<FloorSharing> sharing;
    ChoiceInput<MovedBy> moved_by;
    Input<double> people, load_factor, trips_per_day;
    Input<Length> cg_forward_loaded, cg_forward_empty, cg_height_loaded, cg_height_empty, handle_height, push_distance;
    Input<Speed> speed;
    Input<Frequency> push_rate;
    Input<Duration> parked_loaded;
    Input<Length> fork_width, axle_diameter, overall_height_limit;
    ChoiceInput<std::string> plate_pattern;
    ChoiceInput<StaticAsk> static_ask;
    ChoiceInput<bool> non_marking;
    std::vector<StopDemand> stops;
    std::vector<CrossingDemand> crossings;
    std::vector<WashingDemand> washings;  ///< those of the rooms on the route
};

/// Resolves cart `cart_index`. Unknown ids in the survey are a contract failure: validate() comes first.
[[nodiscard]] CartDemand resolve(const Survey& survey, std::size_t cart_index, const Tables& tables);

/// Calls f(Input<…>&) for every numeric input of the demand.
template <class Demand, class F>
void for_each_input(Demand& d, F&& f) {
    f(d.tare), f(d.payload), f(d.people), f(d.load_factor), f(d.trips_per_day);
    f(d.cg_forward_loaded), f(d.cg_forward_empty), f(d.cg_height_loaded), f(d.cg_height_empty), f(d.handle_height);
    f(d.push_distance), f(d.speed), f(d.push_rate), f(d.parked_loaded);
    f(d.fork_width), f(d.axle_diameter), f(d.overall_height_limit);
    for (auto& s : d.stops) f(s.air), f(s.humidity), f(s.stay);
    for (auto& c : d.crossings) {
        f(c.rise), f(c.lip_height), f(c.gap), f(c.slot), f(c.slope_length), f(c.lip_slope), f(c.slope);
    }
    for (auto& w : d.washings) f(w.strength), f(w.temperature), f(w.contact), f(w.frequency);
}

/// The demand with every range drawn together to its nominal value, except that of `keep` where given.
[[nodiscard]] CartDemand collapse(CartDemand demand, std::optional<ReadingRef> keep = std::nullopt);

}  // namespace sillwalk::engine
