// Solved limits are put back into the survey or the wheel by a way of their own (put_back below), and the checks are
// run on that.
#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "assets/embedded.hpp"
#include "engine/select/assess.hpp"
#include "engine/select/limits.hpp"
#include "engine/select/score_cart.hpp"
#include "tests/engine/desk/loaded_tables.hpp"
#include "tests/support/builders.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <set>

using namespace sillwalk;
using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

const Catalogue& shipped() {
    static const app::LoadedCatalogue loaded = app::load_catalogue();
    REQUIRE(loaded.errors.empty());
    return loaded.catalogue;
}

Survey demo() {
    return app::read_survey(*assets::embedded("demo/quillwater.json")).survey;
}

std::size_t cart_named(const Survey& survey, const std::string& id) {
    const auto& carts = survey.carts;
    const auto found = std::find_if(carts.begin(), carts.end(), [&](const Cart& cart) { return cart.id.text() == id; });
    REQUIRE(found != carts.end());
    return static_cast<std::size_t>(found - carts.begin());
}

/// One candidate as a catalogue of its own.
struct Alone {
    Catalogue catalogue;
    Candidate candidate;

    Alone(const Catalogue& from, const Candidate& of) : candidate{0, 0, 0, of.preparation} {
        catalogue.wheels = {from.wheels[of.wheel]};
        catalogue.bearings = {from.bearings[of.bearing]};
        catalogue.rigs = {from.rigs[of.rig]};
    }
};

Outcome outcome(CheckId check, const Survey& survey, std::size_t cart, const Alone& parts, const Tables& tables,
                Place at) {
    CandidateSpace space(parts.catalogue, tables);
    const CartDemand demand = resolve(survey, cart, tables);
    CartScore score(space, demand);
    CheckContext context = score.context_of(parts.candidate);
    const CheckEntry& entry = all_checks()[static_cast<std::size_t>(check)];
    if (at.kind == PlaceKind::none) return run_check(entry, context).outcome;
    Outcome worst = Outcome::does_not_apply;
    for (std::uint16_t pass = 0; pass < demand.crossings.size(); ++pass) {
        if (demand.crossings[pass].crossing != at.index) continue;
        context.only_crossing = pass;
        worst = std::max(worst, run_check(entry, context).outcome);
    }
    return worst;
}

void put_crossing(Crossing& crossing, const SolvedLimit& limit, double value) {
    if (limit.driver == Driver::rise) crossing.rise.value = Length::from_si(value);
    if (limit.driver == Driver::gap) crossing.gap.value = Length::from_si(value);
    if (limit.driver == Driver::slot) crossing.slot.value = Length::from_si(value);
    if (limit.driver == Driver::slope) {
        const double now = crossing.slope.value->tangent();
        crossing.slope.value = Slope::from_tangent(now < 0 ? -value : value);
        if (value > 0 && crossing.slope_length.value) {
            crossing.slope_length.value = (std::abs(now) / value) * *crossing.slope_length.value;
        }
    }
    if (limit.driver == Driver::lip_bevel) {
        const Length old = crossing.lip_height.value ? *crossing.lip_height.value : Length{};
        crossing.lip_height.value = old + *crossing.rise.value;
        crossing.lip_height.tolerance += crossing.rise.tolerance;
        crossing.lip_slope = measured(Slope::from_tangent(value));
        crossing.rise = measured(Length{});
    }
}

/// The limit's driver set to `value`, nothing else changed.
void put_back(Survey& survey, Alone& parts, const SolvedLimit& limit, double value) {
    const ReadingRef& at = limit.reading;
    switch (limit.driver) {
        case Driver::payload:
            survey.carts[at.index].payload.value = Mass::from_si(value);
            break;
        case Driver::speed:
            survey.carts[at.index].speed.value = Speed::from_si(value);
            break;
        case Driver::parked_loaded:
            survey.carts[at.index].parked_loaded.value = Duration::from_si(value);
            break;
        case Driver::stay:
            survey.carts[at.index].route[at.stop].stay.value = Duration::from_si(value);
            break;
        case Driver::wash_temperature:
            survey.washings[at.index].temperature.value = Temperature::from_kelvin(value);
            break;
        case Driver::diameter:
            parts.catalogue.wheels[0].diameter = parts.catalogue.rigs[0].wheel_diameter = Length::from_si(value);
            break;
        default:
            put_crossing(survey.crossings[at.index], limit, value);
    }
}

bool is_mended(Outcome outcome) {
    return outcome == Outcome::holds || outcome == Outcome::does_not_apply;
}

/// 1 % of the value past it; where nothing at all is allowed, 1 % of what is there now.
double further(const SolvedLimit& limit) {
    const double step = 0.01 * (limit.value.si != 0.0 ? limit.value.si : limit.present.si);
    return limit.bound == Bound::at_most ? limit.value.si + step : limit.value.si - step;
}

/// Shares of the value that ask less. A temperature has no shares; a diameter is not promised beyond its value, since a
/// large wheel leaves the handle a shorter arm over the axle.
std::vector<double> milder_shares(const SolvedLimit& limit) {
    if (limit.driver == Driver::wash_temperature || limit.driver == Driver::diameter) return {};
    if (limit.bound == Bound::at_least) return {1.1, 1.5};
    return {0.9, 0.5};
}

std::string describe(const SolvedLimit& limit, const CheckLimits& check, const Catalogue& catalogue,
                     const FamilyLimits& family) {
    return candidate_key(catalogue, family.candidate) + " " + check_name(check.finding.check) + " " +
           driver_name(limit.driver) + " " + reading_path(limit.reading) + " " + std::to_string(limit.value.si) +
           (limit.bound == Bound::at_most ? " at most, is " : " at least, is ") + std::to_string(limit.present.si) +
           (limit.whole_check ? "" : " at one crossing");
}

/// Every limit put back: the check holds, and holds on the mild side; 1 % further it does not. Returns the drivers met.
std::set<Driver> put_all_back(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                              std::size_t cart) {
    std::set<Driver> met;
    for (const FamilyLimits& family : solve_limits(survey, catalogue, tables, cart)) {
        for (const CheckLimits& check : family.checks) {
            Survey base = survey;
            if (check.one_person) base.carts[cart].people = measured(1.0);
            for (const SolvedLimit& limit : check.limits) {
                INFO(describe(limit, check, catalogue, family));
                const auto outcome_at = [&](double value) {
                    Survey changed = base;
                    Alone parts(catalogue, family.candidate);
                    put_back(changed, parts, limit, value);
                    return outcome(check.finding.check, changed, cart, parts, tables, limit.holds_at);
                };
                CHECK(is_mended(outcome_at(limit.value.si)));
                CHECK_FALSE(is_mended(outcome_at(further(limit))));
                for (const double share : milder_shares(limit)) CHECK(is_mended(outcome_at(share * limit.value.si)));
                met.insert(limit.driver);
            }
        }
    }
    return met;
}

}  // namespace

TEST_CASE("limits: put back, each demo check holds, and one percent further no longer", "[limits][property]") {
    const Survey survey = demo();
    std::set<Driver> met;
    for (std::size_t cart = 0; cart < survey.carts.size(); ++cart) {
        met.merge(put_all_back(survey, shipped(), loaded_tables(), cart));
    }
    for (const Driver driver : {Driver::payload, Driver::rise, Driver::lip_bevel, Driver::gap, Driver::diameter}) {
        INFO(driver_name(driver));
        CHECK(met.count(driver) == 1);
    }
}

namespace {

/// Uniform in [low, high]; the library's distributions differ from one standard library to the next.
class Dice {
public:
    explicit Dice(std::uint32_t seed) : engine_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(engine_()) / 4294967295.0;
    }
    template <class T>
    void scale(Reading<T>& reading, double low, double high) {
        if (reading.value) reading.value = between(low, high) * *reading.value;
        reading.tolerance = between(0.0, 2.0) * reading.tolerance;
        reading.as_entered.clear();
    }
    void shift(Reading<Temperature>& reading, double kelvin) {
        if (reading.value) reading.value = *reading.value + between(-kelvin, kelvin) * kelvin_step;
        reading.as_entered.clear();
    }

private:
    std::mt19937 engine_;
};

Survey random_survey(std::uint32_t seed) {
    Dice dice(seed);
    Survey survey = demo();
    for (Room& room : survey.rooms) dice.shift(room.air, 10.0);
    for (Washing& washing : survey.washings) dice.shift(washing.temperature, 15.0);
    for (Crossing& crossing : survey.crossings) {
        dice.scale(crossing.rise, 0.0, 2.0);
        dice.scale(crossing.gap, 0.0, 2.0);
        dice.scale(crossing.slot, 0.5, 1.5);
        if (crossing.slope.value) {
            crossing.slope.value = Slope::from_tangent(dice.between(0.2, 2.0) * crossing.slope.value->tangent());
            crossing.slope.as_entered.clear();
        }
    }
    for (Cart& cart : survey.carts) {
        dice.scale(cart.payload, 0.5, 2.5);
        dice.scale(cart.speed, 0.5, 2.0);
        dice.scale(cart.parked_loaded, 0.2, 4.0);
        dice.scale(cart.cg_height_loaded, 0.7, 1.5);
        for (Stop& stop : cart.route) dice.scale(stop.stay, 0.1, 1.0);
        if (dice.between(0.0, 1.0) < 0.3 && cart.moved_by.value == MovedBy::hand) cart.people = measured(2.0);
    }
    return survey;
}

/// Points into what it is given.
const SolvedLimit* find(const CheckLimits& check, Driver driver) {
    for (const SolvedLimit& limit : check.limits) {
        if (limit.driver == driver) return &limit;
    }
    return nullptr;
}

const CheckLimits* find(const FamilyLimits& family, CheckId check) {
    for (const CheckLimits& limits : family.checks) {
        if (limits.finding.check == check) return &limits;
    }
    return nullptr;
}

/// The plain cart with one wheel in the catalogue, and the limits of one of its checks.
CheckLimits limits_of(const Survey& survey, const Catalogue& catalogue, CheckId check) {
    const auto families = solve_limits(survey, catalogue, plain_tables(), 0);
    REQUIRE(families.size() == 1);
    const CheckLimits* limits = find(families.front(), check);
    REQUIRE(limits != nullptr);
    return *limits;
}

Survey sill(double rise_mm, double tolerance_mm) {
    Survey survey = plain_survey();
    survey.crossings[0].rise = within(rise_mm * millimetre, tolerance_mm * millimetre);
    return survey;
}

}  // namespace

TEST_CASE("limits: put back over random surveys", "[limits][property]") {
    std::set<Driver> met;
    for (std::uint32_t seed = 1; seed <= 16; ++seed) {
        const Survey survey = random_survey(seed);
        INFO("seed " << seed);
        for (const Error& error : validate(survey, shipped(), loaded_tables())) FAIL(error.where + error.message);
        for (std::size_t k = 0; k < 2; ++k) {
            const std::size_t cart = (seed + 4 * k) % survey.carts.size();
            INFO("cart " << survey.carts[cart].name);
            met.merge(put_all_back(survey, shipped(), loaded_tables(), cart));
        }
    }
    for (const Driver driver : {Driver::payload, Driver::speed, Driver::parked_loaded, Driver::rise, Driver::lip_bevel,
                                Driver::gap, Driver::slope, Driver::stay, Driver::wash_temperature, Driver::diameter}) {
        INFO(driver_name(driver));
        CHECK(met.count(driver) == 1);
    }
}

// Derived by hand. ISO 22883 (second-hand) tests soft industrial wheels over 5 % of the diameter, hard ones over 2.5 %.
// The largest wheel of the catalogue has 8 in = 203.2 mm, R = 101.6 mm; the sill is 19 mm, its gap 32 mm, both +-1 mm.
//   5 %:   10.16 mm x 0.85 = 8.636 mm; less the tolerance 7.636 mm. The gap of 33 mm bears on it only beyond
//          sqrt(203.2 x 8.636 - 8.636^2) = 41.0 mm, so it does not.
//   2.5 %: 5.08 mm x 0.85 = 4.318 mm; sqrt(203.2 x 4.318 - 4.318^2) = 29.3 mm < 33 mm, so the gap counts with the rise:
//          asin(sqrt(33^2 + 4.2508^2)/203.2) + atan(4.2508/33) = 0.29259; 101.6 x (1 - cos 0.29259) = 4.318 mm;
//          4.2508 mm less the tolerance is 3.2508 mm.
//   Diameter for the sill as it is: 20 mm / (0.05 x 0.85) = 470.6 mm; no wheel of the catalogue has it.
//   Bevelled at most 1:2 (ADA 2010, 303.3) the edge is a slope, and the gap alone sags
//          101.6 - sqrt(101.6^2 - 16.5^2) = 1.35 mm, under 8.636 mm: the steepest bevel allowed holds.
TEST_CASE("limits: the tray rack's sill, as a specialist derives it", "[limits][derived]") {
    const Survey survey = demo();
    const std::size_t cart = cart_named(survey, "tray-rack");
    const auto families = solve_limits(survey, shipped(), loaded_tables(), cart);
    std::size_t soft = 0, hard = 0;
    for (const FamilyLimits& family : families) {
        const CheckLimits* step = find(family, CheckId::step);
        REQUIRE(step != nullptr);
        CHECK(step->single_change);
        const Wheel& wheel = shipped().wheels[family.candidate.wheel];
        CHECK(wheel.diameter.in(millimetre) == Approx(203.2));
        const SolvedLimit* rise = find(*step, Driver::rise);
        const SolvedLimit* bevel = find(*step, Driver::lip_bevel);
        REQUIRE(rise != nullptr);
        REQUIRE(bevel != nullptr);
        CHECK(survey.crossings[rise->place.index].id.text() == "freezer-door");
        CHECK(rise->present.si == Approx(0.019));
        CHECK(bevel->value.si == Approx(0.5));
        REQUIRE(bevel->beside);
        CHECK(bevel->beside->si == Approx(0.019));
        if (wheel.rating_class == RatingClass::industrial_soft) {
            ++soft;
            CHECK(rise->value.si == Approx(7.636e-3).epsilon(1e-6));
            const SolvedLimit* diameter = find(*step, Driver::diameter);
            REQUIRE(diameter != nullptr);
            CHECK(diameter->value.si == Approx(0.020 / (0.05 * 0.85)).epsilon(1e-6));
            CHECK_FALSE(diameter->reachable);
        } else if (wheel.rating_class == RatingClass::industrial_hard) {
            ++hard;
            CHECK(rise->value.si == Approx(3.2508e-3).epsilon(1e-4));
        }
    }
    CHECK(soft >= 2);
    CHECK(hard >= 2);
}

TEST_CASE("limits: the first construction is that of the headline", "[limits]") {
    const Survey survey = demo();
    for (std::size_t cart = 0; cart < survey.carts.size(); ++cart) {
        const CartAdvice advice = assess(survey, shipped(), loaded_tables(), {1, 1, cart}).carts.front();
        const auto families = solve_limits(survey, shipped(), loaded_tables(), cart);
        INFO(survey.carts[cart].name);
        if (advice.nothing_holds) {
            REQUIRE_FALSE(families.empty());
            CHECK(families.front().candidate == advice.nearest->candidate);
        }
        std::set<Construction> constructions;
        for (const FamilyLimits& family : families) {
            CHECK(constructions.insert(family.construction).second);
            CHECK_FALSE(family.checks.empty());
            if (!advice.ranked.empty()) CHECK_FALSE(family.candidate == advice.ranked.front().candidate);
        }
    }
}

// By hand: 300 kg on four castors is 75 kg each, times 1.5 (the upper end of the published factor for a smooth floor)
// 112.5 kg, against a rating of 100 kg. 0.85 x 100 kg / 1.5 x 4 = 226.67 kg, less the tare of 60 kg: 166.67 kg; less
// the payload's tolerance of 5 kg: 161.67 kg.
TEST_CASE("limits: the payload that a rating carries", "[limits][derived]") {
    Survey survey = plain_survey();
    survey.carts[0].payload = within(240.0 * kilogram, 5.0 * kilogram);
    Catalogue catalogue = plain_catalogue();
    catalogue.wheels[0].rated_load = 100.0 * kilogram;
    const CheckLimits load = limits_of(survey, catalogue, CheckId::load);
    CHECK(load.single_change);
    const SolvedLimit* payload = find(load, Driver::payload);
    REQUIRE(payload != nullptr);
    CHECK(payload->bound == Bound::at_most);
    CHECK(payload->value.si == Approx(4.0 * 85.0 / 1.5 - 60.0 - 5.0).epsilon(1e-6));
    CHECK(payload->present.si == Approx(240.0));
    CHECK(payload->place.kind == PlaceKind::none);
}

// 14 days as read less the reading's tolerance of a day: up to there practice takes nothing off the rating.
TEST_CASE("limits: the days that it may stand loaded", "[limits][derived]") {
    Survey survey = plain_survey();
    survey.carts[0].parked_loaded = within(30.0 * day, 1.0 * day);
    Catalogue catalogue = plain_catalogue();
    catalogue.wheels[0].rated_load = 135.0 * kilogram;  // 112.5 kg of 0.8 x 135 = 108 kg
    const CheckLimits parked = limits_of(survey, catalogue, CheckId::parked);
    const SolvedLimit* days = find(parked, Driver::parked_loaded);
    REQUIRE(days != nullptr);
    CHECK(days->value.si == Approx(13.0 * 86400.0).epsilon(1e-6));
}

// By hand: 6 mm / (0.05 x 0.85) = 141.2 mm; of the sizes offered the first at or above it is 160 mm.
TEST_CASE("limits: the next size in the catalogue", "[limits][derived]") {
    Catalogue catalogue = plain_catalogue();
    catalogue.wheels.clear();
    catalogue.rigs.clear();
    for (const double diameter : {100.0, 125.0, 160.0, 200.0}) {
        Wheel wheel = plain_wheel();
        wheel.id = WheelId("w" + std::to_string(100 + catalogue.wheels.size()));
        wheel.diameter = diameter * millimetre;
        if (diameter > 100.0) wheel.rated_load = 30.0 * kilogram;  // further off than the sill is for the smallest
        catalogue.wheels.push_back(wheel);
        Rig rig = plain_rig();
        rig.id = RigId("r" + std::to_string(100 + catalogue.rigs.size()));
        rig.wheel_diameter = diameter * millimetre;
        catalogue.rigs.push_back(rig);
    }
    const Survey survey = sill(5.5, 0.5);
    const auto families = solve_limits(survey, catalogue, plain_tables(), 0);
    REQUIRE(families.size() == 1);
    CHECK(families[0].candidate.wheel == 0);
    const CheckLimits* step = find(families[0], CheckId::step);
    REQUIRE(step != nullptr);
    const SolvedLimit* diameter = find(*step, Driver::diameter);
    REQUIRE(diameter != nullptr);
    CHECK(diameter->bound == Bound::at_least);
    CHECK(diameter->value.si == Approx(0.006 / (0.05 * 0.85)).epsilon(1e-6));
    CHECK(diameter->reachable);
    REQUIRE(diameter->next_size);
    CHECK(diameter->next_size->diameter.in(millimetre) == Approx(160.0));
    CHECK(diameter->next_size->candidate.wheel == 2);
    CHECK(diameter->next_size->holds);
}

TEST_CASE("limits: two sills, and neither alone is enough", "[limits]") {
    Survey survey = sill(12.0, 1.0);
    Crossing second = survey.crossings[0];
    second.id = CrossingId("door-2");
    second.rise = within(10.0 * millimetre, 0.5 * millimetre);
    survey.crossings.push_back(second);
    survey.carts[0].route[1].leaves_by = CrossingId("door-2");
    const CheckLimits step = limits_of(survey, plain_catalogue(), CheckId::step);
    CHECK_FALSE(step.single_change);
    std::vector<const SolvedLimit*> rises;
    for (const SolvedLimit& limit : step.limits) {
        if (limit.driver == Driver::rise) rises.push_back(&limit);
    }
    REQUIRE(rises.size() == 2);
    Alone parts(plain_catalogue(), Candidate{});
    for (const SolvedLimit* rise : rises) {
        CHECK_FALSE(rise->whole_check);
        CHECK(rise->holds_at == rise->place);
        CHECK(rise->then == Verdict::does_not_fit);
        put_back(survey, parts, *rise, rise->value.si);
    }
    CHECK(outcome(CheckId::step, survey, 0, parts, plain_tables(), {}) == Outcome::holds);
}

// Out of a freezer over a flat doorway, a minute in a warmer room, then over a sill: longer there helps, and so does a
// shorter stay in the freezer.
TEST_CASE("limits: least minutes of warming before the sill, greatest minutes in the cold", "[limits]") {
    Survey survey = plain_survey();
    survey.rooms[0].air = measured(celsius(-33.0));
    survey.rooms[1].air = measured(celsius(4.0));
    Crossing back = survey.crossings[0];
    back.id = CrossingId("sill");
    back.rise = measured(3.0 * millimetre);
    survey.crossings.push_back(back);
    survey.carts[0].route[0].stay = measured(6.0 * hour);
    survey.carts[0].route[1].stay = measured(1.0 * minute);
    survey.carts[0].route[1].leaves_by = CrossingId("sill");
    survey.carts[0].trips_per_day = measured(1.0);
    const CheckLimits cold = limits_of(survey, plain_catalogue(), CheckId::cold);
    CHECK(cold.single_change);
    const SolvedLimit* warming = nullptr;
    const SolvedLimit* freezing = nullptr;
    for (const SolvedLimit& limit : cold.limits) {
        if (limit.driver != Driver::stay) continue;
        (limit.bound == Bound::at_least ? warming : freezing) = &limit;
    }
    REQUIRE(warming != nullptr);
    REQUIRE(freezing != nullptr);
    CHECK(warming->place == Place{PlaceKind::room, 1});
    CHECK(warming->reading == ReadingRef{Field::cart_stay, 0, 1});
    CHECK(warming->value.si > 60.0);
    CHECK(warming->value.si < 12.0 * 3600.0);
    CHECK(freezing->place == Place{PlaceKind::room, 0});
    CHECK(freezing->value.si < 6.0 * 3600.0);
    for (const SolvedLimit* limit : {warming, freezing}) {
        const auto outcome_at = [&](double value) {
            Survey changed = survey;
            Alone parts(plain_catalogue(), Candidate{});
            put_back(changed, parts, *limit, value);
            return outcome(CheckId::cold, changed, 0, parts, plain_tables(), {});
        };
        CHECK(outcome_at(limit->value.si) == Outcome::holds);
        CHECK(outcome_at(further(*limit)) == Outcome::tight);
    }
}

TEST_CASE("limits: with a reading missing no change can show that the whole check holds", "[limits]") {
    Survey survey = sill(12.0, 1.0);
    Crossing second = survey.crossings[0];
    second.id = CrossingId("door-2");
    second.rise = measured(1.0 * millimetre);
    second.gap = {};
    survey.crossings.push_back(second);
    survey.carts[0].route[1].leaves_by = CrossingId("door-2");
    const CheckLimits step = limits_of(survey, plain_catalogue(), CheckId::step);
    CHECK(step.waits_for_readings);
    CHECK_FALSE(step.single_change);
    REQUIRE_FALSE(step.limits.empty());
    for (const SolvedLimit& limit : step.limits) {
        CHECK_FALSE(limit.whole_check);
        CHECK(limit.holds_at == Place{PlaceKind::crossing, 0});
    }
}

TEST_CASE("limits: a second person is not solved for", "[limits]") {
    Survey survey = plain_survey();
    survey.crossings[0].kind = chosen(CrossingKind::ramp);
    survey.crossings[0].slope = measured(Slope::from_tangent(0.25));
    survey.carts[0].payload = measured(60.0 * kilogram);
    survey.carts[0].people = measured(2.0);
    const CheckLimits push = limits_of(survey, plain_catalogue(), CheckId::push);
    CHECK(push.one_person);
    const SolvedLimit* slope = find(push, Driver::slope);
    REQUIRE(slope != nullptr);
    REQUIRE(slope->beside);
    CHECK(slope->beside->si * slope->value.si == Approx(3.0 * 0.25));  // as high as it was
    Alone parts(plain_catalogue(), Candidate{});
    put_back(survey, parts, *slope, slope->value.si);
    CHECK(outcome(CheckId::push, survey, 0, parts, plain_tables(), {}) == Outcome::tight);  // two are at best tight
    survey.carts[0].people = measured(1.0);
    CHECK(outcome(CheckId::push, survey, 0, parts, plain_tables(), {}) == Outcome::holds);
}

TEST_CASE("limits: where no driver bears on a check, that is said", "[limits]") {
    Survey survey = plain_survey();
    survey.carts[0].non_marking = chosen(true);
    Catalogue catalogue = plain_catalogue();
    catalogue.wheels[0].non_marking = false;
    const CheckLimits room = limits_of(survey, catalogue, CheckId::room);
    CHECK(room.limits.empty());
    CHECK_FALSE(room.single_change);
    CHECK_FALSE(room.waits_for_readings);
}

TEST_CASE("limits: an advice is completed once it is asked for", "[limits]") {
    const Survey survey = sill(12.0, 1.0);
    const Tables tables = plain_tables();
    Advice advice = assess(survey, plain_catalogue(), tables);
    CHECK_FALSE(advice.carts[0].would_hold);
    CHECK_FALSE(advice.carts[0].conditions);
    complete_advice(advice, survey, plain_catalogue(), tables);
    REQUIRE(advice.carts[0].would_hold);
    CHECK_FALSE(advice.carts[0].would_hold->empty());
    REQUIRE(advice.carts[0].conditions);
    CHECK(advice.carts[0].conditions->empty());  // nothing holds, so nothing is specified
}
