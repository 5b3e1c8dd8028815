#pragma once
/// Roboto in every role and weight, drawn into one texture. Holds the letters of the string tables, Latin with accents
/// for what people type, and the signs of measuring; anything else is drawn as "?" and can be asked for.

#include "app/ui/metrics.hpp"
#include "app/ui/textures.hpp"

#include <string>
#include <string_view>
#include <vector>

struct ImFont;
struct ImFontAtlas;

namespace sillwalk::ui {

/// UTF-8 to code points; a byte that is no UTF-8 becomes U+FFFD.
[[nodiscard]] std::vector<char32_t> code_points(std::string_view utf8);

class Fonts {
public:
    /// `texts`: the string tables.
    explicit Fonts(std::string_view texts);

    /// Rebuilds the atlas when the sizes changed. The texture is font_texture.
    void use(const Metrics& metrics, ImFontAtlas& atlas, Textures& textures);
    [[nodiscard]] const ImFont& font(TextRole role, Weight weight) const;
    /// `before`: width of the text that it goes on from.
    [[nodiscard]] float text_width(std::string_view utf8, TextRole role, Weight weight, float before = 0) const;
    /// Length in bytes of the longest start of the text that is no wider.
    [[nodiscard]] std::size_t fitting_prefix(std::string_view utf8, TextRole role, Weight weight, float width) const;
    /// Characters of the text that the body font cannot draw.
    [[nodiscard]] std::vector<char32_t> missing(std::string_view utf8) const;

private:
    void build(const Metrics& metrics, ImFontAtlas& atlas, Textures& textures);

    // Pairs first, last; 0 at the end.
    std::vector<unsigned short> letters_, own_letters_;  ///< the second without letters that only people type
    std::array<float, text_role_count> sizes_{};
    std::array<ImFont*, text_role_count * weight_count> fonts_{};
};

}  // namespace sillwalk::ui
