#include "engine/select/damage.hpp"

#include "engine/checks/judge.hpp"

#include <algorithm>
#include <initializer_list>

namespace sillwalk::engine {
namespace {

SmallList<CheckId, 4> list_of(std::initializer_list<CheckId> checks) {
    SmallList<CheckId, 4> list;
    for (const CheckId check : checks) list.push(check);
    return list;
}

Support support_of(Outcome outcome) {
    switch (outcome) {
        case Outcome::fails:
            return Support::supported;
        case Outcome::tight:
        case Outcome::not_known:
            return Support::cannot_tell;
        case Outcome::does_not_apply:
        case Outcome::holds:
            break;
    }
    return Support::not_supported;
}

DamageCause cause_of(CheckId check, const std::vector<Finding>& present) {
    const auto found = std::find_if(present.begin(), present.end(), [&](const Finding& f) { return f.check == check; });
    if (found == present.end()) return {check, Support::cannot_tell, std::nullopt};
    return {check, support_of(found->outcome), *found};
}

CondensationAnswer dew_on(const CartDemand& demand, const Tables& tables) {
    CheckContext context;
    context.cart = &demand;
    context.tables = &tables;
    Judge judge(CheckId::corrosion, context);
    return condensation(judge, demand);
}

/// Dew alone has no limit to exceed, so it can cast doubt on a bearing that otherwise holds but not convict it.
void add_dew(DamageReading& reading, const CartDemand& demand, const Tables& tables) {
    const CondensationAnswer dew = dew_on(demand, tables);
    reading.dew = dew.first;
    if (dew.first || !dew.known) reading.support = std::max(reading.support, Support::cannot_tell);
}

DamageReading read_one(DamageKind kind, const CartDemand& demand, const Tables& tables,
                       const std::vector<Finding>& present) {
    DamageReading reading;
    reading.kind = kind;
    const SmallList<CheckId, 4> checks = causes_of(kind);
    if (checks.empty() || present.empty()) return reading;
    reading.support = Support::not_supported;
    for (const CheckId check : checks) {
        const DamageCause cause = cause_of(check, present);
        reading.support = std::max(reading.support, cause.support);
        reading.causes.push(cause);
    }
    if (kind == DamageKind::seized_bearing) add_dew(reading, demand, tables);
    return reading;
}

}  // namespace

const char* support_name(Support support) {
    switch (support) {
        case Support::not_supported:
            return "not supported";
        case Support::cannot_tell:
            return "cannot tell";
        case Support::supported:
            break;
    }
    return "supported";
}

SmallList<CheckId, 4> causes_of(DamageKind kind) {
    switch (kind) {
        case DamageKind::flat_spot:
            return list_of({CheckId::parked, CheckId::heat});
        case DamageKind::tread_off_core:
            return list_of({CheckId::bond, CheckId::heat, CheckId::chemical});
        case DamageKind::shattered_rim:
            return list_of({CheckId::cold, CheckId::step});
        case DamageKind::chunks:
            return list_of({CheckId::step, CheckId::gap, CheckId::load});
        case DamageKind::rust:
            return list_of({CheckId::corrosion});
        case DamageKind::seized_bearing:
            return list_of({CheckId::bearing, CheckId::corrosion});
        case DamageKind::floor_marks:
            return list_of({CheckId::room, CheckId::floor});
        case DamageKind::wrapped_thread:
            break;
    }
    return {};
}

std::vector<DamageReading> read_damage(const Cart& cart, const CartDemand& demand, const Tables& tables,
                                       const std::vector<Finding>& present) {
    std::vector<DamageReading> readings;
    readings.reserve(cart.damage.size());
    for (std::size_t i = 0; i < cart.damage.size(); ++i) {
        readings.push_back(read_one(cart.damage[i].kind, demand, tables, present));
        readings.back().damage = i;
    }
    return readings;
}

}  // namespace sillwalk::engine
