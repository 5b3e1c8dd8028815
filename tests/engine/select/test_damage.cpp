#include "engine/select/damage.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace sillwalk::engine;

namespace {

constexpr DamageKind kinds[] = {DamageKind::flat_spot,      DamageKind::tread_off_core, DamageKind::shattered_rim,
                                DamageKind::chunks,         DamageKind::rust,           DamageKind::seized_bearing,
                                DamageKind::wrapped_thread, DamageKind::floor_marks};

std::vector<Finding> all_with(Outcome outcome) {
    std::vector<Finding> findings(check_count);
    for (std::size_t i = 0; i < check_count; ++i) {
        findings[i].check = static_cast<CheckId>(i);
        findings[i].outcome = outcome;
    }
    return findings;
}

void set(std::vector<Finding>& findings, CheckId check, Outcome outcome) {
    findings[static_cast<std::size_t>(check)].outcome = outcome;
}

DamageReading read(DamageKind kind, const std::vector<Finding>& present, const CartDemand& demand = {}) {
    Cart cart;
    Damage damage;
    damage.kind = kind;
    cart.damage = {damage};
    const auto readings = read_damage(cart, demand, Tables{}, present);
    REQUIRE(readings.size() == 1);
    return readings[0];
}

StopDemand stop(double degrees, std::optional<double> humidity) {
    StopDemand made;
    made.room = degrees < 0 ? 0 : 1;
    made.air = {true,           celsius(degrees), celsius(degrees), celsius(degrees), {Field::room_air, made.room},
                Known::measured};
    made.humidity.ref = {Field::room_humidity, made.room};
    made.humidity.given = humidity.has_value();
    made.humidity.low = made.humidity.nominal = made.humidity.high = humidity.value_or(0.0);
    return made;
}

}  // namespace

// Which check can cause which damage: common practice, no published source.
TEST_CASE("a failing cause supports the damage and carries its finding", "[engine][damage][practice]") {
    struct Case {
        DamageKind kind;
        CheckId cause;
    };
    const Case cases[] = {
        {DamageKind::flat_spot, CheckId::parked},
        {DamageKind::flat_spot, CheckId::heat},
        {DamageKind::tread_off_core, CheckId::bond},
        {DamageKind::tread_off_core, CheckId::heat},
        {DamageKind::tread_off_core, CheckId::chemical},
        {DamageKind::shattered_rim, CheckId::cold},
        {DamageKind::shattered_rim, CheckId::step},
        {DamageKind::chunks, CheckId::step},
        {DamageKind::chunks, CheckId::gap},
        {DamageKind::chunks, CheckId::load},
        {DamageKind::rust, CheckId::corrosion},
        {DamageKind::seized_bearing, CheckId::bearing},
        {DamageKind::seized_bearing, CheckId::corrosion},
        {DamageKind::floor_marks, CheckId::room},
        {DamageKind::floor_marks, CheckId::floor},
    };
    for (const Case& given : cases) {
        auto present = all_with(Outcome::holds);
        set(present, given.cause, Outcome::fails);
        present[static_cast<std::size_t>(given.cause)].use = 1.7;
        const DamageReading reading = read(given.kind, present);
        CHECK(reading.support == Support::supported);
        bool named = false;
        for (const DamageCause& cause : reading.causes) {
            if (cause.check != given.cause) continue;
            named = cause.support == Support::supported && cause.finding && cause.finding->use == 1.7;
        }
        CHECK(named);
    }
}

TEST_CASE("what holds does not support, what is open cannot tell", "[engine][damage]") {
    for (const DamageKind kind : kinds) {
        if (kind == DamageKind::wrapped_thread) continue;
        CHECK(read(kind, all_with(Outcome::holds)).support == Support::not_supported);
        CHECK(read(kind, all_with(Outcome::does_not_apply)).support == Support::not_supported);
        CHECK(read(kind, all_with(Outcome::not_known)).support == Support::cannot_tell);
        CHECK(read(kind, all_with(Outcome::tight)).support == Support::cannot_tell);
        CHECK(read(kind, std::vector<Finding>{}).support == Support::cannot_tell);
    }
}

TEST_CASE("a failure of another check supports nothing", "[engine][damage]") {
    auto present = all_with(Outcome::holds);
    set(present, CheckId::push, Outcome::fails);
    set(present, CheckId::tip, Outcome::fails);
    for (const DamageKind kind : kinds) CHECK(read(kind, present).support != Support::supported);
}

TEST_CASE("a wrapped thread is not computed", "[engine][damage]") {
    CHECK(read(DamageKind::wrapped_thread, all_with(Outcome::fails)).support == Support::cannot_tell);
    CHECK(read(DamageKind::wrapped_thread, all_with(Outcome::fails)).causes.empty());
}

TEST_CASE("dew casts doubt on a seized bearing that should have held", "[engine][damage][derived]") {
    // Magnus 17.62/243.12 by hand: ln 0.8 + 17.62 x 4/247.12 = 0.06207; 243.12 x 0.06207/(17.62 - 0.06207) = 0.859 C.
    CartDemand demand;
    demand.stops = {stop(-25.0, 0.9), stop(4.0, 0.8)};
    const DamageReading frosted = read(DamageKind::seized_bearing, all_with(Outcome::holds), demand);
    REQUIRE(frosted.dew);
    CHECK(frosted.dew->room == 1);
    CHECK(frosted.dew->dew_point.celsius() == Approx(0.859).margin(0.002));
    CHECK(frosted.support == Support::cannot_tell);

    demand.stops = {stop(-25.0, 0.9), stop(4.0, std::nullopt)};
    CHECK(read(DamageKind::seized_bearing, all_with(Outcome::holds), demand).support == Support::cannot_tell);

    demand.stops = {stop(12.0, 0.5), stop(14.0, 0.5)};
    const DamageReading dry = read(DamageKind::seized_bearing, all_with(Outcome::holds), demand);
    CHECK_FALSE(dry.dew);
    CHECK(dry.support == Support::not_supported);
}

TEST_CASE("each damage of the cart is read in its order", "[engine][damage]") {
    Cart cart;
    for (const DamageKind kind : kinds) {
        Damage damage;
        damage.kind = kind;
        cart.damage.push_back(damage);
    }
    const auto readings = read_damage(cart, CartDemand{}, Tables{}, all_with(Outcome::holds));
    REQUIRE(readings.size() == std::size(kinds));
    for (std::size_t i = 0; i < readings.size(); ++i) {
        CHECK(readings[i].damage == i);
        CHECK(readings[i].kind == kinds[i]);
    }
    CHECK(std::string(support_name(Support::supported)) == "supported");
}
