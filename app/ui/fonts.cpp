#include "app/ui/fonts.hpp"

#include "app/ui/glyphs.hpp"
#if !defined(__EMSCRIPTEN__)
#include <imgui_freetype.h>
#endif
#include "assets/embedded.hpp"
#include "engine/base/contract.hpp"

#include <bit>
#include <imstb_truetype.h>
#include <utility>

namespace sillwalk::ui {

namespace {

constexpr const char* font_files[weight_count] = {"fonts/Roboto-Regular.ttf", "fonts/Roboto-Medium.ttf",
                                                  "fonts/Roboto-Bold.ttf"};

/// Latin with accents (what a site may be called), thin space, dashes, quotes, ellipsis, fractions, signs of measuring.
constexpr char32_t always[][2] = {{0x20, 0x7E},     {0xA0, 0x17F},    {0x2009, 0x2009}, {0x2013, 0x2014},
                                  {0x2018, 0x201D}, {0x2022, 0x2022}, {0x2026, 0x2026}, {0x20AC, 0x20AC},
                                  {0x2126, 0x2126}, {0x215B, 0x215E}, {0x2212, 0x2212}, {0x2248, 0x2248},
                                  {0x2264, 0x2265}};
/// The largest sizes hold digits and signs only, or the texture would not fit.
constexpr ImWchar digits[] = {0x20, 0x3A, 0xB0, 0xB1, 0xD7, 0xD7, 0x2009, 0x2009, 0x2212, 0x2212, 0x3F, 0x3F, 0};
constexpr ImWchar headline[] = {0x20,   0x7E,   0xA0,   0xFF,   0x2009, 0x2009, 0x2013, 0x2014, 0x2026,
                                0x2026, 0x2212, 0x2212, 0x2248, 0x2248, 0x2264, 0x2265, 0};

/// Bold are the numbers in pictures and the app's own words, never what people type.
const ImWchar* ranges_for(TextRole role, Weight weight, const ImWchar* letters, const ImWchar* own_letters) {
    if (role == TextRole::digit || role == TextRole::readout) return digits;
    if (role == TextRole::value) return headline;
    return weight == Weight::bold ? own_letters : letters;
}

/// Weights that the role is drawn in; others fall back to medium.
bool is_built(TextRole role, Weight weight) {
    switch (role) {
        case TextRole::smallest:
        case TextRole::caption:
        case TextRole::body:
        case TextRole::row:
            return true;
        case TextRole::section:
        case TextRole::value:
        case TextRole::digit:
        case TextRole::readout:
            return weight == Weight::medium;
    }
    return false;
}

std::vector<ImWchar> letter_ranges(std::string_view texts, char32_t typed_up_to) {
    std::vector<bool> wanted(0xFFFD);
    for (const auto& range : always) {
        for (char32_t c = range[0]; c <= range[1]; ++c) wanted[c] = c <= typed_up_to || c >= 0x2000;
    }
    for (std::size_t i = 0; i < texts.size();) {
        const char32_t c = next_code_point(texts, i);
        if (c >= 0x20 && c < wanted.size()) wanted[c] = true;
    }
    std::vector<ImWchar> ranges;
    for (std::size_t c = 0; c < wanted.size(); ++c) {
        if (!wanted[c]) continue;
        const auto code = static_cast<ImWchar>(c);
        if (!ranges.empty() && ranges.back() + 1 == code) {
            ranges.back() = code;
        } else {
            ranges.push_back(code);
            ranges.push_back(code);
        }
    }
    ranges.push_back(0);
    return ranges;
}

/// The font builder rounds advances up to whole pixels, which spaces small text too wide; take the font's own.
void use_exact_advances(ImFont& font, std::string_view file, float size) {
    stbtt_fontinfo info;
    if (stbtt_InitFont(&info, reinterpret_cast<const unsigned char*>(file.data()), 0) == 0) return;
    const float scale = stbtt_ScaleForPixelHeight(&info, size);
    for (ImFontGlyph& glyph : font.Glyphs) {
        int advance = 0;
        int bearing = 0;
        stbtt_GetCodepointHMetrics(&info, static_cast<int>(glyph.Codepoint), &advance, &bearing);
        glyph.AdvanceX = static_cast<float>(advance) * scale;
    }
}

/// At the usual text scale the smallest text is as large as a caption.
bool is_caption(const Metrics& metrics, TextRole role) {
    return role == TextRole::smallest && metrics.text_size(role) == metrics.text_size(TextRole::caption);
}

std::size_t slot(TextRole role, Weight weight) {
    return static_cast<std::size_t>(role) * weight_count + static_cast<std::size_t>(weight);
}

}  // namespace

std::vector<char32_t> code_points(std::string_view utf8) {
    std::vector<char32_t> out;
    out.reserve(utf8.size());
    for (std::size_t i = 0; i < utf8.size();) out.push_back(next_code_point(utf8, i));
    return out;
}

Fonts::Fonts(std::string_view texts)
    : letters_(letter_ranges(texts, 0x17F)), own_letters_(letter_ranges(texts, 0xFF)) {}

void Fonts::use(const Metrics& metrics, ImFontAtlas& atlas, Textures& textures) {
    std::array<float, text_role_count> sizes{};
    for (std::size_t i = 0; i < text_role_count; ++i) sizes[i] = metrics.text_size(static_cast<TextRole>(i));
    if (sizes == sizes_) return;
    sizes_ = sizes;
    build(metrics, atlas, textures);
}

void Fonts::build(const Metrics& metrics, ImFontAtlas& atlas, Textures& textures) {
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoBakedLines | ImFontAtlasFlags_NoMouseCursors;
    atlas.TexDesiredWidth = 2048;
#if !defined(__EMSCRIPTEN__)
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
#endif
    fonts_.fill(nullptr);
    for (std::size_t r = 0; r < text_role_count; ++r) {
        for (std::size_t w = 0; w < weight_count; ++w) {
            const auto role = static_cast<TextRole>(r);
            const auto weight = static_cast<Weight>(w);
            if (!is_built(role, weight) || is_caption(metrics, role)) continue;
            const auto file = assets::embedded(font_files[w]);
            EXPECT_CONTRACT(file.has_value());
            ImFontConfig config;
            config.FontDataOwnedByAtlas = false;
            config.OversampleH = 1;
            config.PixelSnapH = true;
            fonts_[slot(role, weight)] = atlas.AddFontFromMemoryTTF(
                const_cast<char*>(file->data()), static_cast<int>(file->size()), metrics.text_size(role), &config,
                ranges_for(role, weight, letters_.data(), own_letters_.data()));
        }
    }
    EXPECT_CONTRACT(atlas.Build());
    for (std::size_t r = 0; r < text_role_count; ++r) {
        for (std::size_t w = 0; w < weight_count; ++w) {
            ImFont*& font = fonts_[r * weight_count + w];
            if (is_caption(metrics, static_cast<TextRole>(r))) {
                font = fonts_[slot(TextRole::caption, static_cast<Weight>(w))];
            } else if (font != nullptr) {
                use_exact_advances(*font, *assets::embedded(font_files[w]), sizes_[r]);
            } else {
                font = fonts_[r * weight_count + static_cast<std::size_t>(Weight::medium)];
            }
        }
    }
    unsigned char* pixels = nullptr;
    int width = 0;
    int height = 0;
    atlas.GetTexDataAsAlpha8(&pixels, &width, &height);
    const auto count = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    std::vector<std::uint8_t> white(4 * count, 255);
    for (std::size_t i = 0; i < count; ++i) white[4 * i + 3] = pixels[i];
    textures.set(font_texture, width, height, std::move(white));
    atlas.ClearTexData();
    atlas.SetTexID(std::bit_cast<ImTextureID>(static_cast<std::uintptr_t>(font_texture)));
}

const ImFont& Fonts::font(TextRole role, Weight weight) const {
    const ImFont* found = fonts_[slot(role, weight)];
    EXPECT_CONTRACT(found != nullptr);
    return *found;
}

float Fonts::text_width(std::string_view utf8, TextRole role, Weight weight, float before) const {
    const ImFont& face = font(role, weight);
    float width = before;
    for (std::size_t i = 0; i < utf8.size();) width += glyph_of(face, next_code_point(utf8, i)).AdvanceX;
    return width;
}

std::size_t Fonts::fitting_prefix(std::string_view utf8, TextRole role, Weight weight, float width) const {
    const ImFont& face = font(role, weight);
    float taken = 0;
    for (std::size_t i = 0; i < utf8.size();) {
        const std::size_t start = i;
        taken += glyph_of(face, next_code_point(utf8, i)).AdvanceX;
        if (taken > width) return start;
    }
    return utf8.size();
}

std::vector<char32_t> Fonts::missing(std::string_view utf8) const {
    const ImFont& face = font(TextRole::body, Weight::regular);
    std::vector<char32_t> out;
    for (const char32_t c : code_points(utf8)) {
        const bool control = c < 0x20;
        if (!control && (c > 0xFFFF || face.FindGlyphNoFallback(static_cast<ImWchar>(c)) == nullptr)) out.push_back(c);
    }
    return out;
}

}  // namespace sillwalk::ui
