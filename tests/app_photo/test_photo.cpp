// A20: photos are upright, small and say nothing of the camera. The fixtures are made here, by libjpeg and by hand.
#include "app/photo/exif.hpp"
#include "app/photo/photo.hpp"
#include "tests/app_photo/camera.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <random>

using namespace sillwalk;
using namespace sillwalk::app;
using test::ByteOrder;

namespace {

std::string jpeg_of(const Pixels& pixels, int quality = 95) {
    auto bytes = encode_jpeg(pixels, quality);
    REQUIRE(bytes);
    return *bytes;
}

std::string camera_file(int orientation, const Pixels& scene, ByteOrder order = ByteOrder::big) {
    return test::with_segment(jpeg_of(test::stored_by(orientation, scene)), test::exif_segment(orientation, order));
}

Pixels shown(const Photo& photo) {
    auto pixels = decode_jpeg(photo.bytes, 0, {}, "");
    REQUIRE(pixels);
    return std::move(*pixels);
}

/// Away from the borders of the quarters, where blocks of 16 pixels may mix colours.
void check_quarters(const Pixels& pixels) {
    constexpr int tolerance = 6;  // two rounds of quantisation at qualities 95 and 85
    const int border = 16;
    int worst = 0;
    for (int y = 0; y < pixels.height; ++y) {
        for (int x = 0; x < pixels.width; ++x) {
            if (std::abs(x - pixels.width / 2) <= border || std::abs(y - pixels.height / 2) <= border) continue;
            const bool left = x < pixels.width / 2;
            const test::Rgb wanted = y < pixels.height / 2 ? (left ? test::top_left : test::top_right)
                                                           : (left ? test::bottom_left : test::bottom_right);
            const std::uint8_t* p = &pixels.rgb[static_cast<std::size_t>(y * pixels.width + x) * 3];
            worst = std::max({worst, std::abs(p[0] - wanted.r), std::abs(p[1] - wanted.g), std::abs(p[2] - wanted.b)});
        }
    }
    CHECK(worst <= tolerance);
}

/// Markers of all segments before the picture's data.
std::string markers_of(const std::string& jpeg) {
    std::string markers;
    std::size_t at = 2;
    while (at + 4 <= jpeg.size() && static_cast<std::uint8_t>(jpeg[at]) == 0xFF) {
        markers += jpeg[at + 1];
        if (static_cast<std::uint8_t>(jpeg[at + 1]) == 0xDA) break;
        at += 2 + (static_cast<std::size_t>(static_cast<std::uint8_t>(jpeg[at + 2])) << 8U) +
              static_cast<std::uint8_t>(jpeg[at + 3]);
    }
    return markers;
}

engine::Error error_of(const std::string& file, const PhotoLimits& limits = {}) {
    const auto photo = import_photo(file, "visit.jpg", limits);
    REQUIRE_FALSE(photo);
    CHECK(photo.error().where == "visit.jpg");
    CHECK(photo.error().message.find(';') != std::string::npos);  // what is wrong; what would be right
    return photo.error();
}

}  // namespace

TEST_CASE("A20 a photo of each of the eight orientations becomes upright", "[photo][A20]") {
    // Source of the table: EXIF 2.3 (JEITA CP-3451C), 4.6.4.A, tag 274 "Orientation".
    const int orientation = GENERATE(1, 2, 3, 4, 5, 6, 7, 8);
    const auto order = GENERATE(ByteOrder::big, ByteOrder::little);
    INFO("orientation " << orientation);
    const Pixels scene = test::four_quarters(320, 192);
    const std::string file = camera_file(orientation, scene, order);
    CHECK(exif_orientation(file) == static_cast<Orientation>(orientation));
    const auto photo = import_photo(file, "a.jpg");
    REQUIRE(photo);
    CHECK(photo->width_px == 320);
    CHECK(photo->height_px == 192);
    const Pixels pixels = shown(*photo);
    CHECK(pixels.width == 320);
    CHECK(pixels.height == 192);
    check_quarters(pixels);
}

TEST_CASE("A20 turned exactly: every pixel of every orientation finds its place", "[photo][A20]") {
    const int orientation = GENERATE(1, 2, 3, 4, 5, 6, 7, 8);
    Pixels scene{7, 5, {}};
    for (int i = 0; i < 7 * 5 * 3; ++i) scene.rgb.push_back(static_cast<std::uint8_t>(i));
    CHECK(upright(test::stored_by(orientation, scene), static_cast<Orientation>(orientation)) == scene);
}

TEST_CASE("A20 the long edge is at most 1600 pixels and the sides keep their ratio", "[photo][A20]") {
    struct Size {
        int width, height, wanted_width, wanted_height;
    };
    const Size size = GENERATE(Size{4000, 3000, 1600, 1200}, Size{1800, 3200, 900, 1600}, Size{1601, 20, 1600, 20},
                               Size{1600, 1200, 1600, 1200}, Size{64, 48, 64, 48}, Size{5000, 1, 1600, 1});
    INFO(size.width << " x " << size.height);
    const auto photo = import_photo(camera_file(1, test::four_quarters(size.width, size.height)), "a.jpg");
    REQUIRE(photo);
    CHECK(photo->width_px == size.wanted_width);
    CHECK(photo->height_px == size.wanted_height);
    if (size.wanted_height > 100) check_quarters(shown(*photo));
}

TEST_CASE("A20 a shrunk pixel is the mean of the area that it covers", "[photo][A20]") {
    // By hand: 3 columns into 2 gives (2a + b)/3 and (b + 2c)/3.
    const Pixels three{3, 1, {30, 0, 90, 60, 30, 90, 90, 0, 0}};
    CHECK(shrunk(three, 2).rgb == std::vector<std::uint8_t>{40, 10, 90, 80, 10, 30});
    const Pixels tall{1, 4, {0, 0, 0, 10, 20, 30, 100, 100, 100, 50, 70, 90}};
    CHECK(shrunk(tall, 2).rgb == std::vector<std::uint8_t>{5, 10, 15, 75, 85, 95});
}

TEST_CASE("A20 no APP1 and no APP13 is left, nor anything else of the camera", "[photo][A20]") {
    const std::string maker = "\xFF\xED" + std::string("\0\x10", 2) + std::string("Photoshop 3.0", 13) + '\0';
    const std::string comment = "\xFF\xFE" + std::string("\0\x08", 2) + "secret";
    const std::string file =
        test::with_segment(test::with_segment(camera_file(6, test::four_quarters(64, 48)), maker), comment);
    REQUIRE(markers_of(file).find('\xE1') != std::string::npos);
    REQUIRE(markers_of(file).find('\xED') != std::string::npos);
    const auto photo = import_photo(file, "a.jpg");
    REQUIRE(photo);
    CHECK(photo->width_px == 64);  // the EXIF block was read all the same
    for (const char marker : markers_of(photo->bytes)) {
        const auto code = static_cast<std::uint8_t>(marker);
        CHECK_FALSE((code > 0xE0 && code <= 0xEF));
        CHECK(code != 0xFE);
    }
    CHECK(photo->sha256 == sha256(photo->bytes));
}

TEST_CASE("A20 a cut-off file is an error that says so, wherever it is cut", "[photo][A20]") {
    const std::string file = camera_file(1, test::four_quarters(320, 192));
    for (std::size_t size = 0; size < file.size() - 2; size += file.size() / 60 + 1) {
        INFO(size << " of " << file.size() << " bytes");
        CHECK_FALSE(error_of(file.substr(0, size)).message.empty());
    }
}

TEST_CASE("A20 what is no JPEG, too large or of printing colours is refused before it is decoded", "[photo][A20]") {
    CHECK(error_of("").message.find("no JPEG") != std::string::npos);
    CHECK(error_of("\x89PNG\r\n").message.find("no JPEG") != std::string::npos);
    const std::string file = camera_file(1, test::four_quarters(320, 192));
    PhotoLimits small;
    small.bytes = 1000;
    CHECK(error_of(file, small).message.find("MB") != std::string::npos);
    // A header that promises 65,500 x 65,500 pixels: SOF0 holds height and width from its sixth byte.
    std::string huge = jpeg_of(test::four_quarters(16, 16));
    const std::size_t frame = huge.find("\xFF\xC0");
    REQUIRE(frame != std::string::npos);
    huge.replace(frame + 5, 4, "\xFF\xDC\xFF\xDC");
    CHECK(error_of(huge).message.find("4290 megapixels") != std::string::npos);
}

TEST_CASE("A20 a broken EXIF block leaves the picture as it is stored", "[photo][A20]") {
    const std::string jpeg = jpeg_of(test::four_quarters(64, 48));
    const std::string whole = test::exif_segment(6, ByteOrder::big);
    const auto broken = [&](std::size_t at, const std::string& bytes) {
        std::string segment = whole;
        segment.replace(at, bytes.size(), bytes);
        return test::with_segment(jpeg, segment);
    };
    // Offsets within the segment: 10 byte order, 12 "42", 14 first directory, 18 count, 32 the orientation's entry.
    CHECK(exif_orientation(test::with_segment(jpeg, whole)) == Orientation::right_top);
    CHECK_FALSE(exif_orientation(broken(10, "XX")));
    CHECK_FALSE(exif_orientation(broken(12, std::string("\0\0", 2))));
    CHECK_FALSE(exif_orientation(broken(14, "\xFF\xFF\xFF\xFF")));
    CHECK_FALSE(exif_orientation(broken(14, std::string("\0\0\0\x30", 4))));
    CHECK_FALSE(exif_orientation(broken(32 + 2, std::string("\0\4", 2))));
    CHECK_FALSE(exif_orientation(broken(32 + 8, std::string("\0\x9", 2))));
    CHECK_FALSE(exif_orientation(broken(32 + 8, std::string("\0\0", 2))));
    CHECK_FALSE(exif_orientation(jpeg));
    CHECK_FALSE(exif_orientation(""));
    // A directory that promises more entries than there are.
    CHECK_FALSE(exif_orientation(broken(18, "\xFF\xFF").replace(2 + 32, 2, std::string("\0\1", 2))));
    REQUIRE(import_photo(broken(14, "\xFF\xFF\xFF\xFF"), "a.jpg"));
}

TEST_CASE("A20 damaged bytes anywhere give a photo within its limits or an error, never more", "[photo][A20]") {
    const std::string file = camera_file(8, test::four_quarters(96, 64), ByteOrder::little);
    std::mt19937 random(4);  // fixed: the same files every time
    const int tries = std::getenv("SILLWALK_LONG") != nullptr ? 4000 : 400;
    PhotoLimits limits;
    limits.pixels = 4'000'000;
    for (int i = 0; i < tries; ++i) {
        std::string hostile = file;
        for (int k = 0; k < 4; ++k) hostile[random() % hostile.size()] = static_cast<char>(random() & 0xFFU);
        if (random() % 4 == 0) hostile.resize(random() % hostile.size());
        const auto photo = import_photo(hostile, "a.jpg", limits);
        if (photo) CHECK(std::max(photo->width_px, photo->height_px) <= photo_longest_px);
        if (!photo) CHECK_FALSE(photo.error().message.empty());
    }
}
