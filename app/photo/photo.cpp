#include "app/photo/photo.hpp"

#include "app/photo/exif.hpp"

#include <utility>

namespace sillwalk::app {

engine::Result<Photo> import_photo(std::string_view jpeg, const std::string& where, const PhotoLimits& limits) {
    auto decoded = decode_jpeg(jpeg, photo_longest_px, limits, where);
    if (!decoded) return tl::make_unexpected(decoded.error());
    const Orientation orientation = exif_orientation(jpeg).value_or(Orientation::top_left);
    const Pixels pixels = upright(shrunk(std::move(*decoded), photo_longest_px), orientation);
    auto bytes = encode_jpeg(pixels, photo_quality);
    if (!bytes) return tl::make_unexpected(bytes.error());
    Photo photo{std::move(*bytes), pixels.width, pixels.height, {}};
    photo.sha256 = sha256(photo.bytes);
    return photo;
}

}  // namespace sillwalk::app
