#pragma once
/// The engine's answer: per cart the ranked candidates, what was turned down and why, what is missing, what would help.

#include <optional>
#include <string>
#include <vector>

#include "engine/model/catalogue.hpp"
#include "engine/model/finding.hpp"

namespace sillwalk::engine {

struct RankedCandidate {
    Candidate candidate;
    Verdict verdict = Verdict::cannot_tell;
    double worst_use = 0;             ///< quantised to 0.001; the greatest use of its findings
    std::vector<Finding> findings;    ///< one per check, in the order of CheckId
};

struct TurnedDown {
    Candidate candidate;
    Finding first_failing;
};

/// The verdicts of the same checks at one crossing, for the route strip.
struct CrossingOutcome {
    std::uint16_t crossing = 0;       ///< index in the survey
    Outcome outcome = Outcome::not_known;
    std::vector<Finding> findings;    ///< of the checks that look at crossings
};

struct CartAdvice {
    std::uint16_t cart = 0;
    bool nothing_holds = false;       ///< then `ranked` is empty and `nearest` says how far off it is
    std::vector<RankedCandidate> ranked;      ///< best first; none of them fails a check
    std::optional<RankedCandidate> nearest;   ///< where nothing holds
    std::vector<TurnedDown> turned_down;      ///< best first, at most as many as asked for
    std::size_t turned_down_total = 0, candidates_total = 0;
    std::optional<RankedCandidate> present;   ///< the wheel that is on the cart now
    std::vector<CrossingOutcome> crossings;   ///< of the headline candidate
    std::vector<CrossingOutcome> crossings_present;
    std::vector<ReadingRef> not_read;         ///< readings that the headline candidate's checks need
};

struct Advice {
    std::string engine_version;
    SurveyId survey;
    std::int64_t revision = 0;
    std::string catalogue_edition, tables_edition;
    std::vector<CartAdvice> carts;
};

}  // namespace sillwalk::engine
