#pragma once
/// How sure the first choice is, and which readings carry the doubt.

#include "engine/model/catalogue.hpp"
#include "engine/model/finding.hpp"

#include <cstdint>
#include <vector>

namespace sillwalk::engine {

/// What the advice for a cart comes down to.
struct Headline {
    bool nothing_holds = false;  ///< then candidate and verdict mean nothing
    Candidate candidate;
    Verdict verdict = Verdict::does_not_fit;
    friend bool operator==(const Headline&, const Headline&) = default;
};

/// One reading that was sampled. Its values are in SI: kelvin, tangent, share, hertz.
struct ReadingDoubt {
    ReadingRef reading;
    bool missing = false;            ///< not yet read: sampled over its plausible range
    double low_si = 0, high_si = 0;  ///< the range it was sampled in
    double share = 0;  ///< of the doubt which candidate comes first, 0 to 1; 0 below ReadAgain::least_share
};

struct OtherChoice {
    Candidate candidate;
    double share = 0;  ///< of the draws
};

/// A stretch of a missing reading's plausible range over which the advice stays the same.
struct AnswerRange {
    double from_si = 0, to_si = 0;
    Headline answer;
    bool differs = false;  ///< from the advice as it stands; see missing_answers()
};
struct MissingReading {
    ReadingRef reading;
    double low_si = 0, high_si = 0;   ///< the plausible range
    std::vector<AnswerRange> ranges;  ///< in order, without gaps
};

struct ReadAgain {
    std::size_t draws = 0;
    std::uint64_t seed = 0;
    double stays_first = 0;     ///< share of the draws in which the first choice stays first, or still nothing holds
    double standard_error = 0;  ///< of stays_first
    double holds = 0;           ///< share in which the first choice fails no check, first or not
    double nothing_holds = 0;   ///< share in which no candidate holds
    std::vector<OtherChoice> others;      ///< that come first instead, most often first
    std::vector<ReadingDoubt> readings;   ///< those to take again first, then the ones without a share
    double least_share = 0;               ///< smaller shares cannot be told from chance with so many draws
    double together = 0;                  ///< of the doubt: what readings do only together with others
    std::vector<MissingReading> missing;  ///< in the order of `readings`
    std::vector<ReadingRef> not_sampled;  ///< missing, but without a plausible range: a choice, for one
};

}  // namespace sillwalk::engine
