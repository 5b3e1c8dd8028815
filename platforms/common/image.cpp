#include "platforms/common/image.hpp"

#include <stb/stb_image.h>
#include <stb/stb_image_write.h>

namespace sillwalk::platforms {

engine::Result<void> write_png(const Image& image, const std::string& path) {
    const int done = stbi_write_png(path.c_str(), image.width, image.height, 4, image.rgba.data(), image.width * 4);
    if (done == 0) return engine::fail(engine::ErrorCode::storage, "The picture could not be written.", path);
    return {};
}

engine::Result<Image> read_png(const std::string& path) {
    int width = 0;
    int height = 0;
    int channels = 0;
    unsigned char* pixels = stbi_load(path.c_str(), &width, &height, &channels, 4);
    if (pixels == nullptr) return engine::fail(engine::ErrorCode::storage, "The picture could not be read.", path);
    Image image(width, height);
    image.rgba.assign(pixels, pixels + image.rgba.size());
    stbi_image_free(pixels);
    return image;
}

}  // namespace sillwalk::platforms
