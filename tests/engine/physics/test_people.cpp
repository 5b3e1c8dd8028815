#include "engine/physics/people.hpp"
#include "tests/engine/desk/loaded_tables.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace sillwalk::engine;

namespace {

const PeopleLimits& limits() {
    return loaded_tables().people;
}

PushTask task(PushAction action, PushPhase phase, Sex sex) {
    return {action, phase, sex, 1.0 * metre, 10 * metre, 1.0 * per_minute};
}

template <class Check>
void for_every_equation(const Check& check) {
    for (const auto action : {PushAction::push, PushAction::pull}) {
        for (const auto phase : {PushPhase::start, PushPhase::sustain}) {
            for (const auto sex : {Sex::female, Sex::male}) {
                check(task(action, phase, sex));
            }
        }
    }
}

}  // namespace

TEST_CASE("limit and share undo each other in all eight equations", "[engine][physics][property]") {
    for_every_equation([](const PushTask& one) {
        for (const double share : {0.05, 0.25, 0.5, 0.75, 0.9, 0.99}) {
            const auto limit = push_limit(one, share, limits());
            REQUIRE(limit);
            CHECK(*push_share(one, limit->force, limits()) == Approx(share));
        }
        CHECK(push_limit(one, 0.5, limits())->force.si() == Approx(push_limit(one, 0.5, limits())->median.si()));
    });
}

TEST_CASE("more people, more distance and more pushes all lower the limit", "[engine][physics][property]") {
    for_every_equation([](PushTask one) {
        const auto force = [&one](double share) { return push_limit(one, share, limits())->force; };
        CHECK(force(0.9) < force(0.75));
        const Force near = force(0.75);
        one.distance = 30 * metre;
        CHECK(force(0.75) < near);
        one.distance = 10 * metre;
        one.rate = 3 * per_minute;
        CHECK(force(0.75) < near);
    });
}

TEST_CASE("no published factor passes 1 and each reaches it at its best end", "[engine][physics]") {
    // Normalisation stated in section 2.3 of the 2021 paper (second-hand).
    for_every_equation([](PushTask one) {
        const bool female = one.sex == Sex::female;
        double best = 0;
        for (double height = female ? 0.58 : 0.63; height <= (female ? 1.33 : 1.44); height += 0.0005) {
            one.hand_height = height * metre;
            const double factor = push_limit(one, 0.5, limits())->height_factor;
            CHECK(factor <= 1);
            best = std::max(best, factor);
        }
        CHECK(best == Approx(1).margin(2e-3));
        one.hand_height = 1 * metre;
        one.distance = 2.1 * metre;
        one.rate = 1.0 / 480 * per_minute;
        CHECK(push_limit(one, 0.5, limits())->distance_factor == Approx(1).margin(1e-4));
        CHECK(push_limit(one, 0.5, limits())->rate_factor == Approx(1).margin(1e-4));
    });
}

TEST_CASE("short and rare pushes count as the least published, others are refused", "[engine][physics]") {
    PushTask one = task(PushAction::push, PushPhase::start, Sex::female);
    one.distance = 2.1 * metre;
    const Force least = push_limit(one, 0.75, limits())->force;
    one.distance = 0.5 * metre;
    CHECK(push_limit(one, 0.75, limits())->force.si() == Approx(least.si()));
    one.rate = 1.0 / 480 * per_minute;
    const Force rare = push_limit(one, 0.75, limits())->force;
    one.rate = 1.0 / 5000 * per_minute;
    CHECK(push_limit(one, 0.75, limits())->force.si() == Approx(rare.si()));
    const auto refused = [&one] { return push_limit(one, 0.75, limits()).error(); };
    one.hand_height = 1.34 * metre;
    CHECK_THAT(refused().message, Catch::Contains("0.58 to 1.33"));
    CHECK(refused().code == ErrorCode::no_answer);
    one.hand_height = 1 * metre;
    one.distance = -1 * metre;
    CHECK(refused().code == ErrorCode::bad_input);
    CHECK(push_limit(task(PushAction::push, PushPhase::start, Sex::male), 1.0, limits()).error().where == "share");
}

TEST_CASE("the caution on breath starts at the published distance a minute", "[engine][physics]") {
    PushTask woman = task(PushAction::push, PushPhase::sustain, Sex::female);
    woman.distance = 10 * metre;
    woman.rate = 0.99 * per_minute;
    CHECK_FALSE(push_limit(woman, 0.75, limits())->caution);
    woman.rate = 1.01 * per_minute;
    CHECK(push_limit(woman, 0.75, limits())->caution);
    PushTask man = task(PushAction::push, PushPhase::sustain, Sex::male);
    man.rate = 1.01 * per_minute;
    CHECK_FALSE(push_limit(man, 0.75, limits())->caution);
    man.rate = 1.51 * per_minute;
    CHECK(push_limit(man, 0.75, limits())->caution);
}

TEST_CASE("the biomechanical guideline is met at its heights and straight between", "[engine][physics]") {
    // Guidelines of a US state workers' compensation bureau and university (second-hand): 40 in 54 lbf, 44 in 62 lbf.
    const auto push = [](double inches) { return biomechanical_limit(PushAction::push, inches * inch, limits()); };
    CHECK(push(40)->in(pound_force) == Approx(54).epsilon(2e-2));
    CHECK(push(44)->in(pound_force) == Approx(62).epsilon(2e-2));
    CHECK(push(42)->in(pound_force) == Approx(58).epsilon(2e-2));
    CHECK(push(31).error().code == ErrorCode::no_answer);
    CHECK(push(50).error().code == ErrorCode::no_answer);
}

TEST_CASE("traction on a slope and by a slanted hand", "[engine][physics][property]") {
    const Mass person = 50 * kilogram;
    const double level = traction_force(person, 0.4)->si();
    CHECK(level == Approx(50 * 9.80665 * 0.4));
    double before = level;
    for (double slope = 0.02; slope < 0.4; slope += 0.02) {
        const double force = traction_force(person, 0.4, Slope::from_tangent(slope))->si();
        CHECK(force < before);
        before = force;
    }
    CHECK(traction_force(person, 0.4, Slope::from_tangent(0.41)).error().code == ErrorCode::no_answer);
    CHECK(traction_force(person, 0.4, {}, Slope::from_degrees(20))->si() < level);
    CHECK(traction_force(person, 0.4, {}, Slope::from_degrees(-20))->si() > level);
    CHECK(traction_force(person, 0.4, {}, {}, 0.7)->si() == Approx(0.7 * level));
    CHECK(traction_force(person, 0.4, Slope::from_tangent(0.1), Slope::from_tangent(0.1)).error().where ==
          "hand-angle");
    CHECK(traction_force(person, 0.0).error().code == ErrorCode::no_answer);
}
