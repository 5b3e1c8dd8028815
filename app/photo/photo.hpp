#pragma once
/// A photo as a visit keeps it: upright, at most 1600 pixels long, without any data of the camera (place, time, maker),
/// named by its SHA-256.

#include "app/bundle/digest.hpp"
#include "app/photo/jpeg.hpp"
#include "engine/base/result.hpp"

#include <string>
#include <string_view>

namespace sillwalk::app {

inline constexpr int photo_longest_px = 1600;
inline constexpr int photo_quality = 85;

struct Photo {
    std::string bytes;  ///< a JPEG file
    int width_px = 0, height_px = 0;
    Digest sha256{};  ///< of bytes
};

/// Reads a JPEG file and writes it anew. `where` names the file in errors. bad_input where it is no JPEG, damaged, cut
/// off or over the limits.
[[nodiscard]] engine::Result<Photo> import_photo(std::string_view jpeg, const std::string& where,
                                                 const PhotoLimits& limits = {});

}  // namespace sillwalk::app
