#pragma once
/// The catalogue prepared for scoring: table rows of its parts looked up once, candidates laid out by wheel, then
/// bearing, then rig, then preparation.

#include "engine/checks/check.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/walk/thermal_wheel.hpp"

#include <array>
#include <optional>
#include <vector>

namespace sillwalk::engine {

inline constexpr std::array preparations{Preparation::as_supplied, Preparation::degreased, Preparation::h1_lubricated};

struct WheelRows {
    const Material* tread = nullptr;
    const Material* core = nullptr;
    std::size_t walk = 0;                 ///< index into walk_keys
    std::size_t make = 0;                 ///< wheels of one make have one number
    std::vector<std::uint32_t> bearings;  ///< indices into the catalogue, of those offered in this wheel
    std::vector<std::uint32_t> rigs;      ///< of those made for its diameter
    std::size_t first_bearing = 0;        ///< of this wheel in an array over all wheels and their bearings
    std::size_t first_rig = 0;            ///< over all wheels and their rigs
    std::size_t first_pair = 0;           ///< over all wheels, bearings and rigs
};

class CandidateSpace {
public:
    CandidateSpace(const Catalogue& catalogue, const Tables& tables);

    [[nodiscard]] const Catalogue& catalogue() const { return *catalogue_; }
    [[nodiscard]] const Tables& tables() const { return *tables_; }
    [[nodiscard]] const std::vector<WheelRows>& wheels() const { return wheels_; }
    [[nodiscard]] const std::vector<WalkKey>& walk_keys() const { return walk_keys_; }
    [[nodiscard]] std::size_t bearing_slots() const { return bearing_slots_; }
    [[nodiscard]] std::size_t rig_slots() const { return rig_slots_; }
    [[nodiscard]] std::size_t pair_slots() const { return pair_slots_; }
    /// One for each make of wheel, make of rig and bearing.
    [[nodiscard]] std::size_t make_slots() const {
        return wheel_make_count_ * rig_make_count_ * catalogue_->bearings.size();
    }
    [[nodiscard]] std::size_t make_slot(const Candidate& candidate) const {
        const std::size_t makes = wheels_[candidate.wheel].make * rig_make_count_ + rig_makes_[candidate.rig];
        return makes * catalogue_->bearings.size() + candidate.bearing;
    }
    [[nodiscard]] std::size_t candidates() const { return pair_slots_ * preparations.size(); }

    /// The body of a kind of wheel made ready to be walked; prepared when it is first asked for.
    /// Precondition: its figures are known.
    [[nodiscard]] ThermalWheel& thermal_wheel(std::size_t walk);

    /// The context of a candidate without a cart and without walks.
    [[nodiscard]] CheckContext context_of(const Candidate& candidate) const;

private:
    const Catalogue* catalogue_;
    const Tables* tables_;
    std::vector<WheelRows> wheels_;
    std::vector<const Material*> bearing_materials_, rig_materials_;
    std::vector<std::size_t> rig_makes_;
    std::size_t wheel_make_count_ = 0, rig_make_count_ = 0;
    std::vector<WalkKey> walk_keys_;
    std::vector<std::optional<ThermalWheel>> thermal_wheels_;  // by walk key
    std::size_t bearing_slots_ = 0, rig_slots_ = 0, pair_slots_ = 0;
};

}  // namespace sillwalk::engine
