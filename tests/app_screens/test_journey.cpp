// Whole journeys through real injected touches, without a window.
#include "app/shell/assessor.hpp"
#include "tests/app_screens/app_host.hpp"

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
