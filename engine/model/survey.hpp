#pragma once
/// What was read on one visit. Plain values; nothing here computes.
/// Every number is a Reading in SI; an absent reading means "not yet read", never zero.

#include "engine/base/id.hpp"
#include "engine/model/reading.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::engine {

using SurveyId = Id<struct SurveyTag>;
using RoomId = Id<struct RoomTag>;
using CrossingId = Id<struct CrossingTag>;
using CartId = Id<struct CartTag>;
using WashingId = Id<struct WashingTag>;

enum class AirMovement { still, natural, fans, blast };  ///< film coefficients: tables/film.json
enum class Wetness { dry, damp, wet, greasy, frost, ice, melting_ice };
enum class HygieneZone { none, non_food, splash, food };  ///< EN 1672-2 areas; none = no rule asked

struct Room {
    RoomId id;
    std::string name;
    Reading<Temperature> air;  ///< air temperature while carts stand there
    Reading<double> humidity;  ///< relative, 0 to 1
    Choice<AirMovement> air_movement;
    Choice<Wetness> wetness;
    Choice<std::string> floor;  ///< id of a row of tables/floors.json
    Choice<HygieneZone> hygiene;
    Choice<int> cleanroom_class;  ///< ISO 14644-1 class number; 0 = not a cleanroom
    std::string notes;
    friend bool operator==(const Room&, const Room&) = default;
};

enum class CrossingKind { doorway, sill, dock_plate, ramp, drain, joint, rail };

/// Joins two rooms, described in the direction from -> to. A cart may cross it either way.
struct Crossing {
    CrossingId id;
    std::string name;
    RoomId from, to;
    Choice<CrossingKind> kind;
    Reading<Length> rise;          ///< vertical part of a lip, met from either side; measured 0 = none
    Reading<Slope> lip_slope;      ///< bevel of the lip as rise over run; tangent 0 or not read = square edge
    Reading<Length> lip_height;    ///< height of the bevelled part above the vertical part; 0 = none
    Reading<Length> gap;           ///< opening across the travel
    Reading<Length> slot;          ///< width of a slot that runs along the travel
    Reading<Slope> slope;          ///< of the ramp or plate; positive = up from `from` to `to`
    Reading<Length> slope_length;  ///< along the floor
    Choice<Wetness> wetness;       ///< of the run-up; not read = the wetter of the two rooms
    bool heated = false;           ///< heated sill: no ice on it
    std::string notes;
    friend bool operator==(const Crossing&, const Crossing&) = default;
};

/// One cleaning or disinfecting of rooms (and of the carts standing in them).
struct Washing {
    WashingId id;
    std::string name;
    Choice<std::string> agent;         ///< id of an agent of tables/chemicals.json
    Reading<double> strength;          ///< mass share as used, 0 to 1 (200 ppm = 0.0002)
    Reading<Temperature> temperature;  ///< of the liquid or steam at the wheel
    Reading<Duration> contact;         ///< until rinsed
    Reading<Frequency> frequency;      ///< how often
    Choice<bool> rinsed;
    std::vector<RoomId> rooms;
    friend bool operator==(const Washing&, const Washing&) = default;
};

enum class CastorFunction { swivel, rigid, total_lock };
struct CastorPosition {
    Length forward;  ///< from the rear axle, positive towards the leading end
    Length across;   ///< from the centre line, positive to the left
    CastorFunction function = CastorFunction::swivel;
    friend bool operator==(const CastorPosition&, const CastorPosition&) = default;
};

enum class MovedBy { hand, tug };
enum class FloorSharing { all, all_but_one, diagonal };  ///< how many castors carry: see wheel_load
enum class StaticAsk { none, antistatic, conductive };
enum class DamageKind {
    flat_spot,
    tread_off_core,
    shattered_rim,
    chunks,
    rust,
    seized_bearing,
    wrapped_thread,
    floor_marks
};
struct Damage {
    DamageKind kind = DamageKind::flat_spot;
    Reading<Length> size;  ///< depth or extent, where it was measured
    std::string note;
    friend bool operator==(const Damage&, const Damage&) = default;
};

/// One stay of the cart: the room, how long, and which crossing it leaves by.
struct Stop {
    RoomId room;
    Reading<Duration> stay;
    bool loaded = true;                   ///< on this stay and on the crossing that follows
    std::optional<CrossingId> leaves_by;  ///< on the last stop: the way back to the first, if the route is a loop
    friend bool operator==(const Stop&, const Stop&) = default;
};

struct Cart {
    CartId id;
    std::string name;
    Reading<Mass> tare, payload;
    std::vector<CastorPosition> castors;  ///< all that carry load; usually four
    Choice<FloorSharing> sharing;
    Choice<MovedBy> moved_by;
    Reading<double> people;                               ///< who push it at once
    Reading<Length> length, width;                        ///< of the frame, for the drawing
    Reading<Length> cg_forward_loaded, cg_forward_empty;  ///< from the rear axle
    Reading<Length> cg_height_loaded, cg_height_empty;    ///< above the floor
    Reading<Length> handle_height;
    Reading<Speed> speed;             ///< at the crossings
    Reading<Length> push_distance;    ///< of one push
    Reading<Frequency> push_rate;     ///< pushes per time
    Reading<Duration> parked_loaded;  ///< longest time fully loaded without moving
    Reading<double> trips_per_day;    ///< times the route is walked in a day
    Reading<double> load_factor;      ///< chosen factor on the wheel load; not read = the table decides
    // what the wheel must fit
    Reading<Length> fork_width;  ///< inside
    Reading<Length> axle_diameter;
    Reading<Length> overall_height_limit;  ///< greatest castor height
    Choice<std::string> plate_pattern;     ///< catalogue pattern name; not read = any
    // what is asked
    Choice<StaticAsk> static_ask;
    Choice<bool> non_marking;
    Choice<std::string> present_wheel, present_bearing, present_rig;  ///< catalogue ids
    std::vector<Damage> damage;
    std::vector<Stop> route;
    std::string notes;
    friend bool operator==(const Cart&, const Cart&) = default;
};

struct Survey {
    SurveyId id;
    std::int64_t revision = 0;
    std::string site, customer, complaint, surveyor;
    bool invented = false;     ///< demo data says so
    std::int64_t made_ms = 0;  ///< UTC, milliseconds since 1970; passed in, never read from a clock here
    std::vector<Room> rooms;
    std::vector<Crossing> crossings;
    std::vector<Washing> washings;
    std::vector<Cart> carts;
    std::string notes;
    friend bool operator==(const Survey&, const Survey&) = default;
};

}  // namespace sillwalk::engine
