#include "engine/select/score_catalogue.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace sillwalk::engine {
namespace {

/// A rig is made for one wheel diameter; catalogues round inches differently.
constexpr Length same_diameter = 0.5 * millimetre;

std::vector<std::uint32_t> bearings_of(const Catalogue& catalogue, const Wheel& wheel) {
    std::vector<std::uint32_t> indices;
    for (std::uint32_t i = 0; i < catalogue.bearings.size(); ++i) {
        const auto& offered = wheel.bearings;
        if (std::find(offered.begin(), offered.end(), catalogue.bearings[i].id) != offered.end()) indices.push_back(i);
    }
    return indices;
}

std::vector<std::uint32_t> rigs_for(const Catalogue& catalogue, const Wheel& wheel) {
    std::vector<std::uint32_t> indices;
    for (std::uint32_t i = 0; i < catalogue.rigs.size(); ++i) {
        if (abs(catalogue.rigs[i].wheel_diameter - wheel.diameter) <= same_diameter) indices.push_back(i);
    }
    return indices;
}

/// Only finds equal keys: where the materials lie in memory orders nothing that is shown.
struct KeyOrder {
    bool operator()(const WalkKey& a, const WalkKey& b) const {
        const auto fields = [](const WalkKey& key) {
            return std::make_tuple(key.diameter, key.width, key.tread_thickness, key.bore, key.tread, key.core);
        };
        return fields(a) < fields(b);
    }
};

/// The number of each row's make, in the order in which the makes come.
template <class Row>
std::vector<std::size_t> makes_of(const std::vector<Row>& rows, std::size_t& count) {
    std::vector<std::size_t> makes;
    std::vector<const Row*> first;
    for (const Row& row : rows) {
        const auto known =
            std::find_if(first.begin(), first.end(), [&](const Row* other) { return same_make(*other, row); });
        makes.push_back(static_cast<std::size_t>(known - first.begin()));
        if (known == first.end()) first.push_back(&row);
    }
    count = first.size();
    return makes;
}

}  // namespace

CandidateSpace::CandidateSpace(const Catalogue& catalogue, const Tables& tables)
    : catalogue_(&catalogue), tables_(&tables) {
    for (const Bearing& bearing : catalogue.bearings) bearing_materials_.push_back(tables.material(bearing.material));
    for (const Rig& rig : catalogue.rigs) rig_materials_.push_back(tables.material(rig.material));
    rig_makes_ = makes_of(catalogue.rigs, rig_make_count_);
    const std::vector<std::size_t> makes = makes_of(catalogue.wheels, wheel_make_count_);
    std::map<WalkKey, std::size_t, KeyOrder> walks;
    wheels_.reserve(catalogue.wheels.size());
    for (const Wheel& wheel : catalogue.wheels) {
        WheelRows rows;
        rows.make = makes[wheels_.size()];
        rows.tread = tables.material(wheel.tread_material);
        rows.core = tables.material(wheel.core_material);
        const auto [walk, is_new] = walks.emplace(walk_key(wheel, tables), walk_keys_.size());
        if (is_new) walk_keys_.push_back(walk->first);
        rows.walk = walk->second;
        rows.bearings = bearings_of(catalogue, wheel);
        rows.rigs = rigs_for(catalogue, wheel);
        rows.first_bearing = bearing_slots_;
        rows.first_rig = rig_slots_;
        rows.first_pair = pair_slots_;
        bearing_slots_ += rows.bearings.size();
        rig_slots_ += rows.rigs.size();
        pair_slots_ += rows.bearings.size() * rows.rigs.size();
        wheels_.push_back(std::move(rows));
    }
    thermal_wheels_.resize(walk_keys_.size());
}

ThermalWheel& CandidateSpace::thermal_wheel(std::size_t walk) {
    auto& prepared = thermal_wheels_[walk];
    if (!prepared) prepared.emplace(walk_keys_[walk]);
    return *prepared;
}

CheckContext CandidateSpace::context_of(const Candidate& candidate) const {
    EXPECT_CONTRACT(candidate.wheel < wheels_.size() && candidate.bearing < bearing_materials_.size() &&
                    candidate.rig < rig_materials_.size());
    CheckContext context;
    context.tables = tables_;
    context.wheel = &catalogue_->wheels[candidate.wheel];
    context.bearing = &catalogue_->bearings[candidate.bearing];
    context.rig = &catalogue_->rigs[candidate.rig];
    context.preparation = candidate.preparation;
    context.tread = wheels_[candidate.wheel].tread;
    context.core = wheels_[candidate.wheel].core;
    context.bearing_material = bearing_materials_[candidate.bearing];
    context.rig_material = rig_materials_[candidate.rig];
    return context;
}

}  // namespace sillwalk::engine
