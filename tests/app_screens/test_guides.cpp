// What the guides of docs/ tell, done in the app: their scripts hold while the app stays as they say.
#include "tests/app_screens/app_host.hpp"

using sillwalk::test::AppHost;

TEST_CASE("the tutorial's first visit goes as it is told", "[journey][guides]") {
    AppHost host(1280, 800, false);
    host.run_file("../../docs/first_visit.script");
}

TEST_CASE("the how-tos go as they are told", "[journey][guides]") {
    for (const char* name : {"how_to_read.script", "how_to_build.script", "how_to_answer.script"}) {
        INFO(name);
        AppHost host;
        host.run_file(name);
    }
}
