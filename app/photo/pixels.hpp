#pragma once
/// A picture in memory, and what is done to it before it is kept: turned upright, made smaller.

#include "app/photo/exif.hpp"

#include <cstdint>
#include <vector>

namespace sillwalk::app {

struct Pixels {
    int width = 0, height = 0;
    std::vector<std::uint8_t> rgb;  ///< 3 bytes a pixel, row by row from the top
    friend bool operator==(const Pixels&, const Pixels&) = default;
};

/// The picture as the eye saw it.
[[nodiscard]] Pixels upright(const Pixels& stored, Orientation orientation);
/// Its longer edge at most `longest_px`; every new pixel is the mean of the area that it covers. A smaller picture
/// stays as it is.
[[nodiscard]] Pixels shrunk(Pixels pixels, int longest_px);

}  // namespace sillwalk::app
