#include "engine/select/score_cart.hpp"

#include "engine/checks/castor_share.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

constexpr std::uint8_t wheel = part_wheel;
constexpr std::uint8_t rig = part_rig;
constexpr std::uint8_t wheel_rig = part_wheel | part_rig;
constexpr std::uint8_t wheel_bearing = part_wheel | part_bearing;
constexpr std::uint8_t wheel_bearing_rig = part_wheel | part_bearing | part_rig;
constexpr std::uint8_t prepared_bearing = part_wheel | part_bearing | part_preparation;
constexpr std::uint8_t make_bearing = part_make | part_bearing;
constexpr std::uint8_t prepared_make = make_bearing | part_preparation;

Stage after(Stage stage) {
    return static_cast<Stage>(static_cast<std::uint8_t>(stage) + 1);
}

bool has_castor(const CartDemand& demand, CastorFunction function) {
    return std::any_of(demand.castors.begin(), demand.castors.end(),
                       [function](const CastorPosition& castor) { return castor.function == function; });
}

/// A rig stands for the cart's castors of its function. Where some of them swivel, the swivelling ones are what is
/// chosen: their rigid fellows come from the same series. A cart whose castors were not read takes any.
bool suits(const Rig& offered, const CartDemand& demand) {
    if (demand.castors.empty()) return true;
    const bool swivels = has_castor(demand, CastorFunction::swivel) || has_castor(demand, CastorFunction::total_lock);
    if (swivels && offered.function == CastorFunction::rigid) return false;
    return has_castor(demand, offered.function);
}

}  // namespace

CartScore::CartScore(CandidateSpace& space, const CartDemand& demand)
    : space_(&space),
      demand_(&demand),
      castor_loads_(castor_loads(demand, space.tables())),
      walks_(space.walk_keys().size()),
      wheel_(space.wheels().size()),
      rig_(space.catalogue().rigs.size()),
      wheel_rig_(space.rig_slots()),
      wheel_bearing_(space.bearing_slots()),
      pair_(space.pair_slots()),
      prepared_bearing_(space.bearing_slots() * preparations.size()),
      make_(space.make_slots()),
      prepared_make_(space.make_slots() * preparations.size()),
      walk_wheel_(space.wheels().size()) {}

void CartScore::begin_again(const CartDemand& demand) {
    demand_ = &demand;
    castor_loads_ = castor_loads(demand, space_->tables());
    ++round_;
    for (Walks& walks : walks_) {
        if (walks.walked) walks = {};
    }
}

CartScore::Walks& CartScore::walks_of(std::size_t wheel_index, bool with_nominal) {
    const std::size_t kind = space_->wheels()[wheel_index].walk;
    const Tables& tables = space_->tables();
    Walks& walks = walks_[kind];
    if (!walks.walked) {
        walks.walked = true;
        walks.missing = walk_missing(*demand_, space_->walk_keys()[kind], tables);
        if (walks.missing.empty()) {
            walks.cold = walk_route(*demand_, space_->thermal_wheel(kind), tables, WalkEnd::cold);
        }
    }
    if (with_nominal && walks.cold && !walks.nominal) {
        walks.nominal = walk_route(*demand_, space_->thermal_wheel(kind), tables, WalkEnd::nominal);
    }
    return walks;
}

void CartScore::add_walks(CheckContext& context, std::size_t wheel_index, bool with_nominal) {
    Walks& walks = walks_of(wheel_index, with_nominal);
    context.walk_gap = &walks.missing;
    context.walk_cold = walks.cold ? &*walks.cold : nullptr;
    context.walk_nominal = walks.nominal ? &*walks.nominal : nullptr;
}

CheckContext CartScore::context_of(const Candidate& candidate) {
    CheckContext context = space_->context_of(candidate);
    context.cart = demand_;
    add_walks(context, candidate.wheel, true);
    return context;
}

Score CartScore::run(const CheckContext& context, std::uint8_t parts, bool uses_walk) const {
    Score score;
    for (const CheckEntry& check : all_checks()) {
        if (check.parts == parts && check.uses_walk == uses_walk) add(score, check.run(context));
    }
    return score;
}

const Score& CartScore::cached(Slot& slot, const Candidate& candidate, std::uint8_t parts, bool uses_walk) {
    if (slot.round != round_) {
        slot.score = run_for(candidate, parts, uses_walk);
        slot.round = round_;
    }
    return slot.score;
}

Score CartScore::run_for(const Candidate& candidate, std::uint8_t parts, bool uses_walk) {
    CheckContext context = space_->context_of(candidate);
    context.cart = demand_;
    context.castor_loads = &castor_loads_;
    if (uses_walk) add_walks(context, candidate.wheel, false);
    if (parts == wheel_bearing && gather_push_events(context, push_events_)) context.push_events = &push_events_;
    return run(context, parts, uses_walk);
}

Score CartScore::stage_score(const ScoredCandidate& scored) {
    const Candidate& candidate = scored.candidate;
    const WheelRows& rows = space_->wheels()[candidate.wheel];
    const std::size_t bearing_slot = rows.first_bearing + scored.bearing_slot;
    switch (scored.next) {
        case Stage::wheel_and_rig:
            return cached(wheel_[candidate.wheel], candidate, wheel, false) +
                   cached(rig_[candidate.rig], candidate, rig, false);
        case Stage::wheel_with_rig:
            return cached(wheel_rig_[rows.first_rig + scored.rig_slot], candidate, wheel_rig, false);
        case Stage::wheel_with_bearing:
            return cached(wheel_bearing_[bearing_slot], candidate, wheel_bearing, false);
        case Stage::whole: {
            const std::size_t pair = rows.first_pair + scored.bearing_slot * rows.rigs.size() + scored.rig_slot;
            const auto prepared = [&](std::size_t slot) {
                return slot * preparations.size() + static_cast<std::size_t>(candidate.preparation);
            };
            const std::size_t make = space_->make_slot(candidate);
            return cached(make_[make], candidate, make_bearing, false) +
                   cached(pair_[pair], candidate, wheel_bearing_rig, false) +
                   cached(prepared_bearing_[prepared(bearing_slot)], candidate, prepared_bearing, false) +
                   cached(prepared_make_[prepared(make)], candidate, prepared_make, false);
        }
        case Stage::walk:
            return cached(walk_wheel_[candidate.wheel], candidate, wheel, true);
        case Stage::complete:
            break;
    }
    return {};
}

void CartScore::advance(ScoredCandidate& scored) {
    scored.score = scored.score + stage_score(scored);
    scored.next = after(scored.next);
}

std::vector<ScoredCandidate> CartScore::score_all() {
    std::vector<ScoredCandidate> all;
    all.reserve(space_->candidates());
    for (std::uint32_t w = 0; w < space_->wheels().size(); ++w) {
        const WheelRows& rows = space_->wheels()[w];
        for (std::uint16_t b = 0; b < rows.bearings.size(); ++b) {
            for (std::uint16_t r = 0; r < rows.rigs.size(); ++r) {
                if (!suits(space_->catalogue().rigs[rows.rigs[r]], *demand_)) continue;
                for (const Preparation preparation : preparations) {
                    ScoredCandidate scored;
                    scored.candidate = {w, rows.bearings[b], rows.rigs[r], preparation};
                    scored.bearing_slot = b;
                    scored.rig_slot = r;
                    while (scored.next != Stage::complete && scored.score.counts.fails == 0) advance(scored);
                    all.push_back(scored);
                }
            }
        }
    }
    return all;
}

std::vector<Finding> CartScore::findings(const Candidate& candidate, Detail detail) {
    const CheckContext context = context_of(candidate);
    std::vector<Finding> findings;
    findings.reserve(check_count);
    for (const CheckEntry& check : all_checks()) {
        switch (detail) {
            case Detail::outcome_only:
                findings.push_back(check.run(context));
                break;
            case Detail::both_corners:
                findings.push_back(run_check(check, context));
                break;
            case Detail::which_reading:
                findings.push_back(run_check_in_detail(check, context));
                break;
        }
    }
    return findings;
}

}  // namespace sillwalk::engine
