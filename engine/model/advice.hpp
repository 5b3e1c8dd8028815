#pragma once
/// The engine's answer: per cart the ranked candidates, what was turned down and why, what is missing, what would help.

#include "engine/model/catalogue.hpp"
#include "engine/model/finding.hpp"
#include "engine/model/read_again.hpp"
#include "engine/model/site_advice.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sillwalk::engine {

struct RankedCandidate {
    Candidate candidate;
    Verdict verdict = Verdict::cannot_tell;
    double worst_use = 0;           ///< quantised to 0.001; the greatest use of its findings
    std::vector<Finding> findings;  ///< one per check, in the order of CheckId
};

struct TurnedDown {
    Candidate candidate;
    Finding first_failing;
};

/// The verdicts of the same checks at one crossing, for the route strip.
struct CrossingOutcome {
    std::uint16_t crossing = 0;  ///< index in the survey
    Outcome outcome = Outcome::not_known;
    std::vector<Finding> findings;  ///< of the checks that look at crossings
};

/// What can be changed so that a failing check holds. Names of the wire: driver_name().
enum class Driver : std::uint8_t {
    payload,
    speed,
    parked_loaded,
    rise,
    lip_bevel,
    gap,
    slot,
    slope,
    stay,
    wash_temperature,
    diameter
};
[[nodiscard]] const char* driver_name(Driver driver);  ///< "payload" … "wash-temperature", "diameter"
enum class Bound : std::uint8_t { at_most, at_least };

/// The first size of the same construction in the catalogue that is at least as large as asked for.
struct NextSize {
    Length diameter;
    Candidate candidate;  ///< holds the check where any of that size does; else as like the judged one as there is
    bool holds = false;   ///< that candidate holds this check
};

/// The mildest value of one driver with which the check holds; 1 % further it no longer does. The reading's tolerance
/// stays as it is, so `value` is what has to be read there.
struct SolvedLimit {
    Driver driver = Driver::payload;
    Bound bound = Bound::at_most;
    ReadingRef reading;            ///< none for the diameter
    Place place;                   ///< of the driver; none where it belongs to the cart or the wheel
    Amount value, present;         ///< present slope of a lip bevel: 0 is a square edge
    std::optional<Amount> beside;  ///< slope: the length that keeps its height; lip bevel: the height it replaces
    bool whole_check = true;       ///< false: the check then holds at `holds_at` and not yet elsewhere
    Place holds_at;
    Verdict then = Verdict::cannot_tell;  ///< of the same candidate with this change alone, over all checks
    bool reachable = true;                ///< false: a diameter that no wheel of the construction has
    std::optional<NextSize> next_size;    ///< diameter only
};

/// What would make one failing check hold.
struct CheckLimits {
    Finding finding;                  ///< the failing one
    bool single_change = false;       ///< some reachable limit alone makes the whole check hold
    bool waits_for_readings = false;  ///< readings are missing, so that no change can show that the whole check holds
    bool one_person = false;          ///< solved for one person, though more push
    std::vector<SolvedLimit> limits;
};

/// The best candidate of one construction, and what would make each of its failing checks hold.
struct FamilyLimits {
    Construction construction = Construction::one_piece_urethane;
    Candidate candidate;
    std::vector<CheckLimits> checks;  ///< in the order of CheckId
};

/// What must stand on the specification with a candidate. Names of the wire and of assets/text: condition_key().
enum class ConditionKind : std::uint8_t {
    payload,            ///< amount: judged payload
    speed,              ///< amount: speed of the rating test
    parked,             ///< amount: longest time parked loaded
    temperature_range,  ///< amounts: least and greatest rated temperature of the parts
    temperature_max,    ///< amount: where no least is rated
    no_blows_below,     ///< amount: the impact floor
    wash_temperature,   ///< amount, place: washing as read
    rinse_within,       ///< amount, place: short contact only
    watch_attack,       ///< place: washing whose agent may attack in time
    no_standing_hot,    ///< amount: loaded parts creep above it
    cross_rolling,      ///< place: crossing
    assess_team,        ///< place: crossing, or none for starting
    degreased,
    h1_lubricant,
    tight,             ///< check, place; amount: use
    figures_differ,    ///< check
    read_again,        ///< check, reading that the answer turns on; reading none: several together
    assumed_readings,  ///< reading that was assumed, and the check that it weighs on most
};
struct Condition {
    ConditionKind kind = ConditionKind::payload;
    CheckId check = CheckId::load;
    Place place;
    ReadingRef reading;
    SmallList<Amount, 2> amounts;
    friend bool operator==(const Condition&, const Condition&) = default;
};
[[nodiscard]] const char* condition_key(ConditionKind kind);  ///< "payload" … "assumed_readings"
/// Whether a condition of this kind speaks of one check.
[[nodiscard]] bool names_check(ConditionKind kind);

struct CartAdvice {
    std::uint16_t cart = 0;
    bool nothing_holds = false;                ///< then `ranked` is empty and `nearest` says how far off it is
    std::vector<RankedCandidate> ranked;       ///< best first; none of them fails a check
    std::optional<RankedCandidate> runner_up;  ///< the best-ranked with another wheel than the first choice
    std::optional<RankedCandidate> nearest;    ///< where nothing holds
    std::vector<TurnedDown> turned_down;  ///< the nearest of each construction, nearest first, as many as asked for
    std::size_t turned_down_total = 0, candidates_total = 0;
    std::optional<RankedCandidate> present;  ///< the wheel that is on the cart now
    std::vector<CrossingOutcome> crossings;  ///< of the headline candidate
    std::vector<CrossingOutcome> crossings_present;
    std::vector<ReadingRef> not_read;  ///< readings that the headline candidate's checks need
    // left empty by assess(); filled by complete_advice() (engine/select/limits.hpp)
    std::optional<std::vector<FamilyLimits>>
        would_hold;  ///< headline's construction first; those without failing checks left out
    std::optional<std::vector<Condition>> conditions;  ///< of the first choice; none where nothing holds
    std::optional<ReadAgain> read_again;               ///< only where it was asked for: engine/select/sampling.hpp
};

struct Advice {
    std::string engine_version;
    SurveyId survey;
    std::int64_t revision = 0;
    std::string catalogue_edition, tables_edition;
    std::vector<CartAdvice> carts;
    std::optional<SiteAdvice> site;  ///< only where it was asked for: engine/select/site_set.hpp
};

}  // namespace sillwalk::engine
