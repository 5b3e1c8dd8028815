// Photos: the whole way from a file to a marked photo that is still there after a restart, and how its screens look.
#include "app/photo/jpeg.hpp"
#include "app/shell/photo_worker.hpp"
#include "app/storage/writer.hpp"
#include "tests/app_photo/camera.hpp"
#include "tests/app_screens/screen_checks.hpp"

#include <chrono>
#include <thread>

using namespace sillwalk;
using test::AppHost;

namespace {

/// As a camera held upright stores it: lying on its side, with the orientation in its EXIF block.
std::string camera_photo() {
    const app::Pixels scene = test::four_quarters(480, 640);
    const auto jpeg = app::encode_jpeg(test::stored_by(6, scene), 90);
    REQUIRE(jpeg);
    return test::with_segment(*jpeg, test::exif_segment(6, test::ByteOrder::little));
}

void put_photos(AppHost& host) {
    const std::string photo = camera_photo();
    host.put_photo("broken.jpg", photo.substr(0, photo.size() / 2));
    std::this_thread::sleep_for(std::chrono::milliseconds(20));  // the list shows the newest first
    host.put_photo("sill.jpg", photo);
    host.put_photo("notes.txt", "no picture");
}

}  // namespace

TEST_CASE("A20 a photo: taken from a file, marked, bound, found after a restart", "[journey][photo]") {
    for (const auto& [width, height] : {std::pair{1280.0F, 800.0F}, std::pair{412.0F, 915.0F}}) {
        INFO(width << " x " << height);
        AppHost host(width, height);
        put_photos(host);
        host.run_file("photos.script");
        const app::VisitPhoto& photo = host.shell().model().visit->photos.at(0);
        CHECK(photo.width_px == 480);
        CHECK(photo.height_px == 640);
    }
}

TEST_CASE("the screens of the photos have whole texts and targets for gloves", "[screens][photo]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{800.0F, 1280.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    put_photos(host);
    ui::FrameInput input;
    input.width = size.first;
    input.height = size.second;
    const ui::Metrics metrics(input, {});
    host.run("tap nav.overview\ntap overview.evidence\ntap evidence.add\ntap evidence.file.1\n");
    struct Look {
        const char *theme, *language, *text;
    };
    for (const Look& look : {Look{"light", "en", "100"}, Look{"sun", "es", "130"}, Look{"dark", "es", "115"}}) {
        host.run(std::string("theme ") + look.theme + "\nset language " + look.language + "\nset text " + look.text +
                 "\n");
        const auto check = [&](const std::string& name) {
            host.run("shot " + name + "-" + look.theme + ".png\n");
            INFO(name << " at " << size.first << " x " << size.second << ", " << look.theme << ", " << look.language);
            test::check_targets(host.driver().screen(), metrics, false);
            test::check_overlaps(host.driver().screen());
        };
        host.shell().act(app::DismissToast{});
        host.shell().act(app::GoTo{{app::Screen::evidence, 0}});
        host.run("wait 0.1\n");
        check("evidence");
        host.run("tap evidence.add\n");
        check("photo_files");
        host.run("tap photo_files.close\ntap evidence.photo.1\ntap photo.tool.dimension\ndrag photo.picture 10 8\n");
        check("photo");
        host.run("tap photo.about\ntap photo_about.place.1\n");
        check("photo_about");
        host.run("tap photo_about.close\n");
    }
    CHECK(host.shell().describe().find("Cota") != std::string::npos);
}

TEST_CASE("photos are read beside the frames", "[photo][worker]") {
    const test::Scratch scratch;
    std::filesystem::create_directories(scratch.file("photos"));
    std::ofstream(scratch.file("photos/a.JPG"), std::ios::binary) << camera_photo();
    auto writer = app::Writer::open(scratch.file("a.db"), {});
    REQUIRE(writer);
    app::PhotoWorker worker(
        {scratch.file("photos"), true, [&](const app::Digest& sha256) { return (*writer)->photo(sha256); }, {}});
    const auto next = [&] {
        const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(60);
        for (;;) {
            auto news = worker.take();
            if (!news.empty()) return news.front();
            if (std::chrono::steady_clock::now() > end) FAIL("nothing came");
            std::this_thread::sleep_for(std::chrono::milliseconds(2));
        }
    };
    worker.list_files();
    CHECK(std::get<app::PhotoFilesListed>(next()).names == std::vector<std::string>{"a.JPG"});
    worker.read_file("visit", "a.JPG");
    const auto taken = std::get<app::PhotoTaken>(next());
    CHECK(taken.survey_id == "visit");
    CHECK(taken.width_px == 480);
    REQUIRE(taken.small);
    CHECK(taken.small->height == 384);
    CHECK((*writer)->submit(app::StorePhoto{app::sha256(*taken.bytes), taken.bytes, 480, 640}) != 0);
    worker.decode(taken.sha256, true);
    const auto whole = std::get<app::PictureReady>(next());
    REQUIRE(whole.picture);
    CHECK(whole.picture->width == 480);
    CHECK(whole.picture->rgba.size() == std::size_t{480} * 640 * 4);
    worker.decode(std::string(64, '0'), false);
    CHECK_FALSE(std::get<app::PictureReady>(next()).picture);
    worker.read_file("visit", "gone.jpg");
    CHECK(std::get<app::PhotoRefused>(next()).why == "photo.why.gone");
    CHECK_FALSE(app::jpeg_files(scratch.file("nowhere")));
}
