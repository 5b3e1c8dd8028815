#pragma once
/// Pictures in memory (the font's glyphs, photo thumbnails) by number; hosts upload what is new.

#include <cstdint>
#include <map>
#include <vector>

namespace sillwalk::ui {

using TextureId = std::uint32_t;
inline constexpr TextureId no_texture = 0;
inline constexpr TextureId font_texture = 1;

struct Texture {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba;  ///< straight alpha, row by row from the top
    std::uint32_t version = 1;       ///< rises with every change of the pixels
};

class Textures {
public:
    /// `rgba` holds width * height * 4 bytes.
    TextureId add(int width, int height, std::vector<std::uint8_t> rgba);
    void set(TextureId id, int width, int height, std::vector<std::uint8_t> rgba);
    void remove(TextureId id);
    [[nodiscard]] const Texture* find(TextureId id) const;
    [[nodiscard]] const std::map<TextureId, Texture>& all() const { return textures_; }

private:
    std::map<TextureId, Texture> textures_;
    TextureId next_ = font_texture + 1;
};

}  // namespace sillwalk::ui
