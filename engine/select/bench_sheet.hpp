#pragma once
/// What the bench needs to build one cart's wheels: parts and counts, the fitting order, the preparation, what is
/// checked by hand. Names and sentences come from the catalogue; keys are sentences of assets/text.

#include "engine/model/catalogue.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace sillwalk::engine {

struct BenchPart {
    std::string name, note;
    int per_wheel = 0;  ///< 0: not every wheel takes one
    int per_cart = 0;
    friend bool operator==(const BenchPart&, const BenchPart&) = default;
};

/// Castors whose function no rig of the candidate's series has.
struct RigGap {
    CastorFunction function = CastorFunction::swivel;
    int per_cart = 0;
    friend bool operator==(const RigGap&, const RigGap&) = default;
};

/// Play of the wheel along its axle.
struct EndPlay {
    Length least, most;
    CitationId citation = 0;
    friend bool operator==(const EndPlay&, const EndPlay&) = default;
};

struct BenchSheet {
    std::string wheel, bearing, rig;  ///< catalogue ids
    std::string wheel_description, bearing_description, rig_description;
    Preparation preparation = Preparation::as_supplied;
    int wheels = 0;                    ///< per cart
    std::vector<BenchPart> parts;      ///< wheel and rigs first, then the bearing's parts in the catalogue's order
    std::vector<RigGap> rig_gaps;      ///< rigs to be found by hand
    std::vector<const char*> prepare;  ///< before fitting, in order
    std::vector<std::string> fitting;  ///< in order, one sentence each
    const char* tool = "";             ///< press alone, or press or mallet
    const char* first_side = "";
    std::optional<EndPlay> end_play;         ///< empty where the table has none for this kind of bearing
    Length room_in_fork{};                   ///< fork width less hub length; negative: it does not go in
    std::vector<const char*> finish;         ///< after fitting, in order: lubricant
    std::vector<const char*> check_by_hand;  ///< each before the wheel leaves the bench
};

/// The bench sheet of a candidate for a cart with one castor of each of the `functions` (at least one). Where a castor
/// has another function than the candidate's rig, it takes the rig of that function which is like it in all that the
/// wheel and the floor meet: make, wheel diameter, fork, axle, plate, height; and that is rated for no less, and for no
/// less cold. Precision bearings are pressed, never driven; the marked side comes first: common practice, no published
/// source.
[[nodiscard]] BenchSheet bench_sheet(const Catalogue& catalogue, const Tables& tables, const Candidate& candidate,
                                     std::span<const CastorFunction> functions);

}  // namespace sillwalk::engine
