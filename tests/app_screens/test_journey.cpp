// Whole journeys through real injected touches, without a window.
#include "app/shell/assessor.hpp"
#include "tests/app_screens/app_host.hpp"

#include <chrono>
#include <thread>

using namespace sillwalk;
using test::AppHost;

TEST_CASE("the sill read again: the outcome changes, and it is still there after a restart", "[journey]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    host.run_file(size.first < 500 ? "sill_from_19_to_6_phone.script" : "sill_from_19_to_6.script");
}

TEST_CASE("a first visit: from nothing to a first answer, built by hand", "[journey]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    host.run_file(size.first < 500 ? "first_visit_phone.script" : "first_visit.script");
}

namespace {

/// Wide and narrow: every screen is also looked at upright, in test_screens.cpp.
constexpr std::pair<float, float> shapes[] = {{1280, 800}, {412, 915}};

}  // namespace

TEST_CASE("what if to hand-over: tried, taken over, handed over, undone", "[journey][what_if]") {
    for (const auto& [width, height] : shapes) {
        INFO(width << " x " << height);
        AppHost host(width, height);
        host.run_file(width < 500 ? "what_if_to_hand_over_phone.script" : "what_if_to_hand_over.script");
    }
}

TEST_CASE("damage: what is seen against what is computed", "[journey][damage]") {
    for (const auto& [width, height] : shapes) {
        INFO(width << " x " << height);
        AppHost host(width, height);
        host.run_file("damage.script");
    }
}

TEST_CASE("missing readings: asked for, weighed, and read from the answer", "[journey][missing]") {
    AppHost host;
    host.run_file("missing_readings.script");
}

TEST_CASE("a follow-up: copied, one reading changed, and the visit before is left alone", "[journey]") {
    AppHost host;
    host.run_file("follow_up.script");
}

TEST_CASE("a whole visit in Spanish and SI units", "[journey][spanish]") {
    AppHost host;
    host.run_file("spanish_si.script");
}

TEST_CASE("an answer never waits for what takes seconds", "[assessor]") {
    AppHost host;
    const engine::Survey survey = host.shell().model().visit->survey;
    const auto data = test::shared_data();
    app::AssessorOptions options;
    options.draws = 100000;  // far longer than an answer takes
    app::Assessor assessor(data, options, {});
    assessor.start();
    const auto news = [&](auto wanted) {
        const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(120);
        for (;;) {
            const app::AssessorNews now = assessor.take();
            if (auto found = wanted(now)) return found;
            if (std::chrono::steady_clock::now() > end) return decltype(wanted(now)){};
            std::this_thread::sleep_for(std::chrono::milliseconds(2));
        }
    };
    assessor.submit(survey, 1, 0);
    const auto whole = news([](const app::AssessorNews& n) {
        return n.answer && !n.answer->partial ? n.answer : std::shared_ptr<const app::Answer>();
    });
    REQUIRE(whole);
    assessor.complete(survey, whole, 0);
    const auto limits = news([](const app::AssessorNews& n) { return n.completion; });
    REQUIRE(limits);
    CHECK(limits->would_hold);
    CHECK_FALSE(limits->read_again);
    // The draws run now; a newer reading and a what-if are answered while they do.
    assessor.submit(survey, 2, 0);
    assessor.submit_what_if(survey, 7, 0);
    bool drawn = false;
    const auto tried = news([&](const app::AssessorNews& n) {
        drawn = drawn || (n.completion && n.completion->read_again);
        return n.what_if;
    });
    REQUIRE(tried);
    CHECK(tried->version == 7);
    CHECK_FALSE(drawn);
}

TEST_CASE("after a commit the cart in hand is answered first, then all", "[journey]") {
    AppHost host;
    host.run("tap route.crossing.freezer-door\ntap reading.crossing_rise\ntap sheet.key.6\ntap sheet.done\n");
    const app::AppModel& model = host.shell().model();
    REQUIRE(model.answer);
    CHECK(app::answer_is_current(model));
    CHECK_FALSE(model.answer->partial);
    const app::Answer first = app::work_out(model.visit->survey, *test::shared_data(), model.version, 0);
    WARN("one cart in " << first.milliseconds << " ms, all in " << model.answer->milliseconds << " ms");
    CHECK(first.partial);
    CHECK(first.advice.carts.size() == 1);
}
