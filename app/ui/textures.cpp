#include "app/ui/textures.hpp"

#include "engine/base/contract.hpp"

#include <utility>

namespace sillwalk::ui {

TextureId Textures::add(int width, int height, std::vector<std::uint8_t> rgba) {
    const TextureId id = next_++;
    set(id, width, height, std::move(rgba));
    return id;
}

void Textures::set(TextureId id, int width, int height, std::vector<std::uint8_t> rgba) {
    EXPECT_CONTRACT(width > 0 && height > 0);
    EXPECT_CONTRACT(rgba.size() == static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 4);
    Texture& texture = textures_[id];
    const bool is_new = texture.rgba.empty();
    texture = {width, height, std::move(rgba), is_new ? 1 : texture.version + 1};
}

void Textures::remove(TextureId id) {
    textures_.erase(id);
}

const Texture* Textures::find(TextureId id) const {
    const auto found = textures_.find(id);
    return found == textures_.end() ? nullptr : &found->second;
}

}  // namespace sillwalk::ui
