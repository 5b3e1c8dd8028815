#pragma once
/// What can be offered: wheels, bearings, rigs. Immutable data, invented where it ships with the program.
/// A maker's figure that is not known is absent; the check that needs it then says "not known".

#include "engine/model/tables.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::engine {

using WheelId = Id<struct WheelTag>;
using BearingId = Id<struct BearingTag>;
using RigId = Id<struct RigTag>;

enum class Construction {
    one_piece_urethane,
    urethane_on_polyolefin,
    urethane_on_iron,
    nylon,
    polyolefin,
    phenolic,
    solid_rubber,
    thermoplastic_rubber,
    stainless
};
struct Hardness {
    HardnessScale scale = HardnessScale::shore_a;
    double value = 0;
    friend bool operator==(const Hardness&, const Hardness&) = default;
};
/// Features that decide how well a wheel can be cleaned; all judged by eye.
struct HygieneFeatures {
    bool open_hub = false, spoked = false, visible_tread_joint = false, thread_guard = false;
    friend bool operator==(const HygieneFeatures&, const HygieneFeatures&) = default;
};

struct Wheel {
    WheelId id;
    std::string description;
    Construction construction = Construction::one_piece_urethane;
    std::string tread_material, core_material;  ///< table ids; equal for a one-piece wheel
    Length diameter, tread_width;
    std::optional<Length> tread_thickness;  ///< bonded and moulded-on treads
    std::optional<Length> crown_radius;     ///< across the tread; absent = flat
    std::optional<Hardness> hardness;
    std::optional<Mass> rated_load;
    std::optional<RatingClass> rating_class;
    std::optional<Speed> rated_speed;  ///< absent = the class's test speed
    std::optional<Temperature> temperature_min, temperature_max;
    std::optional<Temperature> impact_floor;  ///< no blows below this
    std::optional<bool> non_marking;
    std::optional<double> resistance_ohm;
    std::optional<int> cleanroom_class;  ///< cleanest ISO class the maker states
    Length hub_length, hub_bore;
    HygieneFeatures hygiene;
    std::vector<BearingId> bearings;  ///< those that are offered in it
    std::string source;               ///< who says so; "invented" in the shipped catalogue
};

struct SmallPart {
    std::string name;  ///< "spanner bushing"
    int count = 0;     ///< per wheel
    std::string note;
    friend bool operator==(const SmallPart&, const SmallPart&) = default;
};
struct FittingStep {
    std::string text;  ///< one plain sentence
    friend bool operator==(const FittingStep&, const FittingStep&) = default;
};
struct Bearing {
    BearingId id;
    std::string description;
    BearingKind kind = BearingKind::plain_acetal;
    std::string material;  ///< table id of the part that meets the agents
    Length bore;           ///< on the axle or bushing
    Length axle_diameter;  ///< axle it takes with its sleeve or bushing
    Length outer_diameter, length;
    int count = 1;                                       ///< bearings per wheel
    std::optional<Force> dynamic_rating, static_rating;  ///< of one
    std::optional<Temperature> temperature_min, temperature_max;
    bool sealed = false, grease_exposed = false;
    std::string grease;  ///< "none", "H1", "general"
    std::vector<SmallPart> parts;
    std::vector<FittingStep> fitting;
    std::string source;
};

enum class RigFinish { zinc_plated, stainless };
struct Rig {
    RigId id;
    std::string description;
    CastorFunction function = CastorFunction::swivel;
    RigFinish finish = RigFinish::zinc_plated;
    std::string material;   ///< table id
    Length wheel_diameter;  ///< it is made for
    Length fork_width, axle_diameter, overall_height;
    Length swivel_lead;  ///< 0 for a rigid rig
    std::string plate_pattern;
    std::optional<Mass> rated_load;
    std::optional<Temperature> temperature_min;
    bool exposed_threads = false, hollow_back = false;
    std::string source;
};

enum class Preparation { as_supplied, degreased, h1_lubricated };

struct Catalogue {
    std::string name, edition;
    bool invented = false;
    std::vector<Wheel> wheels;      ///< sorted by id
    std::vector<Bearing> bearings;  ///< sorted by id
    std::vector<Rig> rigs;          ///< sorted by id

    [[nodiscard]] const Wheel* wheel(std::string_view id) const;
    [[nodiscard]] const Bearing* bearing(std::string_view id) const;
    [[nodiscard]] const Rig* rig(std::string_view id) const;
};

/// Alike in all that decides how they stand up to agents, rust, cleaning and charge: materials, features that can be
/// cleaned or not, resistance, finish.
[[nodiscard]] bool same_make(const Wheel& a, const Wheel& b);
[[nodiscard]] bool same_make(const Rig& a, const Rig& b);

/// One thing that could be ordered. Indices into the catalogue.
struct Candidate {
    std::uint32_t wheel = 0, bearing = 0, rig = 0;
    Preparation preparation = Preparation::as_supplied;
    friend bool operator==(const Candidate&, const Candidate&) = default;
};
/// "WHEEL+BEARING+RIG+preparation", the last word in ranking ties and the name in JSON.
[[nodiscard]] std::string candidate_key(const Catalogue& catalogue, const Candidate& candidate);

}  // namespace sillwalk::engine
