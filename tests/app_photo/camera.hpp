#pragma once
/// Files as cameras write them: pictures of four quarters, stored by any of the eight orientations of EXIF 2.3.

#include "app/photo/pixels.hpp"

#include <cstdint>
#include <string>

namespace sillwalk::test {

struct Rgb {
    int r = 0, g = 0, b = 0;
};
/// Red, green / blue, yellow, as the eye sees it.
inline constexpr Rgb top_left{200, 40, 40}, top_right{40, 180, 60}, bottom_left{50, 70, 200},
    bottom_right{220, 210, 60};

/// The scene: quarters of different colours.
app::Pixels four_quarters(int width, int height);
/// The scene as a camera with that orientation stores it: for each stored row and column the table of EXIF 2.3 (tag
/// 274) names the side of the scene that the 0th row and the 0th column are.
app::Pixels stored_by(int orientation, const app::Pixels& scene);

enum class ByteOrder { big, little };
/// An APP1 segment with an EXIF block of one directory that holds the orientation and a place (GPS pointer).
std::string exif_segment(int orientation, ByteOrder order);
/// The file with the segment after its start marker.
std::string with_segment(const std::string& jpeg, const std::string& segment);

}  // namespace sillwalk::test
