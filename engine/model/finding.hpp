#pragma once
/// What the engine concludes. Data, not prose: sentences are made from it by engine/select/explain and app/text.
/// No heap: a finding is copied by the ten thousand.

#include "engine/base/small_list.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/survey.hpp"

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::engine {

/// In the order in which they are shown. Names of the wire: check_name().
enum class CheckId : std::uint8_t {
    load,
    parked,
    step,
    gap,
    cold,
    heat,
    bond,
    chemical,
    corrosion,
    hygiene,
    push,
    traction,
    floor,
    bearing,
    tip,
    fit,
    static_charge,
    room
};
inline constexpr std::size_t check_count = 18;
[[nodiscard]] const char* check_name(CheckId check);  ///< "load" … "static", "room"

/// Rising severity for folding is: does_not_apply, holds, tight, not_known, fails.
enum class Outcome : std::uint8_t { does_not_apply, holds, tight, not_known, fails };
[[nodiscard]] const char* outcome_name(Outcome outcome);  ///< "does not apply", "holds", "tight", "not known", "fails"

enum class Verdict : std::uint8_t { fits, fits_with_conditions, cannot_tell, does_not_fit };
[[nodiscard]] const char* verdict_name(Verdict verdict);

/// Names one reading of a survey: which field of which room, crossing, cart or washing.
enum class Field : std::uint8_t {
    none,
    room_air,
    room_humidity,
    room_air_movement,
    room_wetness,
    room_floor,
    room_hygiene,
    room_cleanroom,
    crossing_kind,
    crossing_rise,
    crossing_lip_slope,
    crossing_lip_height,
    crossing_gap,
    crossing_slot,
    crossing_slope,
    crossing_slope_length,
    crossing_wetness,
    washing_agent,
    washing_strength,
    washing_temperature,
    washing_contact,
    washing_frequency,
    washing_rinsed,
    cart_tare,
    cart_payload,
    cart_sharing,
    cart_moved_by,
    cart_people,
    cart_cg_forward_loaded,
    cart_cg_forward_empty,
    cart_cg_height_loaded,
    cart_cg_height_empty,
    cart_handle_height,
    cart_speed,
    cart_push_distance,
    cart_push_rate,
    cart_parked_loaded,
    cart_trips_per_day,
    cart_load_factor,
    cart_fork_width,
    cart_axle_diameter,
    cart_overall_height_limit,
    cart_plate_pattern,
    cart_static_ask,
    cart_non_marking,
    cart_castors,
    cart_route,
    cart_stay,         ///< index = stop number within the cart's route, owner = cart
    cart_damage_size,  ///< no check rests on it; it is kept for the office
};
inline constexpr Field last_field = Field::cart_damage_size;
struct ReadingRef {
    Field field = Field::none;
    std::uint16_t index = 0;  ///< of the room, crossing, washing or cart in the survey
    std::uint16_t stop = 0;   ///< for cart_stay: which stop; for cart_damage_size: which damage of the cart
    friend bool operator==(const ReadingRef&, const ReadingRef&) = default;
    friend auto operator<=>(const ReadingRef&, const ReadingRef&) = default;
};
/// JSON path of the reading in the survey file: "/crossings/4/rise".
[[nodiscard]] std::string reading_path(const ReadingRef& ref);

/// Where on the route the deciding case lies.
enum class PlaceKind : std::uint8_t { none, room, crossing, washing };
struct Place {
    PlaceKind kind = PlaceKind::none;
    std::uint16_t index = 0;  ///< in the survey
    friend bool operator==(const Place&, const Place&) = default;
};

/// What a number is, so that it can be shown in the person's units.
enum class Kind : std::uint8_t {
    number,
    share,
    length,
    mass,
    force,
    speed,
    temperature,
    temperature_change,
    pressure,
    energy,
    impulse,
    power,
    duration,
    distance_km,
    pressure_velocity,
    resistance,
    angle,
    slope,
    level
};
struct Amount {
    double si = 0;
    Kind kind = Kind::number;
    friend bool operator==(const Amount&, const Amount&) = default;
};

/// One sentence template of assets/text each. statement_key() gives "load.rating" and so on.
enum class Statement : std::uint8_t {
    none,
    load_rating,
    load_speed_unknown,
    parked_rating,
    parked_flat_spot,
    parked_short,
    step_tested_rise,
    step_no_climb,
    step_bevel,
    step_none,
    gap_sag,
    gap_swallows,
    gap_slot,
    gap_none,
    cold_rated_minimum,
    cold_impact_floor,
    cold_brittle_struck,
    cold_brittle_unstruck,
    cold_warm,
    heat_rated_maximum,
    heat_standing,
    heat_rolling,
    bond_shear,
    bond_temperature,
    bond_chemical,
    bond_one_piece,
    chemical_level,
    corrosion_rusts,
    corrosion_resists,
    corrosion_dry,
    hygiene_crevice,
    hygiene_clean,
    hygiene_no_rule,
    push_start,
    push_sustain,
    push_crossing_rest,
    push_crossing_rolling,
    push_ramp,
    push_hold_back,
    push_team,
    push_tugged,
    push_jams,
    traction_start,
    traction_crossing,
    traction_crossing_rolling,
    traction_ramp,
    traction_none,
    floor_pressure,
    bearing_life,
    bearing_static,
    bearing_pv,
    bearing_temperature,
    tip_stop,
    tip_slope,
    fit_width,
    fit_height,
    fit_axle,
    fit_bore,
    fit_hub,
    fit_plate,
    fit_diameter,
    fit_ok,
    static_resistance,
    static_not_asked,
    room_cleanroom,
    room_marking,
    room_noise,
    room_ok,
};
[[nodiscard]] const char* statement_key(Statement statement);

enum class Assumption : std::uint8_t {
    reading_assumed,
    reading_by_eye,
    load_factor_from_table,
    load_factor_hole,
    film_coefficient,
    cold_factor,
    body_mass,
    friction_from_table,
    rolling_arm_from_table,
    solid_disc,
    lumped_core,
    dry_nylon,
    ester_limits,
    creep_estimate,
    modulus_band,
    crossing_both_ways,
    cg_central,
    wetness_of_room,
    rigid_pair_share,
    free_fall_careful,
    bearing_friction_from_table,
    memory_rating,
    practice_figure,
};
[[nodiscard]] const char* assumption_key(Assumption assumption);

inline constexpr double no_limit = std::numeric_limits<double>::max();

struct Finding {
    CheckId check = CheckId::load;
    Outcome outcome = Outcome::not_known;
    Statement statement = Statement::none;
    Place place;
    Amount demand, capacity;  ///< what is asked, what is offered; meaningless where nothing applies or is known
    double use = 0;           ///< demand/capacity, or the check's own scale to 1; only where has_use
    bool has_use = false;
    bool turns_on = false;  ///< the outcome changes inside the readings' tolerances
    Outcome outcome_nominal = Outcome::not_known;
    ReadingRef turns_on_reading;       ///< the one that alone changes it, where one does
    bool conflict = false;             ///< published figures differ; both are in `numbers`, the careful one decides
    bool needs_rolling = false;        ///< condition: cross it rolling, never start on it
    bool needs_team = false;           ///< condition: assess the team lift on site
    std::array<Amount, 10> numbers{};  ///< arguments of the statement, in its order
    std::uint8_t number_count = 0;
    const char* formula = "";                    ///< id of a FormulaRow; static storage
    SmallList<ReadingRef, 32> drivers, missing;  ///< shown findings name the readings of their own place first
    SmallList<Assumption, 12> assumptions;
    SmallList<CitationId, 12> citations;

    friend bool operator==(const Finding&, const Finding&) = default;
};

}  // namespace sillwalk::engine
