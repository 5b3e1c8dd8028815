#pragma once
/// What helps a person to type right: ways of reading with their usual tolerances, and which values are usual or
/// possible for a field. From assets/tables/methods.json and plausible.json; common practice, to be confirmed by the
/// specialist, never a limit of the engine.

#include "engine/base/result.hpp"
#include "engine/model/finding.hpp"
#include "engine/model/reading.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

struct Method {
    int order = 0;                   ///< in which they are offered
    std::string id;                  ///< "tape_inch"; its word is "method.tape_inch"
    std::string name;                ///< kept with the reading: "tape 1/16 in"
    std::vector<std::string> kinds;  ///< quantity names
    std::vector<std::string> units;  ///< unit names it is offered for; empty = all
    engine::Known known = engine::Known::measured;
    double tolerance_si = 0;     ///< half-width
    double tolerance_share = 0;  ///< of the value, where not zero
    double resolution_si = 0;    ///< finer digits than this cannot have been read; 0 = none
};

struct Plausible {
    engine::Field field = engine::Field::none;
    std::vector<std::string>
        name_has;  ///< row for owners whose name holds one of these (small letters); empty = all others
    double typical_low = 0, typical_high = 0;  ///< SI (kelvin, tangent, share, hertz)
    double hard_low = 0, hard_high = 0;        ///< outside is impossible
    bool zero_is_typical = false;              ///< a measured "none"
};

struct EntryTables {
    std::vector<Method> methods;
    std::vector<Plausible> plausible;  ///< the first row that fits decides
};

/// All errors with file and JSON path; the tables are usable only where there are none.
[[nodiscard]] EntryTables load_entry_tables(std::vector<engine::Error>& errors);
[[nodiscard]] EntryTables read_entry_tables(std::string_view methods, std::string_view plausible,
                                            std::vector<engine::Error>& errors);

}  // namespace sillwalk::app
