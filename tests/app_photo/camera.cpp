#include "tests/app_photo/camera.hpp"

#include <cstddef>

namespace sillwalk::test {

namespace {

std::size_t index(const app::Pixels& pixels, int x, int y) {
    return static_cast<std::size_t>(y * pixels.width + x) * 3;
}

void put(app::Pixels& pixels, int x, int y, const Rgb& color) {
    std::uint8_t* p = &pixels.rgb[index(pixels, x, y)];
    p[0] = static_cast<std::uint8_t>(color.r);
    p[1] = static_cast<std::uint8_t>(color.g);
    p[2] = static_cast<std::uint8_t>(color.b);
}

enum class Side { top, bottom, left, right };
struct Sides {
    Side row, column;
};
/// EXIF 2.3, 4.6.4.A, Orientation: what the 0th row and the 0th column of the stored picture are in the scene.
constexpr Sides exif_table[] = {
    {Side::top, Side::left}, {Side::top, Side::right}, {Side::bottom, Side::right}, {Side::bottom, Side::left},
    {Side::left, Side::top}, {Side::right, Side::top}, {Side::right, Side::bottom}, {Side::left, Side::bottom},
};

/// Sets the coordinate of the scene that lies `steps` away from its side.
void go_from(Side side, int steps, const app::Pixels& scene, int& x, int& y) {
    if (side == Side::top) y = steps;
    if (side == Side::bottom) y = scene.height - 1 - steps;
    if (side == Side::left) x = steps;
    if (side == Side::right) x = scene.width - 1 - steps;
}

std::string number(std::uint32_t value, int size, ByteOrder order) {
    std::string bytes;
    for (int i = 0; i < size; ++i) {
        const int shift = order == ByteOrder::big ? 8 * (size - 1 - i) : 8 * i;
        bytes += static_cast<char>(value >> shift & 0xFFU);
    }
    return bytes;
}

}  // namespace

app::Pixels four_quarters(int width, int height) {
    app::Pixels scene{width, height, {}};
    scene.rgb.resize(static_cast<std::size_t>(width * height) * 3);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const bool left = x < width / 2;
            put(scene, x, y, y < height / 2 ? (left ? top_left : top_right) : (left ? bottom_left : bottom_right));
        }
    }
    return scene;
}

app::Pixels stored_by(int orientation, const app::Pixels& scene) {
    const Sides sides = exif_table[orientation - 1];
    const bool rows_are_columns = sides.row == Side::left || sides.row == Side::right;
    app::Pixels stored{
        rows_are_columns ? scene.height : scene.width, rows_are_columns ? scene.width : scene.height, {}};
    stored.rgb.resize(scene.rgb.size());
    for (int row = 0; row < stored.height; ++row) {
        for (int column = 0; column < stored.width; ++column) {
            int x = 0;
            int y = 0;
            go_from(sides.row, row, scene, x, y);
            go_from(sides.column, column, scene, x, y);
            const std::uint8_t* p = &scene.rgb[index(scene, x, y)];
            put(stored, column, row, {p[0], p[1], p[2]});
        }
    }
    return stored;
}

std::string exif_segment(int orientation, ByteOrder order) {
    const auto value = static_cast<std::uint32_t>(orientation);
    std::string tiff = order == ByteOrder::big ? "MM" : "II";
    tiff += number(42, 2, order) + number(8, 4, order);  // the first directory begins at byte 8
    tiff += number(3, 2, order);
    // Tag, type (2 ASCII, 3 SHORT, 4 LONG), count, value left-justified in four bytes.
    tiff += number(0x010F, 2, order) + number(2, 2, order) + number(4, 4, order) + std::string("Cam\0", 4);
    tiff += number(0x0112, 2, order) + number(3, 2, order) + number(1, 4, order) + number(value, 2, order) +
            number(0, 2, order);
    tiff += number(0x8825, 2, order) + number(4, 2, order) + number(1, 4, order) + number(50, 4, order);
    tiff += number(0, 4, order);                        // no second directory
    tiff += number(0, 2, order) + number(0, 4, order);  // an empty GPS directory
    const std::string body = std::string("Exif\0\0", 6) + tiff;
    return "\xFF\xE1" + number(static_cast<std::uint32_t>(body.size() + 2), 2, ByteOrder::big) + body;
}

std::string with_segment(const std::string& jpeg, const std::string& segment) {
    return jpeg.substr(0, 2) + segment + jpeg.substr(2);
}

}  // namespace sillwalk::test
