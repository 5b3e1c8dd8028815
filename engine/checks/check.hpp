#pragma once
/// The checks (docs/explanation/advice.md). Each is one function: what one cart asks against what one candidate offers,
/// at one end of the readings' ranges. A check never ranks and never writes prose.

#include "engine/checks/demand.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/finding.hpp"
#include "engine/walk/walk.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace sillwalk::engine {

enum class Corner { nominal, worst };

/// Which parts of the candidate a check looks at; the rest may be null while it runs.
/// part_make: of wheel and rig no more than is equal in parts of one make (same_make()).
enum Parts : std::uint8_t { part_wheel = 1, part_bearing = 2, part_rig = 4, part_preparation = 8, part_make = 16 };

struct CastorLoad {
    std::optional<Force> load;
    std::optional<ReadingRef> missing;  ///< one of those that are, where there is no load
};
/// Of a cart's hardest loaded castor, as castor_load() finds them; the same for every candidate.
struct CastorLoads {
    CastorLoad empty, loaded;
};

struct PushEvent;

struct CheckContext {
    const CartDemand* cart = nullptr;
    const Tables* tables = nullptr;
    const Wheel* wheel = nullptr;
    const Bearing* bearing = nullptr;
    const Rig* rig = nullptr;
    Preparation preparation = Preparation::as_supplied;
    // table rows of the candidate's parts, looked up once
    const Material* tread = nullptr;
    const Material* core = nullptr;
    const Material* bearing_material = nullptr;
    const Material* rig_material = nullptr;
    // the walk, and that at the cold ends of the ranges; null where readings or figures are missing, then walk_gap
    // names them. Heat needs no walk: it looks at the hottest air, with the heat of rolling on top, and the hottest
    // wash.
    const Walk* walk_nominal = nullptr;
    const Walk* walk_cold = nullptr;
    const WalkMissing* walk_gap = nullptr;
    Corner corner = Corner::worst;
    std::optional<std::uint16_t> only_crossing;  ///< index into CartDemand::crossings: judge this crossing alone
    /// For scoring: what castor_load() gives for this cart at this corner. A finding made with it has its outcome and
    /// use, and names neither the readings that were used nor assumptions and citations.
    const CastorLoads* castor_loads = nullptr;
    /// For scoring: what gather_push_events() gives for this cart, wheel and bearing at this corner.
    const std::vector<PushEvent>* push_events = nullptr;

    [[nodiscard]] const Walk* cold() const { return corner == Corner::worst ? walk_cold : walk_nominal; }
};

using CheckFunction = Finding (*)(const CheckContext&);
struct CheckEntry {
    CheckId id;
    std::uint8_t parts;  ///< Parts it looks at
    bool uses_walk;
    bool by_crossing;  ///< only_crossing has a meaning for it
    CheckFunction run;
};
/// All checks, in the order in which they are shown.
[[nodiscard]] std::span<const CheckEntry, check_count> all_checks();

/// Runs one check at the worst corner and, where ranges are open, at nominal too, and fills turns_on and
/// outcome_nominal.
[[nodiscard]] Finding run_check(const CheckEntry& check, const CheckContext& context);

/// As run_check(), and looks for the one reading whose range alone changes the outcome: the first driver that does.
/// Walks the route again per reading where the check uses the walk, so it is for what is shown, not for scoring.
[[nodiscard]] Finding run_check_in_detail(const CheckEntry& check, const CheckContext& context);

}  // namespace sillwalk::engine
