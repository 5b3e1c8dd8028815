// The ruler of the measuring sheet and the check of the glass's scale, through real touches: a finger that moves 10 mm
// moves the mark by 10 mm.
#include "app/core/sheet.hpp"
#include "tests/app_screens/screen_checks.hpp"

using namespace sillwalk;
using test::AppHost;

namespace {

constexpr double driver_px_per_mm = 5.9;

std::int64_t typed_nm(AppHost& host) {
    const app::Sheet& sheet = *host.shell().model().sheet;
    return app::canonical_of(sheet.entry, app::unit_of(sheet)).value_or(-1);
}

void open_rise(AppHost& host) {
    host.shell().act(app::GoTo{{app::Screen::crossing, 0}});
    host.shell().act(app::OpenSheet{{engine::Field::crossing_rise, 0, 0}});
    host.run("wait 0.2\n");
}

bool offers_ruler(const AppHost& host) {
    return host.driver().screen().find("sheet.ruler_key") != nullptr;
}

}  // namespace

TEST_CASE("the scale check is kept, and with it the keypad offers a ruler", "[screens][ruler]") {
    AppHost host;
    open_rise(host);
    CHECK_FALSE(offers_ruler(host));
    host.shell().act(app::CloseSheet{});
    host.shell().act(app::GoTo{{app::Screen::setup, 0}});
    host.run("wait 0.2\ntap setup.scale_longer\nwait 0.3\ntap setup.scale_longer\nwait 0.3\ntap setup.scale_shorter\n");
    const double checked = host.shell().model().settings.px_per_mm;
    CHECK(checked == Approx(driver_px_per_mm * 1.0025).epsilon(1e-4));
    host.run("tap setup.scale_fits\nrestart\n");
    CHECK(host.shell().model().settings.px_per_mm == Approx(checked).epsilon(1e-4));
    open_rise(host);
    CHECK(offers_ruler(host));
    host.shell().act(app::OpenSheet{{engine::Field::cart_tare, 0, 0}});
    host.run("wait 0.2\n");
    CHECK_FALSE(offers_ruler(host));  // a mass has none
}

TEST_CASE("the ruler is of true size: the mark goes as far as the finger", "[screens][ruler]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    host.shell().act(app::SetScale{driver_px_per_mm});
    open_rise(host);
    host.run("tap sheet.ruler_key\ntap sheet.ruler\n");
    const std::int64_t start = typed_nm(host);
    CHECK(start > 10'000'000);
    CHECK(start % 1'000'000 == 0);
    host.run("drag sheet.ruler 10 0\n");
    CHECK(typed_nm(host) - start == 10'000'000);
    host.run("drag sheet.ruler -500 0\n");  // off its end
    CHECK(typed_nm(host) == 0);

    host.shell().act(app::SheetUnit{1});
    host.run("wait 0.1\ntap sheet.ruler\n");
    const std::int64_t inches = typed_nm(host);
    CHECK(inches % 1'587'500 == 0);  // sixteenths of 25.4 mm
    host.run("drag sheet.ruler 12.7 0\n");
    CHECK(typed_nm(host) - inches == 12'700'000);
    host.run("tap sheet.ruler_key\n");
    CHECK(host.driver().screen().find("sheet.ruler") == nullptr);
    CHECK(typed_nm(host) - inches == 12'700'000);
}
