#pragma once
/// Pixels in memory and as PNG files.

#include "engine/base/result.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace sillwalk::platforms {

struct Image {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba{};  ///< 4 bytes a pixel, row by row from the top

    Image() = default;
    Image(int w, int h) : width(w), height(h), rgba(static_cast<std::size_t>(w) * static_cast<std::size_t>(h) * 4) {}
};

/// Replaces the file.
[[nodiscard]] engine::Result<void> write_png(const Image& image, const std::string& path);
[[nodiscard]] engine::Result<Image> read_png(const std::string& path);

}  // namespace sillwalk::platforms
