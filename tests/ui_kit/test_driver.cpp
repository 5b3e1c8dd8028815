/// Scripts: parsing, finding by id, scrolling, messages that help.

#include "app/driver/driver.hpp"
#include "tests/ui_kit/sample_app.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;

namespace {

struct Bench {
    test::SampleApp app;
    std::vector<std::string> shots;
    driver::Driver driver;

    explicit Bench(int screen)
        : driver(
              [&] {
                  app.screen = screen;
                  driver::DriverHost host;
                  host.frame = [this](const ui::FrameInput& input) { return app.frame(input); };
                  host.save_shot = [this](const ui::FrameOutput&, const std::string& path) -> engine::Result<void> {
                      shots.push_back(path);
                      return {};
                  };
                  host.set = [this](std::string_view name, std::string_view value) -> engine::Result<void> {
                      if (name != "theme" || value != "dark") return engine::bad_input("only dark");
                      app.settings.theme = ui::ThemeName::dark;
                      return {};
                  };
                  return host;
              }(),
              {}) {}

    std::string run(const char* text) {
        const auto script = driver::parse_script(text);
        if (!script.has_value()) return script.error().where + " " + script.error().message;
        const auto done = driver.run(*script);
        return done.has_value() ? "" : done.error().where + " | " + done.error().message;
    }
};

}  // namespace

TEST_CASE("a script taps, types and expects", "[driver]") {
    Bench bench(2);
    CHECK(bench.run("# the controls\n"
                    "tap again\n"
                    "clear note\n"
                    "type note \"Heater off\"\n"
                    "key enter\n"
                    "expect note contains \"Heater off\"\n"
                    "expect note is \"Note Heater off\"\n"
                    "expect off disabled\n"
                    "expect method.tape chosen\n"
                    "expect-not method.eye chosen\n"
                    "expect top.title is \"Freezer door sill\"\n"
                    "screen contains \"needs a signal\"\n"
                    "screen-not contains \"Lorem\"\n"
                    "tap open\n"
                    "tap key.1\n"
                    "key 9\n"
                    "shot measure.png\n"
                    "theme dark\n"
                    "tap measure.close\n"
                    "expect-not measure.close shown\n"
                    "size 412 915\n"
                    "tap again\n"
                    "wait 0.5\n") == "");
    CHECK(bench.app.taps["again"] == 2);
    CHECK(bench.app.note == "Heater off");
    CHECK(bench.app.entered == "19");
    CHECK(bench.shots == std::vector<std::string>{"measure.png"});
    CHECK(bench.app.settings.theme == ui::ThemeName::dark);
}

TEST_CASE("a tap scrolls a long list until its row is in view", "[driver]") {
    Bench bench(1);
    CHECK(bench.run("tap row.47\ntap row.2\n") == "");
    CHECK(bench.app.taps["row.47"] == 1);
    CHECK(bench.app.taps["row.2"] == 1);
}

TEST_CASE("a drag moves by millimetres of glass", "[driver]") {
    Bench bench(1);
    CHECK(bench.run("drag row.2 0 -30\n") == "");
    CHECK(bench.driver.screen().find_scroll("rows")->offset == Approx(30 * 5.9).margin(2));
}

TEST_CASE("what fails says where, why and what would be near", "[driver]") {
    Bench bench(2);
    CHECK_THAT(bench.run("tap again\ntap agian\n"), Catch::Contains("line 2: tap agian") && Catch::Contains("again"));
    CHECK_THAT(bench.run("tap off\n"), Catch::Contains("not available"));
    CHECK_THAT(bench.run("expect note contains \"cold\"\n"), Catch::Contains("Heater on"));
    CHECK_THAT(bench.run("tap open\ntap note\n"), Catch::Contains("covered"));
}

TEST_CASE("a script that cannot be read says on which line", "[driver]") {
    Bench bench(0);
    CHECK_THAT(bench.run("\ntapp x\n"), Catch::Contains("line 2") && Catch::Contains("tapp"));
    CHECK_THAT(bench.run("tap\n"), Catch::Contains("takes 1 to 1"));
    CHECK_THAT(bench.run("type note \"open\n"), Catch::Contains("quote"));
}
