#pragma once
/// Scores the candidates of a catalogue for one cart. A check runs once per set of parts that it looks at; a walk is
/// walked once per kind of wheel body, and only when a candidate needs it.

#include "engine/checks/push_events.hpp"
#include "engine/select/rank.hpp"
#include "engine/select/score_catalogue.hpp"

#include <optional>
#include <vector>

namespace sillwalk::engine {

/// The checks in the order in which they are run: cheap ones that look at few parts first, those that need a walk last.
enum class Stage : std::uint8_t { wheel_and_rig, wheel_with_rig, wheel_with_bearing, whole, walk, complete };

struct ScoredCandidate {
    Candidate candidate;
    std::uint16_t bearing_slot = 0, rig_slot = 0;  ///< within the wheel's own lists
    Stage next = Stage::wheel_and_rig;             ///< first stage that is not in the score yet
    Score score;
};

class CartScore {
public:
    /// Both must outlive the object.
    CartScore(CandidateSpace& space, const CartDemand& demand);
    /// As a new object for another demand, or for the same after its readings were set anew. Keeps its memory: filling
    /// that with nothing takes longer than a draw of a sampling.
    void begin_again(const CartDemand& demand);

    /// All candidates whose rig has a function of the cart's castors, each scored until it fails or is complete.
    [[nodiscard]] std::vector<ScoredCandidate> score_all();
    /// Adds the candidate's next stage.
    void advance(ScoredCandidate& scored);

    enum class Detail { outcome_only, both_corners, which_reading };
    /// One finding per check, in the order of CheckId.
    [[nodiscard]] std::vector<Finding> findings(const Candidate& candidate, Detail detail);
    /// The candidate's context with this cart and its walks.
    [[nodiscard]] CheckContext context_of(const Candidate& candidate);

private:
    struct Walks {
        bool walked = false;
        WalkMissing missing;
        std::optional<Walk> nominal, cold;
    };
    struct Slot {
        std::uint32_t round = 0;  ///< the score is known where this is round_
        Score score;
    };

    Walks& walks_of(std::size_t wheel, bool with_nominal);
    void add_walks(CheckContext& context, std::size_t wheel, bool with_nominal);
    Score run(const CheckContext& context, std::uint8_t parts, bool uses_walk) const;
    Score run_for(const Candidate& candidate, std::uint8_t parts, bool uses_walk);
    const Score& cached(Slot& slot, const Candidate& candidate, std::uint8_t parts, bool uses_walk);
    Score stage_score(const ScoredCandidate& scored);

    CandidateSpace* space_;
    const CartDemand* demand_;
    CastorLoads castor_loads_;
    std::vector<PushEvent> push_events_;  // of the wheel and bearing in hand
    std::uint32_t round_ = 1;
    std::vector<Walks> walks_;  // by walk key
    std::vector<Slot> wheel_, rig_, wheel_rig_, wheel_bearing_, pair_, prepared_bearing_, make_, prepared_make_;
    std::vector<Slot> walk_wheel_;
};

}  // namespace sillwalk::engine
