#pragma once
/// The tables of published and practice figures, already checked. Loaded from assets/tables by app/data; read-only
/// after. Rows are sorted by id. Every figure carries a citation.

#include "engine/base/units.hpp"
#include "engine/model/citation.hpp"
#include "engine/model/survey.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::engine {

enum class MaterialFamily {
    urethane,
    polyolefin,
    nylon,
    acetal,
    phenolic,
    rubber,
    thermoplastic_rubber,
    steel,
    iron,
    stainless,
    other
};
enum class SoftSegment { unknown, ether, ester };
enum class HardnessScale { shore_a, shore_d };

struct Material {
    std::string id, name;
    MaterialFamily family = MaterialFamily::other;
    std::string chemical_column;  ///< id in Chemicals::materials; empty = not rated
    std::optional<Figure<Density>> density;
    std::optional<Figure<Conductivity>> conductivity;
    std::optional<Figure<SpecificHeat>> specific_heat;
    std::optional<Figure<Pressure>> modulus;  ///< small strain, 23 C
    std::optional<Figure<double>> poisson;
    std::optional<Figure<double>> tan_delta;  ///< 30 to 70 C, walking speed
    std::optional<Figure<double>> creep_per_decade, set_share;
    // Limits in use: the margins of Practice::brittle_margin_… are already inside; do not add them again.
    std::optional<Figure<Temperature>> brittle_struck;    ///< brittle below when notched or struck
    std::optional<Figure<Temperature>> brittle_unstruck;  ///< brittle below even unstruck
    std::optional<Figure<Temperature>> brittle_point;     ///< as tested, before any margin
    std::optional<Figure<Temperature>> glass_transition;
    std::optional<Figure<Temperature>> service_low, service_high;
    std::optional<Figure<Temperature>> softening;        ///< Vicat
    std::optional<Figure<Temperature>> hot_water_max;    ///< standing in water; short washes may be hotter
    std::optional<Figure<double>> expansion_per_kelvin;  ///< linear, 1/K
    SoftSegment soft_segment = SoftSegment::unknown;
    std::string cold_note;     ///< one or two sentences, shown behind the finding
    std::string water_note{};  ///< hydrolysis and swelling; may be empty
};

enum class ChemicalLevel { suited = 1, watch = 2, short_contact = 3, unfit = 4 };
struct ChemicalReading {  ///< what one source says, in its own scale
    std::string source, their_value, their_scale;
    std::string note;
    std::string strength_text{}, temperature_text{};  ///< what the source tested, as it says it
    ChemicalLevel level = ChemicalLevel::unfit;       ///< its value on our scale
    std::string fit{};  ///< "direct", "near", "stronger", "milder", "class": how near its test is to the row
};
struct ChemicalRating {
    ChemicalLevel level = ChemicalLevel::unfit;
    std::string status;  ///< "read", "two sources", "inferred", "memory" …
    std::string decided_by;
    std::string disagreement;  ///< empty where sources agree
    std::string note;
    std::vector<ChemicalReading> readings;
    CitationId citation = 0;
    std::string evidence{};  ///< "A" measured, textbook or test; "B" compiled; empty where no reading decides
};
struct ChemicalRow {    ///< one agent at one strength and temperature
    std::string agent;  ///< "hydrogen-peroxide"; several rows share it at rising strengths
    std::string id;     ///< unique row id
    std::string name, strength_text;
    std::optional<double> strength;  ///< mass share up to which the row holds; empty = any
    Temperature temperature_max;
    std::vector<std::optional<ChemicalRating>> ratings;  ///< by column, as Chemicals::materials
    std::string cas{};                                   ///< registry number; empty for mixtures
};
struct Chemicals {
    std::vector<std::string> materials;  ///< column ids, kebab-case
    std::vector<ChemicalRow> rows;
};

struct Floor {
    std::string id, name;
    std::optional<Figure<Pressure>> contact_limit;  ///< peak pressure it is rated for
    std::optional<Figure<Pressure>> modulus;
    std::string rolling_surface;  ///< key of RollingRow::surface
    bool textured = false;
};
struct FrictionRow {  ///< shoe on floor
    Wetness wetness = Wetness::dry;
    bool textured = false;
    Figure<double> friction;
};
struct RollingRow {
    MaterialFamily tread = MaterialFamily::other;
    std::string surface;
    Figure<Length> lever_arm;  ///< f in F = W f/R
};

enum class BearingKind { plain_acetal, roller, stainless_roller, precision_ball, stainless_precision_ball };
struct BearingRow {  ///< general figures of a bearing kind; an item of the catalogue may be stricter
    BearingKind kind = BearingKind::plain_acetal;
    Figure<double> friction;                           ///< on the bore diameter
    std::optional<Figure<Pressure>> pressure_limit;    ///< plain
    std::optional<Figure<PressureVelocity>> pv_limit;  ///< plain
    std::optional<Figure<Temperature>> temperature_max;
    std::optional<Figure<double>> static_safety;  ///< least s0
    double seal_coefficient = 0;                  ///< c0 of the rolling formula
    CitationId seal_citation = 0;
    std::optional<Figure<Speed>> speed_limit;    ///< plain, sliding speed
    std::optional<Figure<double>> rating_share;  ///< of the load rating of the same bearing in chrome steel
    std::optional<Figure<Length>> end_play;      ///< along the axle once fitted, for the bench
};

struct LoadFactorRow {
    MovedBy moved_by = MovedBy::hand;
    bool over_five_percent = false;  ///< rise above 5 % of the diameter
    Figure<double> factor;           ///< low and high are the published range, value is its upper end
    bool from_hole = false;          ///< the published table lacks this case; the nearest row stands in
    std::string note{};
};

enum class RatingClass { institutional, industrial_soft, industrial_hard, drum_fixed, furniture };
struct RatingClassRow {
    RatingClass rating_class = RatingClass::institutional;
    std::string name;
    Figure<Speed> test_speed;
    std::optional<Figure<double>> obstacle_share;   ///< of the diameter
    std::optional<Figure<Length>> obstacle_height;  ///< where the test height is fixed
    Figure<double> static_factor;                   ///< conflicting figures beside it
};

/// One of the eight equations of 2021 (people's limits), and its permitted inputs.
enum class PushAction { push, pull };
enum class PushPhase { start, sustain };
enum class Sex { female, male };
struct PushEquation {
    PushAction action = PushAction::push;
    PushPhase phase = PushPhase::start;
    Sex sex = Sex::female;
    double reference_kgf = 0;                                          ///< RL
    double height_constant = 0, height_linear = 0, height_square = 0;  ///< VSF = c + V*l + V^2*s, V in m
    double distance_constant = 0, distance_linear = 0, distance_square = 0,
           distance_log = 0;                                      ///< DHSF = c + D*l + D^2*s + ln(D)*g
    double rate_constant = 0, rate_log = 0, rate_log_square = 0;  ///< FSF = c + ln(F)*l + ln(F)^2*s, F per minute
    double variation = 0;                                         ///< CV
    CitationId citation = 0;
};
struct PushRanges {
    std::array<Length, 2> height_female, height_male, distance;
    std::array<Frequency, 2> rate;
    Speed distance_rate_max;             ///< 37 m/min
    Speed caution_female, caution_male;  ///< 10 and 15 m/min
    CitationId citation = 0;
};
struct PushHeightRow {  ///< biomechanical guideline, 80 % or more protected
    Length height;
    Force push, pull;
};
struct PeopleLimits {
    std::vector<PushEquation> equations;
    PushRanges ranges;
    std::vector<PushHeightRow> biomechanical;  ///< rising heights
    CitationId biomechanical_citation = 0;
    Figure<Force> upper;                                                                     ///< 225 N
    Figure<Force> guide_start_female, guide_start_male, guide_keep_female, guide_keep_male;  ///< HSE
    Figure<Mass> body_mass;                   ///< design person, traction
    Figure<double> traction_reserve;          ///< 0.7
    Figure<double> cold_chill, cold_freezer;  ///< judgement, on psychophysical limits
    Figure<double> cold_pull_gloves;          ///< judgement, pulling in thick gloves, on top of the cold factor
    Figure<double> design_share;              ///< of women, 0.75
};

struct FilmRow {
    AirMovement air_movement = AirMovement::natural;
    Figure<FilmCoefficient> film;
};

/// The factors of a bonded tread at one Poisson's ratio: points of a monotone curve of their logarithms over a/t.
struct LayerCurves {
    double poisson = 0;
    std::vector<double> contact_over_thickness;
    std::vector<double> log_load, load_slopes, log_pressure, pressure_slopes;
};

/// Bonded tread of finite thickness: W/L = (pi E* a^2/4R) f(a/t), p_max = (E* a/2R) g(a/t).
struct LayerTable {
    std::vector<double> contact_over_thickness;
    struct Row {
        double poisson = 0;
        std::vector<double> load_factor, pressure_factor;
    };
    std::vector<Row> rows;              ///< falling Poisson's ratio
    std::vector<LayerCurves> prepared;  ///< made once for the materials' ratios; others are made when asked for
    CitationId citation = 0;
};

/// Rules of practice and judgement that the checks use; one figure each, each with its citation.
struct Practice {
    Figure<double> holds_below;                   ///< 0.85
    Figure<TemperatureChange> temperature_tight;  ///< 5 K
    Figure<double> cold_use_per_kelvin;           ///< 0.03
    Figure<Duration> parked_limit;                ///< 14 d
    Figure<double> parked_capacity_share;         ///< 0.8
    Figure<double> flat_spot_share;               ///< 3 % of diameter
    Figure<Slope> bevel_counts_as_slope;          ///< 1:2
    Figure<Speed> walking_speed;  ///< where the cart's speed is not read: never used silently, see checks
    Figure<Temperature> urethane_rated_min, urethane_impact_floor, urethane_rated_max;
    Figure<TemperatureChange> brittle_margin_struck, brittle_margin_unstruck;
    Figure<double> creep_flat_hot;       ///< share of a deformation left after standing loaded and hot
    Figure<Temperature> creep_critical;  ///< loaded parts creep when they stand hotter
    Figure<Pressure> bond_shear_limit;   ///< at room temperature
    Figure<double> bond_retention_70, bond_retention_100;  ///< share of the bond kept at 70 and 100 C
    Figure<double> life_wet_factor, life_splash_factor;
    Figure<double> conductive_ohm, conductive_ohm_other, antistatic_low_ohm, antistatic_high_ohm;
    Figure<double> bridge_reserve;   ///< tread wider than a slot by at least this factor
    Figure<Duration> short_contact;  ///< longest contact before rinsing where only short contact is allowed
    Figure<double> rust_damp_use,
        rust_wet_use;                  ///< unprotected steel on a damp and on a wet route, on the common scale
    Figure<Duration> bearing_service;  ///< time in use that a bearing is asked to last
    Figure<double> quiet_hardness;     ///< Shore A above which a tread counts as hard and louder
};

/// How well a feature can be cleaned, 0 (a niche) to 3 (closed and smooth), and the score that each area asks.
enum class HygieneFeature {
    open_hub,
    spoked_core,
    visible_tread_joint,
    thread_guard,
    exposed_threads,
    hollow_back,
    exposed_grease,
    exposed_h1_grease,
    open_bearing_grease,
    closed
};
struct HygieneRow {
    HygieneFeature feature = HygieneFeature::closed;
    Figure<double> score;
};
struct HygieneZoneRow {
    HygieneZone zone = HygieneZone::non_food;
    Figure<double> asked;
};

/// A formula as a person reads it, for the reason behind a finding.
struct FormulaRow {
    std::string id;     ///< "step-at-axle"
    std::string text;   ///< "F = W √(2Rh − h²)/(R − h)"
    std::string range;  ///< range of validity in words
    CitationId citation = 0;
};

struct Tables {
    std::string edition;
    std::vector<Source> sources;
    std::vector<Citation> citations;  ///< index 0 is "no source given"
    std::vector<Material> materials;
    Chemicals chemicals;
    std::vector<Floor> floors;
    std::vector<FrictionRow> friction;
    std::vector<RollingRow> rolling;
    std::vector<BearingRow> bearings;
    std::vector<LoadFactorRow> load_factors;
    std::vector<RatingClassRow> rating_classes;
    PeopleLimits people;
    std::vector<FilmRow> film;
    LayerTable layer;
    Practice practice;
    std::vector<HygieneRow> hygiene;
    std::vector<HygieneZoneRow> hygiene_zones;
    std::vector<FormulaRow> formulas;  ///< sorted by id

    [[nodiscard]] const Material* material(std::string_view id) const;
    [[nodiscard]] const Floor* floor(std::string_view id) const;
    [[nodiscard]] const FormulaRow* formula(std::string_view id) const;
    [[nodiscard]] const RatingClassRow* rating(RatingClass rating_class) const;
    [[nodiscard]] const BearingRow* bearing(BearingKind kind) const;
    [[nodiscard]] const FilmRow* film_for(AirMovement movement) const;
    [[nodiscard]] const PushEquation* push_equation(PushAction action, PushPhase phase, Sex sex) const;
    [[nodiscard]] std::optional<std::size_t> chemical_column(std::string_view material) const;
};

}  // namespace sillwalk::engine
