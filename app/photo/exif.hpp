#pragma once
/// What a JPEG file says about how the camera was held: the Orientation tag of its EXIF block. Nothing else of EXIF is
/// read, and none of it is kept. Layout: EXIF 2.3 (JEITA CP-3451C) sections 4.5 and 4.6, TIFF 6.0 section 2.

#include <optional>
#include <string_view>

namespace sillwalk::app {

/// EXIF Orientation (tag 0112 hex): which side of the scene the stored picture's first row and first column are.
enum class Orientation {
    top_left = 1,
    top_right = 2,
    bottom_right = 3,
    bottom_left = 4,
    left_top = 5,
    right_top = 6,
    right_bottom = 7,
    left_bottom = 8
};

/// Empty where the file says none, or where its EXIF block is broken. Never reads beyond `jpeg`.
[[nodiscard]] std::optional<Orientation> exif_orientation(std::string_view jpeg);

}  // namespace sillwalk::app
