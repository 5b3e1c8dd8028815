// The camera's sheet: what it sees, the photo that is taken, and a camera that goes. The camera is one of the test.
#include "tests/app_photo/camera.hpp"
#include "tests/app_screens/screen_checks.hpp"

using namespace sillwalk;
using test::AppHost;

namespace {

struct Bench {
    int open = 0, frames = 0;
    bool broken = false;
};

class TestCamera : public app::CameraSource {
public:
    explicit TestCamera(Bench& bench) : bench_(bench) { ++bench_.open; }
    ~TestCamera() override { --bench_.open; }
    TestCamera(const TestCamera&) = delete;
    TestCamera& operator=(const TestCamera&) = delete;
    engine::Result<app::Pixels> frame() override {
        ++bench_.frames;
        if (bench_.broken) return engine::fail(engine::ErrorCode::storage, "unplugged", "test");
        return test::four_quarters(96, 72);
    }

private:
    Bench& bench_;
};

app::OpenCameraSource camera_of(Bench& bench) {
    return [&bench]() -> engine::Result<std::unique_ptr<app::CameraSource>> {
        if (bench.broken) return engine::fail(engine::ErrorCode::storage, "busy", "test");
        return std::unique_ptr<app::CameraSource>(std::make_unique<TestCamera>(bench));
    };
}

constexpr const char* to_camera = "tap nav.overview\ntap overview.evidence\ntap evidence.camera\nwait 0.5\n";

}  // namespace

TEST_CASE("a photo with the camera: seen, taken, kept, and the camera is closed behind it",
          "[screens][photo][camera]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    Bench bench;
    AppHost host(size.first, size.second);
    host.plug_camera(camera_of(bench));
    host.run(to_camera);
    const app::AppModel& model = host.shell().model();
    REQUIRE((model.photos.camera && model.photos.camera->picture));
    CHECK(model.photos.camera->picture->width == 96);
    CHECK(bench.frames > 2);
    ui::FrameInput input;
    input.width = size.first;
    input.height = size.second;
    test::check_targets(host.driver().screen(), ui::Metrics(input, {}), false);
    test::check_overlaps(host.driver().screen());

    host.run("tap camera.shoot\nwait 0.5\ntap camera.shoot\nwait 0.5\n");
    CHECK(model.visit->photos.size() == 1);  // the same picture again is told, not kept twice
    CHECK(model.visit->photos.at(0).width_px == 96);
    CHECK(bench.open == 1);
    host.run("tap camera.close\nwait 0.5\n");
    CHECK(bench.open == 0);
    const int frames = bench.frames;
    host.run("wait 1\n");
    CHECK(bench.frames == frames);
}

TEST_CASE("a camera that goes is told, and tried again when the person says so", "[screens][photo][camera]") {
    Bench bench;
    AppHost host;
    host.plug_camera(camera_of(bench));
    host.run(to_camera);
    bench.broken = true;
    host.run("wait 0.5\n");
    CHECK(host.shell().describe().find("gives no picture") != std::string::npos);
    CHECK(bench.open == 0);
    host.run("tap camera.shoot\nwait 0.5\n");  // "Try again": still broken
    CHECK(host.shell().describe().find("gives no picture") != std::string::npos);
    bench.broken = false;
    host.run("tap camera.shoot\nwait 0.5\n");
    CHECK(host.shell().model().photos.camera->picture);
    CHECK(host.shell().model().photos.camera->why.empty());
}

TEST_CASE("without a camera no key offers one", "[screens][photo][camera]") {
    AppHost host;
    host.run("tap nav.overview\ntap overview.evidence\nwait 0.2\n");
    CHECK(host.shell().describe().find("Take a photo") == std::string::npos);
}
