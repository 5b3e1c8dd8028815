#pragma once
/// JPEG bytes to pixels and back (libjpeg-turbo). Damaged, cut-off and oversized files are errors; nothing throws.

#include "app/photo/pixels.hpp"
#include "engine/base/result.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace sillwalk::app {

/// What is refused before memory is taken for it.
struct PhotoLimits {
    std::size_t bytes = std::size_t{64} << 20;
    std::int64_t pixels = 100'000'000;
    long working_bytes = 512L << 20;  ///< for the decoder; progressive files need the whole picture
    int scans = 100;                  ///< a file of thousands of empty scans takes hours
};

/// The picture as it is stored, decoded at a half, a quarter or an eighth where its longer edge stays at least
/// `longest_px` (0: in full). `where` names the file in errors.
[[nodiscard]] engine::Result<Pixels> decode_jpeg(std::string_view jpeg, int longest_px, const PhotoLimits& limits,
                                                 const std::string& where);
/// Baseline JPEG with a JFIF header and no other data about the picture. Quality 1 to 100.
[[nodiscard]] engine::Result<std::string> encode_jpeg(const Pixels& pixels, int quality);

}  // namespace sillwalk::app
