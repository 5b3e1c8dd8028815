#include "engine/checks/check.hpp"

#include "engine/checks/checks.hpp"
#include "engine/walk/thermal_wheel.hpp"

namespace sillwalk::engine {
namespace {

constexpr std::uint8_t wheel_bearing = part_wheel | part_bearing;
constexpr std::uint8_t wheel_rig = part_wheel | part_rig;
constexpr std::uint8_t wheel_bearing_rig = part_wheel | part_bearing | part_rig;
constexpr std::uint8_t make_bearing = part_make | part_bearing;
constexpr std::uint8_t prepared_make = make_bearing | part_preparation;

// id, parts, uses_walk, by_crossing, run
constexpr std::array<CheckEntry, check_count> entries{{
    {CheckId::load, wheel_rig, false, false, check_load},
    {CheckId::parked, wheel_rig, false, false, check_parked},
    {CheckId::step, part_wheel, false, true, check_step},
    {CheckId::gap, part_wheel, false, true, check_gap},
    {CheckId::cold, part_wheel, true, true, check_cold},
    {CheckId::heat, wheel_bearing, false, false, check_heat},
    {CheckId::bond, part_wheel, true, false, check_bond},
    {CheckId::chemical, make_bearing, false, false, check_chemical},
    {CheckId::corrosion, make_bearing, false, false, check_corrosion},
    {CheckId::hygiene, prepared_make, false, false, check_hygiene},
    {CheckId::push, wheel_bearing, false, true, check_push},
    {CheckId::traction, wheel_bearing, false, true, check_traction},
    {CheckId::floor, part_wheel, false, false, check_floor},
    {CheckId::bearing, wheel_bearing | part_preparation, false, false, check_bearing},
    {CheckId::tip, part_rig, false, true, check_tip},
    {CheckId::fit, wheel_bearing_rig, false, false, check_fit},
    {CheckId::static_charge, prepared_make, false, false, check_static},
    {CheckId::room, part_wheel, false, false, check_room},
}};

template <class T>
bool is_open(const Input<T>& input, const ReadingRef& ref) {
    return input.given && input.ref == ref && input.low < input.high;
}

bool has_open_range(const CartDemand& demand, const ReadingRef& ref) {
    bool open = false;
    for_each_input(demand, [&](const auto& input) { open = open || is_open(input, ref); });
    return open;
}

/// The outcome at the worst corner when the range of one reading stays open and all others are drawn together. The walk
/// is walked again where the check uses one.
Outcome outcome_with_only(const ReadingRef& reading, const CheckEntry& check, const CheckContext& context,
                          ThermalWheel* wheel) {
    const CartDemand demand = collapse(*context.cart, reading);
    CheckContext alone = context;
    alone.cart = &demand;
    alone.corner = Corner::worst;
    std::optional<Walk> cold;
    if (wheel != nullptr) {
        cold = walk_route(demand, *wheel, *context.tables, WalkEnd::cold);
        alone.walk_cold = &*cold;
    }
    return check.run(alone).outcome;
}

bool belongs_to(const ReadingRef& reading, const Place& place) {
    if (reading.index != place.index) return false;
    const Field field = reading.field;
    switch (place.kind) {
        case PlaceKind::none:
            return false;
        case PlaceKind::room:
            return field >= Field::room_air && field <= Field::room_cleanroom;
        case PlaceKind::crossing:
            return field >= Field::crossing_kind && field <= Field::crossing_wetness;
        case PlaceKind::washing:
            return field >= Field::washing_agent && field <= Field::washing_rinsed;
    }
    return false;
}

/// The readings of the deciding place first: the others come from the rest of the route.
void put_own_place_first(Finding& finding) {
    const auto all = finding.drivers;
    finding.drivers = {};
    for (const ReadingRef& reading : all) {
        if (belongs_to(reading, finding.place)) finding.drivers.push(reading);
    }
    for (const ReadingRef& reading : all) finding.drivers.add(reading);
}

}  // namespace

std::span<const CheckEntry, check_count> all_checks() {
    return entries;
}

Finding run_check(const CheckEntry& check, const CheckContext& context) {
    CheckContext at_corner = context;
    at_corner.corner = Corner::worst;
    Finding finding = check.run(at_corner);
    at_corner.corner = Corner::nominal;
    finding.outcome_nominal = check.run(at_corner).outcome;
    finding.turns_on = finding.outcome != finding.outcome_nominal;
    put_own_place_first(finding);
    return finding;
}

Finding run_check_in_detail(const CheckEntry& check, const CheckContext& context) {
    Finding finding = run_check(check, context);
    if (!finding.turns_on) return finding;
    std::optional<ThermalWheel> wheel;
    if (check.uses_walk && context.walk_nominal != nullptr) {
        wheel.emplace(walk_key(*context.wheel, *context.tables));
    }
    for (const ReadingRef& reading : finding.drivers) {
        if (!has_open_range(*context.cart, reading)) continue;
        if (outcome_with_only(reading, check, context, wheel ? &*wheel : nullptr) != finding.outcome_nominal) {
            finding.turns_on_reading = reading;
            break;
        }
    }
    return finding;
}

}  // namespace sillwalk::engine
