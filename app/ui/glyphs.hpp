#pragma once
/// Letters of a text and what they look like in a font: the inner loops of measuring and drawing. Not for screens.

#include <imgui.h>

#include <cstddef>
#include <string_view>

namespace sillwalk::ui {

/// The code point that begins at byte `i`, which moves on behind it; a byte that is no UTF-8 becomes U+FFFD.
inline char32_t next_code_point(std::string_view utf8, std::size_t& i) {
    const auto lead = static_cast<unsigned char>(utf8[i]);
    if (lead < 0x80) {
        ++i;
        return lead;
    }
    const std::size_t length = lead < 0xC2 ? 0 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : lead < 0xF5 ? 4 : 0;
    if (length == 0 || i + length > utf8.size()) {
        ++i;
        return 0xFFFD;
    }
    char32_t code = lead & (0xFFU >> (length + 1));
    for (std::size_t k = 1; k < length; ++k) code = code << 6 | (static_cast<unsigned char>(utf8[i + k]) & 0x3FU);
    i += length;
    return code;
}

/// As the library's own FindGlyph, without a call for each letter.
inline const ImFontGlyph& glyph_of(const ImFont& face, char32_t code) {
    constexpr auto none = static_cast<ImWchar>(-1);
    const auto c = static_cast<ImWchar>(code);
    const ImWchar index = c < face.IndexLookup.Size ? face.IndexLookup.Data[c] : none;
    return index == none ? *face.FallbackGlyph : face.Glyphs.Data[index];
}

}  // namespace sillwalk::ui
